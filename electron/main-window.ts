import { app, BrowserWindow, nativeTheme, screen } from 'electron';
import { recoverWindow } from './recovery.ts';
import { APP_ORIGIN, windowPreferences } from './security.ts';
import { LEAST_HEIGHT, LEAST_WIDTH, placeWindow, readWindowState, writeWindowState } from './window-state.ts';

/** Resizing fires many times a second. */
const SAVE_AFTER_MS = 500;

export type MainWindowFiles = Readonly<{ preload: string; state: string }>;

/** Opens the app's window where it was left and keeps note of where it goes. Shown once there is something to see. */
export function openMainWindow({ preload, state: stateFile }: MainWindowFiles): BrowserWindow {
  const state = readWindowState(stateFile);
  const main = screen.getPrimaryDisplay();
  const others = screen.getAllDisplays().filter(display => display.id !== main.id);
  const window = new BrowserWindow({
    ...placeWindow(
      state,
      [main, ...others].map(display => display.workArea),
    ),
    minWidth: LEAST_WIDTH,
    minHeight: LEAST_HEIGHT,
    show: false,
    title: app.name,
    // --page of the page's own colours (renderer/look/tokens.css), so that nothing flashes before it is painted.
    backgroundColor: nativeTheme.shouldUseDarkColors ? '#0b1517' : '#eef2ef',
    webPreferences: windowPreferences(preload, !app.isPackaged),
  });
  window.once('ready-to-show', () => {
    if (state?.maximized) window.maximize();
    if (state?.fullScreen) window.setFullScreen(true);
    window.show();
  });
  keepState(window, stateFile);
  recoverWindow(window, Date.now);
  void window.loadURL(`${APP_ORIGIN}/index.html`);
  return window;
}

function keepState(window: BrowserWindow, file: string): void {
  let timer: NodeJS.Timeout | undefined;
  const save = () => {
    clearTimeout(timer);
    if (window.isDestroyed()) return;
    writeWindowState(file, {
      bounds: window.getNormalBounds(),
      maximized: window.isMaximized(),
      fullScreen: window.isFullScreen(),
    });
  };
  const saveSoon = () => {
    clearTimeout(timer);
    timer = setTimeout(save, SAVE_AFTER_MS);
  };
  window.on('resize', saveSoon);
  window.on('move', saveSoon);
  window.on('close', save);
}
