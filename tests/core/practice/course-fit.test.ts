import { describe, expect, it } from 'vitest';
import type { Course } from '../../../core/course/course.ts';
import { courseScore, fitHole, holesToPlan } from '../../../core/practice/course-fit.ts';
import { courseFitReport } from '../../../core/practice/fit-words.ts';
import { holeFromTee, teesOf } from '../../../core/practice/hole-from-tee.ts';
import { reachLines } from '../../../core/practice/reach-lines.ts';
import { good, line, point } from '../course/course-file.ts';
import { aDay } from '../strategy/a-day.ts';
import { BAG, inventedPlayer } from '../strategy/invented-player.ts';

type Xy = readonly [number, number];

/** A straight hole to the east, its tee `length_m` before the basket, and others. */
const holeOf = (
  ref: string,
  north_m: number,
  length_m: number,
  others: readonly Readonly<{ name: string; x: number }>[] = [],
) => [
  point([0, north_m], { disc_golf: 'tee', ref, ...(others.length > 0 && { name: 'long' }) }),
  ...others.map(({ name, x }) => point([x, north_m], { disc_golf: 'tee', ref, name })),
  point([length_m, north_m], { disc_golf: 'basket', ref }),
  line([[0, north_m] as Xy, [length_m, north_m] as Xy], { disc_golf: 'hole', ref, par: '3' }),
];

// arm 24 m/s: the putter goes about 68 m on an average day (regression; only the order of lengths matters below)
const player = inventedPlayer({ arm_mps: 24, discs: BAG.slice(0, 1) });
const allowed = { words: 'one disc', discIds: ['thimble'], discNames: ['thimble'] };
const calm = reachLines(player, allowed, aDay(0));

function fitsOf(course: Course, lines = calm) {
  return course.holes.map(hole => fitHole(course, hole, lines));
}

describe('the cheap look at a course', () => {
  const course = good(
    ...holeOf('1', 0, 60),
    ...holeOf('2', 200, 130, [{ name: 'short', x: 65 }]),
    ...holeOf('3', 400, 160),
    ...holeOf('4', 600, 180, [{ name: 'middle', x: 60 }]),
  );
  const holes = fitsOf(course);

  it('takes a hole from its first tee, from a shorter one, or says that it is too long', () => {
    expect(holes.map(({ tee }) => tee?.name ?? null)).toEqual(['tee', 'short tee', null, null]);
    const report = courseFitReport({ key: 'k', course: course.name, holes }, 4);
    expect(report.holes.map(({ verdict }) => verdict)).toEqual([
      'suits',
      'suits from another tee',
      'too long',
      'too long',
    ]);
    expect(report.text).toBe('2 of 4 holes suit; skip 3 and 4. Other tees: 2 from the short tee.');
    expect(report.holes[1]!.text).toMatch(/^from the short tee, 65 m \(the long tee is 130 m, too long\)/);
    expect(report.holes[3]!.text).toMatch(/^too long: 120 m from the middle tee, its shortest, the longest throw/);
    expect(report.score).toBeCloseTo(courseScore({ key: 'k', course: course.name, holes }, 4), 12);
  });

  it('reads the length from the tee it would use', () => {
    // as laid out, to a centimetre of the projection
    expect(Math.abs(holes[1]!.tee!.estimate.playLength_m - 65)).toBeLessThan(0.05);
  });

  it('is likelier to reach what is shorter', () => {
    const chances = [40, 70, 85, 95, 110].map(
      length_m => fitsOf(good(...holeOf('1', 0, length_m)))[0]!.tees[0]!.estimate.reach20Chance,
    );
    chances.reduce((before, chance) => {
      expect(chance).toBeLessThanOrEqual(before + 1e-9);
      return chance;
    });
    expect(chances[0]!).toBeGreaterThan(0.9);
    expect(chances.at(-1)!).toBeLessThan(0.1);
  });

  it('reckons with wind, climb and what hangs overhead', () => {
    const chanceOf = (found: Course, lines = calm) => fitsOf(found, lines)[0]!.tees[0]!.estimate;
    const plain = chanceOf(good(...holeOf('1', 0, 88)));
    // the hole runs east: a wind from the east is a headwind
    const windy = chanceOf(good(...holeOf('1', 0, 88)), reachLines(player, allowed, aDay(8, 90)));
    expect(windy.reach_m).toBeLessThan(plain.reach_m);
    expect(windy.reach20Chance).toBeLessThan(plain.reach20Chance);
    const roof = line([[30, 0] as Xy, [45, 0] as Xy], { obstacle: 'ceiling', min_height: '2', width: '6' });
    const low = chanceOf(good(...holeOf('1', 0, 88), roof));
    expect(low.underCeiling).toBe(true);
    expect(low.reach_m).toBeLessThan(plain.reach_m);
    const high = point([88, 0], { disc_golf: 'basket', ref: '1', ele: '8' });
    const climbing = good(
      point([0, 0], { disc_golf: 'tee', ref: '1', ele: '0' }),
      high,
      line([[0, 0] as Xy, [88, 0] as Xy], { disc_golf: 'hole', ref: '1', par: '3' }),
    );
    expect(chanceOf(climbing).reach20Chance).toBeLessThan(plain.reach20Chance);
  });

  it('plans the best holes, in order of play', () => {
    const some = holesToPlan({ key: 'k', course: 'c', holes }, 1);
    expect(some.map(({ ref }) => ref)).toEqual(['1']);
    expect(holesToPlan({ key: 'k', course: 'c', holes }, 9).map(({ ref }) => ref)).toEqual(['1', '2']);
  });

  it('says so when nothing suits', () => {
    const long = good(...holeOf('1', 0, 150));
    const report = courseFitReport({ key: 'k', course: 'c', holes: fitsOf(long) }, 9);
    expect(report.suits).toBe(0);
    expect(report.text).toMatch(
      /^Too long for this limit: the shortest hole is 150 m, and the longest throw allowed goes/,
    );
  });
});

it('from a forward tee the bends behind it are left out', () => {
  const course = good(
    point([0, 0], { disc_golf: 'tee', ref: '1', name: 'back' }),
    point([60, 5], { disc_golf: 'tee', ref: '1', name: 'front' }),
    point([60, 90], { disc_golf: 'basket', ref: '1' }),
    line([[0, 0] as Xy, [55, 0] as Xy, [60, 90] as Xy], { disc_golf: 'hole', ref: '1', par: '4' }),
  );
  const [hole] = course.holes;
  const front = teesOf(hole!).find(({ name }) => name === 'front tee')!;
  const moved = holeFromTee(hole!, front.tee);
  expect(moved.tee).toBe(front.tee);
  expect(moved.line).toHaveLength(2);
  expect(holeFromTee(hole!, hole!.tee)).toBe(hole);
});

it('a second tee on top of the basket is no tee', () => {
  const course = good(...holeOf('1', 0, 60, [{ name: 'slip', x: 60 }]));
  expect(teesOf(course.holes[0]!).map(({ name }) => name)).toEqual(['long tee']);
});
