import { SAMPLE_DIMENSIONS } from '../../../core/flight/normal-samples.ts';
import type { PuttingCurve } from '../../../core/player/fitted-player.ts';
import { makeChance } from '../../../core/player/putting-curve.ts';
import { type Candidate, chooseShot, NEXT_EFFORT } from '../../../core/strategy/choose-shot.ts';
import type { SolvedHole } from '../../../core/strategy/hole-solver.ts';
import { type Lie, RESULT } from '../../../core/strategy/march.ts';
import { puttFrom } from '../../../core/strategy/putting-value.ts';
import { distanceToBasket, gridAt, isPutt, LONGEST_PUTT_M, valueAt } from '../../../core/strategy/value-field.ts';
import { groundAt } from '../../../core/strategy/world.ts';

/** Uniform numbers, nothing to do with the generator of the code under test. @source mulberry32, T. Ettinger (public domain) */
export function otherRandom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** @source Box & Muller 1958 */
const normal = (random: () => number) => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());

const MOST = 12;
/** A shorter look than the plan's next throws take: there are hundreds of lies. */
const EFFORT = { ...NEXT_EFFORT, sampled: 60, short: 10, exactRows: 6, refine: 2, answerRows: 48, otherRows: 16 };
/** Behind a stem one also looks sideways and back. */
const ALL_ROUND = { ...NEXT_EFFORT, aimReach_deg: 180, aimStep_deg: 8 };

/**
 * Plays a hole throw by throw without the practice code: the plan's tee shot, then the shot chosen anew for the very place the disc
 * lies (to a metre), or a putt, through what stands in its way too, where that takes fewer throws; putts one by one.
 */
export function handPlayer(solved: SolvedHole, tee: Candidate, curve: PuttingCurve) {
  const { table } = solved;
  const { field, thrower, world } = table;
  const chosen = new Map<string, Candidate>();
  const normals = new Float64Array(SAMPLE_DIMENSIONS);

  function shotFrom(lie: Lie, stuck: boolean): Candidate {
    const key = stuck ? `${lie.east_m} ${lie.north_m}` : `${Math.round(lie.east_m)} ${Math.round(lie.north_m)}`;
    const known = chosen.get(key) ?? chooseShot(table, lie, stuck ? ALL_ROUND : EFFORT).best;
    chosen.set(key, known);
    return known;
  }

  /** The model's own putting: six misses in ten stay within 1.5 m, the rest roll 2 m and a quarter of the putt past. */
  function putts(distance_m: number, open: number, random: () => number): number {
    let n = 0;
    let d = distance_m;
    for (;;) {
      n++;
      // a putt that is stopped leaves the same putt again; once past what stopped it the way is clear
      if (d === distance_m && n < MOST && random() >= open) continue;
      if (random() < makeChance(curve, d) || n >= MOST) return n;
      d = random() < 0.6 ? 1.5 : 2 + d / 4;
    }
  }

  return (random: () => number): number => {
    let lie: Lie = { east_m: 0, north_m: 0, ground_m: 0 };
    let atTee = true;
    let stuck = false;
    let score = 0;
    while (score < MOST) {
      const { east_m: x, north_m: y } = lie;
      const d = distanceToBasket(field, x, y);
      const open =
        d < LONGEST_PUTT_M ? Math.max(0.05, isPutt(field, x, y, d) ? 1 : gridAt(field, field.openPutt, x, y)) : 0;
      const putt =
        atTee || open === 0 ? Number.POSITIVE_INFINITY : (puttFrom(field.putting, d) * open + 1 - open) / open;
      // nobody looks for a throw from under the basket
      if (putt <= 1.5) return Math.min(MOST, score + putts(d, open, random));
      const { shot, aim_deg, outcome } = atTee ? tee : shotFrom(lie, stuck);
      if (putt <= outcome.expectedThrows) return Math.min(MOST, score + putts(d, open, random));
      for (let i = 0; i < SAMPLE_DIMENSIONS; i++) normals[i] = normal(random);
      thrower.prepare(shot, lie, aim_deg);
      thrower.throwOnce(normals, 0);
      const { ends } = thrower;
      let left = random();
      let end = 0;
      while (end < ends.count - 1 && left >= ends.weight[end]!) left -= ends.weight[end++]!;
      score += 1 + ends.penalty[end]!;
      if (ends.kind[end] === RESULT.holed) return Math.min(MOST, score);
      let next: readonly [number, number] = [ends.x[end]!, ends.y[end]!];
      const drop = world.dropZone;
      if (ends.kind[end] === RESULT.outOfBounds && drop !== null) {
        const worth = Number.isNaN(next[0]) ? Number.POSITIVE_INFINITY : valueAt(field, ...next);
        if (valueAt(field, ...drop) < worth) next = drop;
      }
      if (ends.kind[end] === RESULT.outOfBounds && valueAt(field, x, y) < valueAt(field, ...next)) continue;
      if (Number.isNaN(next[0])) continue;
      stuck = !atTee && Math.hypot(next[0] - x, next[1] - y) < 2;
      atTee = false;
      lie = { east_m: next[0], north_m: next[1], ground_m: groundAt(world, next[0], next[1]) };
    }
    return MOST;
  };
}
