import axe from 'axe-core';
import type { FeatureCollection } from 'geojson';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { tagOf } from '../../core/course/edit/edit-tags.ts';
import { kindOf } from '../../core/course/edit/kinds.ts';
import { offset_m } from '../../core/course/edit/shift-position.ts';
import { verticesOf } from '../../core/course/edit/vertices.ts';
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

async function asked<T>(method: string, input: unknown): Promise<T> {
  const answer = await app.call(method, input);
  if (!answer.ok) throw new Error(`${method}: ${JSON.stringify(answer.problems)}`);
  return answer.value as T;
}
type Line = Readonly<{ courseId: string; name: string }>;
const courseCalled = async (name: string) =>
  (await asked<Line[]>('listCourses', {})).find(line => line.name === name)?.courseId;

/** The map as the backend has it: the draft, else the course. */
async function mapOf(name: string): Promise<FeatureCollection> {
  const drafts = await asked<Line[]>('listDrafts', {});
  const courseId = drafts.find(draft => draft.name === name)?.courseId ?? (await courseCalled(name));
  const { text } = await asked<{ text: string }>('openDraft', { courseId });
  return JSON.parse(text) as FeatureCollection;
}

const FOCUSED = `(() => {
  const e = document.activeElement;
  if (e === document.body) return '';
  return [e.tagName, e.getAttribute('role'), e.getAttribute('aria-label') ?? '', e.labels?.[0]?.textContent ?? '', e.textContent ?? ''].join(' ');
})()`;

/** Tabs on until what holds the focus matches; fails after a whole round. */
async function tabTo(page: Page, wanted: RegExp, key = 'Tab'): Promise<void> {
  for (let i = 0; i < 150; i++) {
    if (wanted.test((await page.evaluate(FOCUSED)) as string)) return;
    await page.keyboard.press(key);
  }
  throw new Error(`${key} never reaches ${wanted}`);
}
const press = async (page: Page, ...keys: string[]) => {
  for (const key of keys) await page.keyboard.press(key);
};
const times = (key: string, n: number): string[] => Array.from({ length: n }, () => key);

/** Chooses a kind from the bar with the arrow keys, and goes on to the map. */
async function draw(page: Page, kind: string): Promise<void> {
  await tabTo(page, /^BUTTON radio/, 'Shift+Tab');
  const isThere = async () => ((await page.evaluate(FOCUSED)) as string).endsWith(` ${kind}`);
  for (const arrow of ['ArrowLeft', 'ArrowRight'])
    for (let i = 0; i < 20 && !(await isThere()); i++) await page.keyboard.press(arrow);
  await page.keyboard.press('Enter');
  await tabTo(page, /Drawing ground/);
}

async function violationsOf(page: Page): Promise<string[]> {
  await page.evaluate(axe.source);
  const found = (await page.evaluate('axe.run().then(result => result.violations)')) as {
    id: string;
    help: string;
    nodes: { html: string }[];
  }[];
  return found.flatMap(({ id, help, nodes }) => nodes.map(({ html }) => `${id} (${help}): ${html.slice(0, 200)}`));
}

const editTiny = async (page: Page) => {
  await page.goto(`${app.home}#course`);
  await page.getByRole('button', { name: /^Tiny Links \d/ }).click();
  await page.getByRole('button', { name: 'Edit the map' }).click();
  await page.locator('.hole-now').waitFor();
};
const lengthNow = (page: Page) => page.locator('.hole-card .hole-now dd').first().textContent();

describe('a course from nothing', () => {
  it('is drawn by keyboard alone, measured while it is drawn, kept, and saved', async () => {
    const { page, complaints } = await openPage(browser, app);
    await page.goto(`${app.home}#course`);
    await page.getByRole('heading', { name: 'Courses' }).waitFor();
    await tabTo(page, /Draw a new course/);
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { name: 'A new course' }).waitFor();
    await page.keyboard.type('Paper Meadow');
    await page.keyboard.press('Enter');
    await page.getByText('Nothing is drawn yet').waitFor();
    await page.getByText('the file has no hole').waitFor();

    await draw(page, 'tee');
    await page.keyboard.press('Enter');
    await eventually(async () => (await mapOf('Paper Meadow')).features.length).toBe(1);
    // 60 m north, 20 m east of the tee.
    await draw(page, 'basket');
    await press(page, ...times('Shift+ArrowUp', 6), ...times('Shift+ArrowRight', 2), 'Enter');
    await page.locator('.hole-now').first().waitFor();
    // √(60² + 20²) by hand.
    await eventually(() => lengthNow(page)).toMatch(/^63\.2 m/);

    // The line of play: from the basket back to the tee by way of a bend, holding on to both. It is read the other way round.
    await draw(page, 'line of play');
    await press(page, 'Enter', ...times('Shift+ArrowDown', 3), 'Enter', ...times('Shift+ArrowDown', 3));
    await press(page, ...times('Shift+ArrowLeft', 2), 'ArrowRight');
    await page.getByText('holds on to tee 1').first().waitFor();
    // 30 m and √(30² + 20²) by hand, before the line is finished.
    await eventually(() => lengthNow(page)).toContain('66.1 m along the line');
    await press(page, 'Enter', 'f');
    await eventually(async () => (await mapOf('Paper Meadow')).features.length).toBe(3);
    await page.getByText('Whole: it can be saved').waitFor();
    const drawn = await mapOf('Paper Meadow');
    expect(drawn.features.map(kindOf)).toEqual(['tee', 'basket', 'line']);
    expect(drawn.features.map(feature => tagOf(feature, 'ref'))).toEqual(['1', '1', '1']);
    expect(tagOf(drawn.features[2]!, 'placed')).toBe('no');
    const ends = verticesOf(drawn.features[2]!.geometry).map(({ position }) => position);
    expect(ends.at(-1)).toEqual(verticesOf(drawn.features[0]!.geometry)[0]!.position);

    // A gap of 8 m across the line, 4 m to each side: too far for the line to hold its posts.
    await draw(page, 'gap');
    await press(
      page,
      ...times('Shift+ArrowUp', 4),
      ...times('ArrowUp', 5),
      'Shift+ArrowRight',
      ...times('ArrowRight', 5),
    );
    await press(page, 'Enter', ...times('ArrowRight', 8), 'Enter');
    await eventually(async () => (await mapOf('Paper Meadow')).features.length).toBe(4);
    await page
      .getByText(/8\.0 m wide at/)
      .first()
      .waitFor();

    // A low branch, its height typed.
    await draw(page, 'ceiling');
    await tabTo(page, /Free height under it/, 'Shift+Tab');
    await page.keyboard.press('ControlOrMeta+A');
    await page.keyboard.type('9 ft');
    await page.keyboard.press('Enter');
    await tabTo(page, /Drawing ground/);
    await press(
      page,
      'Enter',
      ...times('ArrowRight', 6),
      'Enter',
      ...times('ArrowUp', 6),
      'Enter',
      ...times('ArrowLeft', 8),
      'Enter',
      'f',
    );
    await eventually(async () => (await mapOf('Paper Meadow')).features.length).toBe(5);
    // 9 ft are 2.7432 m: exact, NIST SP 811 B.8.
    expect(tagOf((await mapOf('Paper Meadow')).features[4]!, 'min_height')).toBe('2.7432');

    await tabTo(page, /Save course/);
    await page.keyboard.press('Enter');
    await page.getByText('Paper Meadow saved').waitFor();
    await eventually(() => page.locator('.library-item[data-chosen]').textContent()).toContain('Paper Meadow');
    expect(await asked<Line[]>('listDrafts', {})).toEqual([]);
    expect(complaints).toEqual([]);
    await page.context().close();
  }, 300_000);
});

describe('a map under the hand', () => {
  it('keeps what is changed by keyboard through leaving and reloading, and takes it back', async () => {
    const { page, complaints } = await openPage(browser, app);
    await editTiny(page);
    await eventually(() => lengthNow(page)).toMatch(/^80\.0 m/);
    // Choose the basket from the list, pick it up and put it down 10 m on.
    await tabTo(page, /Find/);
    await page.keyboard.type('basket 1');
    await page.keyboard.press('Tab');
    await press(page, 'ArrowDown', 'Enter');
    await page.getByRole('heading', { name: 'basket 1' }).waitFor();
    await tabTo(page, /Drawing ground/, 'Shift+Tab');
    await press(page, 'Enter', 'Shift+ArrowRight');
    await eventually(() => lengthNow(page)).toMatch(/^90\.0 m/);
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: 'Undo: move a point of basket 1' }).waitFor();
    await eventually(() => page.getByText('Every change is kept').count()).toBe(1);

    await page.reload();
    await page
      .getByRole('region', { name: 'Drafts' })
      .getByRole('button', { name: /Tiny Links/ })
      .click();
    await page.locator('.hole-now').waitFor();
    await eventually(() => lengthNow(page)).toMatch(/^90\.0 m/);

    // The cross put by numbers: 12 m south of the tee.
    await page.getByText('By numbers and by keys').click();
    await page.getByLabel('From the tee towards').fill('180');
    await page.getByRole('form', { name: 'From the tee' }).getByLabel('by').fill('12');
    await page.keyboard.press('Enter');
    await page.getByText('12.0 m from the tee, towards 180°').first().waitFor();

    // Typed: back by 4 m; then both taken back.
    await page.getByRole('option', { name: 'basket 1' }).click();
    await page.getByLabel('Move it towards').fill('W');
    await page.getByRole('form', { name: 'Move it' }).getByLabel('by').fill('4 m');
    await page.keyboard.press('Enter');
    await eventually(() => lengthNow(page)).toMatch(/^86\.0 m/);
    await page.evaluate('document.activeElement.blur()');
    await page.keyboard.press('ControlOrMeta+Z');
    await eventually(() => lengthNow(page)).toMatch(/^90\.0 m/);
    await page.keyboard.press('ControlOrMeta+Shift+Z');
    await eventually(() => lengthNow(page)).toMatch(/^86\.0 m/);

    // Another part of the app and back: still on the table.
    await page.getByRole('link', { name: 'Bag' }).click();
    await page.getByRole('link', { name: 'Course' }).click();
    await eventually(() => lengthNow(page)).toMatch(/^86\.0 m/);
    await page.getByRole('button', { name: 'Discard changes' }).click();
    await page.getByRole('heading', { name: 'Courses' }).waitFor();
    expect(await asked<Line[]>('listDrafts', {})).toEqual([]);
    await page.getByRole('button', { name: 'Undo: Discard the draft of Tiny Links' }).click();
    await page.getByRole('region', { name: 'Drafts' }).waitFor();
    await page.getByRole('button', { name: 'Redo: Discard the draft of Tiny Links' }).click();
    await eventually(() => page.getByRole('region', { name: 'Drafts' }).count()).toBe(0);
    expect(complaints).toEqual([]);
    await page.context().close();
  }, 300_000);

  it('is drawn by pointer: placed, dragged, bent, moved, copied, deleted', async () => {
    const { page, complaints } = await openPage(browser, app);
    await editTiny(page);
    const ground = page.getByRole('application', { name: 'Drawing ground' });
    const box = (await ground.boundingBox())!;
    const spot = (x: number, y: number) => [box.x + box.width * x, box.y + box.height * y] as const;
    await page.getByRole('radio', { name: 'out-of-bounds' }).click();
    for (const [x, y] of [
      [0.3, 0.7],
      [0.6, 0.7],
      [0.6, 0.85],
    ] as const)
      await page.mouse.click(...spot(x, y), { delay: 20 });
    await page.getByRole('button', { name: 'Finish' }).click();
    await eventually(async () => (await mapOf('Tiny Links')).features.length).toBe(10);
    await page.getByRole('heading', { name: 'out-of-bounds' }).waitFor();
    const corners = async () => verticesOf((await mapOf('Tiny Links')).features[9]!.geometry).map(v => v.position);
    expect(await corners()).toHaveLength(3);

    const before = await corners();
    await page.mouse.move(...spot(0.6, 0.85));
    await page.mouse.down();
    await page.mouse.move(...spot(0.62, 0.9), { steps: 6 });
    await page.mouse.up();
    await eventually(async () => (await corners())[2]!.join()).not.toBe(before[2]!.join());
    expect((await corners())[0]).toEqual(before[0]);

    await page.locator('.mark-between').first().click();
    await eventually(async () => (await corners()).length).toBe(4);
    await page.getByRole('button', { name: 'Delete point' }).click();
    await eventually(async () => (await corners()).length).toBe(3);

    const whole = page.locator('.mark-whole');
    const from = (await whole.boundingBox())!;
    const was = await corners();
    await page.mouse.move(from.x + from.width / 2, from.y + from.height / 2);
    await page.mouse.down();
    await page.mouse.move(from.x + 60, from.y - 40, { steps: 6 });
    await page.mouse.up();
    await eventually(async () => (await corners())[0]!.join()).not.toBe(was[0]!.join());
    const shift = (await corners()).map((at, i) => offset_m(was[i]!, at));
    // Moved as a whole: every corner by the same, to the millimetres that positions are kept to.
    for (const [east_m, north_m] of shift) {
      expect(Math.abs(east_m - shift[0]![0])).toBeLessThan(0.01);
      expect(Math.abs(north_m - shift[0]![1])).toBeLessThan(0.01);
    }

    await page.getByRole('button', { name: 'Copy' }).click();
    await eventually(async () => (await mapOf('Tiny Links')).features.length).toBe(11);
    await page.getByRole('button', { name: 'Delete', exact: true }).click();
    await eventually(async () => (await mapOf('Tiny Links')).features.length).toBe(10);

    // A mando without a known side keeps the map from being saved, and says so.
    await page.getByRole('radio', { name: 'mando' }).click();
    await page.getByLabel('Pass on side').selectOption('above');
    await page.mouse.click(...spot(0.5, 0.5));
    await page.getByText('mando=above has no height').waitFor();
    await page.getByRole('button', { name: 'Save course' }).click();
    await eventually(() => page.getByRole('alert').textContent()).toContain('kept as a draft');
    await page.getByRole('button', { name: 'Put away' }).click();
    await page.getByLabel('Height, for above and below').fill('4');
    await page.keyboard.press('Enter');
    await page.getByText('Whole: it can be saved').waitFor();
    await page.getByRole('button', { name: 'Save course' }).click();
    await page.getByText('Tiny Links saved').waitFor();
    const course = await mapOf('Tiny Links');
    expect(course.features.slice(9).map(kindOf)).toEqual(['outOfBounds', 'mando']);
    await page.getByRole('button', { name: 'Undo: Edit Tiny Links' }).click();
    await eventually(() => page.getByRole('region', { name: 'Drafts' }).count()).toBe(1);
    await asked('discardDraft', { courseId: await courseCalled('Tiny Links') });
    expect(complaints).toEqual([]);
    await page.context().close();
  }, 300_000);
});

describe('layouts and walked holes', () => {
  it('are made by keyboard, and the layout is what is planned', async () => {
    const { page, complaints } = await openPage(browser, app);
    await editTiny(page);
    await draw(page, 'tee');
    await press(page, ...times('Shift+ArrowRight', 3), 'Enter');
    await page.getByRole('heading', { name: 'tee 1' }).waitFor();
    await tabTo(page, /^INPUT\s+Name/);
    await page.keyboard.type('Short');
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { name: 'tee 1, Short' }).waitFor();
    await tabTo(page, /^DIV tab\s+Things/, 'Shift+Tab');
    await page.keyboard.press('ArrowRight');
    await tabTo(page, /New layout/);
    await page.keyboard.press('Enter');
    await tabTo(page, /Name of the layout/);
    await page.keyboard.press('ControlOrMeta+A');
    await page.keyboard.type('Short tees');
    await page.keyboard.press('Enter');
    // the map is described a moment after each change
    await page.getByRole('option', { name: 'Short', exact: true }).waitFor({ state: 'attached' });
    await tabTo(page, /Tee of hole 1/);
    await page.keyboard.press('ArrowDown');
    await tabTo(page, /Play hole 1 later/);
    await page.keyboard.press('Enter');
    await eventually(async () => (await mapOf('Tiny Links')).features.at(-1)?.properties).toEqual({
      disc_golf: 'layout',
      name: 'Short tees',
      holes: [{ ref: '2' }, { ref: '1', tee: 'Short' }],
    });

    // A third hole from paces.
    await tabTo(page, /^DIV tab\s+Layouts/, 'Shift+Tab');
    await page.keyboard.press('ArrowRight');
    await tabTo(page, /Length, paces/);
    await page.keyboard.type('100');
    await tabTo(page, /Direction from the tee/);
    await page.keyboard.type('NE');
    await tabTo(page, /Add a branch/);
    await page.keyboard.press('Enter');
    await tabTo(page, /At, paces/);
    await page.keyboard.type('40');
    await tabTo(page, /Free under it/);
    await page.keyboard.type('2.8');
    await page.getByRole('region', { name: 'The hole as walked' }).waitFor();
    expect(await violationsOf(page)).toEqual([]);
    await tabTo(page, /Add the hole/);
    await page.keyboard.press('Enter');
    // 100 paces of 0.75 m by hand; the branch at 40 paces, 2 m deep.
    await eventually(() => lengthNow(page)).toMatch(/^75\.0 m/);
    await page.getByText('2.8 m free from 29 m to 31 m').first().waitFor();
    expect(await violationsOf(page)).toEqual([]);
    // It was drawn at the cross, so it has a place; one that has none can be put there later.
    expect(await page.getByRole('button', { name: 'Put its tee at the cross' }).count()).toBe(0);
    await tabTo(page, /Save course/, 'Shift+Tab');
    await page.keyboard.press('Enter');
    await page.getByText('Tiny Links saved').waitFor();

    await page.getByLabel('Layout').first().selectOption('Short tees');
    await page.getByRole('link', { name: 'Round' }).click();
    await eventually(() => page.locator('.hole-row').count()).toBe(2);
    // Hole 2 is played first; hole 1 is 80 m less the 30 m its second tee lies on, by hand.
    await eventually(() => page.locator('.hole-title').textContent()).toContain('2');
    await page.keyboard.press('Alt+PageDown');
    await eventually(() => page.locator('.hole-title').textContent()).toMatch(/^1 .*50 m/);
    await page.locator('.shot-disc').waitFor({ timeout: 240_000 });
    expect(complaints).toEqual([]);
    await page.context().close();
  }, 300_000);
});

describe('size', () => {
  it.each([
    { width: 1280, height: 800, colorScheme: 'light' },
    { width: 900, height: 700, colorScheme: 'dark' },
    { width: 640, height: 400, colorScheme: 'light' },
  ] as const)(
    'fits $width × $height, and axe finds nothing in $colorScheme',
    async ({ width, height, colorScheme }) => {
      const { page } = await openPage(browser, app, { viewport: { width, height }, colorScheme });
      await editTiny(page);
      const sideways = 'document.documentElement.scrollWidth - document.documentElement.clientWidth';
      for (const tab of ['Layouts', 'Walk a hole', 'Things']) {
        await page.getByRole('tab', { name: tab }).click();
        expect(await page.evaluate(sideways), tab).toBeLessThanOrEqual(0);
        expect(await violationsOf(page), tab).toEqual([]);
      }
      await page.getByRole('radio', { name: 'ceiling' }).click();
      expect(await violationsOf(page), 'drawing').toEqual([]);
      await page.context().close();
    },
    120_000,
  );
});
