/** Full weight up to here, in robust standard deviations. */
const FULL_UNTIL = 2.2;
/** Almost none from here: a grip slip or a tree hit, not a throw of this kind. */
const NONE_FROM = 3.3;
/** Down-weighted, never deleted. */
const LEAST_WEIGHT = 0.001;
/** Median absolute deviation of a normal distribution to its standard deviation: 1/Φ⁻¹(3/4). */
const MAD_TO_SD = 1.4826022185056018;

/** Weight of a deviation of `u` robust standard deviations: flat in the middle, smooth to almost nothing. */
export function outlierWeight(u: number): number {
  const over = (Math.abs(u) - FULL_UNTIL) / (NONE_FROM - FULL_UNTIL);
  if (over <= 0) return 1;
  if (over >= 1) return LEAST_WEIGHT;
  return Math.max(LEAST_WEIGHT, Math.cos((over * Math.PI) / 2) ** 2);
}

/** @throws {RangeError} for an empty list */
export function median(values: readonly number[]): number {
  if (values.length === 0) throw new RangeError('median of no values');
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2;
}

/** Standard deviation from the median absolute deviation about `centre`. */
export function robustSd(values: readonly number[], centre: number): number {
  return MAD_TO_SD * median(values.map(value => Math.abs(value - centre)));
}

/**
 * Distances from the median, fit to be pooled over small groups: an odd group leaves out its middle value, which is always at
 * distance 0, an even one is stretched for the freedom the median took. Fewer than two values give none.
 */
export function medianDeviations(values: readonly number[]): number[] {
  const n = values.length;
  if (n < 2) return [];
  const middle = median(values);
  const deviations = values.map(value => Math.abs(value - middle)).sort((a, b) => a - b);
  return n % 2 === 1 ? deviations.slice(1) : deviations.map(d => d * Math.sqrt(n / (n - 1)));
}

export function sdOfDeviations(deviations: readonly number[]): number {
  return MAD_TO_SD * median(deviations);
}

export type RobustMoments = Readonly<{ mean: number; sd: number }>;

/** Mean and standard deviation under given weights. */
export function weightedMoments(values: readonly number[], weights: readonly number[]): RobustMoments {
  let sum = 0;
  let total = 0;
  for (let i = 0; i < values.length; i++) {
    sum += weights[i]! * values[i]!;
    total += weights[i]!;
  }
  const mean = sum / total;
  let squares = 0;
  for (let i = 0; i < values.length; i++) squares += weights[i]! * (values[i]! - mean) ** 2;
  return { mean, sd: Math.sqrt(squares / total) };
}
