import { describe, expect, it } from 'vitest';
import type { HoleMap } from '../../../core/geometry/hole-map.ts';
import { ZONE_OUT_OF_BOUNDS } from '../../../core/geometry/obstacle-raster.ts';
import { rasterize } from '../../../core/geometry/rasterize.ts';
import { makeDayLibraries } from '../../../core/strategy/day-libraries.ts';
import { CHOICE, createMarcher, RESULT } from '../../../core/strategy/march.ts';
import { type PlannedHole, planHoleInFull } from '../../../core/strategy/plan-hole.ts';
import { valueAt } from '../../../core/strategy/value-field.ts';
import { makeWorld } from '../../../core/strategy/world.ts';
import { holePlayer } from '../../bench/play-hole.ts';
import { sampleMean } from '../../bench/round-simulation.ts';
import { aDay } from './a-day.ts';
import { BAG, inventedPlayer } from './invented-player.ts';
import { area, boxRing } from './sketched-holes.ts';
import { bareHole, march, polyline, rasterOf, worldOf } from './small-world.ts';

const throwTo = (along_m: number, left_m = 0) =>
  polyline([
    [0, 0, 1.2],
    [along_m * 0.7, left_m * 0.7, 3],
    [along_m, left_m, 0],
  ]);
const dropZone = (at: readonly [number, number], uses?: ('outOfBounds' | 'mando' | 'lostDisc')[]) => ({
  source: 'features[3]',
  assumed: [],
  at,
  ...(uses && { uses }),
});

describe('what the course allows after out-of-bounds (806.02: previous lie, in from the line, drop zone)', () => {
  const out = boxRing(-80, 30, 80, 60);
  it.each([
    { relief: undefined, line: true, choices: CHOICE.previousLie | CHOICE.dropZone },
    { relief: ['dropZone'], line: false, choices: CHOICE.dropZone },
    { relief: ['previousLie'], line: false, choices: CHOICE.previousLie },
    { relief: ['line', 'previousLie'], line: true, choices: CHOICE.previousLie },
  ] as const)('relief $relief', ({ relief, line, choices }) => {
    const map = bareHole({ basket: [0, 90], outOfBounds: [{ ...area(out), ...(relief && { relief }) }] });
    const marcher = createMarcher(makeWorld(map, rasterize(map)));
    const [end] = march(marcher, throwTo(45), { mode: 'exact' }).ends;
    expect(end).toMatchObject({ kind: RESULT.outOfBounds, penalty: 1 });
    expect(Number.isNaN(end.x)).toBe(!line);
    expect(marcher.ends.choices[0]).toBe(choices);
    // 1 m in, at right angles to the line at 30 m
    if (line) expect([end.x, end.y]).toEqual([expect.closeTo(0, 6), expect.closeTo(29, 6)]);
  });

  it('of an island holds for all ground round it', () => {
    const map = bareHole({
      basket: [0, 60],
      islands: [{ ...area(boxRing(-12, 48, 12, 72)), relief: ['dropZone'] }],
      dropZones: [dropZone([-20, 40])],
    });
    const marcher = createMarcher(makeWorld(map, rasterize(map)));
    const [end] = march(marcher, throwTo(85), { mode: 'exact' }).ends;
    expect([end.x, marcher.ends.choices[0]]).toEqual([Number.NaN, CHOICE.dropZone]);
  });

  it('is played from the drop zone that serves it, the first where several do', () => {
    const map = bareHole({
      basket: [0, 60],
      dropZones: [dropZone([1, 1], ['mando']), dropZone([2, 2], ['lostDisc']), dropZone([3, 3]), dropZone([4, 4])],
    });
    const world = makeWorld(map, rasterize(map));
    expect([world.dropZone, world.mandoDropZone, world.lostDropZone]).toEqual([
      [3, 3],
      [1, 1],
      [2, 2],
    ]);
    // 805.03: a lost disc has its own drop zone or none
    const plain = bareHole({ basket: [0, 60], dropZones: [dropZone([3, 3])] });
    expect(makeWorld(plain, rasterize(plain)).lostDropZone).toBeNull();
  });
});

describe('ground where discs get lost', () => {
  const SHARE = 0.08;
  const lostNorthOf = (north_m: number, more: object = {}) => ({
    ...rasterOf((_, north) => (north > 90 ? { zone: ZONE_OUT_OF_BOUNDS } : {})),
    lostShare: rasterOf((_, north) => ({ ground_m: north > north_m ? SHARE : 0 })).ground_m,
    ...more,
  });

  it.each(['search', 'exact'] as const)(
    'splits a throw at rest on it: share p not found, +1, again from the lie (805.03, %s)',
    mode => {
      const { ends } = march(createMarcher(worldOf(lostNorthOf(30))), throwTo(45), { mode });
      const lost = ends.filter(end => end.kind === RESULT.lost);
      expect(lost).toHaveLength(1);
      expect(lost[0].weight).toBeCloseTo(SHARE, 6);
      expect(lost[0]).toMatchObject({ penalty: 1, x: Number.NaN });
      expect(ends.find(end => end.kind === RESULT.rest)?.weight).toBeCloseTo(1 - SHARE, 6);
    },
  );

  it('flown over loses nothing; out-of-bounds in it is out-of-bounds, not lost; a lost-disc drop zone is played from', () => {
    const raster = lostNorthOf(30);
    const overLost = march(createMarcher(worldOf(lostNorthOf(30))), throwTo(20), { mode: 'exact' }).ends;
    expect(overLost.map(end => end.kind)).toEqual([RESULT.rest]);
    const out = march(createMarcher(worldOf(raster)), throwTo(95), { mode: 'exact' }).ends;
    expect(out.map(end => end.kind)).toEqual([RESULT.outOfBounds]);
    const world = { ...worldOf(raster), lostDropZone: [5, 25] as const };
    const lost = march(createMarcher(world), throwTo(45), { mode: 'exact' }).ends[0];
    expect(lost).toMatchObject({ kind: RESULT.lost, x: 5, y: 25, penalty: 1 });
  });
});

const player = inventedPlayer({ arm_mps: 23, discs: [BAG[0], BAG[1], BAG[3]] });
const libraries = makeDayLibraries(player, aDay(3, 60), {}, 5, 1);
const ROUNDS = 2500;
// the allowance agreed for the stated expectation
const ALLOWED = 0.03;

/** Plays a planned hole throw by throw with fresh scatter. */
function playedScores({ solved, choice }: PlannedHole): readonly number[] {
  const play = holePlayer(solved);
  return Array.from({ length: ROUNDS }, (_, r) => play(choice.best, 7919 + r));
}

function expectPlayed(planned: PlannedHole): void {
  const { mean, error } = sampleMean(playedScores(planned));
  expect(Math.abs(mean - planned.plan.expectedThrows)).toBeLessThan(ALLOWED + 3 * error);
  const stated = planned.plan.scoreDistribution.reduce((sum, { throws, chance }) => sum + throws * chance, 0);
  expect(Math.abs(stated - planned.plan.expectedThrows)).toBeLessThan(0.05);
}

/** The tee's value from the plan's own ends, by hand: what stays, what is thrown again. */
function byHand({ solved, choice }: PlannedHole, isAgain: (kind: number, next_x: number) => boolean): number {
  let sum = 1;
  let again = 0;
  for (const end of choice.best.outcome.ends) {
    sum += end.weight * end.penalty;
    if (isAgain(end.kind, end.nextX_m)) again += end.weight;
    else if (end.kind !== RESULT.holed) sum += end.weight * valueAt(solved.table.field, end.nextX_m, end.nextY_m);
  }
  return sum / (1 - again);
}

describe('an island green that must be thrown at again after a miss', () => {
  const map: HoleMap = bareHole({
    basket: [0, 55],
    islands: [{ ...area(boxRing(-11, 44, 11, 66)), relief: ['previousLie'] }],
  });
  const planned = planHoleInFull({ map, libraries });

  it('costs what a repeated trial costs: V = (1 + q + Σ w·V)/(1 − q) with q the chance to miss it, by hand', () => {
    const { outcome } = planned.choice.best;
    expect(outcome.outOfBoundsChance).toBeGreaterThan(0.02);
    for (const end of outcome.ends)
      if (end.kind === RESULT.outOfBounds) expect([end.penalty, end.nextX_m]).toEqual([1, Number.NaN]);
    expect(planned.plan.expectedThrows).toBeCloseTo(
      byHand(planned, kind => kind === RESULT.outOfBounds),
      9,
    );
    // score of the repeated trial, its throws and misses in closed form: n misses cost 2n and happen with q^n·(1 − q)
    const q = outcome.outOfBoundsChance;
    const onIsland = (byHand(planned, kind => kind === RESULT.outOfBounds) * (1 - q) - 1 - q) / (1 - q);
    expect(planned.plan.expectedThrows).toBeCloseTo((1 + q) / (1 - q) + onIsland, 9);
  });

  it('played throw by throw costs what is stated', () => expectPlayed(planned));
});

describe('water behind a high wall: throwing again beats going on from the bank in front of it', () => {
  const map: HoleMap = bareHole({
    basket: [0, 60],
    outOfBounds: [area(boxRing(-80, 30, 80, 48)), area(boxRing(-80, 70, 80, 170))],
    covers: [{ ...area(boxRing(-80, 31, 80, 32)), form: 'wall', height_m: 4.5, base_m: 0, density: 1 }],
  });
  const planned = planHoleInFull({ map, libraries });
  const { ends } = planned.choice.best.outcome;
  const out = ends.filter(end => end.kind === RESULT.outOfBounds);
  const again = out.filter(end => Number.isNaN(end.nextX_m));

  it('takes the previous lie for some and the line for others, each where it costs less (806.02)', () => {
    const { field } = planned.solved.table;
    const tee = valueAt(field, 0, 0);
    expect(again.length).toBeGreaterThan(0);
    expect(again.length).toBeLessThan(out.length);
    for (const end of out)
      if (!Number.isNaN(end.nextX_m)) expect(valueAt(field, end.nextX_m, end.nextY_m)).toBeLessThanOrEqual(tee);
    expect(planned.plan.expectedThrows).toBeCloseTo(
      byHand(planned, (_, next) => Number.isNaN(next)),
      9,
    );
  });

  it('costs more where the course forbids the previous lie', () => {
    const relief = ['line'] as const;
    const forced = planHoleInFull({
      map: { ...map, outOfBounds: map.outOfBounds.map(ground => ({ ...ground, relief })) },
      libraries,
    });
    expect(forced.choice.best.outcome.ends.some(end => Number.isNaN(end.nextX_m))).toBe(false);
    expect(forced.plan.expectedThrows).toBeGreaterThan(planned.plan.expectedThrows - 0.01);
  });

  it('played throw by throw costs what is stated', () => expectPlayed(planned));
});

describe('a hole with its green in ground where one disc in eight is lost', () => {
  const SHARE = 0.125;
  const open = bareHole({ basket: [0, 58] });
  const planned = planHoleInFull({
    map: { ...open, lostGrounds: [{ ...area(boxRing(-40, 30, 40, 100)), share: SHARE }] },
    libraries,
  });

  it('says the chance: the share of what comes to rest there', () => {
    const { holedChance, lostChance } = planned.choice.best.outcome;
    expect(lostChance).toBeCloseTo(SHARE * (1 - holedChance), 2);
    expect(planned.plan.choice.lostChance).toBeCloseTo(lostChance, 12);
    expect(planned.plan.choice.penaltyChance).toBeCloseTo(lostChance, 9);
  });

  it('costs V = (1 + p + Σ w·V)/(1 − p) with p the chance to lose it, by hand', () => {
    expect(planned.plan.expectedThrows).toBeCloseTo(
      byHand(planned, kind => kind === RESULT.lost),
      9,
    );
  });

  it('costs about 2p/(1 − p) throws more than where all are found, by hand', () => {
    const found = planHoleInFull({ map: open, libraries });
    // a lost disc costs its throw and the penalty, and happens p/(1 − p) times; putts are never lost, upshots are as often
    const extra = planned.plan.expectedThrows - found.plan.expectedThrows;
    expect(Math.abs(extra - (2 * SHARE) / (1 - SHARE))).toBeLessThan(0.05);
    expect(found.plan.choice.lostChance).toBeUndefined();
  });

  it('played throw by throw costs what is stated', () => expectPlayed(planned));
});

describe('a hole so short that a throw may go in', () => {
  const planned = planHoleInFull({ map: bareHole({ basket: [0, 32] }), libraries });
  const { holedChance } = planned.choice.best.outcome;

  it('has that as its chance of one throw, and says so from half a percent on', () => {
    expect(planned.plan.scoreDistribution[0]).toEqual({ throws: 1, chance: expect.closeTo(holedChance, 12) });
    expect(holedChance).toBeGreaterThan(0);
    expect(holedChance).toBeLessThan(0.1);
    expect(planned.plan.choice.holedChance).toBe(holedChance < 0.005 ? undefined : holedChance);
    expect(planned.plan.scoreDistribution.reduce((sum, { chance }) => sum + chance, 0)).toBeCloseTo(1, 9);
  });

  it('played throw by throw costs what is stated, and goes in as often', () => {
    expectPlayed(planned);
    const aces = playedScores(planned).filter(score => score === 1).length / ROUNDS;
    expect(Math.abs(aces - holedChance)).toBeLessThan(3 * Math.sqrt(holedChance / ROUNDS) + 0.1 * holedChance);
  });
});
