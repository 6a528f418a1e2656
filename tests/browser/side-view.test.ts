import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, it } from 'vitest';
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

/** How far the baskets of map and side view are apart across the window, in pixels. */
const APART = `(() => {
  const middle = what => { const box = document.querySelector(what).getBoundingClientRect(); return (box.left + box.right) / 2; };
  return Math.abs(middle('.mark-basket') - middle('.side-basket'));
})()`;

describe('the side view', () => {
  it('lines up with the map, also where the plan is there before the window is', async () => {
    const { page } = await openPage(browser, app);
    await planned(page);
    for (let i = 0; i < 4; i++) {
      // marks stand at whole pixels
      await eventually(async () => (await page.evaluate(APART)) as number).toBeLessThanOrEqual(3);
      await page.reload();
      await planned(page);
      await page.goto(`${app.home}#bag`);
      await page.getByRole('heading', { name: 'Players' }).waitFor();
      await page.goto(`${app.home}#round`);
      await page.locator('.side-basket').waitFor();
    }
    await page.context().close();
  }, 240_000);
});
