import { type BrowserWindow, ipcMain } from 'electron';
import type { z } from 'zod';
import type { Subscribe } from '../backend/api/contract/api.ts';
import {
  type DesktopEvent,
  type DesktopInput,
  type DesktopMethod,
  type DesktopOutput,
  desktop,
} from '../backend/api/desktop-bridge.ts';
import type { Problem, Result } from '../core/units/result.ts';
import { CHANNELS } from './channels.ts';
import { isOwnFrame } from './security.ts';

/** What the bridge needs of the backend; the backend itself checks every input. */
export type BridgedBackend = Readonly<{
  call(method: string, input: unknown): Promise<Result<unknown>>;
  subscribe: Subscribe;
}>;

export type DesktopHandlers = {
  readonly [K in DesktopMethod]: (input: DesktopInput<K>) => Promise<Result<DesktopOutput<K>>>;
};

export type CurrentWindow = () => BrowserWindow | undefined;

/** Answers the window's calls; a caller that is not the app's own page gets a problem and nothing is looked at. */
export function bridge(backend: BridgedBackend, handlers: DesktopHandlers, current: CurrentWindow): void {
  ipcMain.handle(CHANNELS.api, ({ senderFrame }, method: unknown, input: unknown) =>
    isOwnFrame(senderFrame, current()?.webContents) ? backend.call(String(method), input) : STRANGER,
  );
  ipcMain.handle(CHANNELS.desktop, ({ senderFrame }, method: unknown, input: unknown) =>
    isOwnFrame(senderFrame, current()?.webContents) ? callDesktop(handlers, method, input) : STRANGER,
  );
  backend.subscribe(event => send(current(), CHANNELS.appEvent, event));
}

/** Tells the window's page something; without a window nobody needs to know. */
export function tell(window: BrowserWindow | undefined, event: DesktopEvent): void {
  send(window, CHANNELS.desktopEvent, event);
}

function send(window: BrowserWindow | undefined, channel: string, value: unknown): void {
  if (window !== undefined && !window.isDestroyed() && !window.webContents.isDestroyed())
    window.webContents.send(channel, value);
}

async function callDesktop(handlers: DesktopHandlers, method: unknown, input: unknown): Promise<Result<unknown>> {
  if (typeof method !== 'string' || !Object.hasOwn(desktop, method))
    return refused([{ path: 'method', message: `the app cannot do "${String(method)}"` }]);
  const name = method as DesktopMethod;
  const parsed: z.ZodSafeParseResult<unknown> = desktop[name].input.safeParse(input);
  if (!parsed.success)
    return refused(parsed.error.issues.map(({ path, message }) => ({ path: path.join('.') || 'input', message })));
  try {
    const handler = handlers[name] as (input: unknown) => Promise<Result<unknown>>;
    return await handler(parsed.data);
  } catch (error) {
    return refused([{ path: name, message: error instanceof Error ? error.message : String(error) }]);
  }
}

function refused(problems: readonly Problem[]): Result<never> {
  return { ok: false, problems };
}

const STRANGER = refused([{ path: 'sender', message: 'only the app’s own page may ask' }]);
