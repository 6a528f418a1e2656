import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Output } from '../../backend/api/contract/api.ts';
import { openBrowser } from './open-browser.ts';
import { openPage, planned } from './open-page.ts';
import type { RunningApp } from './start-app.ts';
import { startTinyApp } from './start-tiny-app.ts';
import { focused, tabTo } from './tab-to.ts';
import { violationsOf } from './violations.ts';

/** Looks again until it holds; short, for nothing here takes long but the first fit. */
const eventually = <T>(look: () => T | Promise<T>) => expect.poll(look, { timeout: 20_000, interval: 50 });

let app: RunningApp;
let browser: Browser;
beforeAll(async () => {
  [app, browser] = await Promise.all([startTinyApp(), openBrowser()]);
}, 120_000);
afterAll(async () => {
  await browser?.close();
  await app?.close();
});

async function openFieldwork(options: Parameters<typeof openPage>[2] = {}) {
  const opened = await openPage(browser, app, options);
  await opened.page.goto(`${app.home}#fieldwork`);
  await opened.page.getByRole('tab', { name: 'Sessions' }).waitFor();
  opened.page.setDefaultTimeout(20_000);
  return opened;
}

const rowsOf = (page: Page) => page.locator('section[aria-label="Throws of this session"] tbody tr');
const type = async (page: Page, ...keys: string[]) => {
  for (const key of keys) {
    if (/^(Enter|Tab|Escape|Space|Arrow\w+)$/.test(key)) await page.keyboard.press(key);
    else await page.keyboard.type(key);
  }
};
/** Takes the focus out of any field, where Ctrl+Z belongs to the typing. */
const undo = async (page: Page) => {
  await page.evaluate('document.activeElement.blur()');
  await page.keyboard.press('ControlOrMeta+Z');
};

describe('fieldwork without a mouse', () => {
  it('a session is begun and filled with distance, Enter, side, Enter; throws are mended and undone', async () => {
    const { page, complaints } = await openFieldwork();
    await tabTo(page, /New session/);
    await type(page, 'Enter');
    await eventually(() => focused(page)).toMatch(/Date/);
    await type(page, 'Tab', 'N', 'Tab', '3', 'Tab');
    await tabTo(page, /Start entering throws/);
    await type(page, 'Enter');
    await page.getByText(/where does it blow from/).waitFor();
    await tabTo(page, /Wind from/, 'Shift+Tab');
    await type(page, 'W');
    await tabTo(page, /Start entering throws/);
    await type(page, 'Enter');
    await page.getByText(/No throws yet/).waitFor();
    await eventually(() => focused(page)).toMatch(/Distance, m/);

    await type(page, '82,5', 'Enter', '3 l', 'Enter');
    await eventually(() => rowsOf(page).count()).toBe(1);
    await eventually(() => focused(page)).toMatch(/Distance, m/);
    await type(page, '270ft', 'Enter', 'Enter');
    await eventually(() => rowsOf(page).count()).toBe(2);
    await type(page, 'far', 'Enter');
    await page.getByText(/not a length/).waitFor();
    await page.keyboard.press('ControlOrMeta+A');
    await type(page, '79', 'Enter', 'up', 'Enter');
    await page.getByText(/not a length/).waitFor();
    await page.keyboard.press('ControlOrMeta+A');
    await type(page, '-1.5', 'Enter');
    await eventually(() => rowsOf(page).allTextContents()).toEqual([
      expect.stringMatching(/^3.*79\.0 m1\.5 m left/),
      expect.stringMatching(/^2.*82\.3 mnot measured/), // 270 ft = 82.296 m
      expect.stringMatching(/^1.*82\.5 m3\.0 m left/),
    ]);
    await page.getByText('crosswind from the left 3.0 m/s').first().waitFor(); // west wind, thrown north
    await page.keyboard.press('ControlOrMeta+Z');
    await eventually(() => rowsOf(page).count()).toBe(2);
    await type(page, '79', 'Enter', '-1.5', 'Enter');
    await eventually(() => rowsOf(page).count()).toBe(3);

    await tabTo(page, /Edit throw 2/);
    await type(page, 'Enter');
    await eventually(() => focused(page)).toMatch(/Distance, m/);
    await type(page, 'Tab', '2 r', 'Enter');
    await eventually(() => rowsOf(page).nth(1).textContent()).toMatch(/82\.3 m2\.0 m right/);
    await tabTo(page, /Delete throw 3/);
    await type(page, 'Enter');
    await eventually(() => rowsOf(page).count()).toBe(2);
    await undo(page);
    await eventually(() => rowsOf(page).count()).toBe(3);
    await undo(page);
    await eventually(() => rowsOf(page).nth(1).textContent()).toMatch(/not measured/);
    await page.keyboard.press('ControlOrMeta+Shift+Z');
    await eventually(() => rowsOf(page).nth(1).textContent()).toMatch(/2\.0 m right/);
    expect(complaints).toEqual([]);
    await page.context().close();
  }, 240_000);

  it('a table is pasted, told its columns, and taken in without its bad row', async () => {
    const { page, complaints } = await openFieldwork();
    const sessions = page.locator('.library-list .library-item');
    const before = await sessions.count();
    await tabTo(page, /Import CSV/);
    await type(page, 'Enter');
    await eventually(() => focused(page)).toMatch(/Choose a file/);
    await tabTo(page, /TEXTAREA/);
    await page.keyboard.insertText('Far;Off;Disc\n262,5;3 L;plain midrange\n270;1;mid\n200;x;nope\n');
    await tabTo(page, /Read the table/);
    await type(page, 'Enter');
    await page.getByText(/Nothing can be read yet/).waitFor();
    expect(await violationsOf(page), 'dialog').toEqual([]);
    // a select takes the letters of its options
    await tabTo(page, /Column 1, Far, holds/);
    await type(page, 'distance along');
    await tabTo(page, /Column 1, Far, unit/);
    await type(page, 'feet');
    await tabTo(page, /Column 2, Off, holds/);
    await type(page, 'side, right');
    await tabTo(page, /Column 2, Off, unit/);
    await type(page, 'metres');
    await page.getByText('2 throws in 1 session would be added.').waitFor();
    await page.getByText(/"nope" is no disc of this player/).waitFor();
    const add = page.getByRole('button', { name: 'Add 2 throws' });
    expect(await add.isDisabled()).toBe(true);
    expect(await violationsOf(page), 'dialog with rows').toEqual([]);
    await tabTo(page, /Leave the 1 bad row out/);
    await type(page, 'Space');
    await tabTo(page, /Add 2 throws/);
    await type(page, 'Enter');
    await page.locator('.csv-dialog').waitFor({ state: 'detached' });
    await eventually(() => sessions.count()).toBe(before + 1);
    await undo(page);
    await eventually(() => sessions.count()).toBe(before);

    await tabTo(page, /Import CSV/);
    await type(page, 'Enter');
    await page.locator('.csv-dialog').waitFor();
    await type(page, 'Escape');
    await page.locator('.csv-dialog').waitFor({ state: 'detached' });
    expect(complaints).toEqual([]);
    await page.context().close();
  }, 240_000);

  it('rests are marked on a map from a line marked there', async () => {
    const { page, complaints } = await openFieldwork();
    await tabTo(page, /New session/);
    await type(page, 'Enter');
    await tabTo(page, /Start entering throws/);
    await type(page, 'Enter');
    await tabTo(page, /Measured/);
    await type(page, 'on a map');
    await page.getByText('Tap where you stand').waitFor();
    const coordinates = page.getByLabel('Or latitude, longitude');
    await tabTo(page, /Or latitude, longitude/);
    await type(page, '200, 10', 'Enter');
    await page.getByText(/latitude 200 is not on the map/).waitFor();
    await page.keyboard.press('ControlOrMeta+A');
    await type(page, '60.0000, 25.0000', 'Enter');
    await page.getByText('Tap a far point on your line').waitFor();
    await type(page, '60.0010, 25.0000', 'Enter');
    await page.getByText(/Your line: 0° from north/).waitFor();
    expect(await coordinates.inputValue()).toBe('');
    // a thousandth of a degree north of 60°: 111.41 m (metres per degree 111,412.287 at 60°, computed in the references)
    await type(page, '60.0010, 25.0001', 'Enter');
    await eventually(() => rowsOf(page).count()).toBe(1);
    // 0.0001° east at 60°: 5.58 m (55,800 m per degree)
    await eventually(() => rowsOf(page).first().textContent()).toMatch(/111 m5\.6 m right|111\.4 m5\.6 m right/);
    // the last place stands in the middle: Enter on the map marks it once more
    await tabTo(page, /leaflet-container/, 'Shift+Tab');
    await type(page, 'ArrowLeft');
    await page.waitForTimeout(600); // the map glides
    await type(page, 'Enter');
    await eventually(() => rowsOf(page).count()).toBe(2);
    expect(await violationsOf(page)).toEqual([]);
    // a tap does the same
    const frame = (await page.locator('.tap-frame').boundingBox())!;
    await page.mouse.click(frame.x + frame.width * 0.6, frame.y + frame.height * 0.6);
    await eventually(() => rowsOf(page).count()).toBe(3);
    expect(complaints).toEqual([]);
    await page.context().close();
  }, 240_000);

  it('in feet, a plain number is feet', async () => {
    await app.call('setSettings', { change: { length: 'ft' } });
    const { page } = await openFieldwork();
    await eventually(() => focused(page)).toMatch(/Distance, ft/);
    const before = await rowsOf(page).count();
    await type(page, '262.5', 'Enter', '-10', 'Enter');
    await eventually(() => rowsOf(page).count()).toBe(before + 1);
    expect(await rowsOf(page).first().textContent()).toMatch(/262\.5 ft10\.0 ft left/);
    const { playerId } = ((await app.call('getSettings', {})) as { value: { playerId: string } }).value;
    const work = (await app.call('getFieldwork', { playerId })) as { value: Output<'getFieldwork'> };
    // exact factor 0.3048: NIST SP 811, B.8
    expect(work.value.sessions.at(-1)!.throws.at(-1)).toMatchObject({ distance_m: 80.01, side_m: -3.048 });
    await app.call('setSettings', { change: { length: 'm' } });
    await page.context().close();
  }, 240_000);

  it('putts are logged, mended and undone, and the curve follows', async () => {
    const { page, complaints } = await openFieldwork();
    await tabTo(page, /^\S+ +Sessions/);
    await type(page, 'ArrowRight', 'ArrowRight');
    await page.locator('.putting-chart').waitFor();
    const rows = page.locator('section[aria-label="Putts logged"] tbody tr');
    expect(await rows.count()).toBe(2);
    await page.getByText('54 of 80').waitFor(); // tinyPlayer: 38 of 40 from 3 m, 16 of 40 from 8 m
    await tabTo(page, /From, m/);
    await type(page, '5', 'Enter', '20', 'Enter', '15', 'Enter');
    await eventually(() => rows.count()).toBe(3);
    await page.getByText('69 of 100').waitFor();
    await eventually(() => focused(page)).toMatch(/From, m/);
    // tries are kept: distance, makes
    await type(page, '12', 'Enter', '21', 'Enter');
    await page.getByText('more than the 20 tries').waitFor();
    await page.keyboard.press('ControlOrMeta+A');
    await type(page, '4', 'Enter');
    await eventually(() => rows.count()).toBe(4);
    await page.getByText('4 of 20', { exact: true }).first().waitFor();
    await tabTo(page, /Delete row 4/);
    await type(page, 'Enter');
    await eventually(() => rows.count()).toBe(3);
    await undo(page);
    await eventually(() => rows.count()).toBe(4);
    expect(complaints).toEqual([]);
    await page.context().close();
  }, 240_000);
});

describe('a player from nothing', () => {
  it('is started with one disc and one throw, and taken back', async () => {
    const { page, complaints } = await openFieldwork();
    const players = async () => ((await app.call('listPlayers', {})) as { value: Output<'listPlayers'> }).value;
    const before = (await players()).length;
    await tabTo(page, /Another player/);
    await type(page, 'Enter');
    await eventually(() => focused(page)).toMatch(/Your name/);
    expect(await violationsOf(page)).toEqual([]);
    await type(
      page,
      'Tess Invented',
      'Tab',
      'Tab',
      'Old midrange',
      'Tab',
      '5',
      'Tab',
      '4',
      'Tab',
      '-1',
      'Tab',
      'x',
      'Tab',
    );
    await type(page, '250ft', 'Enter');
    await page.getByText('a number, as on the disc').waitFor();
    await tabTo(page, /Fade/, 'Shift+Tab');
    await page.keyboard.press('ControlOrMeta+A');
    await type(page, '1', 'Enter');
    await eventually(async () => (await players()).map(({ name }) => name)).toContain('Tess Invented');
    await eventually(() => rowsOf(page).allTextContents()).toEqual([expect.stringMatching(/Old midrange.*76\.2 m/)]);
    await undo(page);
    await eventually(async () => (await players()).length).toBe(before);
    expect(complaints).toEqual([]);
    await page.context().close();
    // only now: the page itself turns to another player when its own is gone
    const { playerId } = (await players()).find(({ name }) => name === 'Tiny Player')!;
    await app.call('setSettings', { change: { playerId } });
  }, 240_000);
});

describe('the plan of the round', () => {
  it('waits while throws are entered, and is made anew when it is looked at again', async () => {
    const { page, complaints } = await openPage(browser, app);
    await planned(page);
    let isPlanning = 0;
    const stop = app.subscribe(event => {
      if (event.kind === 'planProgress' || event.kind === 'planDone') isPlanning++;
    });
    await page.getByRole('link', { name: 'Fieldwork' }).click();
    await page.locator('.throw-entry').waitFor();
    await eventually(() => focused(page)).toMatch(/Distance, m/);
    const before = await rowsOf(page).count();
    await type(page, '80', 'Enter', '1', 'Enter');
    await eventually(() => rowsOf(page).count()).toBe(before + 1);
    await page.waitForTimeout(500);
    expect(isPlanning).toBe(0);
    await page.getByRole('link', { name: 'Round' }).click();
    await expect.poll(() => isPlanning, { timeout: 60_000 }).toBeGreaterThan(0);
    await planned(page);
    stop();
    expect(complaints).toEqual([]);
    await page.context().close();
  }, 240_000);
});

describe('where they land', () => {
  it('shows the scatter with its outlier marked, in words too, and the drift over time', async () => {
    const { playerId } = ((await app.call('getSettings', {})) as { value: { playerId: string } }).value;
    const thrown = (distance_m: number, side_m: number) => ({
      discId: 'mid',
      hand: 'backhand',
      shape: 'flat',
      power: 'full',
      distance_m,
      side_m,
    });
    const throws = [...[79, 83, 81, 80, 84, 78].map((far, i) => thrown(far, (i % 3) - 1)), thrown(35, 30)];
    await app.call('addSession', { playerId, session: { date: '2026-06-20', throws } });
    const { page, complaints } = await openFieldwork();
    await page.getByRole('tab', { name: 'Where they land' }).press('Enter');
    await page.getByRole('button', { name: /Plain midrange backhand/ }).press('Enter');
    await page.locator('.scatter-plot').first().waitFor({ timeout: 60_000 });
    expect(await page.locator('.scatter-plots .rest-aside').count()).toBe(3); // in both pictures, and in the legend
    await page.getByText(/1 counts less or next to nothing/).waitFor();
    const table = page.locator('section[aria-label="Throws of this picture"]');
    if (!(await table.isVisible())) await page.locator('.scatter-throws summary').press('Enter');
    await table.getByText('set aside as an outlier').waitFor();
    expect(await page.locator('.drift-chart').count()).toBe(2); // stability, and distance
    await page.locator('.scatter-head select').selectOption({ index: 1 });
    await page.getByText(/As measured, with the fitted flight/).waitFor();
    expect(complaints).toEqual([]);
    await page.context().close();
  }, 240_000);
});

describe('for every eye', () => {
  it.each(['light', 'dark'] as const)(
    'axe finds nothing in %s',
    async colorScheme => {
      const { page } = await openFieldwork({ colorScheme });
      expect(await page.locator('html').getAttribute('data-theme')).toBe(colorScheme);
      for (const [tab, ready] of [
        ['Sessions', '.throw-entry'],
        ['Where they land', '.scatter-plot'],
        ['Putting log', '.putting-chart'],
        ['Care', '.fieldwork-cautions'],
      ] as const) {
        await page.getByRole('tab', { name: tab }).click();
        await page.locator(ready).first().waitFor({ timeout: 60_000 });
        expect(await violationsOf(page), tab).toEqual([]);
      }
      await page.getByRole('tab', { name: 'Sessions' }).click();
      await page.getByRole('button', { name: 'Edit conditions' }).click();
      await page.getByRole('button', { name: 'Edit throw 1', exact: true }).click();
      expect(await violationsOf(page), 'forms').toEqual([]);
      await page.context().close();
    },
    240_000,
  );

  // 200 % zoom of 1280×800 leaves 640×400 CSS pixels: WCAG 2.2, 1.4.4 and 1.4.10
  it.each([
    { width: 1280, height: 800 },
    { width: 900, height: 700 },
    { width: 640, height: 400 },
  ])(
    'nothing must be scrolled sideways at $width × $height',
    async viewport => {
      const { page } = await openFieldwork({ viewport });
      for (const tab of ['Sessions', 'Where they land', 'Putting log', 'Care']) {
        await page.getByRole('tab', { name: tab }).click();
        if (tab === 'Where they land') await page.locator('.scatter-plot').first().waitFor({ timeout: 60_000 });
        const over = 'document.documentElement.scrollWidth - document.documentElement.clientWidth';
        expect(await page.evaluate(over), tab).toBeLessThanOrEqual(0);
      }
      await page.context().close();
    },
    240_000,
  );
});
