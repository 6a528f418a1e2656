import axe from 'axe-core';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openBrowser } from './open-browser.ts';
import { openPage, planned } from './open-page.ts';
import type { RunningApp } from './start-app.ts';
import { startTinyApp } from './start-tiny-app.ts';

type Violation = Readonly<{
  id: string;
  help: string;
  nodes: readonly Readonly<{ html: string; failureSummary: string }>[];
}>;

/** What axe finds wrong with the page as it stands, WCAG 2.2 AA and its best practices; the printed sheet's frame is judged apart. */
async function violationsOf(page: Page): Promise<string[]> {
  await page.evaluate(axe.source);
  const found = (await page.evaluate(
    'axe.run({ exclude: [["iframe"]] }, { iframes: false }).then(result => result.violations)',
  )) as Violation[];
  return found.flatMap(({ id, help, nodes }) => nodes.map(node => `${id} (${help}): ${node.html.slice(0, 200)}`));
}

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

const VIEWS = ['round', 'compare', 'bag', 'course', 'sheet', 'practice'] as const;

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
      await page.context().close();
    },
    300_000,
  );
});
