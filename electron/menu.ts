import type { MenuItemConstructorOptions } from 'electron';
import type { MenuCommand } from '../backend/api/desktop-bridge.ts';

export type MenuParts = Readonly<{
  appName: string;
  platform: NodeJS.Platform;
  isPackaged: boolean;
  run: (command: MenuCommand) => void;
}>;

/** The native menu. Entries of our own are carried out by the page; the rest are the system's. */
export function menuTemplate({ appName, platform, isPackaged, run }: MenuParts): MenuItemConstructorOptions[] {
  const isMac = platform === 'darwin';
  const entry = (label: string, command: MenuCommand, accelerator?: string): MenuItemConstructorOptions => ({
    id: command,
    label,
    click: () => run(command),
    ...(accelerator === undefined ? {} : { accelerator }),
  });
  // In a text field the same keys belong to the text, so the page, which knows where the focus is, gets them first.
  const byPage = (label: string, command: MenuCommand, accelerator: string): MenuItemConstructorOptions => ({
    ...entry(label, command, accelerator),
    registerAccelerator: false,
  });
  const settings = entry('Settings…', 'showSettings', 'CmdOrCtrl+,');

  const appMenu: MenuItemConstructorOptions = {
    label: appName,
    submenu: [
      { role: 'about' },
      { type: 'separator' },
      settings,
      { type: 'separator' },
      { role: 'services' },
      { type: 'separator' },
      { role: 'hide' },
      { role: 'hideOthers' },
      { role: 'unhide' },
      { type: 'separator' },
      { role: 'quit' },
    ],
  };
  const file: MenuItemConstructorOptions = {
    label: '&File',
    submenu: [
      entry('Import Course…', 'importCourse', 'CmdOrCtrl+O'),
      entry('Import Player…', 'importPlayer', 'CmdOrCtrl+Shift+O'),
      { type: 'separator' },
      entry('Save Everything As…', 'exportLibrary', 'CmdOrCtrl+Shift+S'),
      entry('Load Everything From…', 'importLibrary'),
      { type: 'separator' },
      entry('Print Sheet…', 'printSheet', 'CmdOrCtrl+P'),
      entry('Save Sheet as PDF…', 'savePdf', 'CmdOrCtrl+Shift+P'),
      { type: 'separator' },
      isMac ? { role: 'close' } : { role: 'quit' },
    ],
  };
  const edit: MenuItemConstructorOptions = {
    label: '&Edit',
    submenu: [
      byPage('Undo', 'undo', 'CmdOrCtrl+Z'),
      byPage('Redo', 'redo', isMac ? 'Cmd+Shift+Z' : 'Ctrl+Y'),
      { type: 'separator' },
      { role: 'cut' },
      { role: 'copy' },
      { role: 'paste' },
      { role: 'selectAll' },
      ...(isMac ? [] : [{ type: 'separator' } as const, settings]),
    ],
  };
  const view: MenuItemConstructorOptions = {
    label: '&View',
    submenu: [
      byPage('Previous Hole', 'previousHole', 'Alt+PageUp'),
      byPage('Next Hole', 'nextHole', 'Alt+PageDown'),
      { type: 'separator' },
      { role: 'resetZoom' },
      { role: 'zoomIn' },
      { role: 'zoomOut' },
      { type: 'separator' },
      { role: 'togglefullscreen' },
      { role: 'reload' },
      ...(isPackaged ? [] : [{ role: 'toggleDevTools' } as const]),
    ],
  };
  const help: MenuItemConstructorOptions = {
    role: 'help',
    submenu: [
      entry('Keyboard Shortcuts', 'showShortcuts', 'CmdOrCtrl+/'),
      ...(isMac ? [] : [{ type: 'separator' } as const, { role: 'about' } as const]),
    ],
  };
  return [...(isMac ? [appMenu] : []), file, edit, view, { role: 'windowMenu' }, help];
}
