import { describe, expect, it, vi } from 'vitest';
import { menuTemplate } from '../../electron/menu.ts';
import type { MenuEntry } from './stand-in/make-electron.ts';

const COMMANDS = [
  'importCourse',
  'importPlayer',
  'importLibrary',
  'exportLibrary',
  'printSheet',
  'savePdf',
  'undo',
  'redo',
  'previousHole',
  'nextHole',
  'showSettings',
  'showShortcuts',
];

describe.each(['linux', 'win32', 'darwin'] as const)('the menu on %s', platform => {
  const run = vi.fn();
  const template = menuTemplate({ appName: 'Roundwright', platform, isPackaged: true, run }) as MenuEntry[];
  const entries = template.flatMap(({ submenu = [] }) => submenu);

  it('has every command once', () => {
    expect(entries.flatMap(({ id }) => id ?? []).sort()).toEqual([...COMMANDS].sort());
    for (const { id, click } of entries) {
      if (id === undefined) continue;
      run.mockClear();
      click?.();
      expect(run).toHaveBeenCalledExactlyOnceWith(id);
    }
  });

  it('gives no keys twice', () => {
    const keys = entries.flatMap(({ accelerator }) => accelerator ?? []);
    expect(new Set(keys).size).toBe(keys.length);
  });

  it('can quit, and offers no developer tools', () => {
    const roles = entries.map(({ role }) => role);
    expect(roles).toContain('quit');
    expect(roles).not.toContain('toggleDevTools');
  });
});
