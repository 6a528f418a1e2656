import type { DiscFit } from './disc-fit.ts';
import { shapeDoubt } from './disc-fit.ts';
import {
  median,
  medianDeviations,
  outlierWeight,
  type RobustMoments,
  robustSd,
  sdOfDeviations,
  weightedMoments,
} from './robust-weights.ts';

/** Throws at which a disc's own robust spread and the bag's weigh the same, when outliers are judged. */
const OWN_SPREAD_THROWS = 6;
const FEWEST_TO_JUDGE = 3;
const LEAST_SPREAD = 0.2;
const SET_ASIDE_UNDER = 0.05;

/**
 * What the outlier weights do to throws that have no outliers at all: the ensemble of a driver is skewed, so trimming its tail
 * shifts the mean. In standard deviations of the ensemble; found from a sample of the model, so that data and model are
 * measured with the same ruler.
 */
export type Ruler = Readonly<{ along: RobustMoments; left: RobustMoments }>;

export const PLAIN_RULER: Ruler = { along: { mean: 0, sd: 1 }, left: { mean: 0, sd: 1 } };

/** Spread of the throws against the model's, with the throws it rests on (by weight). */
export type Spread = Readonly<{
  along: number;
  alongThrows: number;
  left: number;
  leftThrows: number;
  setAside: readonly string[];
}>;

type Standardised = { group: number; index: number; along: number; left: number | null; path: string };

/** Weighted moments of a sample of the model itself. */
export function rulerOf(along_m: readonly number[], left_m: readonly number[]): Ruler {
  const flat = new Array<number>(along_m.length).fill(1);
  const plain = { along: weightedMoments(along_m, flat), left: weightedMoments(left_m, flat) };
  const along = along_m.map(x => (x - plain.along.mean) / plain.along.sd);
  const left = left_m.map(x => (x - plain.left.mean) / plain.left.sd);
  const [middleA, middleL] = [median(along), median(left)];
  const [sdA, sdL] = [robustSd(along, middleA), robustSd(left, middleL)];
  const weights = along.map((x, i) => outlierWeight((x - middleA) / sdA) * outlierWeight((left[i]! - middleL) / sdL));
  return { along: weightedMoments(along, weights), left: weightedMoments(left, weights) };
}

/** Robust spread of all throws of the bag about each disc's own middle, in standard deviations of the model. */
export type BagSpread = Readonly<{ along: number; left: number }>;

/** Found without weights, so that a first scatter that is too small can't trim the throws that would correct it. */
export function bagSpread(fits: readonly DiscFit[]): BagSpread {
  const deviations = (side: 'along' | 'left') =>
    fits.flatMap(fit => medianDeviations(standardised(fit).flatMap(t => t[side] ?? [])));
  const spread = (side: 'along' | 'left') => {
    const all = deviations(side);
    return all.length < FEWEST_TO_JUDGE ? 1 : Math.max(LEAST_SPREAD, sdOfDeviations(all));
  };
  return { along: spread('along'), left: spread('left') };
}

function standardised(fit: DiscFit): Standardised[] {
  return fit.groups.flatMap(({ group, moments }, g) =>
    group.throws.map((t, index) => ({
      group: g,
      index,
      along: (t.along_m - moments.along_m) / moments.alongSd_m,
      left: t.left_m === null ? null : (t.left_m - moments.left_m) / moments.leftSd_m,
      path: t.path,
    })),
  );
}

/**
 * Judges every throw about the disc's own middle, in the model's standard deviation of its group times the robust spread, and
 * sets the groups' weights, means and variances.
 */
export function weighThrows(fit: DiscFit, ruler: Ruler, bag: BagSpread): Spread {
  const all = standardised(fit);
  // The second pass measures middle and spread without the throws set aside, so that a slip doesn't move the verdict on others.
  let weights = all.map(() => 1);
  for (let pass = 0; pass < 2; pass++) {
    const kept = all.filter((_, i) => weights[i]! >= SET_ASIDE_UNDER);
    if (kept.length >= FEWEST_TO_JUDGE) weights = verdicts(all, kept, bag);
  }
  for (const at of fit.groups) at.weights = at.group.throws.map(() => 1);
  const setAside: string[] = [];
  all.forEach((t, i) => {
    const at = fit.groups[t.group]!;
    at.weights[t.index] = weights[i]!;
    if (weights[i]! >= SET_ASIDE_UNDER) return;
    const { along_m, left_m } = at.group.throws[t.index]!;
    const side = left_m === null ? '' : `, ${Math.abs(left_m)} m ${left_m > 0 ? 'left' : 'right'}`;
    setAside.push(`${t.path} (${along_m} m${side})`);
  });
  for (const at of fit.groups) setTargets(at, ruler);
  return { ...spreadOf(fit, ruler), setAside };
}

/** Weights of all throws about the middle of the kept ones. */
function verdicts(all: readonly Standardised[], kept: readonly Standardised[], bag: BagSpread): number[] {
  const along = middleAndSpread(
    kept.map(t => t.along),
    bag.along,
  );
  const left = middleAndSpread(
    kept.flatMap(t => t.left ?? []),
    bag.left,
  );
  return all.map(t => {
    const offLeft = t.left === null ? 0 : (t.left - left.middle) / left.spread;
    return outlierWeight((t.along - along.middle) / along.spread) * outlierWeight(offLeft);
  });
}

function middleAndSpread(values: readonly number[], bagSpread: number): { middle: number; spread: number } {
  if (values.length < FEWEST_TO_JUDGE) return { middle: 0, spread: Number.POSITIVE_INFINITY };
  const own = Math.max(LEAST_SPREAD, sdOfDeviations(medianDeviations(values)));
  const degrees = values.length - 1;
  const share = degrees / (degrees + OWN_SPREAD_THROWS);
  return { middle: median(values), spread: own ** share * bagSpread ** (1 - share) };
}

/** Weighted means of a group, moved by what the weights take from a clean ensemble; a group without sides has none. */
function setTargets(at: DiscFit['groups'][number], ruler: Ruler): void {
  const { group, moments, weights } = at;
  const doubt = shapeDoubt(at);
  const along = weightedMoments(
    group.throws.map(t => t.along_m),
    weights,
  );
  at.along_m = along.mean - ruler.along.mean * moments.alongSd_m;
  at.alongVariance = moments.alongSd_m ** 2 / sum(weights) + doubt.along;
  const sided = group.throws.flatMap((t, i) => (t.left_m === null ? [] : [{ left_m: t.left_m, weight: weights[i]! }]));
  if (sided.length === 0) {
    at.left_m = null;
    return;
  }
  const left = weightedMoments(
    sided.map(t => t.left_m),
    sided.map(t => t.weight),
  );
  at.left_m = left.mean - ruler.left.mean * moments.leftSd_m;
  at.leftVariance = moments.leftSd_m ** 2 / sum(sided.map(t => t.weight)) + doubt.left;
}

/**
 * Measured over modelled standard deviation. One mean is taken from all flat throws together, one from each shaped group
 * (its tilt is assumed, so its middle isn't trusted).
 */
function spreadOf(fit: DiscFit, ruler: Ruler): Omit<Spread, 'setAside'> {
  const measure = (valueAt: (at: DiscFit['groups'][number], index: number) => number | null, reference: number) => {
    const pools = new Map<string, { values: number[]; weights: number[] }>();
    fit.groups.forEach((at, g) => {
      const key = at.group.shape === 'flat' ? 'flat' : `group ${g}`;
      const pool = pools.get(key) ?? { values: [], weights: [] };
      pools.set(key, pool);
      at.group.throws.forEach((_, i) => {
        const value = valueAt(at, i);
        if (value === null) return;
        pool.values.push(value);
        pool.weights.push(at.weights[i]!);
      });
    });
    let squares = 0;
    let degrees = 0;
    for (const { values, weights } of pools.values()) {
      const total = sum(weights);
      if (total <= 1.5) continue;
      squares += weightedMoments(values, weights).sd ** 2 * total;
      degrees += total - 1;
    }
    return { ratio: degrees > 0 ? Math.sqrt(squares / degrees) / reference : 1, throws: degrees };
  };
  const along = measure(
    (at, i) => (at.group.throws[i]!.along_m - at.moments.along_m) / at.moments.alongSd_m,
    ruler.along.sd,
  );
  const left = measure((at, i) => {
    const { left_m } = at.group.throws[i]!;
    return left_m === null ? null : (left_m - at.moments.left_m) / at.moments.leftSd_m;
  }, ruler.left.sd);
  return { along: along.ratio, alongThrows: along.throws, left: left.ratio, leftThrows: left.throws };
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
