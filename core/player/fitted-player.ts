import type { DiscModel } from '../flight/disc-model.ts';
import type { Scatter } from '../flight/dispersion.ts';
import type { Hand, Handedness } from '../flight/release.ts';

export type DiscClass = 'putter' | 'midrange' | 'fairway' | 'control' | 'distance';

/** `measured`: enough own throws; `borrowed`: few, leaning on the player's other discs; `predicted`: none. */
export type Basis = 'measured' | 'borrowed' | 'predicted';

/** One disc from one hand, as this player throws it: what the fieldwork says, with how well it is known. */
export type FittedThrow = Readonly<{
  discId: string;
  disc: string;
  class: DiscClass;
  /** Trade speed number, for order and ties (slower is simpler). */
  discSpeed: number;
  role: 'putting' | 'throwing';
  hand: Hand;
  /** Throws used, outliers counted by their weight. */
  n: number;
  basis: Basis;
  /** Full power, with the fitted stability offset in it. */
  model: DiscModel;
  releaseSpeed_mps: number;
  /** One standard deviation, share of the release speed. */
  releaseSpeedSd: number;
  stabilityOffset: number;
  stabilityOffsetSd: number;
  /** Signed spin per release speed, rad/m. */
  spinPerSpeed: number;
  scatter: Scatter;
  /** Launch that carries the scattered flat throw farthest, calm and level. */
  launch_deg: number;
  /** Calm, level turf, flat, full power, at rest: mean, 95th percentile, sideways finish (right positive), spread. */
  averageDay_m: number;
  averageDaySd_m: number;
  best_m: number;
  bestSd_m: number;
  finish_m: number;
  finishSd_m: number;
  distanceSd_m: number;
  sideSd_m: number;
  /** Plain sentences: outliers set aside, too fast for now, model uncertain here. */
  notes: readonly string[];
}>;

/** Chance to make a putt by distance; never rises with distance. */
export type PuttingCurve = Readonly<{
  /** p(d) = floor + (ceiling − floor) / (1 + exp((d − half_m) / scale_m)), scaled to reach `ceiling` at 0. */
  floor: number;
  ceiling: number;
  half_m: number;
  scale_m: number;
  attempts: number;
  basis: Basis;
}>;

export type FittedPlayer = Readonly<{
  name: string;
  handedness: Handedness;
  /** Every disc × hand the player can be asked to throw, bag order, backhand first. */
  throws: readonly FittedThrow[];
  putting: PuttingCurve;
  notes: readonly string[];
}>;
