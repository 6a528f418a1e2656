import { discModel } from '../flight/disc-model.ts';
import type { FittedThrow } from './fitted-player.ts';

/** A fitted throw with another release speed (by a change of its logarithm) and stability (turn units more). */
export type ThrowShift = Readonly<{ logSpeed: number; stability: number }>;

/**
 * The same disc thrown by an arm that differs by `shift`. Only what flies it is moved: the ranges and finishes of the table stay
 * those of the fit.
 */
export function shiftedThrow(t: FittedThrow, { logSpeed, stability }: ThrowShift): FittedThrow {
  // a disc's stability offset is a moment of its own, whose size depends on the speed number alone
  const { baseMoment } = discModel({ speed: t.discSpeed, glide: 5, turn: 0, fade: 0, stabilityOffset: stability });
  return {
    ...t,
    releaseSpeed_mps: t.releaseSpeed_mps * Math.exp(logSpeed),
    stabilityOffset: t.stabilityOffset + stability,
    model: { ...t.model, baseMoment: t.model.baseMoment + baseMoment },
  };
}
