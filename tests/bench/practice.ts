import { readFileSync } from 'node:fs';
import { groundDrop_m } from '../../backend/planning/ground-drop.ts';
import { openPlanningDesk } from '../../backend/planning/planning-desk.ts';
import { findPractice } from '../../backend/practice/find-practice.ts';
import { makeDay } from '../../core/air/day.ts';
import { parseCourseText } from '../../core/course/parse-course-text.ts';
import { describeHole } from '../../core/geometry/describe-hole.ts';
import { rasterize } from '../../core/geometry/rasterize.ts';
import { fitPlayer } from '../../core/player/fit-player.ts';
import { parsePlayerText } from '../../core/player/player-file.ts';
import type { PracticeLimit } from '../../core/practice/practice-limit.ts';
import { chooseShot, TEE_EFFORT } from '../../core/strategy/choose-shot.ts';
import { makeDayLibraries } from '../../core/strategy/day-libraries.ts';
import { solveHole } from '../../core/strategy/hole-solver.ts';
import { handPlayer, otherRandom } from '../core/practice/play-by-hand.ts';

/**
 * Whether the stated chance of a practice target is right: 2,000 rounds on whole sample courses, played throw by throw by the tests'
 * own player with its own random numbers and a shot chosen anew at every lie.
 * Run: node tests/bench/practice.ts
 */

const ROUNDS = 2000;
const SEED = 1;
const DAY = ok(makeDay({ wind: { speed_mps: 4, from_deg: 250, gust_mps: 7 } }));
const CASES: readonly Readonly<{ course: string; player: string; name: string; limit: PracticeLimit }>[] = [
  { course: 'short-nine', player: 'sample-player', name: 'putters', limit: { classes: ['putter'] } },
  { course: 'old-orchard', player: 'sample-player', name: 'forehand', limit: { hands: ['forehand'] } },
  { course: 'old-orchard', player: 'sample-player', name: 'one midrange', limit: { discIds: ['straight-midrange'] } },
];

const sample = (name: string) => readFileSync(new URL(`../../sample-courses/${name}`, import.meta.url), 'utf8');
const threads = openPlanningDesk();
try {
  for (const one of CASES) await check(one);
} finally {
  await threads.close();
}

async function check({ course: courseName, player: playerName, name, limit }: (typeof CASES)[number]): Promise<void> {
  const file = ok(parsePlayerText(sample(`${playerName}.json`)));
  const player = fitPlayer(file);
  const course = ok(parseCourseText(sample(`${courseName}.geojson`), courseName));
  const started = performance.now();
  const found = ok(
    await findPractice(
      {
        courses: [{ key: courseName, course }],
        file,
        player,
        day: DAY,
        limit,
        holes: 9,
        rounds: 1,
        compare: false,
        seed: SEED,
      },
      { threads, signal: new AbortController().signal },
    ),
  );
  const took_s = (performance.now() - started) / 1000;
  const [round] = found.report.rounds;
  if (round === undefined) throw new Error(`${courseName}, ${name}: no hole suits`);
  const maps = found.played[0]!.map(({ map }) => map);
  const discIds = idsOf(found.report.discs, file.discs);
  const limits = { discIds, ...(limit.hands && { hands: limit.hands }) };
  const libraries = makeDayLibraries(player, DAY, limits, groundDrop_m(maps), SEED);
  const totals = new Array<number>(ROUNDS).fill(0);
  const random = otherRandom(4711);
  for (const [i, map] of maps.entries()) {
    const solved = solveHole(map, rasterize(map), libraries, describeHole(map).narrowest?.width_m ?? 1000);
    const tee = chooseShot(solved.table, { east_m: 0, north_m: 0, ground_m: 0 }, TEE_EFFORT).best;
    const play = handPlayer(solved, tee, player.putting);
    let sum = 0;
    for (let r = 0; r < ROUNDS; r++) {
      const score = play(random);
      totals[r]! += score;
      sum += score;
    }
    const { ref, expectedThrows, plannedThrows } = round.holes[i]!;
    console.log(
      `  hole ${ref}: plan ${plannedThrows.toFixed(3)}, stated ${expectedThrows.toFixed(3)}, played ${(sum / ROUNDS).toFixed(3)}`,
    );
  }
  const mean = totals.reduce((sum, total) => sum + total, 0) / ROUNDS;
  console.log(
    `${courseName}, ${name}: ${maps.length} holes, found in ${took_s.toFixed(0)} s; stated ${round.expectedThrows.toFixed(2)}, played ${mean.toFixed(2)} ± ${(round.sd / Math.sqrt(ROUNDS)).toFixed(2)}`,
  );
  for (const { throws, chance, chanceSameDay } of round.target.beside) {
    const share = totals.filter(total => total <= throws).length / ROUNDS;
    const mark = throws === round.target.throws ? ' (target)' : '';
    console.log(
      `  within ${throws}: stated ${points(chance)}, played ${points(share)}, off ${points(share - chance)}; same day ${points(chanceSameDay)}${mark}`,
    );
  }
}

function idsOf(names: readonly string[], discs: readonly Readonly<{ id: string; name: string }>[]): string[] {
  return discs.filter(disc => names.includes(disc.name)).map(({ id }) => id);
}

function points(chance: number): string {
  return (100 * chance).toFixed(1);
}

function ok<T>(result: Readonly<{ ok: true; value: T }> | Readonly<{ ok: false; problems: unknown }>): T {
  if (result.ok) return result.value;
  throw new Error(JSON.stringify(result.problems));
}
