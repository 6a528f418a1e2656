import { isDeepStrictEqual } from 'node:util';
import { describe, expect, it } from 'vitest';
import type { HoleMap } from '../../../core/geometry/hole-map.ts';
import { makeDayLibraries, windRooms } from '../../../core/strategy/day-libraries.ts';
import { planHole } from '../../../core/strategy/plan-hole.ts';
import { type HolePlan, HolePlanSchema } from '../../../core/strategy/plan-report.ts';
import { roundOf } from '../../../core/strategy/round-distribution.ts';
import { aDay } from './a-day.ts';
import { BAG, inventedPlayer } from './invented-player.ts';
import { elbow, overWater, shortOpen } from './sketched-holes.ts';
import { bareHole } from './small-world.ts';

const player = inventedPlayer({ arm_mps: 23, discs: [BAG[0], BAG[1], BAG[3]] });
const libraries = makeDayLibraries(player, aDay(4, 60), {}, 5, 1);
const HOLES: readonly { name: string; map: HoleMap }[] = [
  { name: 'a short open hole', map: shortOpen() },
  { name: 'an elbow between a wood and out-of-bounds', map: elbow() },
  { name: 'a green over water with a drop zone', map: overWater() },
];
const plans = new Map(HOLES.map(({ map }) => [map, planHole({ map, libraries })]));
const planOf = (map: HoleMap) => plans.get(map) as HolePlan;
const meanOf = (plan: HolePlan) => plan.scoreDistribution.reduce((sum, s) => sum + s.throws * s.chance, 0);

function deepFreeze<T>(value: T): T {
  // typed arrays cannot be frozen: they are compared instead
  if (value !== null && typeof value === 'object' && !ArrayBuffer.isView(value)) {
    Object.freeze(value);
    for (const part of Object.values(value)) deepFreeze(part);
  }
  return value;
}

describe.each(HOLES)('the plan of $name', ({ map }) => {
  const plan = planOf(map);

  it('is a whole report', () => {
    expect(HolePlanSchema.safeParse(plan).error).toBeUndefined();
  });

  it('has scores whose chances sum to 1, none negative', () => {
    const sum = plan.scoreDistribution.reduce((total, s) => total + s.chance, 0);
    expect(Math.abs(sum - 1)).toBeLessThan(1e-9);
    for (const { chance } of plan.scoreDistribution) expect(chance).toBeGreaterThanOrEqual(0);
    expect(plan.scoreDistribution.map(s => s.throws)).toEqual(Array.from({ length: 12 }, (_, i) => i + 1));
  });

  it('has scores whose mean is the expected throws, to 0.02 (findings of the own prototype: same samples, two ways)', () => {
    expect(Math.abs(meanOf(plan) - plan.expectedThrows)).toBeLessThan(0.02);
  });

  it('holds what it says of the choice: chances between each other, expected throws of the choice, regrets from it', () => {
    const { choice, alternatives } = plan;
    expect(plan.expectedThrows).toBe(choice.expectedThrows);
    expect(choice.regret).toBe(0);
    expect(choice.parkedChance).toBeLessThanOrEqual(choice.within10mChance);
    expect(choice.within10mChance).toBeLessThanOrEqual(choice.within20mChance);
    expect(choice.penaltyChance).toBeCloseTo(choice.outOfBoundsChance + choice.hazardChance + choice.mandoChance, 9);
    expect(alternatives.map(a => a.discId)).not.toContain(choice.discId);
    for (const other of alternatives) {
      if (other.tie) expect(other.regret).toBe(0);
      else expect(other.regret).toBeCloseTo(Math.max(0, other.expectedThrows - choice.expectedThrows), 12);
    }
    expect(plan.byClass[choice.class]?.discId).toBe(choice.discId);
    // every disc of the bag is there
    expect(new Set([choice, ...alternatives].map(shot => shot.discId)).size).toBe(3);
  });

  it('is planned further from likely lies', () => {
    const total = plan.next.reduce((sum, next) => sum + next.chance, 0);
    expect(total).toBeGreaterThan(0.8);
    for (const next of plan.next) {
      if (next.action === 'putt') expect(next.toBasket_m).toBeLessThan(25);
      else expect(next.shot).toBeDefined();
      expect(next.expectedThrows).toBeLessThan(plan.expectedThrows + 0.5);
    }
  });
});

describe('out-of-bounds with a drop zone', () => {
  // an arm for which the carry is a gamble, so that the drop zone is often used
  const weaker = inventedPlayer({ arm_mps: 21, discs: [BAG[0], BAG[1], BAG[3]] });
  const plan = planHole({ map: overWater(), libraries: makeDayLibraries(weaker, aDay(0), {}, 5, 1) });

  it('scores from the drop zone where the expected throws count on it: the same mean, to 0.02', () => {
    expect(plan.choice.penaltyChance).toBeGreaterThan(0.05);
    expect(Math.abs(meanOf(plan) - plan.expectedThrows)).toBeLessThan(0.02);
  });

  it('plans the next throw after a penalty from the drop zone, 20.5 m from the basket, not from before the water', () => {
    const after = plan.next.find(next => next.after === 'a penalty');
    // by hand: √(14² + 15²)
    expect(after?.toBasket_m).toBeCloseTo(Math.hypot(14, 15), 1);
  });
});

describe('planning', () => {
  const { map } = HOLES[1];

  it('gives the same answer for the same seed, whatever was planned before and however often', () => {
    const fresh = makeDayLibraries(player, aDay(4, 60), {}, 5, 1);
    const first = planHole({ map, libraries: fresh });
    expect(first).toEqual(planOf(map));
    planHole({ map: HOLES[0].map, libraries: fresh });
    expect(planHole({ map, libraries: fresh })).toEqual(first);
  });

  it('gives near the same expected throws for another seed', () => {
    const other = planHole({ map, libraries: makeDayLibraries(player, aDay(4, 60), {}, 5, 2) });
    expect(other).not.toEqual(planOf(map));
    // regression: seeds were seen 0.07 apart on this hole; the value of later lies rests on 24 samples
    expect(Math.abs(other.expectedThrows - planOf(map).expectedThrows)).toBeLessThan(0.15);
  });

  it('changes nothing it is given', () => {
    // the bins are room for what is worked out once, not something given: they are left out of the comparison
    const { bins: _, ...given } = libraries;
    const own = structuredClone({ map, libraries: given });
    deepFreeze(own);
    const before = structuredClone(own);
    expect(planHole({ map: own.map, libraries: { ...own.libraries, bins: windRooms() } })).toEqual(planOf(map));
    // millions of numbers: node:util compares them natively
    expect(isDeepStrictEqual(own, before)).toBe(true);
  });

  it('refuses limits that leave no disc', () => {
    expect(() => makeDayLibraries(player, aDay(0), { classes: ['distance'] }, 5, 1)).toThrow(RangeError);
  });

  it.each([['distance'], ['control'], ['fairway']] as const)(
    'plans with nothing but a %s driver, near the basket and far',
    discClass => {
      // a practice limit of the design (`--only`): no disc of the bag can be thrown softly then
      const driver = { distance: BAG[5], control: BAG[4], fairway: BAG[3] }[discClass];
      for (const arm_mps of [24, 30]) {
        const only = inventedPlayer({ arm_mps, discs: [driver] });
        const plan = planHole({
          map: bareHole({ basket: [0, 82] }),
          libraries: makeDayLibraries(only, aDay(0), {}, 5, 1),
        });
        expect(plan.choice.class).toBe(discClass);
        expect(Math.abs(plan.scoreDistribution.reduce((total, s) => total + s.chance, 0) - 1)).toBeLessThan(1e-9);
      }
    },
  );

  it('keeps to the limits and to the putter kept for putts', () => {
    const putter = { ...player.throws[0], discId: 'keepsake', role: 'putting' as const };
    const withPutter = { ...player, throws: [putter, ...player.throws] };
    const plan = planHole({ map: HOLES[0].map, libraries: makeDayLibraries(withPutter, aDay(0), {}, 5, 1) });
    expect([plan.choice, ...plan.alternatives].map(s => s.discId)).not.toContain('keepsake');
    const only = makeDayLibraries(player, aDay(0), { classes: ['midrange'] }, 5, 1);
    const limited = planHole({ map: HOLES[0].map, libraries: only });
    expect([limited.choice, ...limited.alternatives].every(s => s.class === 'midrange')).toBe(true);
    expect(limited.next.every(n => n.shot === undefined || n.shot.class === 'midrange')).toBe(true);
  });
});

describe('a round', () => {
  const holes = HOLES.map(({ map }) => planOf(map));
  const round = roundOf(holes);

  it('adds up: means, pars, and variances of holes taken as independent', () => {
    const variance = (plan: HolePlan) => {
      const mean = meanOf(plan);
      return plan.scoreDistribution.reduce((sum, s) => sum + s.chance * (s.throws - mean) ** 2, 0);
    };
    expect(round.expectedThrows).toBeCloseTo(
      holes.reduce((sum, h) => sum + h.expectedThrows, 0),
      9,
    );
    expect(round.par).toBe(9);
    expect(round.sd).toBeCloseTo(Math.sqrt(holes.reduce((sum, h) => sum + variance(h), 0)), 9);
  });

  it('has a distribution that sums to 1 over scores in order', () => {
    expect(Math.abs(round.distribution.reduce((sum, s) => sum + s.chance, 0) - 1)).toBeLessThan(1e-9);
    round.distribution.slice(1).forEach((s, i) => {
      expect(s.throws).toBe(round.distribution[i].throws + 1);
    });
    const mean = round.distribution.reduce((sum, s) => sum + s.throws * s.chance, 0);
    // the ends below 0.05 % are folded in
    expect(Math.abs(mean - holes.reduce((sum, h) => sum + meanOf(h), 0))).toBeLessThan(0.02);
  });
});
