import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { PLACES } from '../../renderer/shell/places.ts';
import { tinyCourse, tinyPlayer } from '../backend/tiny-round.ts';
import { feature } from '../core/course/course-file.ts';
import { openBrowser } from './open-browser.ts';
import { eventually, openPage } from './open-page.ts';
import { type RunningApp, startApp } from './start-app.ts';
import { tabTo } from './tab-to.ts';
import { violationsOf } from './violations.ts';

let app: RunningApp;
let browser: Browser;
beforeAll(async () => {
  [app, browser] = await Promise.all([startApp(), openBrowser()]);
  const layout = feature(null, { disc_golf: 'layout', name: 'Long tees of the winter round', holes: [{ ref: '2' }] });
  const text = JSON.stringify(tinyCourse(layout)).replace('Tiny Links', LONG);
  const { courseId } = await answered('importCourse', { fileName: 'c.geojson', text });
  const { playerId } = await answered('importPlayer', {
    fileName: 'p.json',
    text: JSON.stringify({ ...tinyPlayer(), name: 'A player with a name that takes room' }),
  });
  await answered('setSettings', { change: { courseId, playerId, ref: '1' } });
}, 120_000);
afterAll(async () => {
  await browser?.close();
  await app?.close();
});

const LONG = 'The Long Course in the Woods beyond the Upper Mill';

async function answered(method: string, input: unknown) {
  const answer = await app.call(method, input);
  if (!answer.ok) throw new Error(`${method}: ${JSON.stringify(answer.problems)}`);
  return answer.value as Record<string, string>;
}

/** Middles of all that stands in the bar, the links first; and its height. */
const MIDDLES = `(() => {
  const middle = e => { const box = e.getBoundingClientRect(); return Math.round((box.top + box.bottom) / 2); };
  const bar = document.querySelector('.top-bar');
  return {
    links: [...bar.querySelectorAll('.places a')].map(middle),
    others: [...bar.querySelectorAll('.top-field select, .top-group button, .reading summary')].map(middle),
    height: bar.getBoundingClientRect().height,
    beyond: [...bar.querySelectorAll('a, select, button, summary')].filter(e => e.getBoundingClientRect().right > innerWidth).length,
  };
})()`;
type Middles = Readonly<{ links: number[]; others: number[]; height: number; beyond: number }>;
const lines = (middles: readonly number[]) => {
  const sorted = [...middles].sort((a, b) => a - b);
  return sorted.filter((y, i) => i === 0 || y - sorted[i - 1]! > 8).length;
};

async function atFieldwork(options: Parameters<typeof openPage>[2]): Promise<Page> {
  const { page } = await openPage(browser, app, options);
  await page.goto(`${app.home}#fieldwork`);
  await eventually(() => page.locator('.top-field').count()).toBe(3);
  return page;
}

describe('the top bar with long names and a layout', () => {
  // Heights set by eye: 45 pixels hold one line of links and fields with room around it, a second takes 32 more.
  it.each([
    { width: 1920, height: 1080, all: 1, most_px: 45 },
    { width: 1280, height: 800, all: 1, most_px: 45 },
    { width: 1250, height: 800, all: 1, most_px: 45 },
    { width: 900, height: 700, all: 2, most_px: 78 },
  ])(
    'has its links in one line and takes $all at $width × $height',
    async ({ width, height, all, most_px }) => {
      const page = await atFieldwork({ viewport: { width, height } });
      const found = (await page.evaluate(MIDDLES)) as Middles;
      expect(found.links).toHaveLength(Object.keys(PLACES).length);
      expect(lines(found.links)).toBe(1);
      expect(lines([...found.links, ...found.others])).toBe(all);
      expect(found.height).toBeLessThanOrEqual(most_px);
      expect(found.beyond).toBe(0);
      await page.context().close();
    },
    120_000,
  );

  it.each(['light', 'dark'] as const)(
    'names its fields where no label is seen, and axe finds nothing, %s',
    async colorScheme => {
      const page = await atFieldwork({ colorScheme });
      expect(await page.getByRole('combobox', { name: 'Course', exact: true }).getAttribute('title')).toBe(LONG);
      await page.getByRole('combobox', { name: 'Layout', exact: true }).waitFor();
      await page.getByRole('combobox', { name: 'Player', exact: true }).waitFor();
      expect(await violationsOf(page)).toEqual([]);
      await page.context().close();
    },
    120_000,
  );

  it('reaches every view by Tab and Enter', async () => {
    const page = await atFieldwork({});
    for (const [name, words] of Object.entries(PLACES)) {
      await page.locator('.brand').evaluate('() => document.activeElement.blur()');
      await page.locator('.places a').first().focus();
      if (name !== 'round') await tabTo(page, new RegExp(`^A +${words} `));
      await page.keyboard.press('Enter');
      await eventually(() => page.locator('.places a[aria-current="page"]').textContent()).toBe(words);
    }
    await page.context().close();
  }, 120_000);
});
