import { EventEmitter } from 'node:events';
import { join } from 'node:path';
import { makeDialogs } from './dialogs.ts';
import { type Page, runPreload } from './run-preload.ts';
import { StandInSession } from './session.ts';

/*
 * A stand-in for the module "electron", as far as the shell uses it: real events, real loading through the registered
 * protocol, the real preload script in a realm of its own, a structured clone on every way between processes. What Electron
 * forbids throws here too (a scheme registered after ready, a channel handled twice).
 */

type Bounds = { x: number; y: number; width: number; height: number };
type Handler = (event: unknown, ...args: unknown[]) => unknown;

export type StandInOptions = Readonly<{
  /** Folder for every path the app asks for. */
  folder: string;
  isOnlyInstance?: boolean;
  isPackaged?: boolean;
  isDark?: boolean;
  displays?: readonly Bounds[];
}>;

export function makeElectron(options: StandInOptions) {
  const { folder, isOnlyInstance = true, isPackaged = false, isDark = false } = options;
  const displays = options.displays ?? [{ x: 0, y: 0, width: 1920, height: 1040 }];
  let isReady = false;
  const handlers = new Map<string, Handler>();
  const windows: StandInWindow[] = [];
  const dialogs = makeDialogs();
  const seen = {
    dialogs: dialogs.asked,
    errors: dialogs.errors,
    schemes: [] as unknown[],
    exits: [] as number[],
    quits: 0,
    isSandboxed: false,
    printed: [] as { url: string; html: string; options: unknown; printer: (ok: boolean, reason: string) => void }[],
    pdfs: [] as { url: string; html: string; options: unknown }[],
  };

  class StandInContents extends EventEmitter {
    readonly mainFrame = { url: '' };
    page: Page | undefined;
    html = '';
    /** What the page is told comes in through here. */
    ipc = new EventEmitter();
    windowOpenHandler: ((details: { url: string }) => { action: string }) | undefined;
    isGone = false;
    readonly window: StandInWindow;
    constructor(window: StandInWindow) {
      super();
      this.window = window;
    }
    isDestroyed() {
      return this.isGone;
    }
    setWindowOpenHandler(handler: StandInContents['windowOpenHandler']) {
      this.windowOpenHandler = handler;
    }
    send(channel: string, value: unknown) {
      this.ipc.emit(channel, { sender: this }, structuredClone(value));
    }
    reload() {
      void this.window.loadURL(this.mainFrame.url);
    }
    forcefullyCrashRenderer() {
      this.die('killed');
    }
    die(reason: string) {
      this.page = undefined;
      this.ipc = new EventEmitter();
      this.emit('render-process-gone', {}, { reason, exitCode: 1 });
    }
    print(printOptions: unknown, callback: (ok: boolean, reason: string) => void) {
      seen.printed.push({ url: this.mainFrame.url, html: this.html, options: printOptions, printer: callback });
    }
    async printToPDF(pdfOptions: unknown) {
      seen.pdfs.push({ url: this.mainFrame.url, html: this.html, options: pdfOptions });
      return Buffer.from(`%PDF-stand-in ${this.html}`);
    }
    /** A call from a frame of this window; `frame` is the main frame unless another one is given. */
    async invoke(channel: string, args: unknown[], frame: unknown = this.mainFrame): Promise<unknown> {
      const handler = handlers.get(channel);
      if (handler === undefined) throw new Error(`No handler registered for '${channel}'`);
      return structuredClone(await handler({ senderFrame: frame }, ...structuredClone(args)));
    }
  }

  class StandInWindow extends EventEmitter {
    readonly options: Record<string, unknown>;
    readonly webContents: StandInContents;
    bounds: Bounds;
    flags = { maximized: false, fullScreen: false, minimized: false, visible: false, focused: false };
    isGone = false;
    loaded: Promise<void> = Promise.resolve();
    constructor(windowOptions: Record<string, unknown>) {
      super();
      this.options = windowOptions;
      const { x = 0, y = 0, width = 800, height = 600 } = windowOptions as Partial<Bounds>;
      this.bounds = { x, y, width, height };
      this.webContents = new StandInContents(this);
      windows.push(this);
      app.emit('web-contents-created', {}, this.webContents);
    }
    get preferences() {
      return this.options.webPreferences as Record<string, unknown>;
    }
    get session() {
      return (this.preferences.session as StandInSession | undefined) ?? defaultSession;
    }
    loadURL(url: string): Promise<void> {
      this.loaded = this.load(url);
      return this.loaded;
    }
    private async load(url: string) {
      const response = await this.session.fetch(url);
      this.webContents.mainFrame.url = url;
      this.webContents.html = await response.text();
      if (typeof this.preferences.preload === 'string') {
        const { webContents } = this;
        webContents.page = runPreload(
          this.preferences.preload,
          (channel, args) => webContents.invoke(channel, args),
          webContents.ipc,
        );
      }
      this.emit('ready-to-show');
    }
    show() {
      this.flags.visible = true;
      this.emit('show');
    }
    focus() {
      this.flags.focused = true;
    }
    maximize() {
      this.flags.maximized = true;
    }
    restore() {
      this.flags.minimized = false;
    }
    setFullScreen(on: boolean) {
      this.flags.fullScreen = on;
    }
    isMaximized() {
      return this.flags.maximized;
    }
    isFullScreen() {
      return this.flags.fullScreen;
    }
    isMinimized() {
      return this.flags.minimized;
    }
    getNormalBounds() {
      return this.bounds;
    }
    isDestroyed() {
      return this.isGone;
    }
    close() {
      this.emit('close', { preventDefault: () => undefined });
      this.destroy();
      if (windows.every(window => window.isGone)) app.emit('window-all-closed');
    }
    destroy() {
      if (this.isGone) return;
      this.isGone = true;
      this.webContents.isGone = true;
      this.emit('closed');
    }
  }

  class StandInApp extends EventEmitter {
    readonly name = 'roundwright';
    readonly isPackaged = isPackaged;
    readonly paths = new Map<string, string>();
    whenReady() {
      // As in Electron, not before the program's own first turn is over.
      return new Promise<void>(resolve =>
        setImmediate(() => {
          isReady = true;
          resolve();
        }),
      );
    }
    requestSingleInstanceLock() {
      return isOnlyInstance;
    }
    enableSandbox() {
      if (isReady) throw new Error('app.enableSandbox() can only be called before app is ready');
      seen.isSandboxed = true;
    }
    getPath(name: string) {
      return this.paths.get(name) ?? join(folder, name === 'userData' ? '' : name);
    }
    setPath(name: string, path: string) {
      this.paths.set(name, path);
    }
    quit() {
      seen.quits++;
      for (const window of windows) {
        if (window.isGone) continue;
        window.emit('close', { preventDefault: () => undefined });
        window.destroy();
      }
      let isPrevented = false;
      this.emit('will-quit', {
        preventDefault: () => {
          isPrevented = true;
        },
      });
      if (!isPrevented) this.emit('quit');
    }
    exit(code: number) {
      seen.exits.push(code);
    }
  }

  const app = new StandInApp();
  const defaultSession = new StandInSession();
  const partitions = new Map<string, StandInSession>();
  let menu: MenuEntry[] = [];

  const electron = {
    app,
    BrowserWindow: StandInWindow,
    protocol: {
      registerSchemesAsPrivileged: (schemes: unknown[]) => {
        if (isReady) throw new Error('protocol.registerSchemesAsPrivileged should be called before app is ready');
        seen.schemes.push(...schemes);
      },
    },
    session: {
      defaultSession,
      fromPartition: (name: string) => {
        const session = partitions.get(name) ?? new StandInSession();
        partitions.set(name, session);
        return session;
      },
    },
    ipcMain: {
      handle: (channel: string, handler: Handler) => {
        if (handlers.has(channel)) throw new Error(`Attempted to register a second handler for '${channel}'`);
        handlers.set(channel, handler);
      },
    },
    dialog: dialogs.dialog,
    Menu: {
      buildFromTemplate: (template: MenuEntry[]) => template,
      setApplicationMenu: (template: MenuEntry[]) => {
        menu = template;
      },
    },
    nativeTheme: { shouldUseDarkColors: isDark, themeSource: 'system' },
    screen: {
      getPrimaryDisplay: () => ({ id: 0, workArea: displays[0] }),
      getAllDisplays: () => displays.map((workArea, id) => ({ id, workArea })),
    },
  };

  return {
    electron,
    app,
    windows,
    handlers,
    answers: dialogs.answers,
    seen,
    defaultSession,
    partitions,
    menuEntries: () => menu.flatMap(top => top.submenu ?? []),
  };
}

export type MenuEntry = Readonly<{
  id?: string;
  label?: string;
  role?: string;
  accelerator?: string;
  click?: () => void;
  submenu?: MenuEntry[];
}>;
export type StandIn = ReturnType<typeof makeElectron>;
