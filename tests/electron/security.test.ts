import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { afterAll, afterEach, beforeAll, describe, expect, it, vi } from 'vitest';
import { makeFolder, removeFolder, type Shell, startShell } from './start-shell.ts';

const ROOT = resolve(import.meta.dirname, '..', '..');

let folder: string;
beforeAll(async () => {
  folder = await makeFolder();
});
afterAll(() => removeFolder(folder));
afterEach(() => vi.restoreAllMocks());

// The items of Electron's published security checklist (electronjs.org/docs/latest/tutorial/security).
describe('Electron’s security checklist', () => {
  let shell: Shell;
  beforeAll(async () => {
    shell = await startShell(folder);
  });

  it.each([
    'https://example.com/tile.png',
    'http://127.0.0.1:80/',
    'file:///etc/passwd',
    'roundwright://page/x',
    'roundwright://user@app/index.html',
    'roundwright://app.example/index.html',
  ])('1: nothing is loaded from %s', async url => {
    await expect(shell.defaultSession.fetch(url)).rejects.toThrow('ERR_BLOCKED_BY_CLIENT');
  });

  it('2, 3, 4, 6, 8, 9, 10, 12: each window is locked by its preferences', () => {
    expect(shell.window().preferences).toEqual({
      preload: join(folder, 'dist', 'electron', 'preload.cjs'),
      devTools: true,
      sandbox: true,
      contextIsolation: true,
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      nodeIntegrationInSubFrames: false,
      webSecurity: true,
      allowRunningInsecureContent: false,
      experimentalFeatures: false,
      webviewTag: false,
      plugins: false,
      navigateOnDragDrop: false,
      safeDialogs: true,
      spellcheck: false,
    });
  });

  it('gives a packaged app no developer tools', async () => {
    const packaged = await startShell(folder, { isPackaged: true });
    expect(packaged.window().preferences.devTools).toBe(false);
    expect(packaged.menuEntries().some(({ role }) => role === 'toggleDevTools')).toBe(false);
  });

  it('4: the sandbox is on for whatever else may come', () => expect(shell.seen.isSandboxed).toBe(true));

  it.each(['geolocation', 'notifications', 'media', 'clipboard-read', 'openExternal', 'fullscreen'])(
    '5: the permission %s is refused, asked or checked',
    permission => {
      const answer = vi.fn();
      shell.defaultSession.permissionRequest?.({}, permission, answer);
      expect(answer).toHaveBeenCalledExactlyOnceWith(false);
      expect(shell.defaultSession.permissionCheck?.({}, permission, 'roundwright://app')).toBe(false);
      expect(shell.defaultSession.devicePermission?.({ deviceType: 'usb' })).toBe(false);
    },
  );

  it('7: the page comes with a policy that allows no script but the app’s own files', async () => {
    const response = await shell.defaultSession.fetch('roundwright://app/index.html');
    const policy = response.headers.get('Content-Security-Policy') ?? '';
    expect(policy).toContain("default-src 'none'");
    expect(policy).toContain("script-src 'self';");
    expect(policy).not.toMatch(/unsafe|\*|https?:/);
  });

  it.each(['will-navigate', 'will-frame-navigate', 'will-redirect', 'will-attach-webview'])(
    '11, 12, 13: %s is refused',
    name => {
      const preventDefault = vi.fn();
      shell.window().webContents.emit(name, { preventDefault, url: 'https://example.com/' });
      expect(preventDefault).toHaveBeenCalledOnce();
    },
  );

  it.each([
    { url: 'roundwright://app/sheet?planId=x', isMainFrame: false, isRefused: false },
    { url: 'roundwright://app/sheet?planId=x', isMainFrame: true, isRefused: true },
    { url: 'roundwright://app/index.html', isMainFrame: false, isRefused: true },
    { url: 'roundwright://app.example/sheet?planId=x', isMainFrame: false, isRefused: true },
    { url: 'file:///course.geojson', isMainFrame: true, isRefused: true },
  ])('13: a frame may show the sheet and nothing else: $url, main frame $isMainFrame', ({ isRefused, ...details }) => {
    const preventDefault = vi.fn();
    shell.window().webContents.emit('will-frame-navigate', { preventDefault, ...details });
    expect(preventDefault).toHaveBeenCalledTimes(isRefused ? 1 : 0);
  });

  it('13: a download does not start', () => {
    const preventDefault = vi.fn();
    shell.defaultSession.emit('will-download', { preventDefault });
    expect(preventDefault).toHaveBeenCalledOnce();
  });

  it('14: no new window opens', () => {
    const { windowOpenHandler } = shell.window().webContents;
    expect(windowOpenHandler?.({ url: 'roundwright://app/index.html' })).toEqual({ action: 'deny' });
  });

  it('15: nothing is handed to the system’s programs', () => {
    for (const name of readdirSync(join(ROOT, 'electron'))) {
      const source = readFileSync(join(ROOT, 'electron', name), 'utf8');
      expect(source, name).not.toMatch(/import \{[^}]*\bshell\b[^}]*\} from 'electron'/);
      expect(source, name).not.toMatch(/openExternal\(/);
    }
  });

  it('16: Electron’s version is pinned exactly', () => {
    const { devDependencies } = JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8'));
    expect(devDependencies.electron).toMatch(/^\d+\.\d+\.\d+$/);
  });

  describe('17: only the app’s own page may call', () => {
    const channels = [
      { channel: 'roundwright:api', args: ['removeCourse', { courseId: 'c' }] },
      { channel: 'roundwright:desktop', args: ['openFiles', { kind: 'course' }] },
    ];

    it.each(channels)('$channel: not a frame in the page', async ({ channel, args }) => {
      const frame = { url: 'roundwright://app/sheet?planId=x' };
      await expectStranger(await shell.window().webContents.invoke(channel, args, frame));
    });

    it.each(channels)('$channel: not a frame that is gone', async ({ channel, args }) => {
      await expectStranger(await shell.window().webContents.invoke(channel, args, null));
    });

    it.each(channels)('$channel: not another page in the window', async ({ channel, args }) => {
      const { webContents } = shell.window();
      const own = webContents.mainFrame.url;
      for (const url of [
        'https://example.com/',
        'roundwright://page/1',
        'file:///index.html',
        '',
        'roundwright://apps/',
      ]) {
        webContents.mainFrame.url = url;
        await expectStranger(await webContents.invoke(channel, args));
      }
      webContents.mainFrame.url = own;
    });

    function expectStranger(answer: unknown) {
      expect(answer).toMatchObject({ ok: false, problems: [{ path: 'sender' }] });
      expect(shell.backend.calls).toEqual([]);
      expect(shell.seen.dialogs).toEqual([]);
    }
  });

  it('18: the scheme is registered as a secure standard one, without rights beyond that', () => {
    expect(shell.seen.schemes).toEqual([
      {
        scheme: 'roundwright',
        privileges: { standard: true, secure: true, supportFetchAPI: true, codeCache: true },
      },
    ]);
  });

  it('19: the fuses are named in the packaging configuration', () => {
    const { electronFuses } = JSON.parse(readFileSync(join(ROOT, 'electron-builder.json'), 'utf8'));
    expect(electronFuses).toEqual({
      runAsNode: false,
      enableCookieEncryption: true,
      enableNodeOptionsEnvironmentVariable: false,
      enableNodeCliInspectArguments: false,
      enableEmbeddedAsarIntegrityValidation: true,
      onlyLoadAppFromAsar: true,
      loadBrowserProcessSpecificV8Snapshot: false,
      grantFileProtocolExtraPrivileges: false,
    });
  });

  it('20: the page gets no channel and no Electron object', () => {
    const { page } = shell.window().webContents;
    expect(Object.keys(page ?? {})).toEqual(['roundwright']);
    const bundle = readFileSync(join(folder, 'dist', 'electron', 'preload.cjs'), 'utf8');
    expect(bundle.match(/require\([^)]*\)/g)).toEqual(['require("electron")']);
  });
});
