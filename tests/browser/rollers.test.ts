import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { tinyCourse, tinyPlayer } from '../backend/tiny-round.ts';
import { area } from '../core/course/course-file.ts';
import { ROLLERS } from '../core/strategy/special-player.ts';
import { openBrowser } from './open-browser.ts';
import { eventually, openPage, planned, shownThrow } from './open-page.ts';
import { type RunningApp, startApp } from './start-app.ts';
import { tabTo } from './tab-to.ts';
import { violationsOf } from './violations.ts';

let app: RunningApp;
let browser: Browser;
beforeAll(async () => {
  [app, browser] = await Promise.all([startApp(), openBrowser()]);
  const player = tinyPlayer();
  const special = (shape: string, landings: readonly (readonly [number, number])[]) =>
    landings.map(([distance_m, side_m]) => ({ discId: 'mid', shape, distance_m, side_m }));
  const measured = {
    ...player,
    sessions: [
      ...player.sessions,
      { date: '2026-05-20', throws: [...special('roller', ROLLERS), ...special('overhead', [[60, -4] as const])] },
    ],
  };
  const low = area(
    [
      [5, -30],
      [72, -30],
      [72, 30],
      [5, 30],
    ],
    { obstacle: 'ceiling', min_height: '1' },
  );
  const { courseId } = await answered('importCourse', {
    fileName: 'c.geojson',
    text: JSON.stringify(tinyCourse(low)),
  });
  const { playerId } = await answered('importPlayer', { fileName: 'p.json', text: JSON.stringify(measured) });
  const day = { wind: { speed_mps: 2, from_deg: 250 } };
  await answered('setSettings', { change: { courseId, playerId, ref: '1', day } });
}, 240_000);
afterAll(async () => {
  await browser?.close();
  await app?.close();
});

async function answered(method: string, input: unknown) {
  const answer = await app.call(method, input);
  if (!answer.ok) throw new Error(`${method}: ${JSON.stringify(answer.problems)}`);
  return answer.value as Record<string, string>;
}

describe('rollers and overhead throws', () => {
  it('a roller is the throw under low branches: how, where, with its caution; another is a key away', async () => {
    const { page, complaints } = await openPage(browser, app);
    await planned(page);
    expect(await shownThrow(page)).toMatch(/Plain midrange \| Midrange roller, backhand/);
    const card = page.locator('.shot-card').first();
    expect(await card.textContent()).toMatch(/On its edge, top face \d+° (up|down)/);
    expect(await card.textContent()).toMatch(/Rolls\s*from \d+ m on/);
    expect(await card.textContent()).toContain('ROLLER: it runs far along the ground');
    // drawn to where it rests: the last of the flight in the side view lies near the basket
    await page.locator('.side-flight').first().waitFor();
    expect(await violationsOf(page)).toEqual([]);
    await page.getByRole('tab', { name: 'Why' }).focus();
    await page.keyboard.press('ArrowRight');
    await tabTo(page, /alternative/);
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    await eventually(() => shownThrow(page)).not.toMatch(/roller/);
    expect(complaints).toEqual([]);
    await page.context().close();
  }, 240_000);

  it('bag and fieldwork say what is fitted of them, and how many more are needed', async () => {
    const { page, complaints } = await openPage(browser, app);
    await page.goto(`${app.home}#bag`);
    await page.getByRole('tab', { name: 'Discs' }).focus();
    await page.keyboard.press('ArrowRight');
    const list = page.getByRole('region', { name: 'Rollers and overhead throws' });
    await list.waitFor({ timeout: 120_000 });
    expect(await list.textContent()).toMatch(
      /8 rollers fitted on their own: 8\d m on average ± \d+ m, ending \d m right/,
    );
    expect(await list.textContent()).toContain('1 of 5 overhead throws measured: 4 more');
    expect(await list.textContent()).toContain('ease in');
    expect(await violationsOf(page)).toEqual([]);
    await page.goto(`${app.home}#fieldwork`);
    await page.getByRole('tab', { name: 'Where they land' }).click();
    await page.locator('.scatter-plot').first().waitFor({ timeout: 120_000 });
    await page
      .getByRole('button', { name: /Plain midrange/ })
      .first()
      .click();
    await page.getByRole('region', { name: 'Rollers and overhead throws' }).waitFor({ timeout: 60_000 });
    await page.locator('.scatter-throws summary').press('Enter');
    await eventually(() => page.locator('.scatter-throws').textContent()).toContain('roller: counts among those');
    expect(await page.locator('.scatter-throws').textContent()).toContain('overhead: kept until there are 4 more');
    expect(await violationsOf(page)).toEqual([]);
    expect(complaints).toEqual([]);
    await page.context().close();
  }, 240_000);
});
