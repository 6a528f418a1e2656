import { describe, expect, it } from 'vitest';
import { makeChance } from '../../../core/player/putting-curve.ts';
import { drillsOf, halfWithin_m } from '../../../core/practice/drills.ts';
import type { PracticeHole } from '../../../core/practice/practice-hole.ts';
import { otherRandom } from './play-by-hand.ts';

const putting = { floor: 0, ceiling: 0.99, half_m: 8, scale_m: 2, attempts: 200, basis: 'measured' as const };
const use = (change: Partial<PracticeHole['throwUses'][number]> = {}): PracticeHole['throwUses'][number] => ({
  discId: 'kettle',
  disc: 'Kettle',
  hand: 'backhand',
  shape: 'flat',
  height: 'standard',
  power: 0.9,
  fromTee: true,
  isMeasured: true,
  distance_m: 60,
  distanceSd_m: 6,
  sideSd_m: 4,
  toBasket_m: 62,
  aPlay: 1,
  saving: 0.1,
  ...change,
});
const shot = (change: object) => ({
  disc: 'Kettle',
  shape: 'flat',
  hand: 'backhand',
  distance_m: 60,
  within10mChance: 0.6,
  ...change,
});
const hole = (ref: string, change: Partial<PracticeHole> = {}): PracticeHole =>
  ({
    ref,
    playLength_m: 90,
    plannedThrows: 3,
    throwUses: [],
    puttUses: [],
    shot: shot({}),
    ...change,
  }) as unknown as PracticeHole;

describe('drills', () => {
  it('gather the same throw over the holes and say how many should come to rest inside', () => {
    const holes = [hole('1', { throwUses: [use()] }), hole('2', { throwUses: [use({ distance_m: 62, saving: 0.2 })] })];
    const [drill] = drillsOf(holes, [], putting);
    expect(drill!.kind).toBe('throw');
    expect(drill!.worth).toBeCloseTo(0.3, 12);
    expect(drill!.title).toBe('Kettle, flat, 61 m');
    expect(drill!.text).toContain('half of them, 10, rest within 6 m');
    // with a fifth less spread 1 − 2^(−1/0.64) = 66 % lie inside the circle of half now: [C] by hand, 13 of 20
    expect(drill!.text).toContain('work towards 13');
    expect(drill!.why).toContain('asks for it 2.0 times');
  });

  it('say what the putting log gives, and what a fifth less spread would', () => {
    const holes = [hole('1', { puttUses: [{ distance_m: 8, aPlay: 1, makeChance: 0.5, saving: 0.12 }] })];
    const [drill] = drillsOf(holes, [], putting);
    expect(drill!.kind).toBe('putt');
    const [now, then] = [8, 6.4].map(distance_m => Math.round(30 * makeChance(putting, distance_m)));
    expect(drill!.text).toBe(`30 putts from 8 m. By your putting log about ${now} go in: work towards ${then}.`);
    const assumed = drillsOf(holes, [], { ...putting, basis: 'predicted' });
    expect(assumed[0]!.text).toContain('you have no putting log');
  });

  it('name the hole on which the limit costs most', () => {
    const best = shot({ disc: 'Ferry', distance_m: 88 });
    const own = ['1', '2'].map(ref => ({ ref, expectedThrows: ref === '2' ? 2.4 : 2.9, shot: best }));
    const [drill] = drillsOf([hole('1'), hole('2')], own as never, putting);
    expect(drill!.kind).toBe('distance');
    expect(drill!.title).toContain('hole 2');
    expect(drill!.worth).toBeCloseTo(0.6, 12);
    expect(drill!.why).toContain('leaves 30 m where Ferry would leave 2 m');
  });

  it('come most worth first, four at most, and none for what is worth nothing', () => {
    const uses = [10, 30, 50, 70, 90].map((distance_m, i) => use({ distance_m, saving: 0.01 + 0.05 * i }));
    const drills = drillsOf([hole('1', { throwUses: uses })], [], putting);
    expect(drills.map(({ title }) => title)).toEqual([90, 70, 50, 30].map(m => `Kettle, flat, ${m} m`));
  });
});

it.each([
  [6, 6],
  [8, 4],
  [5, 2],
])('half of throws that stray %d m along and %d m aside lie within the circle said, to 4 points', (along_m, side_m) => {
  const random = otherRandom(9);
  const normal = () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
  const within = halfWithin_m(along_m, side_m);
  const count = 20_000;
  let inside = 0;
  for (let i = 0; i < count; i++) if (Math.hypot(along_m * normal(), side_m * normal()) <= within) inside++;
  expect(Math.abs(inside / count - 0.5)).toBeLessThan(0.04);
});
