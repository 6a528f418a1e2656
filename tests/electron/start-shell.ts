import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { vi } from 'vitest';
import type { AppEvent } from '../../backend/api/contract/events.ts';
import type { Result } from '../../core/units/result.ts';
import type { ShellBackend } from '../../electron/run-app.ts';
import { bundlePreload } from '../../start/bundle-shell.ts';
import { makeElectron, type StandIn, type StandInOptions } from './stand-in/make-electron.ts';
import type { Page } from './stand-in/run-preload.ts';

const ROOT = resolve(import.meta.dirname, '..', '..');

export type Shell = StandIn &
  Readonly<{
    folder: string;
    backend: TestBackend;
    /** The page of the app's window: what the preload script gave it. */
    page: () => Page;
    window: () => StandIn['windows'][number];
  }>;

type TestBackend = ShellBackend & {
  calls: { method: string; input: unknown }[];
  emit: (event: AppEvent) => void;
  isClosed: boolean;
  answer: (method: string, input: unknown) => Result<unknown>;
};

/** A backend that writes down what it is asked; the real one answers in built-main.test.ts. */
function testBackend(): TestBackend {
  const listeners = new Set<(event: AppEvent) => void>();
  const backend: TestBackend = {
    calls: [],
    isClosed: false,
    answer: () => ({ ok: true, value: null }),
    call: async (method, input) => {
      backend.calls.push({ method, input });
      return backend.answer(method, input);
    },
    subscribe: listener => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    emit: event => {
      for (const listener of listeners) listener(event);
    },
    close: async () => {
      await new Promise(resolve => setImmediate(resolve)); // as closing threads takes a while
      backend.isClosed = true;
    },
  };
  return backend;
}

/** A folder of the test's own with a `dist` in it: a small page, and the real preload script, really built. */
export async function makeFolder(): Promise<string> {
  const folder = mkdtempSync(join(tmpdir(), 'roundwright-shell-'));
  mkdirSync(join(folder, 'dist', 'renderer', 'assets'), { recursive: true });
  writeFileSync(join(folder, 'dist', 'renderer', 'index.html'), '<!doctype html><title>Roundwright</title>');
  writeFileSync(join(folder, 'dist', 'renderer', 'assets', 'page.js'), 'export {};');
  await bundlePreload(ROOT, join(folder, 'dist', 'electron'));
  return folder;
}

export function removeFolder(folder: string): void {
  rmSync(folder, { recursive: true, force: true });
}

export type ShellOptions = Omit<StandInOptions, 'folder'> &
  Readonly<{ words?: readonly string[]; opened?: Result<ShellBackend> }>;

/** Starts the real shell on a stand-in of its own and waits until it has a window, or has given up. */
export async function startShell(folder: string, options: ShellOptions = {}): Promise<Shell> {
  const standIn = makeElectron({ ...options, folder });
  vi.resetModules();
  vi.doMock('electron', () => standIn.electron);
  vi.spyOn(process.stdout, 'write').mockReturnValue(true);
  const { runApp } = await import('../../electron/run-app.ts');
  const backend = testBackend();
  runApp({
    dist: join(folder, 'dist'),
    openBackend: () => options.opened ?? { ok: true, value: backend },
    words: ['electron', '.', ...(options.words ?? [])],
  });
  await new Promise(resolve => setTimeout(resolve, 0));
  await new Promise(resolve => setImmediate(resolve));
  await standIn.windows[0]?.loaded;
  const window = () => {
    const open = standIn.windows.find(({ isGone, preferences }) => !isGone && preferences.preload !== undefined);
    if (open === undefined) throw new Error('the app has no window');
    return open;
  };
  const page = () => {
    const { page } = window().webContents;
    if (page === undefined) throw new Error('the window shows no page');
    return page.roundwright as Page;
  };
  return { ...standIn, folder, backend, page, window };
}

/** What the shell said to the start script. */
export function saidLines(): string[] {
  return vi
    .mocked(process.stdout.write)
    .mock.calls.map(([text]) => String(text).trim())
    .filter(line => line.startsWith('roundwright:'));
}
