import { afterAll, afterEach, beforeAll, describe, expect, it, vi } from 'vitest';
import { makeFolder, removeFolder, startShell } from './start-shell.ts';

let folder: string;
beforeAll(async () => {
  folder = await makeFolder();
});
afterAll(() => removeFolder(folder));
afterEach(() => vi.restoreAllMocks());

describe('recovery', () => {
  it('opens a page that died again by itself, then asks', async () => {
    const { window, page, seen, answers } = await startShell(folder);
    const { webContents } = window();
    for (let death = 1; death <= 3; death++) {
      webContents.die('crashed');
      await vi.waitUntil(() => webContents.page !== undefined);
    }
    expect(seen.dialogs).toEqual([]);
    answers.box.push(0);
    webContents.die('oom');
    await vi.waitUntil(() => webContents.page !== undefined);
    expect(seen.dialogs).toHaveLength(1);
    expect(await page().listCourses({})).toMatchObject({ ok: true });
  });

  it('quits when the player has had enough', async () => {
    const { window, seen, answers } = await startShell(folder);
    const { webContents } = window();
    for (let death = 1; death <= 3; death++) {
      webContents.die('crashed');
      await vi.waitUntil(() => webContents.page !== undefined);
    }
    answers.box.push(1);
    webContents.die('crashed');
    await vi.waitUntil(() => seen.quits > 0);
    expect(webContents.page).toBeUndefined();
  });

  it('takes a page that ended in good order for no crash', async () => {
    const { window } = await startShell(folder);
    const { loaded } = window();
    window().webContents.die('clean-exit');
    await new Promise(resolve => setImmediate(resolve));
    expect(window().loaded).toBe(loaded); // not loaded again
  });

  it('asks once about a page that hangs, and opens it again only when told to', async () => {
    const { window, seen, answers } = await startShell(folder);
    answers.box.push(0);
    window().emit('unresponsive');
    window().emit('unresponsive');
    await new Promise(resolve => setImmediate(resolve));
    expect(seen.dialogs).toHaveLength(1);
    const before = window().webContents.page;
    answers.box.push(1);
    window().emit('unresponsive');
    await vi.waitUntil(() => window().webContents.page !== before && window().webContents.page !== undefined);
  });
});
