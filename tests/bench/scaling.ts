import { readFileSync } from 'node:fs';
import { cpus } from 'node:os';
import { makeDay } from '../../core/air/day.ts';
import { parseCourseText } from '../../core/course/parse-course-text.ts';
import { buildHoleMap } from '../../core/geometry/build-hole-map.ts';
import { fitPlayer } from '../../core/player/fit-player.ts';
import { parsePlayerText } from '../../core/player/player-file.ts';
import { chooseShot, type Effort, TEE_EFFORT } from '../../core/strategy/choose-shot.ts';
import { makeDayLibraries } from '../../core/strategy/day-libraries.ts';
import { makeField } from '../../core/strategy/make-field.ts';
import { createMarcher } from '../../core/strategy/march.ts';
import { planHole, planHoleInFull } from '../../core/strategy/plan-hole.ts';
import { createShotMarcher } from '../../core/strategy/shot-marcher.ts';
import { solveField } from '../../core/strategy/solve-field.ts';
import { valueAt } from '../../core/strategy/value-field.ts';
import { windBins } from '../../core/strategy/wind-bins.ts';

/**
 * How the cost grows with discs, holes, samples and lies: CPU seconds of one thread, each measured several times in turn with the
 * others (least shown), and the power of the size that the cost grows with (1: linear), by least squares on the logarithms.
 * Run: node tests/bench/scaling.ts [repeats]
 */

const REPEATS = Number(process.argv[2] ?? 3);
const SEED = 1;
const DROP_M = 22;
const TEE = { east_m: 0, north_m: 0, ground_m: 0 };
const COURSE = 'ridge-and-reservoir';
/** A hole of middle length with trees. */
const HOLE = '7';

const sample = (name: string) => readFileSync(new URL(`../../sample-courses/${name}`, import.meta.url), 'utf8');
const player = fitPlayer(ok(parsePlayerText(sample('sample-player.json'))));
const course = ok(parseCourseText(sample(`${COURSE}.geojson`), COURSE));
const day = ok(makeDay({ wind: { speed_mps: 4, from_deg: 250, gust_mps: 7 } }));
const maps = course.holes.map(hole => buildHoleMap(course, hole));
const map = maps.find(({ ref }) => ref === HOLE)!;
const discIds = [...new Set(player.throws.filter(({ role }) => role === 'throwing').map(({ discId }) => discId))];
const everything = makeDayLibraries(player, day, {}, DROP_M, SEED);

console.log(`${cpus()[0]?.model}, ${cpus().length} cores, Node ${process.version}; ${COURSE} ${HOLE}, wind 4 m/s`);

const byDiscs = [3, 5, 8, discIds.length].map(count => ({ count, ids: spread(discIds, count) }));
report(
  'discs (the bag flown for the day, and one hole planned)',
  byDiscs.map(({ count, ids }) => ({
    size: count,
    work: () => planHole({ map, libraries: makeDayLibraries(player, day, { discIds: ids }, DROP_M, SEED) }),
  })),
);
report(
  'holes',
  [3, 6, 12, maps.length].map(count => ({
    size: count,
    // every few of them, so that short and long ones are among each
    work: () => {
      for (const one of spread(maps, count)) planHole({ map: one, libraries: everything });
    },
  })),
);

const { solved } = planHoleInFull({ map, libraries: everything });
report(
  'samples a shot, tee choice',
  [0.5, 1, 2, 4].map(times => ({
    size: times * TEE_EFFORT.answerRows,
    work: () => chooseShot(solved.table, TEE, withSamples(times)),
  })),
);
report('lies valued (cells of 8 to 3 m)', [8, 6, 5, 4, 3].map(fieldAt));
console.log(`peak resident memory ${Math.round(process.resourceUsage().maxRSS / 1024)} MB`);

function withSamples(times: number): Effort {
  // searches fly even numbers of samples
  const rows = (count: number) => 2 * Math.round((count * times) / 2);
  const { exactRows, answerRows, otherRows } = TEE_EFFORT;
  // 64 rows to search with (a refinement flies twice these) and 512 to answer with are all there are
  return {
    ...TEE_EFFORT,
    exactRows: Math.min(32, rows(exactRows)),
    answerRows: Math.min(512, rows(answerRows)),
    otherRows: Math.min(512, rows(otherRows)),
  };
}

function fieldAt(cell_m: number) {
  const { world, exposure, table } = solved;
  const bins = windBins(everything.field, day.wind.from_deg, 1, everything.bins[exposure].field);
  const lies = makeField(world, table.field.putting, cell_m).isLie.reduce((sum, is) => sum + is, 0);
  return {
    size: lies,
    work: () => {
      const field = makeField(world, table.field.putting, cell_m);
      solveField(world, field, bins, createShotMarcher(world, bins, createMarcher(world), table.player), true);
      return `${cell_m} m: value at the tee ${valueAt(field, 0, 0).toFixed(3)}`;
    },
  };
}

type Case = Readonly<{ size: number; work: () => unknown }>;

function report(name: string, cases: readonly Case[]): void {
  const least = cases.map(() => Number.POSITIVE_INFINITY);
  const said = new Set<string>();
  for (let repeat = 0; repeat < REPEATS; repeat++)
    cases.forEach(({ work }, i) => {
      const before = process.cpuUsage();
      const answer = work();
      if (typeof answer === 'string') said.add(answer);
      const { user, system } = process.cpuUsage(before);
      least[i] = Math.min(least[i]!, (user + system) / 1e6);
    });
  const points = cases.map(({ size }, i) => [Math.log(size), Math.log(least[i]!)] as const);
  const [mx, my] = [0, 1].map(c => points.reduce((sum, p) => sum + p[c]!, 0) / points.length) as [number, number];
  const power =
    points.reduce((sum, [x, y]) => sum + (x - mx) * (y - my), 0) / points.reduce((sum, [x]) => sum + (x - mx) ** 2, 0);
  console.log(
    `${name}: ${cases.map(({ size }, i) => `${size}: ${least[i]!.toFixed(2)} s`).join(', ')}; grows with the power ${power.toFixed(2)}`,
  );
  for (const line of said) console.log(`  ${line}`);
}

/** `count` of the list, evenly spread, the first and last among them. */
function spread<T>(list: readonly T[], count: number): T[] {
  return Array.from({ length: count }, (_, i) => list[Math.round((i * (list.length - 1)) / Math.max(1, count - 1))]!);
}

function ok<T>(result: Readonly<{ ok: true; value: T }> | Readonly<{ ok: false; problems: unknown }>): T {
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value;
}
