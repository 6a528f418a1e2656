import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { type Backend, openBackend } from '../../backend/api/open-backend.ts';
import { buildStale } from '../../start/build-stale.ts';
import { bundlePreload } from '../../start/bundle-shell.ts';
import { tinyCourse, tinyPlayer } from '../backend/tiny-round.ts';
import { openBrowser } from '../browser/open-browser.ts';
import { type Shell, startShell } from './start-shell.ts';

const ROOT = resolve(import.meta.dirname, '..', '..');
/** Stands for roundwright://app: a browser takes no foreign scheme, but this name is answered from the same handler. */
const ORIGIN = 'https://app.invalid'; // RFC 2606: never a real name

const eventually = <T>(look: () => T | Promise<T>) => expect.poll(look, { timeout: 60_000, interval: 50 });

// All but Electron itself: the built page in a real Chromium, the built preload script, the real main process and backend.
describe('the page in the shell', () => {
  let folder: string;
  let backend: Backend;
  let browser: Browser;
  let shell: Shell;
  let page: Page;
  const complaints: string[] = [];
  let isOver = false; // a call under way when the backend closes may fail
  const onFault = (method: string, fault: unknown) => {
    if (!isOver) complaints.push(`${method}: ${fault}`);
  };

  beforeAll(async () => {
    await buildStale(ROOT, ['page'], { say: () => undefined });
    folder = mkdtempSync(join(tmpdir(), 'roundwright-page-'));
    mkdirSync(join(folder, 'dist'));
    symlinkSync(join(ROOT, 'dist', 'renderer'), join(folder, 'dist', 'renderer'));
    await bundlePreload(ROOT, join(folder, 'dist', 'electron'));
    const opened = openBackend({ folder: join(folder, 'library'), onFault });
    if (!opened.ok) throw new Error(JSON.stringify(opened.problems));
    backend = opened.value;
    await chooseTinyRound();
    shell = await startShell(folder, { opened });
    browser = await openBrowser();
    page = await connectPage();
  }, 120_000);
  afterAll(async () => {
    isOver = true;
    await browser?.close();
    await backend?.close();
    rmSync(folder, { recursive: true, force: true });
    vi.restoreAllMocks();
  });

  async function chooseTinyRound(): Promise<void> {
    const call = async (method: string, input: unknown) => {
      const answer = await backend.call(method, input);
      if (!answer.ok) throw new Error(JSON.stringify(answer.problems));
      return answer.value as Record<string, string>;
    };
    const { courseId } = await call('importCourse', { fileName: 'tiny.geojson', text: JSON.stringify(tinyCourse()) });
    const { playerId } = await call('importPlayer', { fileName: 'tiny.json', text: JSON.stringify(tinyPlayer()) });
    await call('setSettings', { change: { courseId, playerId, ref: '1' } });
  }

  async function connectPage(): Promise<Page> {
    const { webContents, session } = shell.window();
    const context = await browser.newContext({ viewport: { width: 1280, height: 800 } });
    const opened = await context.newPage();
    opened.on('pageerror', error => complaints.push(error.message));
    opened.on('console', message => {
      if (message.type() === 'error') complaints.push(message.text());
    });
    await context.route('**/*', async route => {
      const url = route.request().url();
      if (!url.startsWith(`${ORIGIN}/`)) return route.abort();
      const response = await session.fetch(url.replace(ORIGIN, 'roundwright://app'));
      const body = Buffer.from(await response.arrayBuffer());
      return route.fulfill({ status: response.status, headers: Object.fromEntries(response.headers), body });
    });
    await opened.exposeFunction('ipcInvoke', (channel: string, args: unknown[]) => webContents.invoke(channel, args));
    await opened.addInitScript(IN_PAGE(readFileSync(join(folder, 'dist', 'electron', 'preload.cjs'), 'utf8')));
    webContents.send = (channel, value) => {
      const heard = `ipcHeard(${JSON.stringify(channel)}, ${JSON.stringify(value)})`;
      opened.evaluate(heard).catch(error => complaints.push(String(error)));
    };
    await opened.goto(`${ORIGIN}/index.html`);
    return opened;
  }

  const choose = (command: string) =>
    shell
      .menuEntries()
      .find(({ id }) => id === command)
      ?.click?.();

  it('plans the round over the bridge, under the policy, without a complaint', async () => {
    await page.locator('.shot-disc').waitFor({ timeout: 60_000 });
    expect(await page.locator('.shot-disc').textContent()).toBeTruthy();
    expect(complaints).toEqual([]);
  });

  it('prints the sheet it shows', async () => {
    choose('printSheet');
    const sheet = page.frameLocator('iframe.sheet-frame');
    await sheet.locator('body').waitFor({ timeout: 60_000 });
    await eventually(() => sheet.locator('body').textContent()).toContain('Tiny');
    await page.getByRole('button', { name: 'Print', exact: true }).click();
    await eventually(() => shell.seen.printed.length).toBe(1);
    expect(shell.seen.printed[0]?.html).toContain('Tiny');
    shell.seen.printed[0]?.printer(true, '');

    shell.answers.save.push(join(folder, 'sheet.pdf'));
    await page.getByRole('button', { name: 'Save as PDF' }).click();
    await eventually(() => existsSync(join(folder, 'sheet.pdf'))).toBe(true);
    expect(complaints).toEqual([]);
  });

  it('goes to the next hole from the menu', async () => {
    const ref = async () => ((await backend.call('getSettings', {})) as { value: { ref: string } }).value.ref;
    expect(await ref()).toBe('1');
    choose('nextHole');
    await eventually(ref).toBe('2');
  });

  it('imports a course from the menu through the system’s dialog', async () => {
    const file = join(folder, 'other-links.geojson');
    writeFileSync(file, JSON.stringify(tinyCourse()).replace('Tiny Links', 'Other Links'));
    shell.answers.open.push([file]);
    const courses = async () => ((await backend.call('listCourses', {})) as { value: unknown[] }).value.length;
    const before = await courses();
    choose('importCourse');
    await page.getByRole('button', { name: 'Add this course' }).click();
    await eventually(courses).toBe(before + 1);
    expect(shell.seen.dialogs.map(({ kind }) => kind)).toContain('open');
  });

  it('saves everything from the menu', async () => {
    const file = join(folder, 'everything.json');
    shell.answers.save.push(file);
    choose('exportLibrary');
    await eventually(() => shell.seen.dialogs.at(-1)?.kind).toBe('save');
    const text = () => {
      try {
        return readFileSync(file, 'utf8');
      } catch {
        return '';
      }
    };
    await eventually(text).toContain('roundwright/library');
  });

  it('takes a file that was opened from outside', async () => {
    const file = join(folder, 'newcomer.json');
    writeFileSync(file, JSON.stringify({ ...tinyPlayer(), name: 'Newcomer' }));
    const players = async () => JSON.stringify(await backend.call('listPlayers', {}));
    shell.app.emit('second-instance', {}, ['electron', '.', file], folder);
    await eventually(players).toContain('Newcomer');
    expect(complaints).toEqual([]);
  });
});

/** The preload script in the page, with what Electron would lend it. */
const IN_PAGE = (preload: string) => `{
  const heard = new Map();
  window.ipcHeard = (channel, value) => { for (const listener of heard.get(channel) ?? []) listener({}, value); };
  const ipcRenderer = {
    invoke: (channel, ...args) => window.ipcInvoke(channel, args),
    on: (channel, listener) => heard.set(channel, [...(heard.get(channel) ?? []), listener]),
    removeListener: (channel, listener) => heard.set(channel, heard.get(channel).filter(other => other !== listener)),
  };
  const contextBridge = { exposeInMainWorld: (name, value) => { window[name] = value; } };
  (function (require) { ${preload} })(() => ({ contextBridge, ipcRenderer }));
}`;
