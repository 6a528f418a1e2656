import type { DiscModel } from '../flight/disc-model.ts';
import type { Scatter } from '../flight/dispersion.ts';
import type { Hand, Handedness } from '../flight/release.ts';

export type DiscClass = 'putter' | 'midrange' | 'fairway' | 'control' | 'distance';

/** `measured`: enough own throws; `borrowed`: few, leaning on the player's other discs; `predicted`: none. */
export type Basis = 'measured' | 'borrowed' | 'predicted';

/** Throws that do not glide on the flat of the disc: rolled on its edge, or thrown over the shoulder with its face to the side. */
export const SPECIAL_SHAPES = ['roller', 'overhead'] as const;
export type SpecialShape = (typeof SPECIAL_SHAPES)[number];

/**
 * Throws from which a roller or an overhead throw is fitted (assumed). The mean of five is known to under half of one throw's
 * spread, and that spread to a third of itself; with fewer the plan would rest on what is assumed of such throws.
 */
export const FEWEST_SPECIAL_THROWS = 5;

/** A roller or an overhead throw of one disc from one hand, fitted from throws of that shape alone (docs/fit.md). */
export type SpecialThrow = Readonly<{
  shape: SpecialShape;
  /** Throws used, outliers counted by their weight. */
  n: number;
  /** A plain body: no lift on the flat, nothing turns it (flight/plain-flight). */
  model: DiscModel;
  /** At full power. */
  releaseSpeed_mps: number;
  spinPerSpeed: number;
  launch_deg: number;
  /** How it leaves the hand: on its edge, face to the side (90), a roller with its lean (−90 + lean). */
  hyzer_deg: number;
  /** A roller's deceleration on turf over gravity; null for an overhead throw. */
  resistance: number | null;
  /** One throw's; `hyzer_deg` is a roller's lean. */
  scatter: Scatter;
  /** One standard deviation of what the fit leaves unknown, in the same quantities. */
  doubt: Readonly<{ speed: number; azimuth_deg: number; hyzer_deg: number }>;
  /** Calm, level turf, full power, at rest; finish right positive. */
  averageDay_m: number;
  averageDaySd_m: number;
  finish_m: number;
  finishSd_m: number;
  distanceSd_m: number;
  sideSd_m: number;
}>;

/** How far the measuring of one such shape has come. */
export type SpecialStatus = Readonly<{
  shape: SpecialShape;
  /** Throws written down that can be used: with their sideways finish and a known power. */
  counted: number;
  /** How many more are needed before it is fitted. */
  needed: number;
  /** Throws written down that can't be used. */
  unusable: number;
  fit: SpecialThrow | null;
  /** Why enough throws were not fitted, in plain words. */
  problem: string | null;
}>;

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
  /** The shapes of special throws written down for this disc and hand; not there when none was. */
  specials?: readonly SpecialStatus[];
}>;

/** The fitted roller or overhead throw of a disc from a hand, where enough were measured. */
export function specialOf({ specials }: Pick<FittedThrow, 'specials'>, shape: string): SpecialThrow | null {
  return specials?.find(status => status.shape === shape)?.fit ?? null;
}

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
