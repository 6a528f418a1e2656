import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openBrowser } from './open-browser.ts';
import { eventually, openPage, planned } from './open-page.ts';
import type { RunningApp } from './start-app.ts';
import { startTinyApp } from './start-tiny-app.ts';

let app: RunningApp;
let browser: Browser;
beforeAll(async () => {
  [app, browser] = await Promise.all([startTinyApp(), openBrowser()]);
  await app.call('setSettings', { change: { length: 'ft', speed: 'mph' } });
}, 120_000);
afterAll(async () => {
  await browser?.close();
  await app?.close();
});

/** Lengths in metres and winds in metres a second, as the plan itself writes them. */
const METRIC = /[^ ]* ?\d m(\/s)?\b/g;

/** As they are read, with what stands apart kept apart. */
const wordsOf = async (page: Page) => (await page.evaluate('document.body.innerText')) as string;

describe('in feet and miles an hour', () => {
  it('the plan, its reasons and its cautions hold no metres', async () => {
    const { page, complaints } = await openPage(browser, app);
    await planned(page);
    for (const tab of ['Why', 'Instead', 'Wind', 'Care']) {
      await page.getByRole('tab', { name: tab }).click();
      expect((await wordsOf(page)).match(METRIC), tab).toBeNull();
    }
    // the path crosses 60 m out: 60 / 0.3048 = 196.85, NIST SP 811 B.8
    await page.getByText('People may cross at 197 ft').waitFor();
    for (const view of ['compare', 'fieldwork', 'practice', 'review']) {
      await page.goto(`${app.home}#${view}`);
      await page.locator('main').first().waitFor();
      await eventually(() => page.locator('[aria-busy="true"], .round-progress').count()).toBe(0);
      expect((await wordsOf(page)).match(METRIC), view).toBeNull();
    }
    expect(complaints).toEqual([]);
    await page.context().close();
  }, 240_000);
});
