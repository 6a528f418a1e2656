import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, describe, expect, it, vi } from 'vitest';
import { METHODS } from '../../backend/api/contract/api.ts';
import { desktop } from '../../backend/api/desktop-bridge.ts';
import { ALREADY_OPEN, SHOWN, STOPPED } from '../../electron/spoken-lines.ts';
import { makeFolder, removeFolder, saidLines, startShell } from './start-shell.ts';

let folder: string;
beforeAll(async () => {
  folder = await makeFolder();
});
afterAll(() => removeFolder(folder));
afterEach(() => vi.restoreAllMocks());

describe('the window', () => {
  it('opens on the app’s own page and says so', async () => {
    const { window } = await startShell(folder);
    expect(window().webContents.mainFrame.url).toBe('roundwright://app/index.html');
    expect(window().webContents.html).toContain('<title>Roundwright</title>');
    expect(window().flags.visible).toBe(true);
    expect(saidLines()).toEqual([SHOWN]);
  });

  it('gives the page every method of the contract and of the shell, and nothing else', async () => {
    const { page } = await startShell(folder);
    expect(Object.keys(page()).sort()).toEqual([...METHODS, 'subscribe', 'desktop', 'subscribeDesktop'].sort());
    expect(Object.keys(page().desktop).sort()).toEqual(Object.keys(desktop).sort());
  });

  it('comes up in the colour of its page, light or dark', async () => {
    const tokens = readFileSync(join(import.meta.dirname, '../../renderer/look/tokens.css'), 'utf8');
    const [light, dark] = [...tokens.matchAll(/--page: (#\w+);/g)].map(([, colour]) => colour);
    expect((await startShell(folder)).window().options.backgroundColor).toBe(light);
    expect((await startShell(folder, { isDark: true })).window().options.backgroundColor).toBe(dark);
  });

  it('opens where it was left', async () => {
    const first = await startShell(folder);
    first.window().bounds = { x: 300, y: 120, width: 1000, height: 700 };
    first.window().flags.maximized = true;
    first.window().close();
    const second = await startShell(folder);
    expect(second.window().bounds).toEqual({ x: 300, y: 120, width: 1000, height: 700 });
    expect(second.window().flags.maximized).toBe(true);
  });

  it('keeps a program that is started again to one window, brought to the front', async () => {
    const first = await startShell(folder);
    first.window().flags.minimized = true;
    first.app.emit('second-instance', {}, ['electron', '.'], folder);
    expect(first.windows).toHaveLength(1);
    expect(first.window().flags).toMatchObject({ minimized: false, focused: true });

    const second = await startShell(folder, { isOnlyInstance: false });
    expect(second.windows).toHaveLength(0);
    expect(second.seen.quits).toBe(1);
    expect(saidLines()).toContain(ALREADY_OPEN);
  });

  it('closes the library before it quits', async () => {
    const { app, backend } = await startShell(folder);
    const quit = new Promise(resolve => app.once('quit', resolve));
    app.quit();
    await quit;
    expect(backend.isClosed).toBe(true);
  });

  it('says why when the library cannot be opened, and ends', async () => {
    const problem = { path: 'library', message: 'library.sqlite is open in another window of the app' };
    const { seen, windows } = await startShell(folder, { opened: { ok: false, problems: [problem] } });
    expect(windows).toHaveLength(0);
    expect(seen.errors).toEqual([{ title: 'Roundwright cannot go on', content: problem.message }]);
    expect(seen.exits).toEqual([1]);
    expect(saidLines()).toEqual([`${STOPPED}${problem.message}`.trim()]);
  });
});

describe('calls and events', () => {
  it('hands a call to the backend and its answer to the page', async () => {
    const { page, backend } = await startShell(folder);
    backend.answer = () => ({ ok: true, value: [{ courseId: 'c', name: 'Old Orchard' }] });
    const answer = await page().listCourses({});
    expect(answer).toEqual({ ok: true, value: [{ courseId: 'c', name: 'Old Orchard' }] });
    expect(backend.calls).toEqual([{ method: 'listCourses', input: {} }]);
  });

  it('hands what the backend says to every listener of the page until it stops listening', async () => {
    const { page, backend } = await startShell(folder);
    const heard: unknown[] = [];
    const stop = page().subscribe((event: unknown) => heard.push(event));
    const event = { kind: 'libraryChanged', areas: ['courses'] } as const;
    backend.emit({ ...event, areas: ['courses'] });
    stop();
    backend.emit({ ...event, areas: ['players'] });
    expect(heard).toEqual([event]); // the value alone: no IPC event with its sender
  });

  it('answers a wrong input of a shell method with its problems', async () => {
    const { page } = await startShell(folder);
    expect(await page().desktop.setTheme({ theme: 'sepia' })).toMatchObject({
      ok: false,
      problems: [{ path: 'theme' }],
    });
    expect(await page().desktop.openFiles({})).toMatchObject({ ok: false, problems: [{ path: 'kind' }] });
  });

  it('carries out nothing that is not a method', async () => {
    const { window, seen } = await startShell(folder);
    for (const method of ['toString', '__proto__', 'constructor', 7, null]) {
      const answer = await window().webContents.invoke('roundwright:desktop', [method, {}]);
      expect(answer).toMatchObject({ ok: false, problems: [{ path: 'method' }] });
    }
    expect(seen.dialogs).toEqual([]);
  });

  it('sends menu commands to the page', async () => {
    const { page, menuEntries } = await startShell(folder);
    const heard: unknown[] = [];
    page().subscribeDesktop((event: unknown) => heard.push(event));
    menuEntries()
      .find(({ id }) => id === 'nextHole')
      ?.click?.();
    expect(heard).toEqual([{ kind: 'command', command: 'nextHole' }]);
  });

  it('lets the frame follow the theme', async () => {
    const { page, electron } = await startShell(folder);
    await page().desktop.setTheme({ theme: 'dark' });
    expect(electron.nativeTheme.themeSource).toBe('dark');
  });
});

describe('files', () => {
  it('opens what the player chooses and names what it cannot read', async () => {
    const { page, answers, seen } = await startShell(folder);
    const [good, missing] = [join(folder, 'orchard.geojson'), join(folder, 'gone.geojson')];
    writeFileSync(good, '{"type":"FeatureCollection","features":[]}');
    answers.open.push([good, missing]);
    expect(await page().desktop.openFiles({ kind: 'course' })).toEqual({
      ok: true,
      value: {
        files: [{ fileName: 'orchard.geojson', text: '{"type":"FeatureCollection","features":[]}' }],
        problems: [{ path: 'gone.geojson', message: 'there is no such file: check the name and the folder' }],
      },
    });
    expect(seen.dialogs[0]?.options).toMatchObject({ properties: ['openFile', 'multiSelections'] });
  });

  it('gives no files when the dialog is closed', async () => {
    const { page } = await startShell(folder);
    expect(await page().desktop.openFiles({ kind: 'library' })).toEqual({
      ok: true,
      value: { files: [], problems: [] },
    });
  });

  it('saves where the player says, whole, under a name without a place', async () => {
    const { page, answers, seen } = await startShell(folder);
    const path = join(folder, 'saved.geojson');
    writeFileSync(path, 'what was there before, longer than what comes');
    answers.save.push(path);
    expect(await page().desktop.saveFile({ fileName: '../../etc/orchard.geojson', text: '{}' })).toEqual({
      ok: true,
      value: { saved: true },
    });
    expect(readFileSync(path, 'utf8')).toBe('{}');
    expect(readdirSync(folder).filter(name => name.endsWith('.part'))).toEqual([]);
    expect(seen.dialogs[0]?.options.defaultPath).toBe(join(folder, 'documents', 'orchard.geojson'));
  });

  it('says why a file cannot be saved and leaves nothing behind', async () => {
    const { page, answers } = await startShell(folder);
    answers.save.push(join(folder, 'no-such-folder', 'orchard.geojson'));
    expect(await page().desktop.saveFile({ fileName: 'orchard.geojson', text: '{}' })).toMatchObject({
      ok: false,
      problems: [{ path: 'file', message: expect.stringContaining('its folder is not there') }],
    });
    answers.save.push(undefined);
    expect(await page().desktop.saveFile({ fileName: 'a.json', text: '{}' })).toEqual({
      ok: true,
      value: { saved: false },
    });
  });

  it('takes files from the command line, a second start and the system, once', async () => {
    const names = ['first.geojson', 'second.json', 'third.geojson'].map(name => join(folder, name));
    for (const name of names) writeFileSync(name, '{}');
    const { page, app } = await startShell(folder, { words: ['--flag', names[0]!, 'no-course.txt'] });
    let waiting = 0;
    page().subscribeDesktop(({ kind }: { kind: string }) => {
      if (kind === 'filesWaiting') waiting++;
    });
    app.emit('second-instance', {}, ['electron', '.', 'second.json'], folder);
    app.emit('open-file', { preventDefault: () => undefined }, names[2]);
    expect(waiting).toBe(2);
    const { value } = await page().desktop.takeOpenedFiles({});
    expect(value.files.map(({ fileName }: { fileName: string }) => fileName)).toEqual([
      'first.geojson',
      'second.json',
      'third.geojson',
    ]);
    expect((await page().desktop.takeOpenedFiles({})).value.files).toEqual([]);
  });
});

describe('printing', () => {
  const html = '<!doctype html><title>Sheet</title><p>Hole 1</p>';

  it('prints from a window without script, preload or network, and closes it', async () => {
    const { page, seen, windows } = await startShell(folder);
    const answer = page().desktop.printPage({ title: 'Sheet', html });
    await vi.waitUntil(() => seen.printed.length === 1);
    const hidden = windows[1]!;
    expect(hidden.options.show).toBe(false);
    expect(hidden.preferences).toMatchObject({ javascript: false, sandbox: true, contextIsolation: true });
    expect(hidden.preferences.preload).toBeUndefined();
    expect(seen.printed[0]?.html).toBe(html);
    seen.printed[0]?.printer(true, '');
    expect(await answer).toEqual({ ok: true, value: { printed: true } });
    expect(hidden.isGone).toBe(true);
    await expect(hidden.session.fetch('roundwright://app/index.html')).rejects.toThrow('ERR_BLOCKED');
    expect((await hidden.session.fetch(seen.printed[0]!.url)).status).toBe(404);
  });

  it.each([
    { reason: 'Print job canceled', want: { ok: true, value: { printed: false } } },
    { reason: 'Invalid printer settings', want: { ok: false } },
  ])('tells a closed dialog from a failure: $reason', async ({ reason, want }) => {
    const { page, seen } = await startShell(folder);
    const answer = page().desktop.printPage({ title: 'Sheet', html });
    await vi.waitUntil(() => seen.printed.length === 1);
    seen.printed[0]?.printer(false, reason);
    expect(await answer).toMatchObject(want);
  });

  it('saves a PDF in the size the page names', async () => {
    const { page, answers, seen } = await startShell(folder);
    const path = join(folder, 'sheet.pdf');
    answers.save.push(path);
    expect(await page().desktop.savePdf({ fileName: 'sheet.pdf', html })).toEqual({ ok: true, value: { saved: true } });
    expect(readFileSync(path, 'utf8')).toContain('%PDF');
    expect(seen.pdfs[0]?.options).toMatchObject({ preferCSSPageSize: true });
  });

  it('makes no PDF when the dialog is closed', async () => {
    const { page, seen } = await startShell(folder);
    expect(await page().desktop.savePdf({ fileName: 'closed.pdf', html })).toEqual({
      ok: true,
      value: { saved: false },
    });
    expect(seen.pdfs).toEqual([]);
    expect(existsSync(join(folder, 'closed.pdf'))).toBe(false);
  });
});
