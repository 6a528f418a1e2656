import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { tinyPlayer } from '../backend/tiny-round.ts';
import { openBrowser } from './open-browser.ts';
import { eventually, openPage, planned } from './open-page.ts';
import type { RunningApp } from './start-app.ts';
import { startTinyApp } from './start-tiny-app.ts';
import { tabTo } from './tab-to.ts';
import { brokenCourseFile, tinyPlayerFile } from './tiny-files.ts';
import { violationsOf } from './violations.ts';

let app: RunningApp;
let browser: Browser;
beforeAll(async () => {
  [app, browser] = await Promise.all([startTinyApp(), openBrowser()]);
}, 120_000);
afterAll(async () => {
  await browser?.close();
  await app?.close();
});

/** Drops a text file on the window, as a file manager does. */
const dropped = (name: string, text: string) => `(() => {
  const data = new DataTransfer();
  data.items.add(new File([${JSON.stringify(text)}], ${JSON.stringify(name)}));
  for (const type of ['dragover', 'drop'])
    window.dispatchEvent(new DragEvent(type, { dataTransfer: data, bubbles: true, cancelable: true }));
})()`;

describe('bag and courses', () => {
  it('says what is wrong with a file and how to mend it, and takes nothing in', async () => {
    const { page } = await openPage(browser, app);
    await page.goto(`${app.home}#course`);
    const before = 4; // three samples and the tiny one
    await eventually(() => page.locator('.library-item').count()).toBe(before);
    const { name, buffer } = brokenCourseFile();
    await page.evaluate(dropped(name, buffer.toString()));
    const alert = page.getByRole('alert');
    await eventually(() => alert.textContent()).toContain('"broken.geojson" could not be taken in');
    expect(await alert.locator('li').count()).toBeGreaterThan(0);
    expect(await page.locator('.library-item').count()).toBe(before);
    await page.getByRole('button', { name: 'Put away' }).click();
    await alert.waitFor({ state: 'detached' });
    await page.context().close();
  }, 120_000);

  it('takes a dropped player in, renames, edits and deletes a disc, and undoes each', async () => {
    const { page, complaints } = await openPage(browser, app);
    await planned(page);
    const { name, buffer } = tinyPlayerFile();
    await page.evaluate(dropped(name, buffer.toString()));
    await page.getByRole('heading', { name: 'Players' }).waitFor();
    const names = page.locator('.library-list .library-item strong');
    await eventually(() => names.count()).toBe(4);

    const rename = page.locator('.rename-field input');
    await rename.fill('Somebody Else');
    await rename.press('Enter');
    await eventually(async () => (await names.allTextContents()).includes('Somebody Else')).toBe(true);
    await page.getByRole('button', { name: /^Undo/ }).click();
    await eventually(async () => (await names.allTextContents()).includes('Somebody Else')).toBe(false);

    const midrange = page.locator('tr', { hasText: 'Plain midrange' });
    await midrange.getByRole('button', { name: 'Edit Plain midrange' }).click();
    await page.getByLabel('Fade').fill('2.5');
    await page.getByRole('button', { name: 'Save' }).click();
    await eventually(() => midrange.locator('td').nth(3).textContent()).toBe('2.5');
    await page.getByRole('button', { name: /^Undo/ }).click();
    await eventually(() => midrange.locator('td').nth(3).textContent()).toBe('1');

    await midrange.getByRole('button', { name: 'Edit Plain midrange' }).click();
    await page.getByLabel('Speed').fill('99');
    await page.getByRole('button', { name: 'Save' }).click();
    await eventually(() => page.getByRole('alert').textContent()).toContain('speed');
    await page.getByRole('button', { name: 'Put away' }).click();
    await page.getByRole('button', { name: 'Cancel' }).click();

    await page.getByRole('button', { name: 'Delete Plain midrange' }).click();
    await midrange.waitFor({ state: 'detached' });
    await page.getByRole('button', { name: /^Undo/ }).click();
    await midrange.waitFor();
    await page.getByRole('button', { name: 'Delete player' }).click();
    await eventually(() => names.count()).toBe(3);
    await page.getByRole('button', { name: /^Undo/ }).click();
    await eventually(() => names.count()).toBe(4);
    expect(complaints).toEqual([]);
    await page.context().close();
  }, 240_000);

  it('an empty library teaches the first steps', async () => {
    for (const [list, remove, key] of [
      ['listCourses', 'removeCourse', 'courseId'],
      ['listPlayers', 'removePlayer', 'playerId'],
    ] as const) {
      const lines = (await app.call(list, {})) as { value: Record<string, string>[] };
      for (const line of lines.value) await app.call(remove, { [key]: line[key] });
    }
    const { page } = await openPage(browser, app);
    await page.getByRole('heading', { name: 'Two things make a plan' }).waitFor();
    expect(await page.getByRole('button', { name: 'Import a course' }).count()).toBe(1);
    expect(await page.getByRole('button', { name: 'Import a player' }).count()).toBe(1);
    expect(await violationsOf(page)).toEqual([]);

    await tabTo(page, /^BUTTON +Draw or walk a course/);
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: 'Draw a new course' }).waitFor();
    await page.goto(`${app.home}#round`);
    await tabTo(page, /^BUTTON +Start a new player/);
    await page.keyboard.press('Enter');
    await page.getByRole('form', { name: 'A new player' }).waitFor();

    // What is there already is named, and only the rest asked for.
    await app.call('importPlayer', { fileName: 'p.json', text: JSON.stringify(tinyPlayer()) });
    await page.goto(`${app.home}#round`);
    await page.getByText('Tiny Player is here.').waitFor();
    expect(await page.getByRole('button', { name: 'Start a new player' }).count()).toBe(0);
    expect(await page.getByRole('button', { name: 'Draw or walk a course' }).count()).toBe(1);
    await page.context().close();
  }, 120_000);
});
