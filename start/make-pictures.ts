import { mkdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import type { Page } from 'playwright-core';
import { openBrowser } from '../tests/browser/open-browser.ts';
import { type RunningApp, startApp } from '../tests/browser/start-app.ts';

const PROJECT = resolve(import.meta.dirname, '..');
const OUT = join(PROJECT, 'docs/pictures');
/** Invented waypoints, also used by the tests. */
const WAYPOINTS = join(PROJECT, 'tests/fixtures/import/lantern-hollow.gpx');
const SIZE = { width: 1100, height: 760 };
const DAY = { wind: { speed_mps: 4, from_deg: 250, gust_mps: 7 } };
const COURSE = 'Millrace Green';
const PLAYER = 'Newer player';
/** What is known of the throw, beside the hole. */
const PANEL = '.round-right .why-panel';
/** Planning a whole course, on a machine that may be busy. */
const PATIENCE_ms = 240_000;

type Picture = Readonly<{
  name: string;
  take: (page: Page, home: string) => Promise<void>;
  /** The part of the page to show; all of it when left out. */
  part?: string;
  /** Of the window, where the usual one would cut off what matters. */
  height?: number;
}>;

/** Waits until nothing on the screen is from an earlier setting. */
async function planned(page: Page): Promise<void> {
  await page.locator('.shot-disc').waitFor();
  await page.locator('.round-progress, .shot-card[data-stale]').first().waitFor({ state: 'detached' });
}

/** In the order of the guide: round first, so that what follows finds its plans kept. */
const PICTURES: readonly Picture[] = [
  {
    name: 'round',
    height: 860,
    take: async (page, home) => {
      await page.goto(`${home}#round`);
      await planned(page);
    },
  },
  { name: 'instead', take: page => page.getByRole('tab', { name: 'Instead' }).click(), part: PANEL, height: 1100 },
  {
    name: 'wind',
    take: async page => {
      await page.getByRole('tab', { name: 'Wind', exact: true }).click();
      await page.getByText('Nearest change').waitFor();
    },
    part: PANEL,
    height: 890,
  },
  { name: 'bag', take: (page, home) => openAndSee(page, `${home}#bag`, 'Players') },
  {
    name: 'range',
    take: async page => {
      await page.getByRole('tab', { name: 'Range', exact: true }).click();
      await page.getByRole('row').nth(1).waitFor();
    },
  },
  {
    name: 'fieldwork',
    take: async (page, home) => {
      await page.goto(`${home}#fieldwork`);
      await page.getByRole('tab', { name: 'Sessions' }).waitFor();
    },
  },
  {
    name: 'import',
    take: async (page, home) => {
      await openAndSee(page, `${home}#course`, 'Courses');
      const [chooser] = await Promise.all([
        page.waitForEvent('filechooser'),
        page.getByRole('button', { name: 'Import a course' }).click(),
      ]);
      await chooser.setFiles(WAYPOINTS);
      await page.locator('.import-foot').waitFor();
    },
  },
  {
    name: 'draw',
    take: async (page, home) => {
      // Out of the import, when that was just shown.
      await page.keyboard.press('Escape');
      await openAndSee(page, `${home}#course`, 'Courses');
      await page.getByRole('button', { name: 'Edit the map' }).click();
      await page.locator('.course-editor .thing-item').first().click();
      await page.locator('.thing-form').waitFor();
    },
  },
  { name: 'walk', take: page => page.getByRole('tab', { name: 'Walk a hole', exact: true }).click() },
  {
    name: 'sheet',
    take: async (page, home) => {
      await page.goto(`${home}#sheet`);
      await page.frameLocator('iframe').locator('body').waitFor();
    },
  },
  {
    name: 'review',
    take: async (page, home) => {
      await openAndSee(page, `${home}#review`, 'Rounds');
      await page.locator('.library-list ul .library-item').first().click();
      await page.getByRole('button', { name: 'Review this round' }).click();
      await page.locator('.review-headline').waitFor();
    },
  },
  {
    name: 'practice',
    take: async (page, home) => {
      await page.goto(`${home}#practice`);
      await page.getByRole('checkbox', { name: 'Hollow Orchard' }).uncheck();
      await page.getByRole('checkbox', { name: 'Ridge and Reservoir' }).uncheck();
      await page.getByRole('button', { name: 'Find a practice round' }).click();
      await page.locator('.target-card').waitFor();
    },
  },
  {
    // Last: it is the dearest to plan.
    name: 'two-winds',
    height: 1100,
    take: async (page, home) => {
      await page.goto(`${home}#compare`);
      await page.locator('.compare-table tbody tr').nth(8).getByText('→').first().waitFor();
    },
  },
];

async function openAndSee(page: Page, address: string, heading: string): Promise<void> {
  await page.goto(address);
  await page.getByRole('heading', { name: heading }).waitFor();
}

/** Chooses the sample course, player and day. */
async function setTable(app: RunningApp): Promise<void> {
  const asked = async <T>(method: string, input: object): Promise<T> => {
    const answer = await app.call(method, input);
    if (!answer.ok) throw new Error(`${method}: ${JSON.stringify(answer.problems)}`);
    return answer.value as T;
  };
  const courses = await asked<readonly { courseId: string; name: string }[]>('listCourses', {});
  const players = await asked<readonly { playerId: string; name: string }[]>('listPlayers', {});
  const courseId = courses.find(course => course.name === COURSE)?.courseId;
  const playerId = players.find(player => player.name === PLAYER)?.playerId;
  if (courseId === undefined || playerId === undefined) throw new Error(`no sample "${COURSE}" or "${PLAYER}"`);
  await asked('setSettings', { change: { courseId, playerId, ref: '1', day: DAY } });
  const text = readFileSync(join(PROJECT, 'sample-courses/sample-round.json'), 'utf8');
  await asked('importRound', { courseId, playerId, fileName: 'sample-round.json', text });
}

/** Draws the guide's pictures from the running app; names as arguments take only those (`range` needs `bag`, `walk` needs `draw` before it). */
async function makePictures(names: readonly string[]): Promise<void> {
  mkdirSync(OUT, { recursive: true });
  const app = await startApp();
  const browser = await openBrowser();
  const missed: string[] = [];
  try {
    await setTable(app);
    const context = await browser.newContext({ viewport: SIZE, colorScheme: 'light' });
    const page = await context.newPage();
    page.setDefaultTimeout(PATIENCE_ms);
    await page.goto(app.url);
    for (const { name, take, part, height = SIZE.height } of PICTURES) {
      if (names.length > 0 && !names.includes(name)) continue;
      try {
        await page.setViewportSize({ width: SIZE.width, height });
        await take(page, app.home);
        const shown = part === undefined ? page : page.locator(part).first();
        await shown.screenshot({ path: join(OUT, `${name}.png`), animations: 'disabled' });
        console.log(`${name}.png`);
      } catch (error) {
        missed.push(name);
        console.error(`${name}: ${error instanceof Error ? error.message : String(error)}`);
      }
    }
  } finally {
    await browser.close();
    await app.close();
  }
  if (missed.length > 0) process.exitCode = 1;
}

await makePictures(process.argv.slice(2));
