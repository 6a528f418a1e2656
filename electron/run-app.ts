import { join } from 'node:path';
import { app, type BrowserWindow, dialog, Menu, protocol, session } from 'electron';
import type { Result } from '../core/units/result.ts';
import { registerScheme, serveApp } from './app-protocol.ts';
import { type BridgedBackend, bridge, tell } from './bridge.ts';
import { desktopHandlers } from './desktop-handlers.ts';
import { openMainWindow } from './main-window.ts';
import { menuTemplate } from './menu.ts';
import { filesIn, type OpenedFiles, readFiles } from './opened-files.ts';
import { makePagePrinter } from './page-printer.ts';
import { APP_ORIGIN, lockContents, lockSession, SCHEME } from './security.ts';
import { ALREADY_OPEN, SHOWN, STOPPED } from './spoken-lines.ts';

export type AppParts = Readonly<{
  /** Folder with the built `renderer/` and `electron/preload.cjs`. */
  dist: string;
  /** Opens the library; called once, when the app is ready. Its problems are shown and end the app. */
  openBackend: () => Result<ShellBackend>;
  /** The command line. */
  words: readonly string[];
}>;

/** What the shell needs of the backend. */
export type ShellBackend = BridgedBackend & Readonly<{ close: () => Promise<void> }>;

/**
 * The desktop app from start to end. Synchronous up to its first event, because schemes and the sandbox must be settled
 * before Electron is ready.
 */
export function runApp({ dist, openBackend, words }: AppParts): void {
  if (!app.requestSingleInstanceLock()) {
    say(ALREADY_OPEN);
    app.quit();
    return;
  }
  registerScheme(protocol);
  lockContents(app);

  let window: BrowserWindow | undefined;
  let backend: ShellBackend | undefined;
  let waiting: string[] = filesIn(words.slice(1), process.cwd());

  const openWindow = () => {
    window = openMainWindow({ preload: join(dist, 'electron', 'preload.cjs'), state: statePath() });
    window.once('show', () => say(SHOWN));
    window.on('closed', () => {
      window = undefined;
    });
  };
  const openFromOutside = (paths: readonly string[]) => {
    waiting = [...waiting, ...paths];
    if (paths.length > 0) tell(window, { kind: 'filesWaiting' });
  };
  const takeOpened = (): OpenedFiles => {
    const taken = waiting;
    waiting = [];
    return readFiles(taken);
  };

  app.on('second-instance', (_event, theirWords, folder) => {
    if (window === undefined) {
      if (backend !== undefined) openWindow();
    } else {
      if (window.isMinimized()) window.restore();
      window.show();
      window.focus();
    }
    openFromOutside(filesIn(theirWords.slice(1), folder));
  });
  app.on('open-file', (event, path) => {
    event.preventDefault();
    openFromOutside([path]);
  });
  app.on('activate', () => {
    if (window === undefined && backend !== undefined) openWindow();
  });
  app.on('window-all-closed', () => {
    if (process.platform !== 'darwin') app.quit();
  });
  closeBeforeQuit(async () => {
    const open = backend;
    backend = undefined;
    await open?.close();
  });

  const start = () => {
    const opened = openBackend();
    if (!opened.ok) {
      stop(new Error(opened.problems.map(({ message }) => message).join('\n')));
      return;
    }
    backend = opened.value;
    lockSession(session.defaultSession, APP_ORIGIN);
    session.defaultSession.protocol.handle(SCHEME, serveApp(join(dist, 'renderer'), backend));
    const current = () => window;
    const printer = makePagePrinter();
    bridge(backend, desktopHandlers({ current, printer, folder: app.getPath('documents'), takeOpened }), current);
    const template = menuTemplate({
      appName: app.name,
      platform: process.platform,
      isPackaged: app.isPackaged,
      run: command => tell(window, { kind: 'command', command }),
    });
    Menu.setApplicationMenu(Menu.buildFromTemplate(template));
    openWindow();
  };
  app.whenReady().then(start).catch(stop);
}

function statePath(): string {
  return join(app.getPath('userData'), 'window.json');
}

/** Quitting waits until the library is closed. */
function closeBeforeQuit(close: () => Promise<void>): void {
  let isClosed = false;
  app.on('will-quit', event => {
    if (isClosed) return;
    event.preventDefault();
    close()
      .catch(error => dialog.showErrorBox('The library did not close cleanly', inWords(error)))
      .finally(() => {
        isClosed = true;
        app.quit();
      });
  });
}

/** Ends an app that cannot go on. Whatever the library confirmed is on the disk already. */
export function stop(error: unknown): void {
  say(`${STOPPED}${inWords(error).replaceAll('\n', '; ')}`);
  dialog.showErrorBox('Roundwright cannot go on', inWords(error));
  app.exit(1);
}

function inWords(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}

/** To the start script, a line each (spoken-lines.ts). */
function say(line: string): void {
  process.stdout.write(`${line}\n`);
}
