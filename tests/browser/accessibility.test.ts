import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { PLACES } from '../../renderer/shell/places.ts';
import { openBrowser } from './open-browser.ts';
import { openPage, planned } from './open-page.ts';
import type { RunningApp } from './start-app.ts';
import { startTinyApp } from './start-tiny-app.ts';
import { violationsOf } from './violations.ts';

/** Words that would have to be scrolled sideways to be read. */
const SIDEWAYS = 'document.documentElement.scrollWidth - document.documentElement.clientWidth';

let app: RunningApp;
let browser: Browser;
beforeAll(async () => {
  [app, browser] = await Promise.all([startTinyApp(), openBrowser()]);
}, 120_000);
afterAll(async () => {
  await browser?.close();
  await app?.close();
});

const VIEWS = Object.keys(PLACES);

/** The map of the course on the drawing table, with a thing chosen. */
async function openEditor(page: Page): Promise<void> {
  await page.goto(`${app.home}#course`);
  await page.getByRole('button', { name: 'Edit the map' }).click();
  await page.locator('.course-editor .thing-item').first().click();
  await page.locator('.thing-form').waitFor();
}

describe.each(['light', 'dark'] as const)('in %s', colorScheme => {
  it('axe finds nothing on any view', async () => {
    const { page, complaints } = await openPage(browser, app, { colorScheme });
    await planned(page);
    expect(await page.locator('html').getAttribute('data-theme')).toBe(colorScheme);
    for (const tab of ['Why', 'Instead', 'Wind', 'Care', 'Note', 'From the tee']) {
      await page.getByRole('tab', { name: tab }).click();
      expect(await violationsOf(page), `round, ${tab}`).toEqual([]);
    }
    await page.getByText('More about the day').click();
    await page.getByText('Units, light').click();
    expect(await violationsOf(page), 'open details').toEqual([]);
    for (const view of VIEWS) {
      await page.goto(`${app.home}#${view}`);
      await page.locator('main').first().waitFor();
      expect(await violationsOf(page), view).toEqual([]);
    }
    await page.goto(`${app.home}#bag`);
    await page.getByRole('button', { name: 'Edit Plain midrange' }).click();
    expect(await violationsOf(page), 'disc form').toEqual([]);
    await openEditor(page);
    for (const tab of ['Things', 'Layouts', 'Walk a hole']) {
      await page.getByRole('tab', { name: tab, exact: true }).click();
      expect(await violationsOf(page), `drawing, ${tab}`).toEqual([]);
    }
    expect(complaints).toEqual([]);
    await page.context().close();
  }, 300_000);
});

describe('size', () => {
  // 200 % zoom of 1280×800 leaves 640×400 CSS pixels: WCAG 2.2, 1.4.4 and 1.4.10.
  it.each([
    { width: 1280, height: 800 },
    { width: 900, height: 700 },
    { width: 640, height: 400 },
  ])(
    'nothing must be scrolled sideways at $width × $height',
    async viewport => {
      const { page } = await openPage(browser, app, { viewport });
      await planned(page);
      for (const view of VIEWS) {
        await page.goto(`${app.home}#${view}`);
        await page.locator('main').first().waitFor();
        expect(await page.evaluate(SIDEWAYS), view).toBeLessThanOrEqual(0);
      }
      await openEditor(page);
      expect(await page.evaluate(SIDEWAYS), 'drawing').toBeLessThanOrEqual(0);
      await page.context().close();
    },
    300_000,
  );
});
