import { everyShot, landingOf, landingValues } from './landing-value.ts';
import type { Lie } from './march.ts';
import { marchPromising } from './march-promising.ts';
import type { ShotMarcher } from './shot-marcher.ts';
import { expectedOf, resetThrowValue, type ThrowValue } from './throw-value.ts';
import { distanceToBasket, type ValueField, valueAt } from './value-field.ts';
import type { WindBins } from './wind-bins.ts';
import type { World } from './world.ts';

const DEGREE = Math.PI / 180;
/** Shots that would land this far beyond the basket are not looked at, unless the bag has no shorter one. */
const TOO_FAR_M = 30;
const AIM_STEP_DEG = 6;
const AIM_REACH = 15; // steps to each side
const AIMS = 2 * AIM_REACH + 1;
const SHORTLIST = 28;
const SECOND_LIST = 9;
const KEPT = 4;
const FINALISTS = 3;
/** Samples (index 0 is the middle): 1–2, 1–4, 1–8 and 1–12 choose, the rest value. */
const SAMPLES_BESIDE_MIDDLE = 3;
const CHOOSE_FIRST = 5;
const CHOOSE_FEW = 9;
const CHOOSE_MANY = 13;

/** A shot along an aim, and where its middle would land: what neighbouring lies inherit. */
export type AimedShot = Readonly<{ shot: number; aim_deg: number; targetX: number; targetY: number }>;

/** A shot along an aim with what its samples 1…`to` − 1 came to so far. */
type Pick = { shot: number; aim_deg: number; to: number; sum: number; replay: number; score: number };

/** Looks for the best field shot from single lies, on a field whose values ahead are known. Choice and value use separate samples. */
export type LieSearch = Readonly<{
  /** Full search over field shots and aims: the middles first, the best again with samples. At most `KEPT`, best first. */
  search(lie: Lie): AimedShot[];
  /** Where full-bag shots would go from a lie: the best few dozen pairs of field shot and aim, by three samples. */
  shortlist(lie: Lie): readonly Readonly<{ shot: number; aim_deg: number }>[];
  /** The best few of a lie's own shots and of those its neighbours throw, and the score of the best. */
  bestOf(lie: Lie, own: readonly AimedShot[], inherited: readonly AimedShot[]): Choosing;
  /** The finalists again with more samples, the best turned to the better side. `kept` is what neighbours inherit. */
  decide(lie: Lie, from: Choosing): Readonly<{ shot: number; aim_deg: number; kept: readonly AimedShot[] }>;
  /** First of the samples that value (those before choose). */
  firstValueSample: number;
}>;

type Choosing = Readonly<{ picks: readonly Readonly<Pick>[]; score: number }>;

export function createLieSearch(world: World, field: ValueField, bins: WindBins, marcher: ShotMarcher): LieSearch {
  const shotCount = bins.library.shots.length;
  const running: ThrowValue = { paths: 0, sum: 0, replay: 0 };
  const families = shotFamilies(bins);
  const point = new Float64Array(2);
  const bounds = new Float64Array(shotCount * AIMS);
  const all = everyShot(bins);

  /** Adds samples to a pick until it has those before `to`. */
  function extend(pick: Pick, lie: Lie, to: number): void {
    running.paths = pick.to - 1;
    running.sum = pick.sum;
    running.replay = pick.replay;
    marcher.add(pick.shot, pick.to, to, lie, pick.aim_deg, field, running);
    pick.to = to;
    pick.sum = running.sum;
    pick.replay = running.replay;
    pick.score = expectedOf(running);
  }

  function middle(shot: number, aim_deg: number, lie: Lie): number {
    resetThrowValue(running);
    marcher.add(shot, 0, 1, lie, aim_deg, field, running);
    return expectedOf(running);
  }

  /** From here the thrower may throw again after out-of-bounds: what that is worth, by the value the lie has so far. */
  function throwFrom(lie: Lie): void {
    running.lieValue = valueAt(field, lie.east_m, lie.north_m);
  }

  function promising(lie: Lie): Pick[] {
    throwFrom(lie);
    const d = distanceToBasket(field, lie.east_m, lie.north_m);
    const toBasket = Math.atan2(field.basket[0] - lie.east_m, field.basket[1] - lie.north_m) / DEGREE;
    const farthest = Math.max(d, bins.leastReach_m(toBasket)) + TOO_FAR_M;
    const aims_deg = Array.from({ length: AIMS }, (_, aim) => toBasket + (aim - AIM_REACH) * AIM_STEP_DEG);
    landingValues(world, bins, field, lie, all, aims_deg, farthest, bounds);
    const middles = marchPromising({
      shots: shotCount,
      aims: AIMS,
      bounds,
      score: (shot, aim) => middle(shot, aims_deg[aim], lie),
      most: SHORTLIST,
      perGroup: 0,
      groupOf: () => 0,
      groups: 1,
    });
    const picks = middles.slice(0, SHORTLIST).map(pair => {
      const pick = fresh(pair.shot, aims_deg[pair.aim]);
      extend(pick, lie, SAMPLES_BESIDE_MIDDLE);
      // the middle counts as one more sample
      pick.score += (pair.score - pick.score) / SAMPLES_BESIDE_MIDDLE;
      return pick;
    });
    return picks.sort((a, b) => a.score - b.score);
  }

  function search(lie: Lie): AimedShot[] {
    const picks = promising(lie);
    keepBest(picks, SECOND_LIST);
    for (const pick of picks) extend(pick, lie, CHOOSE_FEW);
    keepBest(picks, KEPT);
    const turned = picks.map((pick, i) => (i < 2 ? refined(pick, 3, lie) : pick));
    return turned.sort((a, b) => a.score - b.score).map(pick => aimedShot(pick, lie));
  }

  function aimedShot(pick: Readonly<Pick>, lie: Lie): AimedShot {
    landingOf(world, bins, pick.shot, pick.aim_deg, lie, point);
    return { shot: pick.shot, aim_deg: pick.aim_deg, targetX: point[0], targetY: point[1] };
  }

  /** The aim that lands the middle of a shot in the direction of a target. */
  function aimAt(shot: number, lie: Lie, targetX: number, targetY: number): number {
    const bearing = Math.atan2(targetX - lie.east_m, targetY - lie.north_m) / DEGREE;
    let aim = bearing;
    for (let pass = 0; pass < 2; pass++) {
      const bin = bins.at(aim).landing;
      aim = bearing + Math.atan2(bin[3 * shot + 1], bin[3 * shot]) / DEGREE;
    }
    return aim;
  }

  /** The pick, or the better of the two turned to a side, when one is better on the same samples. */
  function refined(pick: Pick, turn_deg: number, lie: Lie): Pick {
    let best = pick;
    for (const turn of [-turn_deg, turn_deg]) {
      const turned = fresh(pick.shot, pick.aim_deg + turn);
      extend(turned, lie, pick.to);
      if (turned.score < best.score) best = turned;
    }
    return best;
  }

  /** A neighbour's shot aimed from here at the same target, with the power of its family that gets nearest to it. */
  function fitted(inherited: AimedShot, lie: Lie): Pick {
    let pick = inherited.shot;
    let nearest = Number.POSITIVE_INFINITY;
    for (const shot of families[inherited.shot]) {
      landingOf(world, bins, shot, aimAt(shot, lie, inherited.targetX, inherited.targetY), lie, point);
      const miss = Math.hypot(point[0] - inherited.targetX, point[1] - inherited.targetY);
      if (miss < nearest) {
        nearest = miss;
        pick = shot;
      }
    }
    return fresh(pick, aimAt(pick, lie, inherited.targetX, inherited.targetY));
  }

  return {
    search,
    shortlist: promising,
    bestOf(lie, own, inherited) {
      throwFrom(lie);
      const tried = new Set<number>();
      const picks: Pick[] = [];
      const take = (pick: Pick) => {
        // the same shot and aim counts once
        const key = pick.shot * 1000 + Math.round(pick.aim_deg);
        if (tried.has(key)) return;
        tried.add(key);
        extend(pick, lie, CHOOSE_FIRST);
        picks.push(pick);
      };
      for (const { shot, aim_deg } of own) take(fresh(shot, aim_deg));
      for (const shot of inherited) take(fitted(shot, lie));
      keepBest(picks, 6);
      for (const pick of picks) extend(pick, lie, CHOOSE_FEW);
      keepBest(picks, KEPT);
      return { picks, score: picks.length > 0 ? picks[0].score : Number.POSITIVE_INFINITY };
    },
    decide(lie, { picks }) {
      throwFrom(lie);
      const finalists = picks.slice(0, FINALISTS).map(pick => ({ ...pick }));
      for (const finalist of finalists) extend(finalist, lie, CHOOSE_MANY);
      keepBest(finalists, FINALISTS);
      const chosen = refined(finalists[0], 2.5, lie);
      const others = picks.filter(pick => pick.shot !== chosen.shot).slice(0, KEPT - 1);
      return {
        shot: chosen.shot,
        aim_deg: chosen.aim_deg,
        kept: [chosen, ...others].map(pick => aimedShot(pick, lie)),
      };
    },
    firstValueSample: CHOOSE_MANY,
  };
}

function fresh(shot: number, aim_deg: number): Pick {
  return { shot, aim_deg, to: 1, sum: 0, replay: 0, score: 0 };
}

function keepBest(picks: { score: number }[], most: number): void {
  picks.sort((a, b) => a.score - b.score);
  if (picks.length > most) picks.length = most;
}

/** Shots that differ in power only, by index. */
function shotFamilies(bins: WindBins): readonly (readonly number[])[] {
  const byKey = new Map<string, number[]>();
  const { shots } = bins.library;
  const keyOf = (shot: (typeof shots)[number]) => `${shot.throwIndex} ${shot.hyzer_deg} ${shot.height}`;
  shots.forEach((shot, i) => {
    const family = byKey.get(keyOf(shot));
    if (family) family.push(i);
    else byKey.set(keyOf(shot), [i]);
  });
  return shots.map(shot => byKey.get(keyOf(shot)) ?? []);
}
