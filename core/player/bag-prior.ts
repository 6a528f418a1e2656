/** What the measured discs of one hand say about the others. */
export type BagPrior = Readonly<{
  /** ln of the arm speed in m/s: of the release speed of a disc whose `releaseSpeedShare` is 1. */
  logArm: number;
  logArmVariance: number;
  /** Spread of the discs about the arm, share of the speed. */
  discSpread: number;
  stability: number;
  stabilityVariance: number;
  /** Spread of the discs' stability about the player's, turn units. */
  stabilitySpread: number;
}>;

/** Estimate of one quantity from one disc's own throws alone. */
export type OwnEstimate = Readonly<{ value: number; variance: number }>;

/** Spread of the discs' stability about the player's before the bag is known, turn units: prior of the flight model's own fit, an assumption. */
export const STABILITY_SPREAD = 0.7;

const ARM_BEFORE: OwnEstimate = { value: Math.log(22), variance: 0.35 ** 2 }; // assumed, wide: 15 to 31 m/s
const STABILITY_BEFORE: OwnEstimate = { value: 0, variance: 0.5 ** 2 }; // assumed
const SPREAD_BEFORE_DISCS = 3;
const SPREAD_STEPS = 60;

/** What is believed of a disc-to-disc spread before the throws: `guess` with the weight of three discs. */
type SpreadBefore = Readonly<{ guess: number; least: number; greatest: number }>;
const ARM_SPREAD: SpreadBefore = { guess: 0.025, least: 0.01, greatest: 0.15 }; // assumed
const STABILITY_SPREADS: SpreadBefore = { guess: STABILITY_SPREAD, least: 0.2, greatest: 2.5 }; // assumed

/**
 * Empirical Bayes: each spread is its posterior mean with the common value integrated out (its most plausible value would be too
 * small, and the intervals with it), arm and stability are pooled under their spreads.
 * @param logArms - per disc, ln(release speed / share)
 * @param stabilities - per disc, turn units
 */
export function bagPrior(logArms: readonly OwnEstimate[], stabilities: readonly OwnEstimate[]): BagPrior {
  const discSpread = spreadOf(ARM_SPREAD, ARM_BEFORE, logArms);
  const stabilitySpread = spreadOf(STABILITY_SPREADS, STABILITY_BEFORE, stabilities);
  const arm = pooled(ARM_BEFORE, logArms, discSpread ** 2);
  const stability = pooled(STABILITY_BEFORE, stabilities, stabilitySpread ** 2);
  return {
    logArm: arm.value,
    logArmVariance: arm.variance,
    discSpread,
    stability: stability.value,
    stabilityVariance: stability.variance,
    stabilitySpread,
  };
}

/** Root of the posterior mean square of the spread, on a grid of its logarithm. */
function spreadOf(spread: SpreadBefore, before: OwnEstimate, own: readonly OwnEstimate[]): number {
  const { least, greatest } = spread;
  const spreads = Array.from({ length: SPREAD_STEPS + 1 }, (_, i) => least * (greatest / least) ** (i / SPREAD_STEPS));
  const misfits = spreads.map(value => spreadMisfit(value, spread, before, own));
  const best = Math.min(...misfits);
  let chance = 0;
  let squares = 0;
  spreads.forEach((value, i) => {
    const weight = Math.exp((best - misfits[i]!) / 2);
    chance += weight;
    squares += weight * value ** 2;
  });
  return Math.sqrt(squares / chance);
}

/** −2 ln of the posterior density of ln spread, the common value integrated out. */
function spreadMisfit(
  value: number,
  { guess }: SpreadBefore,
  before: OwnEstimate,
  all: readonly OwnEstimate[],
): number {
  const common = pooled(before, all, value ** 2);
  let misfit = -Math.log(common.variance) + (common.value - before.value) ** 2 / before.variance;
  for (const own of all) {
    const total = own.variance + value ** 2;
    misfit += Math.log(total) + (own.value - common.value) ** 2 / total;
  }
  return misfit + SPREAD_BEFORE_DISCS * (2 * Math.log(value) + (guess / value) ** 2);
}

function pooled(before: OwnEstimate, own: readonly OwnEstimate[], spreadVariance: number): OwnEstimate {
  let precision = 1 / before.variance;
  let sum = before.value / before.variance;
  for (const { value, variance } of own) {
    precision += 1 / (variance + spreadVariance);
    sum += value / (variance + spreadVariance);
  }
  return { value: sum / precision, variance: 1 / precision };
}
