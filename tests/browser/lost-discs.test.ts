import type { FeatureCollection } from 'geojson';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { tagOf } from '../../core/course/edit/edit-tags.ts';
import { openBrowser } from './open-browser.ts';
import { eventually, openPage, planned } from './open-page.ts';
import type { RunningApp } from './start-app.ts';
import { startTinyApp } from './start-tiny-app.ts';
import { tabTo } from './tab-to.ts';
import { violationsOf } from './violations.ts';

let app: RunningApp;
let browser: Browser;
beforeAll(async () => {
  [app, browser] = await Promise.all([startTinyApp(), openBrowser()]);
}, 120_000);
afterAll(async () => {
  await browser?.close();
  await app?.close();
});

const press = async (page: Page, ...keys: string[]) => {
  for (const key of keys) await page.keyboard.press(key);
};
const times = (key: string, n: number): string[] => Array.from({ length: n }, () => key);

describe('rough where discs get lost', () => {
  it('is drawn by keyboard with its share, drawn on the hole, and named with its chance beside the throw', async () => {
    const { page, complaints } = await openPage(browser, app);
    await page.goto(`${app.home}#course`);
    await page.getByRole('button', { name: /^Tiny Links \d/ }).click();
    await page.getByRole('button', { name: 'Edit the map' }).click();
    await page.locator('.hole-now').waitFor();
    await page.getByRole('radio', { name: 'rough', exact: true }).focus();
    await page.keyboard.press('Enter');
    await tabTo(page, /Drawing ground/);
    // The cross begins at the tee: a square of 80 m round the basket, 80 m east of it.
    await press(page, ...times('Shift+ArrowRight', 4), ...times('Shift+ArrowDown', 4), 'Enter');
    await press(page, ...times('Shift+ArrowRight', 8), 'Enter', ...times('Shift+ArrowUp', 8), 'Enter');
    await press(page, ...times('Shift+ArrowLeft', 8), 'Enter', 'f');
    await page.getByRole('heading', { name: 'rough' }).waitFor();
    await tabTo(page, /Share of discs not found/);
    await page.keyboard.type('20%');
    await page.keyboard.press('Enter');
    await page.getByText('Whole: it can be saved').waitFor();
    expect(await violationsOf(page)).toEqual([]);
    await tabTo(page, /Save course/);
    await page.keyboard.press('Enter');
    await page.getByText('Tiny Links saved').waitFor();

    const answer = await app.call('exportCourse', { courseId: await courseId() });
    if (!answer.ok) throw new Error(JSON.stringify(answer.problems));
    const { features } = JSON.parse((answer.value as { text: string }).text) as FeatureCollection;
    expect(features.map(feature => tagOf(feature, 'lost_disc')).filter(Boolean)).toEqual(['20%']);

    await page.goto(`${app.home}#round`);
    await planned(page);
    await eventually(() => page.locator('.shot-away').textContent()).toMatch(
      /ground where the disc may be lost \((1\d|20) %\)/,
    );
    await eventually(() => page.locator('.map-lost').count()).toBeGreaterThan(0);
    expect(await violationsOf(page)).toEqual([]);
    expect(complaints).toEqual([]);
    await page.context().close();
  }, 300_000);
});

async function courseId(): Promise<string> {
  const answer = await app.call('listCourses', {});
  if (!answer.ok) throw new Error(JSON.stringify(answer.problems));
  const lines = answer.value as { courseId: string; name: string }[];
  return lines.find(({ name }) => name === 'Tiny Links')!.courseId;
}
