import { releaseSpeedShare } from '../flight/disc-model.ts';
import { type BagPrior, bagPrior, type OwnEstimate, STABILITY_SPREAD } from './bag-prior.ts';
import type { DiscFit } from './disc-fit.ts';
import type { DiscPrior, Solved } from './solve-disc.ts';

const FIRST_SPREAD_VARIANCE = 0.15 ** 2; // before the bag is known a disc stands on its own throws

/** What is believed of a disc before its own throws: the bag's, or nearly nothing in the first round. */
export function priorOf(bag: BagPrior | undefined, fit: DiscFit): DiscPrior {
  const share = Math.log(releaseSpeedShare(fit.record.disc.speed));
  if (bag === undefined)
    return {
      logSpeed: fit.unknowns.logSpeed,
      logSpeedVariance: FIRST_SPREAD_VARIANCE,
      stability: 0,
      stabilityVariance: STABILITY_SPREAD ** 2,
    };
  return {
    logSpeed: bag.logArm + share,
    logSpeedVariance: bag.discSpread ** 2 + bag.logArmVariance,
    stability: bag.stability,
    stabilityVariance: bag.stabilitySpread ** 2 + bag.stabilityVariance,
  };
}

/** Takes each disc's prior out of its posterior again, so that the bag learns from the throws alone. */
export function bagOf(discs: readonly Readonly<{ fit: DiscFit; prior: DiscPrior; solved: Solved | null }>[]): BagPrior {
  const own = (value: number, variance: number, prior: number, priorVariance: number): OwnEstimate | null => {
    const precision = 1 / variance - 1 / priorVariance;
    if (precision <= 1e-6 / priorVariance) return null;
    return { value: (value / variance - prior / priorVariance) / precision, variance: 1 / precision };
  };
  const arms: OwnEstimate[] = [];
  const stabilities: OwnEstimate[] = [];
  for (const { fit, prior, solved } of discs) {
    if (solved === null) continue;
    const share = Math.log(releaseSpeedShare(fit.record.disc.speed));
    const arm = own(
      fit.unknowns.logSpeed - share,
      solved.logSpeedVariance,
      prior.logSpeed - share,
      prior.logSpeedVariance,
    );
    const stability = own(fit.unknowns.stability, solved.stabilityVariance, prior.stability, prior.stabilityVariance);
    if (arm !== null) arms.push(arm);
    if (stability !== null) stabilities.push(stability);
  }
  return bagPrior(arms, stabilities);
}
