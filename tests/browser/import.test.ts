import axe from 'axe-core';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Fixture, fixture, fixtureText } from '../backend/import/fixture.ts';
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

const FOCUSED = `(() => {
  const e = document.activeElement;
  return [e.tagName, e.getAttribute('aria-label') ?? '', e.textContent ?? ''].join(' ');
})()`;

/** Tabs on until what holds the focus matches; fails after a whole round. */
async function tabTo(page: Page, wanted: RegExp): Promise<void> {
  for (let i = 0; i < 150; i++) {
    await page.keyboard.press('Tab');
    if (wanted.test((await page.evaluate(FOCUSED)) as string)) return;
  }
  throw new Error(`Tab never reaches ${wanted}`);
}

/** Opens the file dialog from the keyboard and hands it a file. */
async function pick(page: Page, name: string, buffer: Buffer): Promise<void> {
  await tabTo(page, /^BUTTON .*Import a course/);
  const [chooser] = await Promise.all([page.waitForEvent('filechooser'), page.keyboard.press('Enter')]);
  await chooser.setFiles({ name, mimeType: 'application/octet-stream', buffer });
  await page.locator('.import-foot').waitFor();
}

async function openCourses() {
  const watched = await openPage(browser, app);
  await watched.page.goto(`${app.home}#course`);
  await watched.page.locator('.library-item').first().waitFor({ timeout: 120_000 });
  return watched;
}

/** Words that would have to be scrolled sideways to be read. */
const SIDEWAYS = `(e => e.scrollWidth - e.clientWidth)(document.querySelector('.import-words'))`;

const names = (page: Page) => page.locator('.library-item strong').allTextContents();

async function axeFinds(page: Page): Promise<string[]> {
  await page.evaluate(axe.source);
  const found = (await page.evaluate('axe.run({ include: [["dialog"]] }).then(result => result.violations)')) as {
    id: string;
    nodes: { html: string }[];
  }[];
  return found.flatMap(({ id, nodes }) => nodes.map(({ html }) => `${id}: ${html.slice(0, 200)}`));
}

const file = (name: Fixture) => Buffer.from(fixture(name));

describe('import, with the keyboard alone', () => {
  it('waypoints: shows proposals, says what is wrong, takes in what is confirmed, undoes it', async () => {
    const { page, complaints } = await openCourses();
    const before = await names(page);
    await pick(page, 'walk.gpx', file('lantern-hollow.gpx'));
    const dialog = page.getByRole('dialog', { name: 'Import walk.gpx' });
    expect(await dialog.textContent()).toContain('Look at the 5 marked “check”');
    expect(await names(page)).toEqual(before);

    // The basket of hole 1 left out: no course, and it says why.
    await tabTo(page, /What B1 is/);
    await page.keyboard.press('End');
    await eventually(() => dialog.getByRole('alert').textContent()).toContain('has no basket');
    expect(await dialog.getByRole('button', { name: 'Add this course' }).isDisabled()).toBe(true);
    await page.keyboard.press('Home');
    await page.keyboard.press('ArrowDown');
    await eventually(() => dialog.getByRole('alert').count()).toBe(0);

    // A car park is a tree for today, and the tee of hole 1 gets a name.
    await tabTo(page, /Name of Hole 1 tee/);
    await page.keyboard.type('short');
    await tabTo(page, /What Car park is/);
    await page.keyboard.type('tree');
    await eventually(() => dialog.textContent()).toContain('1 tree');
    await eventually(() => page.locator('.import-map .map-tree').count()).toBe(1);
    await tabTo(page, /Add this course/);
    await page.keyboard.press('Enter');
    await dialog.waitFor({ state: 'detached' });
    await eventually(() => page.locator('.rename-field input').inputValue()).toBe('Lantern Hollow');
    expect(await page.locator('.disc-table tbody tr').count()).toBe(3);

    await page.locator('.brand').evaluate('() => document.activeElement.blur()');
    await page.keyboard.press('ControlOrMeta+Z');
    await eventually(() => names(page)).toEqual(before);
    expect(complaints).toEqual([]);
    await page.context().close();
  }, 240_000);

  it('an OpenStreetMap extract, and its update a month later', async () => {
    const { page, complaints } = await openCourses();
    await pick(page, 'extract.osm', file('lantern-hollow.osm'));
    await tabTo(page, /Add this course/);
    await page.keyboard.press('Enter');
    await page.getByRole('dialog').waitFor({ state: 'detached' });
    await eventually(() => page.locator('.rename-field input').inputValue()).toBe('Lantern Hollow');

    const later = fixtureText('lantern-hollow.osm').replace(
      /(<node id="1002" lat=")([\d.]+)/,
      (_, start: string, lat: string) => start + (Number(lat) + 0.0001).toFixed(7),
    );
    await pick(page, 'extract.osm', Buffer.from(later));
    const dialog = page.getByRole('dialog', { name: 'Import extract.osm' });
    await eventually(() => dialog.textContent()).toContain('Hole 1: basket moves 11.1 m');
    expect(await dialog.textContent()).toContain('basket of hole 1: moved 11.1 m');
    await tabTo(page, /INPUT/);
    await page.keyboard.press('Space');
    await eventually(() => dialog.getByRole('status').textContent()).toContain('1 of 2 differences');
    await page.keyboard.press('Space');
    await eventually(() => dialog.getByRole('status').textContent()).toContain('2 of 2 differences');
    await tabTo(page, /Update Lantern Hollow/);
    await page.keyboard.press('Enter');
    await dialog.waitFor({ state: 'detached' });
    await eventually(async () =>
      (await page.locator('.disc-table tbody tr').first().textContent())?.includes('87 m'),
    ).toBe(true);

    await pick(page, 'extract.osm', Buffer.from(later));
    await eventually(() => dialog.getByRole('status').textContent()).toContain('is the same as this map');
    await page.keyboard.press('Escape');
    await dialog.waitFor({ state: 'detached' });
    expect(complaints).toEqual([]);
    await page.context().close();
  }, 240_000);

  it('a hostile file is refused with its place and nothing changes', async () => {
    const { page } = await openCourses();
    const before = await names(page);
    await tabTo(page, /^BUTTON .*Import a course/);
    const [chooser] = await Promise.all([page.waitForEvent('filechooser'), page.keyboard.press('Enter')]);
    const hostile = '<!DOCTYPE kml [<!ENTITY a "ha">]><kml>&a;</kml>';
    await chooser.setFiles({ name: 'laughs.kml', mimeType: 'text/xml', buffer: Buffer.from(hostile) });
    const alert = page.getByRole('alert');
    await eventually(() => alert.textContent()).toContain('"laughs.kml" could not be taken in');
    expect(await alert.textContent()).toContain('line 1, column 1');
    expect(await page.getByRole('dialog').count()).toBe(0);
    expect(await names(page)).toEqual(before);
    await page.context().close();
  }, 120_000);
});

describe.each(['light', 'dark'] as const)('in %s', colorScheme => {
  it.each([
    ['wide', 1280, 800],
    ['narrow', 900, 700],
  ] as const)(
    'axe finds nothing in the dialog, %s',
    async (_, width, height) => {
      const { page } = await openPage(browser, app, { colorScheme, viewport: { width, height } });
      await page.goto(`${app.home}#course`);
      await page.locator('.library-item').first().waitFor({ timeout: 120_000 });
      for (const name of ['lantern-hollow.gpx', 'lantern-hollow.osm'] as const) {
        await pick(page, name, file(name));
        for (const details of await page.locator('.import-words details').all())
          await details.locator('summary').click();
        expect(await axeFinds(page), name).toEqual([]);
        const sideways = (await page.evaluate(SIDEWAYS)) as number;
        expect(sideways).toBeLessThanOrEqual(0);
        await page.keyboard.press('Escape');
        await page.getByRole('dialog').waitFor({ state: 'detached' });
      }
      await page.context().close();
    },
    120_000,
  );
});
