/** What the measured discs of one hand say about the others. */
export type BagPrior = Readonly<{
  /** ln of the arm speed in m/s: of the release speed of a disc whose `releaseSpeedShare` is 1. */
  logArm: number;
  logArmVariance: number;
  /** Spread of the discs about the arm, share of the speed. */
  discSpread: number;
  stability: number;
  stabilityVariance: number;
}>;

/** Estimate of one quantity from one disc's own throws alone. */
export type OwnEstimate = Readonly<{ value: number; variance: number }>;

/** Spread of the discs' stability about the player's, turn units: prior of the flight model's own fit, an assumption. */
export const STABILITY_SPREAD = 0.7;

const ARM_BEFORE = { value: Math.log(22), variance: 0.35 ** 2 }; // assumed, wide: 15 to 31 m/s
const STABILITY_BEFORE_VARIANCE = 0.5 ** 2; // assumed
const SPREAD_BEFORE = 0.025; // assumed size of the disc-to-disc spread, with the weight of three discs
const SPREAD_BEFORE_DISCS = 3;
const LEAST_SPREAD = 0.01;
const GREATEST_SPREAD = 0.15;
const SPREAD_STEPS = 60;

/**
 * Empirical Bayes: the spread is its posterior mean with the arm integrated out (its most plausible value would be too small,
 * and the intervals with it), the arm is pooled under that spread.
 * @param logArms - per disc, ln(release speed / share)
 * @param stabilities - per disc, turn units
 */
export function bagPrior(logArms: readonly OwnEstimate[], stabilities: readonly OwnEstimate[]): BagPrior {
  const spreads = Array.from(
    { length: SPREAD_STEPS + 1 },
    (_, i) => LEAST_SPREAD * (GREATEST_SPREAD / LEAST_SPREAD) ** (i / SPREAD_STEPS),
  );
  const misfits = spreads.map(spread => spreadMisfit(spread, logArms));
  const best = Math.min(...misfits);
  let chance = 0;
  let squares = 0;
  spreads.forEach((spread, i) => {
    const weight = Math.exp((best - misfits[i]!) / 2);
    chance += weight;
    squares += weight * spread ** 2;
  });
  const discSpread = Math.sqrt(squares / chance);
  const arm = pooled(ARM_BEFORE, logArms, discSpread ** 2);
  const stability = pooled({ value: 0, variance: STABILITY_BEFORE_VARIANCE }, stabilities, STABILITY_SPREAD ** 2);
  return {
    logArm: arm.value,
    logArmVariance: arm.variance,
    discSpread,
    stability: stability.value,
    stabilityVariance: stability.variance,
  };
}

/** −2 ln of the posterior density of ln spread, arm integrated out. */
function spreadMisfit(spread: number, logArms: readonly OwnEstimate[]): number {
  const { value, variance } = pooled(ARM_BEFORE, logArms, spread ** 2);
  let misfit = -Math.log(variance) + (value - ARM_BEFORE.value) ** 2 / ARM_BEFORE.variance;
  for (const own of logArms) {
    const total = own.variance + spread ** 2;
    misfit += Math.log(total) + (own.value - value) ** 2 / total;
  }
  return misfit + SPREAD_BEFORE_DISCS * (2 * Math.log(spread) + (SPREAD_BEFORE / spread) ** 2);
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
