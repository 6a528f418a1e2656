import { app, type BrowserWindow, dialog } from 'electron';

const WITHIN_MS = 60_000;
const MOST_RELOADS = 3;

/** Whether a page that died is opened again without asking: not when it keeps dying. */
function reloadsByItself(deaths_ms: readonly number[], now_ms: number): boolean {
  return deaths_ms.filter(at_ms => now_ms - at_ms < WITHIN_MS).length <= MOST_RELOADS;
}

/** Brings the window's page back when it dies or hangs. The library lives in the main process and is not touched by it. */
export function recoverWindow(window: BrowserWindow, now_ms: () => number): void {
  const deaths_ms: number[] = [];
  const { webContents } = window;
  webContents.on('render-process-gone', async (_event, { reason }) => {
    if (reason === 'clean-exit') return;
    const at_ms = now_ms();
    deaths_ms.push(at_ms);
    if (
      reloadsByItself(deaths_ms, at_ms) ||
      (await asks(window, `The page stopped ${deaths_ms.length} times (${reason}).`))
    )
      openAgain(window);
    else app.quit();
  });

  let asking = false;
  window.on('unresponsive', async () => {
    if (asking) return;
    asking = true;
    const { response } = await dialog.showMessageBox(window, {
      type: 'warning',
      message: 'The window does not answer',
      detail: 'It may be busy. Opened again, it starts from what is saved; nothing confirmed is lost.',
      buttons: ['Wait', 'Open it again'],
      defaultId: 0,
      cancelId: 0,
    });
    asking = false;
    if (response === 1 && !window.isDestroyed()) {
      // Its death as "killed" opens it again above.
      webContents.forcefullyCrashRenderer();
    }
  });
}

async function asks(window: BrowserWindow, what: string): Promise<boolean> {
  const { response } = await dialog.showMessageBox(window, {
    type: 'error',
    message: 'The window stopped working',
    detail: `${what} Courses, players, plans and notes are kept.`,
    buttons: ['Open it again', 'Quit'],
    defaultId: 0,
    cancelId: 1,
  });
  return response === 0;
}

function openAgain(window: BrowserWindow): void {
  if (!window.isDestroyed()) window.webContents.reload();
}
