import { SAMPLE_DIMENSIONS } from '../../core/flight/normal-samples.ts';
import { makeChance } from '../../core/player/putting-curve.ts';
import { type Choice, chooseShot, type Effort, NEXT_EFFORT } from '../../core/strategy/choose-shot.ts';
import type { SolvedHole } from '../../core/strategy/hole-solver.ts';
import { type Ends, type Lie, RESULT } from '../../core/strategy/march.ts';
import { puttFrom } from '../../core/strategy/putting-value.ts';
import { RELIEF, relief } from '../../core/strategy/relief.ts';
import type { ShotSpec } from '../../core/strategy/shots.ts';
import { addPath, expectedOf, type ThrowValue } from '../../core/strategy/throw-value.ts';
import { distanceToBasket, gridAt, isPutt, LONGEST_PUTT_M, valueAt } from '../../core/strategy/value-field.ts';
import { groundAt } from '../../core/strategy/world.ts';
import { randomOf } from '../core/player/synthetic-player.ts';

const MOST_THROWS = 30;
/** Lies this close together are played to the same target with the same line. */
const PATCH_M = 4;
const LATER: Effort = { ...NEXT_EFFORT, aimReach_deg: 60, short: 12, refine: 3, answerRows: 24, otherRows: 24 };
/** A lie that the last throw did not leave is asked about by itself, sideways and backwards too. */
const STUCK: Effort = { ...NEXT_EFFORT, aimReach_deg: 168, aimStep_deg: 8 };
const STUCK_M = 2;
/** Throws by which a patch's line may fit a lie in it worse. */
const MISFIT = 0.3;
const DEGREE = Math.PI / 180;
/** Distance goes about with this power of the release speed. */
const DISTANCE_BY_POWER = 1.6;
const LEAST_OPEN = 0.05;
const TEE: Lie = { east_m: 0, north_m: 0, ground_m: 0 };

export type AimedShot = Readonly<{ shot: ShotSpec; aim_deg: number }>;
type Later = Readonly<{
  shot: ShotSpec;
  target: readonly [number, number];
  bend_deg: number;
  reach_m: number;
  worth: number;
  /** By the middle of its scatter. */
  middle: number;
}>;

/**
 * Plays a solved hole throw by throw as the plan advises: exact flights with fresh scatter, trees as chances, putts by the curve.
 * After the tee shot, from each patch of ground the shot that `chooseShot` names for it.
 * @returns the score of one playing, the same for the same seed
 */
export function holePlayer({ table, world }: SolvedHole): (tee: AimedShot, seed: number) => number {
  const { field, thrower, player } = table;
  const plays = new Map<string, Later>();
  const row = new Float64Array(SAMPLE_DIMENSIONS);

  function laterFrom(lie: Lie): Later {
    const patch = `${Math.round(lie.east_m / PATCH_M)} ${Math.round(lie.north_m / PATCH_M)}`;
    const known = plays.get(patch) ?? targetOf(chooseShot(table, lie, LATER), lie);
    plays.set(patch, known);
    // beside a mando or a tree the next metre may ask for another line
    if (middleWorth(fitted(known, lie), lie) < known.middle + MISFIT) return known;
    const spot = `${Math.round(lie.east_m)} ${Math.round(lie.north_m)} spot`;
    const own = plays.get(spot) ?? targetOf(chooseShot(table, lie, LATER), lie);
    plays.set(spot, own);
    return own;
  }

  /** What the middle of a shot's scatter comes to. */
  function middleWorth({ shot, aim_deg }: AimedShot, lie: Lie): number {
    const value: ThrowValue = { paths: 0, sum: 0, replay: 0 };
    thrower.prepare(shot, lie, aim_deg);
    thrower.throwOnce(row, -1);
    const [dropX, dropY] = world.dropZone ?? [Number.NaN, Number.NaN];
    addPath(value, thrower.ends, field, dropX, dropY, 0);
    return expectedOf(value);
  }

  function targetOf({ best: { shot, aim_deg, outcome } }: Choice, lie: Lie): Later {
    const bend = Math.atan2(outcome.finish_m, outcome.distance_m);
    const reach_m = Math.hypot(outcome.finish_m, outcome.distance_m);
    const bearing = aim_deg * DEGREE + bend;
    return {
      shot,
      target: [lie.east_m + reach_m * Math.sin(bearing), lie.north_m + reach_m * Math.cos(bearing)],
      bend_deg: bend / DEGREE,
      reach_m,
      worth: outcome.expectedThrows,
      middle: middleWorth({ shot, aim_deg }, lie),
    };
  }

  /** The patch's line thrown from a lie in it at the same target. */
  function fitted({ shot, target, bend_deg, reach_m }: Later, lie: Lie): AimedShot {
    const [dx, dy] = [target[0] - lie.east_m, target[1] - lie.north_m];
    const aim_deg = Math.atan2(dx, dy) / DEGREE - bend_deg;
    const share = (Math.hypot(dx, dy) / reach_m) ** (1 / DISTANCE_BY_POWER);
    return { shot: { ...shot, power: Math.min(1, shot.power * share) }, aim_deg };
  }

  /** Where play goes on from after an end; NaN: the same lie again. */
  function goesOn(ends: Ends, end: number, lie: Lie): readonly [number, number] {
    const ended = [ends.x[end], ends.y[end]] as const;
    if (ends.kind[end] !== RESULT.outOfBounds) return ended;
    const [dropX, dropY] = world.dropZone ?? [Number.NaN, Number.NaN];
    switch (relief(ends, end, field, dropX, dropY, valueAt(field, lie.east_m, lie.north_m))) {
      case RELIEF.line:
        return ended;
      case RELIEF.dropZone:
        return [dropX, dropY];
      default:
        return [Number.NaN, Number.NaN];
    }
  }

  return (tee, seed) => {
    const { uniform, normal } = randomOf(seed);
    let lie = TEE;
    let isStuck = false;
    for (let thrown = 0; thrown < MOST_THROWS; ) {
      const d = distanceToBasket(field, lie.east_m, lie.north_m);
      const open = d < LONGEST_PUTT_M ? gridAt(field, field.openPutt, lie.east_m, lie.north_m) : 0;
      const putt = d < LONGEST_PUTT_M ? puttFrom(field.putting, d) : Number.POSITIVE_INFINITY;
      const clear = isPutt(field, lie.east_m, lie.north_m, d);
      if (clear && putt <= valueAt(field, lie.east_m, lie.north_m) + 1e-9)
        return thrown + putts(player.putting, d, uniform);
      const later = thrown === 0 ? null : isStuck ? targetOf(chooseShot(table, lie, STUCK), lie) : laterFrom(lie);
      // a putt that is stopped leaves the same putt
      const through = (putt * open + 1 - open) / Math.max(LEAST_OPEN, open);
      if (later !== null && open > LEAST_OPEN && through < later.worth) {
        if (uniform() < open) return thrown + putts(player.putting, d, uniform);
        thrown++;
        continue;
      }
      const { shot, aim_deg } = later === null ? tee : fitted(later, lie);
      for (let i = 0; i < SAMPLE_DIMENSIONS; i++) row[i] = normal();
      thrower.prepare(shot, lie, aim_deg);
      thrower.throwOnce(row, 0);
      const { ends } = thrower;
      let left = uniform();
      let end = 0;
      while (end < ends.count - 1 && left > ends.weight[end]) left -= ends.weight[end++];
      thrown += 1 + ends.penalty[end];
      if (ends.kind[end] === RESULT.holed) return thrown;
      const [x, y] = goesOn(ends, end, lie);
      isStuck = thrown > 1 && !(Math.hypot(x - lie.east_m, y - lie.north_m) > STUCK_M);
      if (!Number.isNaN(x)) lie = { east_m: x, north_m: y, ground_m: groundAt(world, x, y) };
    }
    return MOST_THROWS;
  };
}

/** Throws until in: misses leave 1.5 m six times in ten, else 2 m and a quarter of the putt (as core/strategy/putting-value assumes). */
function putts(curve: Parameters<typeof makeChance>[0], from_m: number, uniform: () => number): number {
  let n = 1;
  for (let d = from_m; uniform() > makeChance(curve, d); n++) d = uniform() < 0.6 ? 1.5 : 2 + d / 4;
  return n;
}
