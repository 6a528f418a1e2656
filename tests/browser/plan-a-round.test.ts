import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openBrowser } from './open-browser.ts';
import { eventually, openPage, planned, shownThrow } from './open-page.ts';
import { type RunningApp, startApp } from './start-app.ts';
import { tinyCourseFile } from './tiny-files.ts';

let app: RunningApp;
let browser: Browser;
beforeAll(async () => {
  [app, browser] = await Promise.all([startApp(), openBrowser()]);
}, 120_000);
afterAll(async () => {
  await browser?.close();
  await app?.close();
});

describe('a player plans a round', () => {
  it('from the sample to their own course, through wind, choice and undo, to the sheet, and finds all again', async () => {
    const { page, complaints } = await openPage(browser, app);

    // The sample round is planned without a click.
    await page.locator('.shot-disc').waitFor({ timeout: 240_000 });
    expect(await page.locator('.hole-row').count()).toBe(18);
    await page.getByRole('button', { name: 'Stop' }).click();
    await page.getByText('Stopped.').waitFor();

    // Their own course.
    await page.getByRole('link', { name: 'Course', exact: true }).click();
    const [chooser] = await Promise.all([
      page.waitForEvent('filechooser'),
      page.getByRole('button', { name: 'Import a course' }).click(),
    ]);
    await chooser.setFiles(tinyCourseFile());
    await page.getByRole('button', { name: 'Add this course' }).click();
    await eventually(() => page.locator('.rename-field input').inputValue()).toBe('Tiny Links');
    await page.getByRole('link', { name: 'Round', exact: true }).click();
    await eventually(() => page.locator('.hole-row').count()).toBe(2);
    await planned(page);

    // A hard wind into the face, dragged: the dial's middle is calm, its rim the strongest.
    const calm = await shownThrow(page);
    const dial = (await page.locator('.wind-dial').boundingBox())!;
    const middle = { x: dial.x + dial.width / 2, y: dial.y + dial.height / 2 };
    const bearing_deg = Number((await page.locator('.north-mark').getAttribute('aria-label'))!.match(/\d+/)![0]);
    const angle = (bearing_deg * Math.PI) / 180;
    await page.mouse.move(middle.x, middle.y);
    await page.mouse.down();
    for (const share of [0.1, 0.2, 0.3, 0.36])
      await page.mouse.move(
        middle.x + Math.sin(angle) * share * dial.width,
        middle.y - Math.cos(angle) * share * dial.width,
      );
    await eventually(() => page.locator('.wind-felt').textContent()).toContain('headwind');
    await page.mouse.up();
    await planned(page);
    await eventually(() => shownThrow(page)).not.toBe(calm);
    const windy = await shownThrow(page);
    const wind = await page.locator('.wind-fields input').first().inputValue();

    // Another throw, what it costs, and back.
    await page.getByRole('tab', { name: 'Instead' }).click();
    await page.locator('.alternative').nth(1).click();
    await page.locator('.shot-card[data-standing="tried"]').waitFor({ timeout: 60_000 });
    await eventually(() => page.locator('.try-cost').textContent()).toMatch(/throws|no worse/);
    await page.getByRole('button', { name: /^Undo: try/ }).click();
    await page.locator('.shot-card[data-standing="choice"]').waitFor();
    expect(await shownThrow(page)).toBe(windy);

    // A pin and a note, to be found again.
    await page.getByRole('button', { name: 'Pin this throw' }).click();
    await page.getByRole('button', { name: 'Unpin' }).waitFor();
    await page.getByRole('tab', { name: 'Note' }).click();
    await page.getByLabel('Your note on hole 1').fill('Soft ground behind the basket.');
    await page.getByRole('button', { name: 'Keep note' }).click();
    await eventually(() => page.locator('.hole-signs').first().textContent()).toContain('note');

    // The sheet.
    await page.getByRole('link', { name: 'Sheet' }).click();
    const sheet = page.frameLocator('iframe[title="The sheet as it prints"]');
    await eventually(() => sheet.locator('body').textContent()).toContain('Tiny Links');
    expect(await sheet.locator('body').textContent()).toContain('Soft ground behind the basket.');

    // Everything is still there after a reload.
    await page.getByRole('link', { name: 'Round', exact: true }).click();
    await page.reload();
    await page.locator('.shot-disc').waitFor({ timeout: 60_000 });
    expect(await shownThrow(page)).toBe(windy);
    expect(await page.locator('.wind-fields input').first().inputValue()).toBe(wind);
    await page.getByRole('button', { name: 'Unpin' }).waitFor();
    await eventually(() => page.locator('.hole-signs').first().textContent()).toContain('note');
    expect(complaints).toEqual([]);
  }, 600_000);
});
