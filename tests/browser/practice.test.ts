import axe from 'axe-core';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openBrowser } from './open-browser.ts';
import { eventually, openPage } from './open-page.ts';
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

type Violation = Readonly<{ id: string; nodes: readonly Readonly<{ html: string }>[] }>;

/** What axe finds wrong with the page as it stands; the printed sheet's frame is judged apart. */
async function violationsOf(page: Page): Promise<string[]> {
  await page.evaluate(axe.source);
  const found = (await page.evaluate(
    'axe.run({ exclude: [["iframe"]] }, { iframes: false }).then(result => result.violations)',
  )) as Violation[];
  return found.flatMap(({ id, nodes }) => nodes.map(node => `${id}: ${node.html.slice(0, 200)}`));
}

const FOCUSED = `(() => {
  const e = document.activeElement;
  const words = e.closest('label')?.textContent ?? e.getAttribute('aria-label') ?? e.textContent ?? '';
  return [e.tagName, e.type ?? '', words].join(' ');
})()`;

/** Tabs on until what holds the focus matches; fails after a whole round. */
async function tabTo(page: Page, wanted: RegExp): Promise<void> {
  for (let i = 0; i < 80; i++) {
    await page.keyboard.press('Tab');
    if (wanted.test((await page.evaluate(FOCUSED)) as string)) return;
  }
  throw new Error(`Tab never reaches ${wanted}`);
}

const SIDEWAYS = 'document.documentElement.scrollWidth - document.documentElement.clientWidth';

describe.each(['light', 'dark'] as const)('a practice round by keyboard, in %s', colorScheme => {
  it('from the limit to the printed sheet, axe finding nothing on the way', async () => {
    const { page, complaints } = await openPage(browser, app, { colorScheme });
    await page.goto(`${app.home}#practice`);
    await page.getByRole('heading', { name: 'A round with fewer choices teaches more' }).waitFor();
    expect(await violationsOf(page), 'before').toEqual([]);

    // one disc, then putters again: the radio group takes arrow keys
    await tabTo(page, /radio Putters only/);
    await page.keyboard.press('ArrowDown');
    await page.getByLabel('Which disc').waitFor();
    await page.keyboard.press('ArrowUp');
    for (const sample of [/checkbox Hollow Orchard/, /checkbox Millrace Green/, /checkbox Ridge and Reservoir/]) {
      await tabTo(page, sample);
      await page.keyboard.press('Space');
    }
    await tabTo(page, /BUTTON submit Find a practice round/);
    await page.keyboard.press('Enter');
    await page.locator('.practice-progress').waitFor();
    expect(await violationsOf(page), 'while it looks').toEqual([]);

    const found = page.locator('.target-card').waitFor({ timeout: 240_000 });
    await found.catch(async cause => {
      throw new Error(`no target was found; the page says: ${await page.locator('body').textContent()}`, { cause });
    });
    expect(await violationsOf(page), 'found').toEqual([]);
    const target = Number(await page.locator('.target-score strong').textContent());
    // two holes of 80 m: nobody needs fewer than two throws a hole or more than four on an average day
    expect(target).toBeGreaterThanOrEqual(4);
    expect(target).toBeLessThanOrEqual(8);
    expect(await page.getByRole('row', { name: /^1 tee 80 m 3 Throwing putter/ }).count()).toBe(1);
    expect(await page.locator('.practice-careful').textContent()).toContain('Never throw while anyone could be hit');
    expect(await page.locator('.practice-careful').textContent()).toContain('licensed doctor or physiotherapist');

    await tabTo(page, /BUTTON \w+ Show the practice sheet/);
    await page.keyboard.press('Enter');
    const sheet = page.frameLocator('iframe');
    await sheet.locator('.target').waitFor();
    expect(await sheet.locator('.target').textContent()).toContain(`Target ${target}`);
    expect(await sheet.locator('.round .box').count()).toBe(3);
    expect(await violationsOf(page), 'with the sheet').toEqual([]);

    // another limit leaves the answer, marked as from before
    await page.getByRole('radio', { name: 'Forehand only' }).focus();
    await page.keyboard.press('Space');
    await page.getByText('From before').waitFor();
    expect(complaints).toEqual([]);
    await page.context().close();
  }, 300_000);
});

it('can be stopped, says so, and a limit without discs says how to mend it', async () => {
  const { page, complaints } = await openPage(browser, app);
  await page.goto(`${app.home}#practice`);
  await page.getByRole('button', { name: 'Find a practice round' }).click();
  await page.getByRole('button', { name: 'Stop looking' }).click();
  await page.getByText('Stopped: nothing was found out.').waitFor();

  await page.getByLabel('Your own limit').check();
  await page.getByRole('checkbox', { name: 'Putters' }).uncheck();
  await page.getByRole('checkbox', { name: 'Midranges' }).uncheck();
  await page.getByText('Pick at least one disc').waitFor();
  expect(await page.getByRole('button', { name: 'Find a practice round' }).isDisabled()).toBe(true);
  await page.getByRole('checkbox', { name: 'Distance drivers' }).check();
  await page.getByRole('button', { name: 'Find a practice round' }).click();
  await eventually(() => page.getByRole('alert').textContent()).toContain('no disc of class distance');
  expect(await violationsOf(page)).toEqual([]);
  expect(complaints).toEqual([]);
  await page.context().close();
}, 120_000);

it.each([
  { width: 1280, height: 800 },
  { width: 900, height: 700 },
  { width: 640, height: 400 },
])(
  'nothing must be scrolled sideways at $width × $height',
  async viewport => {
    const { page } = await openPage(browser, app, { viewport });
    await page.goto(`${app.home}#practice`);
    await page.getByRole('heading', { name: 'Practice round' }).waitFor();
    expect(await page.evaluate(SIDEWAYS)).toBeLessThanOrEqual(0);
    await page.context().close();
  },
  60_000,
);
