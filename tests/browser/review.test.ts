import { readFileSync } from 'node:fs';
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

async function openReview(options: Parameters<typeof openPage>[2] = {}) {
  const opened = await openPage(browser, app, options);
  await opened.page.goto(`${app.home}#review`);
  await opened.page.getByRole('heading', { name: 'Rounds' }).waitFor();
  return opened;
}

const FOCUSED = `(() => {
  const e = document.activeElement;
  if (e === document.body) return '';
  return [e.tagName, e.getAttribute('aria-label') ?? '', e.labels?.[0]?.textContent ?? '', e.textContent ?? ''].join(' ');
})()`;

/** Tabs on until what holds the focus matches; fails after a whole round. */
async function tabTo(page: Page, wanted: RegExp): Promise<void> {
  for (let i = 0; i < 120; i++) {
    await page.keyboard.press('Tab');
    if (wanted.test((await page.evaluate(FOCUSED)) as string)) return;
  }
  throw new Error(`Tab never reaches ${wanted}`);
}

async function violationsOf(page: Page): Promise<string[]> {
  await page.evaluate(axe.source);
  const found = (await page.evaluate('axe.run().then(result => result.violations)')) as {
    id: string;
    nodes: { html: string }[];
  }[];
  return found.flatMap(({ id, nodes }) => nodes.map(({ html }) => `${id}: ${html.slice(0, 200)}`));
}

/** Drops a text file on the window, as a file manager does. */
const dropped = (name: string, text: string) => `(() => {
  const data = new DataTransfer();
  data.items.add(new File([${JSON.stringify(text)}], ${JSON.stringify(name)}));
  for (const type of ['dragover', 'drop'])
    window.dispatchEvent(new DragEvent(type, { dataTransfer: data, bubbles: true, cancelable: true }));
})()`;

const rounds = (page: Page) => page.locator('.library-list ul .library-item');
const throwRows = (page: Page) => page.getByRole('region', { name: /^Throws of hole/ }).locator('tbody tr');

async function answered(method: string, input: object): Promise<Record<string, never>> {
  const answer = await app.call(method, input);
  if (!answer.ok) throw new Error(`${method}: ${JSON.stringify(answer.problems)}`);
  return answer.value as Record<string, never>;
}

/** A round of one hole, put into the library past the window. */
async function keptRound(date: string): Promise<string> {
  const { courseId, playerId } = await answered('getSettings', {});
  const round = {
    schema: 'roundwright/round@1',
    date,
    day: { wind: { speed_mps: 1, from_deg: 250 } },
    holes: [
      {
        ref: '1',
        throws: [
          { discId: 'mid', shape: 'flat', power: 1, aimBearing_deg: 90, rest: { east_m: 74, north_m: 5 } },
          { discId: 'putt', holed: true },
        ],
      },
    ],
  };
  const { roundId } = await answered('saveRound', { courseId, playerId, round });
  return roundId!;
}

/** The same, reviewed: what most of the flows begin with. */
async function reviewedRound(date: string): Promise<void> {
  const roundId = await keptRound(date);
  await answered('startReview', { roundId });
  await eventually(async () => (await answered('getReview', { roundId })).state).toBe('done');
}

describe('a round', () => {
  it('is entered with the keyboard alone, corrected, undone, and reviewed', async () => {
    const { page, complaints } = await openReview();
    await page.getByText('No round yet').waitFor();
    await tabTo(page, /Enter a round/);
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { name: /Hole 1, throw 1 from the tee/ }).waitFor();

    await tabTo(page, /^SELECT .*Disc/);
    await page.keyboard.type('Plain m');
    await tabTo(page, /To the basket/);
    await page.keyboard.type('12ft');
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { name: /Hole 1, throw 2: 3.7 m/ }).waitFor();
    // by hand: 12 ft = 3.66 m
    await eventually(() => throwRows(page).first().textContent()).toMatch(/Plain midrange.*3\.7 m/);
    // the putting putter is offered near the basket
    await eventually(() => page.getByRole('combobox', { name: 'Disc' }).inputValue()).toBe('putt');
    await tabTo(page, /To the basket/);
    await page.keyboard.type('far');
    await page.keyboard.press('Enter');
    await eventually(() => page.getByRole('alert').textContent()).toContain('to basket');
    await page.keyboard.press('ControlOrMeta+Enter');
    await page.getByRole('heading', { name: /Hole 2, throw 1 from the tee/ }).waitFor();
    await eventually(() => page.getByRole('button', { name: /^Hole 1\b.*2 throws/ }).count()).toBe(1);

    // a disc is lost, and the throw taken back
    await tabTo(page, /To the basket/);
    await page.keyboard.type('30');
    await tabTo(page, /SELECT .*Penalty/);
    await page.keyboard.type('lost');
    await tabTo(page, /Add throw/);
    await page.keyboard.press('Enter');
    await eventually(() => throwRows(page).first().textContent()).toContain('lost disc: taken to be thrown again');
    await page.getByRole('button', { name: 'Undo: Enter throw 1 of hole 2' }).press('Enter');
    await eventually(() => throwRows(page).count()).toBe(0);

    await tabTo(page, /^DIV .*Enter$/);
    await page.keyboard.press('ArrowRight');
    await tabTo(page, /Review this round/);
    await page.keyboard.press('Enter');
    await page.locator('.review-headline').waitFor({ timeout: 120_000 });
    await eventually(() => page.locator('.review-headline').textContent()).toContain('2 throws where');
    await eventually(() => rounds(page).first().textContent()).toContain('reviewed');
    expect(complaints).toEqual([]);
    await page.context().close();
  }, 240_000);

  it('is entered by tapping the map, changed, and taken out again', async () => {
    const { page, complaints } = await openReview();
    await page.getByRole('button', { name: 'Enter a round' }).click();
    await page.getByRole('heading', { name: /Hole 1, throw 1/ }).waitFor();
    const map = page.locator('.review-map .hole-map');
    const basket = (await page.locator('.review-map .mark-basket').boundingBox())!;
    await map.click({ position: { x: 4, y: 4 } });
    const box = (await map.boundingBox())!;
    await page.mouse.click(basket.x - 60, basket.y + basket.height / 2 + 14);
    expect(box.width).toBeGreaterThan(200);
    await eventually(() => page.locator('.tapped-place').textContent()).toMatch(/to the basket, tapped/);
    await page.getByRole('button', { name: 'Add throw' }).click();
    await eventually(() => page.locator('.map-thrown').count()).toBe(1);
    await page.getByRole('button', { name: 'Change throw 1' }).click();
    await page.getByRole('button', { name: 'Type instead' }).click();
    await page.getByLabel('To the basket, m').fill('20');
    await page.getByLabel('Aside, m (3 left)').fill('3 left');
    await page.getByRole('button', { name: 'Keep change' }).click();
    await eventually(() => throwRows(page).first().textContent()).toContain('20.0 m');
    await page.getByRole('button', { name: 'Take throw 1 out' }).click();
    await eventually(() => throwRows(page).count()).toBe(0);
    const before = await rounds(page).count();
    await page.getByRole('button', { name: 'Delete round' }).click();
    await eventually(() => rounds(page).count()).toBe(before - 1);
    await page.getByRole('button', { name: /^Undo: Delete the round/ }).click();
    await eventually(() => rounds(page).count()).toBe(before);
    expect(complaints).toEqual([]);
    await page.context().close();
  }, 240_000);

  it('comes in from a file, says what is wrong with a bad one, and goes out again', async () => {
    const { page, complaints } = await openReview();
    const { playerId } = await answered('getSettings', {});
    const before = (await answered('listRounds', { playerId })).length as number;
    // the list stands there once it is read
    await eventually(() => rounds(page).count()).toBe(before);
    const choose = async (name: string, text: string) => {
      const [chooser] = await Promise.all([
        page.waitForEvent('filechooser'),
        page.getByRole('button', { name: 'Import a round' }).click(),
      ]);
      await chooser.setFiles({ name, mimeType: 'text/plain', buffer: Buffer.from(text) });
    };
    await choose('bad.csv', 'date,hole,disc,rest_to_basket_m,holed\n2026-05-01,1,Brick,4,\n,1,putt,,yes\n');
    await eventually(() => page.getByRole('alert').textContent()).toContain('row 2, disc');
    expect(await rounds(page).count()).toBe(before);
    await page.getByRole('button', { name: 'Put away' }).click();
    await choose('good.csv', 'date,hole,disc,rest_to_basket_m,holed\n2026-05-01,1,Plain midrange,4,\n,1,putt,,yes\n');
    await eventually(() => rounds(page).count()).toBe(before + 1);
    await page.locator('.library-item[data-chosen] strong', { hasText: '2026-05-01' }).waitFor();
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Export as table' }).click(),
    ]);
    expect(download.suggestedFilename()).toBe('tiny-links-2026-05-01.csv');
    const text = readFileSync(await download.path(), 'utf8');
    expect(text.split('\n')[1]).toContain('mid');
    const holes = [{ ref: '1', throws: [{ discId: 'putt', holed: true }] }];
    const round = { schema: 'roundwright/round@1', date: '2026-05-02', holes };
    await page.goto(`${app.home}#course`);
    await page.getByRole('heading', { name: 'Courses' }).waitFor();
    await page.evaluate(dropped('round.json', JSON.stringify(round)));
    await page.getByRole('heading', { name: 'Rounds' }).waitFor();
    await page.locator('.library-item', { hasText: '2026-05-02' }).waitFor();
    expect(complaints).toEqual([]);
    await page.context().close();
  }, 240_000);
});

describe('a reviewed round', () => {
  it('shows what the wind changed, teaches the bag when asked, and stands in the season', async () => {
    await keptRound('2026-05-31');
    await reviewedRound('2026-06-07');
    const { page, complaints } = await openReview();
    await page.locator('.library-item', { hasText: '2026-06-07' }).click();
    await page.locator('.review-headline').waitFor();

    await page.getByRole('tab', { name: 'The wind' }).click();
    const wind = page.getByRole('region', { name: 'Wind that blew' });
    await wind.getByLabel('Wind', { exact: true }).fill('7');
    await wind.getByLabel('Wind', { exact: true }).press('Enter');
    await page.getByText('was changed since this review was made').waitFor();
    await page.getByRole('button', { name: 'Review again' }).click();
    await page.getByRole('region', { name: 'The plan in both winds' }).waitFor({ timeout: 120_000 });
    await page.getByRole('tab', { name: 'Won and lost' }).click();
    await page.getByText('the wind it was planned for').click();
    await eventually(() => page.locator('.review-headline').textContent()).toContain('1.0 m/s');

    await page.getByRole('tab', { name: 'Teach the bag' }).click();
    await page.getByLabel('Take throw 1 of hole 1').waitFor();
    expect(await page.getByLabel('Take throw 1 of hole 1').isChecked()).toBe(true);
    await page.getByRole('button', { name: 'Show what 1 throw would change' }).click();
    await page.getByRole('region', { name: 'What would change' }).waitFor({ timeout: 120_000 });
    await page.getByRole('button', { name: 'Add 1 throw to the fieldwork' }).click();
    await eventually(() => page.locator('.review-state').textContent()).toContain('No throw of this round');
    await page.getByRole('button', { name: /^Undo: Add 1 throw/ }).click();
    await page.getByLabel('Take throw 1 of hole 1').waitFor();

    await page.getByRole('button', { name: /^Season/ }).click();
    await page.getByRole('heading', { name: 'Season' }).waitFor();
    await eventually(() => page.locator('.trend-card').count()).toBeGreaterThan(2);
    // what was not reviewed is, from here
    await page.getByRole('button', { name: /^Review (it|them)$/ }).click();
    await eventually(() => page.getByText(/not reviewed, or changed since/).count()).toBe(0);
    await eventually(() => page.locator('.trend-verdict').first().textContent()).toMatch(
      /too few rounds|no clear trend/,
    );
    await page.getByRole('button', { name: '2026-06-07', exact: true }).click();
    await page.locator('.review-headline').waitFor();
    expect(complaints).toEqual([]);
    await page.context().close();
  }, 240_000);

  it.each(['light', 'dark'] as const)(
    'axe finds nothing on any of its parts, in %s',
    async colorScheme => {
      await reviewedRound('2026-06-08');
      const { page, complaints } = await openReview({ colorScheme });
      await page.locator('.library-item', { hasText: '2026-06-08' }).first().click();
      await page.locator('.review-headline').waitFor();
      for (const tab of ['Won and lost', 'The wind', 'Teach the bag', 'Enter']) {
        await page.getByRole('tab', { name: tab }).click();
        await page.waitForTimeout(300);
        expect(await violationsOf(page), tab).toEqual([]);
      }
      await page.getByRole('button', { name: /^Hole 2/ }).click();
      await page.locator('.throw-form').waitFor();
      expect(await violationsOf(page), 'next throw').toEqual([]);
      await page.getByRole('button', { name: /^Season/ }).click();
      await page.locator('.trend-card').first().waitFor();
      expect(await violationsOf(page), 'season').toEqual([]);
      expect(complaints).toEqual([]);
      await page.context().close();
    },
    240_000,
  );

  it.each([
    { width: 1280, height: 800 },
    { width: 900, height: 700 },
    { width: 640, height: 400 },
  ])(
    'nothing must be scrolled sideways at $width × $height',
    async viewport => {
      await reviewedRound('2026-06-09');
      const { page } = await openReview({ viewport });
      await page.locator('.library-item', { hasText: '2026-06-09' }).first().click();
      await page.locator('.review-headline').waitFor();
      const sideways = 'document.documentElement.scrollWidth - document.documentElement.clientWidth';
      for (const tab of ['Won and lost', 'The wind', 'Teach the bag', 'Enter']) {
        await page.getByRole('tab', { name: tab }).click();
        expect(await page.evaluate(sideways), tab).toBeLessThanOrEqual(0);
      }
      await page.context().close();
    },
    240_000,
  );
});
