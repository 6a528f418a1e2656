import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openBrowser } from './open-browser.ts';
import { eventually, openPage, planned } from './open-page.ts';
import type { RunningApp } from './start-app.ts';
import { startTinyApp } from './start-tiny-app.ts';

let app: RunningApp;
let browser: Browser;
beforeAll(async () => {
  [app, browser] = await Promise.all([startTinyApp(), openBrowser()]);
}, 120_000);
afterAll(async () => {
  await browser?.close();
  await app?.close();
});

describe('what if', () => {
  it('dragging the aim on the map shows what it costs, is drawn in both pictures, and is undone in one step', async () => {
    const { page, complaints } = await openPage(browser, app);
    await planned(page);
    const aimed = await page.locator('.try-aim').textContent();
    const handle = (await page.locator('.mark-aim').boundingBox())!;
    const at = { x: handle.x + handle.width / 2, y: handle.y + handle.height / 2 };
    await page.mouse.move(at.x, at.y);
    await page.mouse.down();
    await page.mouse.move(at.x, at.y - 40, { steps: 4 });
    await page.mouse.move(at.x, at.y - 90, { steps: 4 });
    await page.mouse.up();
    await page.locator('.shot-card[data-standing="tried"]').waitFor();
    await eventually(() => page.locator('.try-cost').textContent()).toMatch(/^\+.*throws$/);
    expect(await page.locator('.try-aim').textContent()).not.toBe(aimed);
    expect(await page.locator('.map-flight.map-other').count()).toBe(1);
    expect(await page.locator('.side-other').count()).toBe(1);
    await page.getByRole('button', { name: 'Undo: drag the aim' }).click();
    await page.locator('.shot-card[data-standing="choice"]').waitFor();
    expect(await page.locator('.try-aim').textContent()).toBe(aimed);
    expect(complaints).toEqual([]);
    await page.context().close();
  }, 120_000);

  it('two winds stand side by side, hole by hole', async () => {
    const { page, complaints } = await openPage(browser, app);
    await planned(page);
    await page.getByRole('link', { name: 'Two winds' }).click();
    const rows = page.locator('.compare-table tbody tr');
    await eventually(() => rows.count()).toBe(2);
    await eventually(() => rows.first().locator('td').nth(3).textContent()).toMatch(/→/);
    const other = page.getByRole('region', { name: 'Another wind' });
    await other.getByLabel('Wind', { exact: true }).fill('0');
    await other.getByLabel('Wind', { exact: true }).press('Enter');
    await eventually(() => other.locator('.wind-felt').textContent()).toBe('Calm');
    await eventually(() => other.locator('.shot-card[data-stale]').count()).toBe(0);
    // The day's own wind is left alone.
    await page.getByRole('link', { name: 'Round', exact: true }).click();
    expect(await page.locator('.wind-fields input').first().inputValue()).toBe('4.0 m/s');
    expect(complaints).toEqual([]);
    await page.context().close();
  }, 180_000);
});
