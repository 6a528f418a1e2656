import type { EventEmitter } from 'node:events';
import { readFileSync } from 'node:fs';
import vm from 'node:vm';
import { bridgeCopy } from './bridge-copy.ts';

// biome-ignore lint/suspicious/noExplicitAny: what a page sees is whatever the preload script puts there
export type Page = Record<string, any>;

/**
 * Runs a built preload script as a sandboxed window does: in a realm of its own, with nothing to require but "electron".
 * @param invoke - takes a call to the main process
 * @param ipc - what the main process sends comes in here, a channel an event
 * @returns what the script put on the page's `window`
 */
export function runPreload(
  file: string,
  invoke: (channel: string, args: unknown[]) => Promise<unknown>,
  ipc: EventEmitter,
): Page {
  const page: Page = {};
  const lent = {
    contextBridge: {
      exposeInMainWorld: (name: string, value: unknown) => {
        page[name] = bridgeCopy(value);
      },
    },
    ipcRenderer: {
      invoke: (channel: string, ...args: unknown[]) => invoke(channel, args),
      on: (channel: string, listener: (...args: unknown[]) => void) => ipc.on(channel, listener),
      removeListener: (channel: string, listener: (...args: unknown[]) => void) =>
        ipc.removeListener(channel, listener),
    },
  };
  const require = (name: string) => {
    if (name === 'electron') return lent;
    throw new Error(`a sandboxed preload script cannot require ${name}`);
  };
  const module = { exports: {} };
  const run = vm.runInNewContext(`(function (require, module, exports) {${readFileSync(file, 'utf8')}\n})`, {});
  run(require, module, module.exports);
  return page;
}
