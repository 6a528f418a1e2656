import { randomUUID } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { parseCourseText } from '../../core/course/parse-course-text.ts';
import { parsePlayerText } from '../../core/player/player-file.ts';
import type { Result } from '../../core/units/result.ts';
import type { Store } from '../store/open-store.ts';

/** The course shown at the first start comes first. */
const COURSES = [
  ['ridge-and-reservoir.geojson', new URL('../../sample-courses/ridge-and-reservoir.geojson', import.meta.url)],
  ['old-orchard.geojson', new URL('../../sample-courses/old-orchard.geojson', import.meta.url)],
  ['short-nine.geojson', new URL('../../sample-courses/short-nine.geojson', import.meta.url)],
] as const;
const PLAYERS = [
  new URL('../../sample-courses/sample-player.json', import.meta.url),
  new URL('../../sample-courses/newer-player.json', import.meta.url),
] as const;

/** What the app shows before the player has brought anything: course, player and a wind that matters. */
export type SeedSettings = Readonly<{ courseId: string; playerId: string; day: object }>;
const FIRST_DAY = { wind: { speed_mps: 4, from_deg: 250, gust_mps: 7 } };

/**
 * Puts the sample courses and players into a library that was never opened before; deleted samples stay deleted.
 * One transaction: a start that is killed half way begins again.
 * @throws {Error} when a file that came with the app is missing or damaged
 */
export function seedLibrary(store: Store, now_ms: () => number, firstSettings: (seed: SeedSettings) => object): void {
  if (store.settings.get() !== undefined) return;
  const courses = COURSES.map(([fileName, url]) => {
    const text = readFileSync(url, 'utf8');
    return { courseId: randomUUID(), name: sound(fileName, parseCourseText(text, fileName)).name, fileName, text };
  });
  const players = PLAYERS.map(url => ({
    playerId: randomUUID(),
    file: JSON.stringify(sound(url.pathname, parsePlayerText(readFileSync(url, 'utf8')))),
  }));
  store.transaction(() => {
    const addedAt_ms = now_ms();
    for (const { text, ...course } of courses) {
      store.tables.courses.put({ ...course, sample: 1, addedAt_ms });
      store.tables.courseFiles.put({ courseId: course.courseId, text });
    }
    for (const player of players) store.tables.players.put({ ...player, sample: 1, addedAt_ms });
    const [{ courseId }, { playerId }] = [courses[0]!, players[0]!];
    store.settings.set(firstSettings({ courseId, playerId, day: FIRST_DAY }));
  });
}

function sound<T>(name: string, read: Result<T>): T {
  if (read.ok) return read.value;
  const { path, message } = read.problems[0]!;
  throw new Error(`${name}, which came with the app, is damaged (${path}: ${message}): install the app again`);
}
