import { readFileSync } from 'node:fs';
import axe from 'axe-core';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { tileAt } from '../../core/geometry/web-tiles.ts';
import { mbtilesFile } from '../backend/base-map/mbtiles-file.ts';
import { modelBytes } from '../backend/terrain/model-file.ts';
import { openBrowser } from './open-browser.ts';
import { eventually, openPage, planned } from './open-page.ts';
import type { RunningApp } from './start-app.ts';
import { startTinyApp } from './start-tiny-app.ts';
import { tilePicture } from './tile-picture.ts';

let app: RunningApp;
let browser: Browser;
beforeAll(async () => {
  [app, browser] = await Promise.all([startTinyApp(), openBrowser()]);
}, 120_000);
afterAll(async () => {
  await browser?.close();
  await app?.close();
});

/** An invented hillside under the tiny course, 3 cm a metre eastwards. */
const MODEL = {
  code: 32635,
  lon_deg: 25.0007,
  lat_deg: 60.0009,
  pixel: 3,
  side: 301,
  height: (dx: number) => 40 + 0.03 * dx,
  verticalCode: 3900,
};

/** What axe finds wrong with the page as it stands. */
async function faults(page: Page): Promise<string[]> {
  await page.evaluate(axe.source);
  const found = (await page.evaluate('axe.run(document, { resultTypes: ["violations"] })')) as {
    violations: { id: string; nodes: { html: string }[] }[];
  };
  return found.violations.map(({ id, nodes }) => `${id}: ${nodes[0]!.html}`);
}

async function openPanel(page: Page, name: string) {
  const summary = page.locator('summary', { hasText: name });
  await summary.waitFor();
  if ((await page.locator('details.side-panel[open]', { hasText: name }).count()) > 0) return;
  await summary.focus();
  await page.keyboard.press('Enter');
}

describe('terrain', () => {
  it('is added from a file, shown with what it counts from, undone, and removed, by keyboard', async () => {
    const { page, complaints } = await openPage(browser, app);
    await page.goto(`${app.home}#course`);
    const rise = () => page.locator('.disc-table tbody tr').first().locator('td').nth(3).textContent();
    await eventually(rise).toBe('not mapped');
    await openPanel(page, 'Terrain');
    const chooser = page.waitForEvent('filechooser');
    const button = page.getByRole('button', { name: 'Choose elevation model' });
    await button.focus();
    await page.keyboard.press('Enter');
    await (await chooser).setFiles({
      name: 'hillside.tif',
      mimeType: 'image/tiff',
      buffer: Buffer.from(modelBytes(MODEL)),
    });
    const add = page.getByRole('button', { name: 'Add terrain' });
    await add.focus();
    await page.keyboard.press('Enter');
    const facts = page.locator('.facts');
    await eventually(() => facts.textContent()).toContain('hillside.tif, a height every 3.0 m');
    expect(await facts.textContent()).toContain('N2000');
    expect(await facts.textContent()).toContain('all 2 holes');
    // 80 m at 3 cm a metre: 2.4 m, by hand.
    await eventually(rise).toBe('2.4 m');
    expect(await faults(page)).toEqual([]);
    await page.getByRole('button', { name: /^Undo/ }).click();
    await eventually(rise).toBe('not mapped');
    await page.getByRole('button', { name: /^Redo/ }).click();
    await eventually(rise).toBe('2.4 m');
    await page.getByRole('button', { name: 'Remove terrain' }).click();
    await eventually(rise).toBe('not mapped');
    expect(complaints).toEqual([]);
    await page.context().close();
  }, 120_000);

  it('a file that is no model says so, and nothing changes', async () => {
    const { page } = await openPage(browser, app);
    await page.goto(`${app.home}#course`);
    await openPanel(page, 'Terrain');
    const chooser = page.waitForEvent('filechooser');
    await page.getByRole('button', { name: 'Choose elevation model' }).click();
    await (await chooser).setFiles({
      name: 'holiday.tif',
      mimeType: 'image/tiff',
      buffer: Buffer.from('no TIFF at all'),
    });
    await page.getByRole('button', { name: 'Add terrain' }).click();
    await eventually(() => page.getByRole('alert').textContent()).toContain('it does not begin like one');
    expect(await page.locator('.facts').count()).toBe(0);
    await page.context().close();
  }, 120_000);
});

describe('base map', () => {
  const rows = () =>
    [15, 16, 17].flatMap(z => {
      const { x, y } = tileAt(25.0007, 60.0009, z);
      const around = 2 ** (z - 14);
      return Array.from({ length: (2 * around + 1) ** 2 }, (_, k) => {
        const [dx, dy] = [(k % (2 * around + 1)) - around, Math.floor(k / (2 * around + 1)) - around];
        const shade = (dx + dy) % 2 === 0 ? 210 : 180;
        return [z, x + dx, 2 ** z - 1 - (y + dy), tilePicture([shade, shade - 10, 150])] as const;
      });
    });

  it('from a file lies under the maps with its attribution, is kept, and is taken back', async () => {
    const path = mbtilesFile({ metadata: { attribution: '© The surveyors' }, rows: rows() }, 'town.mbtiles');
    const file = readFileSync(path);
    const { page, complaints } = await openPage(browser, app);
    await page.goto(`${app.home}#course`);
    await openPanel(page, 'Base map');
    await page.getByLabel('Place of an .mbtiles file').fill(path);
    await page.keyboard.press('Enter');
    const tiles = page.locator('.course-map img.leaflet-tile');
    await eventually(() => tiles.count()).toBeGreaterThan(0);
    await eventually(() => page.locator('.course-map .map-credit').textContent()).toBe('© The surveyors');
    const drawn =
      '[...document.querySelectorAll(".course-map img.leaflet-tile")].filter(image => image.naturalWidth === 256).length';
    await eventually(() => page.evaluate(drawn) as Promise<number>).toBeGreaterThan(0);
    expect(await faults(page)).toEqual([]);

    await page.goto(`${app.home}#round`);
    await planned(page);
    const turned = page.locator('.hole-view svg.base-map image');
    await eventually(() => turned.count()).toBeGreaterThan(0);
    expect(await page.locator('.hole-view .map-credit').textContent()).toBe('© The surveyors');
    await page.reload();
    await eventually(() => turned.count()).toBeGreaterThan(0);
    expect(readFileSync(path).equals(file)).toBe(true);

    await page.goto(`${app.home}#course`);
    await openPanel(page, 'Base map');
    await page.getByRole('button', { name: 'No base map' }).click();
    await eventually(() => page.locator('.course-map img.leaflet-tile').count()).toBe(0);
    await page.getByRole('button', { name: /^Undo/ }).click();
    await eventually(() => page.locator('.course-map img.leaflet-tile').count()).toBeGreaterThan(0);
    await page.getByRole('button', { name: 'No base map' }).click();
    expect(complaints).toEqual([]);
    await page.context().close();
  }, 240_000);

  it('from a server asks for its permission first, and for its attribution', async () => {
    const { page } = await openPage(browser, app);
    await page.goto(`${app.home}#course`);
    await openPanel(page, 'Base map');
    await page.getByLabel(/^Tile address/).fill('https://tiles.example.invalid/{z}/{x}/{y}.png');
    const use = page.getByRole('button', { name: 'Use address' });
    expect(await use.isDisabled()).toBe(true);
    await page.getByLabel(/^Whose map it is/).fill('© The surveyors');
    await use.click();
    await eventually(() => page.locator('details.side-panel', { hasText: 'Base map' }).textContent()).toContain(
      'not shown',
    );
    expect(await page.locator('.course-map img.leaflet-tile').count()).toBe(0);
    expect(await page.getByText('Let the app fetch pictures from tiles.example.invalid').count()).toBe(1);
    await page.getByLabel(/^Tile address/).fill('http://tiles.example.invalid/{z}/{x}/{y}.png');
    await use.click();
    await eventually(() => page.getByRole('alert').textContent()).toContain('https://');
    await page.getByRole('button', { name: 'No base map' }).click();
    await page.context().close();
  }, 120_000);
});
