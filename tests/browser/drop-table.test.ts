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

const DROP = `(() => {
  const data = new DataTransfer();
  data.items.add(new File(['disc,distance_m,side_m\\nThrowing putter,60,1\\n'], 'field.csv', { type: 'text/csv' }));
  window.dispatchEvent(new DragEvent('drop', { dataTransfer: data, bubbles: true, cancelable: true }));
})()`;

describe('a table of throws dropped anywhere on the window', () => {
  it('is shown under Fieldwork before anything is taken in', async () => {
    const { page, complaints } = await openPage(browser, app);
    await planned(page);
    await page.evaluate(DROP);
    await page.getByRole('heading', { name: 'Import throws from a table (CSV)' }).waitFor();
    await eventually(() => page.locator('.csv-source').textContent()).toContain('field.csv');
    await page.getByRole('button', { name: 'Close' }).click();
    expect(await page.locator('.csv-dialog').count()).toBe(0);
    expect(complaints).toEqual([]);
    await page.context().close();
  }, 120_000);
});
