import axe from 'axe-core';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { tinyCourse, tinyPlayer } from '../backend/tiny-round.ts';
import { openBrowser } from './open-browser.ts';
import { eventually, openPage } from './open-page.ts';
import { type RunningApp, startApp } from './start-app.ts';

let app: RunningApp;
let browser: Browser;
beforeAll(async () => {
  [app, browser] = await Promise.all([startApp(), openBrowser()]);
  const { playerId } = await answered('importPlayer', { fileName: 'p.json', text: JSON.stringify(variedPlayer()) });
  const { courseId } = await answered('importCourse', { fileName: 'c.geojson', text: JSON.stringify(tinyCourse()) });
  const day = { wind: { speed_mps: 3, from_deg: 250 } };
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

/** The tiny player with a driver far too fast for the arm, and a midrange that finishes further right from month to month. */
function variedPlayer() {
  const player = tinyPlayer();
  const later = (date: string, right_m: number) => ({
    date,
    throws: [0, 1, 2, 3, 4, 5, 6, 7].map(i => ({ discId: 'mid', distance_m: 78 + i, side_m: right_m + (i % 3) - 1 })),
  });
  return {
    ...player,
    discs: [...player.discs, { id: 'fast', name: 'Fast driver', speed: 13, glide: 5, turn: -1, fade: 3 }],
    sessions: [...player.sessions, later('2026-06-01', 8), later('2026-07-01', 16)],
  };
}

async function openTab(page: Page, name: string): Promise<void> {
  await page.getByRole('tab', { name, exact: true }).click();
}

async function violationsOf(page: Page): Promise<string[]> {
  await page.evaluate(axe.source);
  const found = (await page.evaluate('axe.run().then(result => result.violations)')) as {
    id: string;
    nodes: { html: string }[];
  }[];
  return found.flatMap(({ id, nodes }) => nodes.map(node => `${id}: ${node.html.slice(0, 160)}`));
}

const TABS = ['Discs', 'Range', 'Gaps and doubles', 'Arm and wear', 'Measure next'];
const SIDEWAYS = 'document.documentElement.scrollWidth - document.documentElement.clientWidth';

describe('the bag', () => {
  it('shows the range with its uncertainty and basis, what is missing or double, what is too fast, what has changed', async () => {
    const { page, complaints } = await openPage(browser, app);
    await page.goto(`${app.home}#bag`);
    await openTab(page, 'Range');
    const midrange = page.getByRole('row', { name: /Plain midrange/ });
    await midrange.waitFor({ timeout: 120_000 });
    expect(await midrange.textContent()).toMatch(/8\d m ±\s\d+\sm.*measured, \d+ throws/);
    expect(await page.getByRole('row', { name: /Home putter/ }).textContent()).toContain('kept for putts');
    await openTab(page, 'Gaps and doubles');
    expect(await page.getByRole('region', { name: 'Gaps' }).textContent()).toContain(
      'nothing between Throwing putter (64 m) and Plain midrange',
    );
    const list = page.getByRole('list', { name: /Throwing discs, backhand/ });
    expect(await list.getByRole('listitem').count()).toBe(3); // the putting putter is not among them
    await page.getByText('Forehand', { exact: true }).click();
    await page.getByRole('list', { name: /Throwing discs, forehand/ }).waitFor();
    await openTab(page, 'Arm and wear');
    const fast = page.getByRole('region', { name: 'Too fast for now' });
    expect(await fast.textContent()).toContain('Fast driver is too fast for now: Plain midrange goes 8');
    expect(await fast.textContent()).toContain('released on anhyzer');
    expect(await page.getByRole('region', { name: 'Wear' }).textContent()).toContain('has become less stable');
    expect(complaints).toEqual([]);
    await page.context().close();
  }, 240_000);

  it('a disc whose number was wrong is saved once it is mended, by keyboard alone', async () => {
    const { page, complaints } = await openPage(browser, app);
    await page.goto(`${app.home}#bag`);
    await page.getByRole('button', { name: 'Edit Throwing putter' }).focus();
    await page.keyboard.press('Enter');
    const form = page.getByRole('form', { name: 'Change the disc' });
    const write = async (label: string, text: string) => {
      await form.getByLabel(label).focus();
      await page.keyboard.press('ControlOrMeta+A');
      await page.keyboard.type(text);
      await page.keyboard.press('Enter');
    };
    await write('Glide', 'much');
    await form.getByText('Not saved. Look again at: Glide').waitFor();
    expect(await form.getByLabel('Glide').getAttribute('aria-invalid')).toBe('true');
    expect(await violationsOf(page)).toEqual([]);
    // again with nothing mended: it is looked at again, not blocked
    await write('Fade', 'little');
    await form.getByText('Not saved. Look again at: Glide, Fade').waitFor();
    await write('Fade', '1');
    await form.getByText('Not saved. Look again at: Glide', { exact: true }).waitFor();
    await write('Name', ' ');
    await form.getByText('Not saved. Look again at: Name, Glide').waitFor();
    await write('Name', 'Throwing putter');
    await write('Glide', '3.5');
    await eventually(() => form.count()).toBe(0);
    expect(await page.getByRole('row', { name: /Throwing putter/ }).textContent()).toContain('3.5');
    expect(complaints).toEqual([]);
    await page.getByRole('button', { name: /^Undo/ }).click();
    await eventually(() => page.getByRole('row', { name: /Throwing putter/ }).textContent()).not.toContain('3.5');
    await page.context().close();
  }, 240_000);

  it('writes everything in feet when feet are chosen', async () => {
    await answered('setSettings', { change: { length: 'ft' } });
    const { page } = await openPage(browser, app);
    await page.goto(`${app.home}#bag`);
    for (const tab of ['Range', 'Gaps and doubles', 'Arm and wear']) {
      await openTab(page, tab);
      await eventually(() => page.getByRole('tabpanel').textContent()).toMatch(/\d ft/);
      const text = await page.getByRole('tabpanel').textContent();
      expect(text?.match(/\d m\b(?!\/s)/g), tab).toBeNull();
    }
    await answered('setSettings', { change: { length: 'm' } });
    await page.context().close();
  }, 240_000);

  it('finds out what to measure next by keyboard alone, with progress, and can be stopped', async () => {
    const { page, complaints } = await openPage(browser, app);
    await page.goto(`${app.home}#bag`);
    await page.getByRole('tab', { name: 'Discs' }).focus();
    for (let i = 0; i < 4; i++) await page.keyboard.press('ArrowRight');
    await page.getByRole('button', { name: 'Find out what to measure' }).waitFor();
    expect(await page.getByRole('tab', { name: 'Measure next' }).getAttribute('aria-selected')).toBe('true');
    // the tab panel may take the focus on the way to what is in it
    const reach = async (name: string) => {
      const focused = () => page.evaluate('document.activeElement?.textContent ?? ""') as Promise<string>;
      for (let i = 0; i < 4 && (await focused()) !== name; i++) await page.keyboard.press('Tab');
      expect(await focused()).toBe(name);
    };
    await reach('Find out what to measure');
    await page.keyboard.press('Enter');
    const progress = page.getByRole('progressbar', { name: 'Holes looked at' });
    await progress.waitFor();
    await page.getByRole('button', { name: 'Cancel' }).focus();
    await page.keyboard.press('Enter');
    await eventually(() => page.getByText('Stopped: nothing was found out.').count()).toBe(1);
    await page.getByRole('button', { name: 'Ask again' }).focus();
    await page.keyboard.press('Enter');
    await eventually(() => page.getByRole('heading', { name: 'Tiny Links' }).count()).toBe(1);
    expect(await progress.count()).toBe(0);
    await eventually(() => page.locator('.measure-next [role="status"]').textContent()).toMatch(
      /to the field|No session would change/,
    );
    // the answer stays while the app is open, and says when it no longer fits
    await page.goto(`${app.home}#round`);
    await page.goto(`${app.home}#bag`);
    await openTab(page, 'Measure next');
    await page.getByRole('heading', { name: 'Tiny Links' }).waitFor();
    expect(await page.getByText('From before:').count()).toBe(0);
    expect(complaints).toEqual([]);
    await page.context().close();
  }, 300_000);

  it.each([
    { colorScheme: 'light', width: 1280, height: 800 },
    { colorScheme: 'dark', width: 900, height: 700 },
  ] as const)(
    'axe finds nothing on any tab, $colorScheme, and nothing is wider than $width',
    async look => {
      const { colorScheme, ...viewport } = look;
      const { page } = await openPage(browser, app, { colorScheme, viewport });
      await page.goto(`${app.home}#bag`);
      await openTab(page, 'Range');
      await page.getByRole('row', { name: /Plain midrange/ }).waitFor({ timeout: 120_000 });
      for (const tab of TABS) {
        await openTab(page, tab);
        await eventually(() => page.getByRole('tab', { name: tab, exact: true }).getAttribute('aria-selected')).toBe(
          'true',
        );
        expect(await violationsOf(page), tab).toEqual([]);
        expect(await page.evaluate(SIDEWAYS), tab).toBeLessThanOrEqual(0);
      }
      await page.context().close();
    },
    240_000,
  );
});
