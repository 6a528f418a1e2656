import type { DesktopBridge } from '../../backend/api/desktop-bridge.ts';
import type { Backend } from './backend.ts';
import { httpClient } from './http-client.ts';

declare global {
  interface Window {
    /** Put there by the desktop shell's preload; absent in a browser. */
    readonly roundwright?: DesktopBridge;
  }
}

/** The way to the backend: the shell's bridge where there is one, the loopback host otherwise. */
export function connect(): Backend {
  const bridge = window.roundwright;
  if (bridge === undefined) return { ...httpClient(), desktop: null };
  return { call: bridge, subscribe: bridge.subscribe, onReconnect: () => () => {}, upload: null, desktop: bridge };
}
