import { readFileSync } from 'node:fs';
import { cpus } from 'node:os';
import { makeDay } from '../../core/air/day.ts';
import type { Course } from '../../core/course/course.ts';
import { parseCourseText } from '../../core/course/parse-course-text.ts';
import { normalSamples } from '../../core/flight/normal-samples.ts';
import { buildHoleMap } from '../../core/geometry/build-hole-map.ts';
import type { HoleMap } from '../../core/geometry/hole-map.ts';
import { rasterize } from '../../core/geometry/rasterize.ts';
import { fitPlayer } from '../../core/player/fit-player.ts';
import type { FittedPlayer } from '../../core/player/fitted-player.ts';
import { parsePlayerText } from '../../core/player/player-file.ts';
import { type Candidate, chooseShot, NEXT_EFFORT, TEE_EFFORT } from '../../core/strategy/choose-shot.ts';
import { type DayLibraries, makeDayLibraries } from '../../core/strategy/day-libraries.ts';
import { type SolvedHole, solveHole } from '../../core/strategy/hole-solver.ts';
import { lieAt } from '../../core/strategy/lie-grid.ts';
import type { Lie } from '../../core/strategy/march.ts';
import { planHole, planHoleInFull } from '../../core/strategy/plan-hole.ts';
import { shotOutcome } from '../../core/strategy/shot-outcome.ts';
import { type ValueField, valueAt } from '../../core/strategy/value-field.ts';
import { type BruteSettings, bruteForce } from './brute-force.ts';

/**
 * Strategy figures in one run, CPU time: planning every hole of the three sample courses on one thread; against the plain brute
 * force (a few timed lies × the number of lies) on the same hole; and the tee regret under a smaller oracle's values.
 * Run: node tests/bench/strategy.ts
 */

const SEED = 1;
const DROP_M = 22;
const TEE = { east_m: 0, north_m: 0, ground_m: 0 };
const FRESH_ROWS = 4096;
const TIMED_LIES = 3;
const FULL_BRUTE: BruteSettings = {
  cell_m: 5,
  aimReach_deg: 48,
  aimStep_deg: 3,
  samples: 16,
  rerank: 8,
  rerankSamples: 64,
  valueSamples: 32,
  sweeps: 1,
};
const ORACLE: BruteSettings = {
  cell_m: 5,
  aimReach_deg: 60,
  aimStep_deg: 6,
  samples: 8,
  rerank: 6,
  rerankSamples: 32,
  valueSamples: 32,
  sweeps: 2,
};
const ORACLE_DISCS = /throwing-putter|straight-midrange|overstable-midrange|low-speed-driver|distance-driver/;
const ORACLE_HOLES = [
  ['short-nine', '5'],
  ['old-orchard', '4'],
  ['old-orchard', '9'],
  ['ridge-and-reservoir', '7'],
] as const;
/** Lies asked on each of these holes, spread over all that are no putts. */
const ORACLE_LIES = 12;
const FARTHER_THAN_M = 30;
const LIE_ROWS = 2048;
const WIDE_ROWS = 256;

const sample = (name: string) => readFileSync(new URL(`../../sample-courses/${name}`, import.meta.url), 'utf8');
const whole = playerOf('sample-player.json');
const few: FittedPlayer = {
  ...whole,
  throws: whole.throws.filter(fitted => fitted.hand === 'backhand' && ORACLE_DISCS.test(fitted.discId)),
};
const day = ok(makeDay({ wind: { speed_mps: 4, from_deg: 250, gust_mps: 7 } }));

console.log(`${cpus()[0]?.model}, ${cpus().length} cores, Node ${process.version}`);
const [libraries, librariesCpu_s] = timed(() => makeDayLibraries(whole, day, {}, DROP_M, SEED));
console.log(
  `libraries: ${libraries.shots.length} shots, ${libraries.field.shots.length} in the field, ${librariesCpu_s.toFixed(2)} s CPU`,
);
for (const name of ['short-nine', 'old-orchard', 'ridge-and-reservoir']) planCourse(name);
compareWithBrute('ridge-and-reservoir', '7');
for (const [course, ref] of ORACLE_HOLES) regret(course, ref);
console.log(`peak resident memory ${Math.round(process.resourceUsage().maxRSS / 1024)} MB`);

function planCourse(name: string): void {
  const course = courseOf(name);
  let slowest_s = 0;
  const [, cpu_s] = timed(() => {
    for (const hole of course.holes) {
      const [, hole_s] = timed(() => planHole({ map: buildHoleMap(course, hole), libraries }));
      slowest_s = Math.max(slowest_s, hole_s);
    }
  });
  console.log(
    `${name}: ${course.holes.length} holes planned in ${cpu_s.toFixed(1)} s CPU on one thread, slowest hole ${slowest_s.toFixed(2)} s`,
  );
}

function compareWithBrute(name: string, ref: string): void {
  const [solved, fast_s] = timed(() => solvedHole(name, ref, libraries));
  const brute = bruteForce(solved, libraries, FULL_BRUTE, 77);
  const lies = Array.from(
    { length: TIMED_LIES },
    (_, i) => brute.nodes[Math.floor(((i + 1) * brute.nodes.length) / (TIMED_LIES + 1))],
  );
  const [, few_s] = timed(() => {
    for (const node of lies) if (node !== undefined) brute.solveNode(node);
  });
  const brute_s = (few_s / TIMED_LIES) * brute.nodes.length;
  console.log(
    `${name} ${ref}: values of ${brute.nodes.length} lies, brute force ${brute_s.toFixed(0)} s (${TIMED_LIES} timed × lies), ours ${fast_s.toFixed(2)} s CPU: ${Math.round(brute_s / fast_s)}×`,
  );
}

function regret(name: string, ref: string): void {
  const fewLibraries = makeDayLibraries(few, day, {}, DROP_M, SEED);
  const planned = planHoleInFull({ map: mapOf(name, ref), libraries: fewLibraries });
  const { solved } = planned;
  const oracle = bruteForce(solvedHole(name, ref, fewLibraries), fewLibraries, ORACLE, 78);
  oracle.solve();
  const { field } = oracle;
  const wide = {
    ...TEE_EFFORT,
    aimReach_deg: 90,
    aimStep_deg: 3,
    sampled: 1500,
    short: 160,
    exactRows: 16,
    refine: 60,
    rounds: [
      { within: 0.5, errors: 2, keep: 40, rows: 32, sizes: [1] },
      { within: 0.15, errors: 2, keep: 12, rows: WIDE_ROWS, sizes: [1, 0.5] },
    ],
    answerRows: 512,
    otherRows: 512,
  };
  // against a search much wider than the one that is judged: one as narrow would miss the same shots
  const yardstick = { ...solved.table, field, searchNormals: normalSamples(WIDE_ROWS, 998) };
  /** By how much the oracle's own value of a lie exceeds what its best throw takes under its own values: its error. */
  const contradictions: number[] = [];
  const fresh = normalSamples(FRESH_ROWS, 999);
  const under = ({ shot, aim_deg }: Candidate, lie: Lie, rows: number) => {
    const { thrower } = solved.table;
    const { dropZone } = solved.world;
    const replay = valueAt(field, lie.east_m, lie.north_m);
    return shotOutcome(thrower, field, shot, lie, aim_deg, fresh, 0, rows, dropZone, replay).expectedThrows;
  };
  const regretAt = (chosen: Candidate, lie: Lie, rows: number) => {
    const best = chooseShot(yardstick, lie, wide).finalists.slice(0, 6);
    const own = under(chosen, lie, rows);
    const least = Math.min(own, ...best.map(shot => under(shot, lie, rows)));
    contradictions.push(Math.abs(valueAt(field, lie.east_m, lie.north_m) - least));
    return own - least;
  };
  const { best } = planned.choice;
  const far = oracle.nodes.map(node => lieAt(solved.world, field, node)).filter(lie => farFrom(field, lie));
  const lies = Array.from({ length: ORACLE_LIES }, (_, i) => far[Math.floor(((i + 0.5) * far.length) / ORACLE_LIES)]);
  const atLies = lies.flatMap(lie =>
    lie === undefined ? [] : [regretAt(chooseShot(solved.table, lie, NEXT_EFFORT).best, lie, LIE_ROWS)],
  );
  console.log(
    `${name} ${ref}: regret under the oracle's values at the tee ${regretAt(best, TEE, FRESH_ROWS).toFixed(3)} throws, ` +
      `at ${atLies.length} lies mean ${(atLies.reduce((a, b) => a + b, 0) / atLies.length).toFixed(3)}, most ${Math.max(...atLies).toFixed(3)}; ` +
      `the oracle contradicts itself by ${(contradictions.reduce((a, b) => a + b, 0) / contradictions.length).toFixed(3)} at these lies, most ${Math.max(...contradictions).toFixed(3)}; ` +
      `stated ${best.outcome.expectedThrows.toFixed(3)}, by the oracle ${under(best, TEE, FRESH_ROWS).toFixed(3)}`,
  );
}

function farFrom({ basket }: ValueField, { east_m, north_m }: Lie): boolean {
  return Math.hypot(east_m - basket[0], north_m - basket[1]) > FARTHER_THAN_M;
}

function mapOf(name: string, ref: string): HoleMap {
  const course = courseOf(name);
  const hole = course.holes.find(each => each.ref === ref);
  if (!hole) throw new RangeError(`no hole ${ref} in ${name}`);
  return buildHoleMap(course, hole);
}

function solvedHole(name: string, ref: string, some: DayLibraries): SolvedHole {
  const map = mapOf(name, ref);
  return solveHole(map, rasterize(map), some, 20);
}

function courseOf(name: string): Course {
  return ok(parseCourseText(sample(`${name}.geojson`), name));
}

function playerOf(file: string): FittedPlayer {
  return fitPlayer(ok(parsePlayerText(sample(file))));
}

function ok<T>(result: { ok: true; value: T } | { ok: false; problems: readonly { message: string }[] }): T {
  if (result.ok) return result.value;
  throw new Error(result.problems.map(problem => problem.message).join('; '));
}

function timed<T>(work: () => T): readonly [T, cpu_s: number] {
  const before = process.cpuUsage();
  const value = work();
  const { user, system } = process.cpuUsage(before);
  return [value, (user + system) / 1e6];
}
