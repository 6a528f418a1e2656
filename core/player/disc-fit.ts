import { windProfile } from '../air/wind-profile.ts';
import { type DiscSpec, discModel, releaseSpeedShare } from '../flight/disc-model.ts';
import {
  type Cubature,
  farthestLaunch_deg,
  type RestMoments,
  restMoments,
  type Scatter,
  TYPICAL_SCATTER,
} from '../flight/dispersion.ts';
import type { FlightBatch } from '../flight/flight-batch.ts';
import { type Handedness, releaseSpin_radps } from '../flight/release.ts';
import type { FieldGroup, FieldRecord } from './fieldwork.ts';
import type { FieldDisc } from './player-file.ts';

/** Assumed: fieldwork gives no temperature or altitude; dry air at 20 °C and sea level. */
const FIELDWORK_DENSITY_KGPM3 = 1.2;
const OPEN = windProfile('open');

/** Assumed release tilt of the named shapes. */
export const SHAPE_HYZER_DEG: Readonly<Record<FieldGroup['shape'], number>> = { flat: 0, hyzer: 15, anhyzer: -12 };
// Nobody measures the tilt: 5° of it either way moves the finish by some 15 % of the distance and the distance by 3 %.
const SHAPE_DOUBT = { along: 0.03, left: 0.15 };

/** What is unknown of a disc from one hand. */
export type Unknowns = Readonly<{
  /** ln of the full-power release speed in m/s. */
  logSpeed: number;
  /** Turn units. */
  stability: number;
  /** ln of the multiplier on the typical scatter of speed, launch and nose. */
  logLongScatter: number;
  /** ln of the multiplier on the typical scatter of aim and hyzer. */
  logSideScatter: number;
}>;

export const UNKNOWNS = [
  'logSpeed',
  'stability',
  'logLongScatter',
  'logSideScatter',
] as const satisfies readonly (keyof Unknowns)[];

/** What a better cubature adds to the moments of the cheap one: shifts of the means, factors of the standard deviations. */
export type MomentCorrection = Readonly<{ along_m: number; left_m: number; alongSd: number; leftSd: number }>;
const NO_CORRECTION: MomentCorrection = { along_m: 0, left_m: 0, alongSd: 1, leftSd: 1 };

export function correctionOf(cheap: RestMoments, better: RestMoments): MomentCorrection {
  return {
    along_m: better.along_m - cheap.along_m,
    left_m: better.left_m - cheap.left_m,
    alongSd: better.alongSd_m / cheap.alongSd_m,
    leftSd: better.leftSd_m / cheap.leftSd_m,
  };
}

export function corrected(cheap: RestMoments, by: MomentCorrection): RestMoments {
  return {
    along_m: cheap.along_m + by.along_m,
    left_m: cheap.left_m + by.left_m,
    alongSd_m: cheap.alongSd_m * by.alongSd,
    leftSd_m: cheap.leftSd_m * by.leftSd,
  };
}

/** One disc from one hand while it is being fitted. */
export type DiscFit = {
  readonly record: FieldRecord;
  readonly spec: DiscSpec;
  readonly radius_m: number;
  readonly spinPerSpeed: number;
  unknowns: Unknowns;
  readonly groups: GroupFit[];
};

/** A group with what the fit needs to know of it: weighted means of the throws, and their model counterpart. */
export type GroupFit = {
  readonly group: FieldGroup;
  launch_deg: number;
  /** At the unknowns of the last refresh. */
  moments: RestMoments;
  correction: MomentCorrection;
  /** One per throw of the group. */
  weights: number[];
  /** Ensemble means the model must meet (null: no side was measured), with their variances. */
  along_m: number;
  alongVariance: number;
  left_m: number | null;
  leftVariance: number;
};

/** Millimetres and grams of the file to the disc the flight model wants. */
function discSpec(disc: FieldDisc): DiscSpec {
  const { speed, glide, turn, fade } = disc;
  return {
    speed,
    glide,
    turn,
    fade,
    ...(disc.mass_g === undefined ? {} : { mass_kg: disc.mass_g / 1000 }),
    ...(disc.diameter_mm === undefined ? {} : { diameter_m: disc.diameter_mm / 1000 }),
    ...(disc.rimWidth_mm === undefined ? {} : { rimWidth_m: disc.rimWidth_mm / 1000 }),
    ...(disc.wear === undefined ? {} : { wear: disc.wear }),
  };
}

export function startFit(record: FieldRecord, handedness: Handedness): DiscFit {
  const spec = discSpec(record.disc);
  const { diameter_m } = discModel(spec);
  return {
    record,
    spec,
    radius_m: diameter_m / 2,
    spinPerSpeed: releaseSpin_radps(record.hand, handedness, 1, diameter_m),
    unknowns: {
      logSpeed: Math.log(22 * releaseSpeedShare(record.disc.speed)),
      stability: 0,
      logLongScatter: 0,
      logSideScatter: 0,
    },
    groups: record.groups.map(group => ({
      group,
      launch_deg: 10,
      moments: { along_m: 0, left_m: 0, alongSd_m: 1, leftSd_m: 1 },
      correction: NO_CORRECTION,
      weights: group.throws.map(() => 1),
      along_m: 0,
      alongVariance: 1,
      left_m: null,
      leftVariance: 1,
    })),
  };
}

/** The typical scatter under the two multipliers. */
export function scatterOf({ logLongScatter, logSideScatter }: Unknowns): Scatter {
  const long = Math.exp(logLongScatter);
  const side = Math.exp(logSideScatter);
  return {
    speed: TYPICAL_SCATTER.speed * long,
    launch_deg: TYPICAL_SCATTER.launch_deg * long,
    nose_deg: TYPICAL_SCATTER.nose_deg * long,
    azimuth_deg: TYPICAL_SCATTER.azimuth_deg * side,
    hyzer_deg: TYPICAL_SCATTER.hyzer_deg * side,
  };
}

/** Calm air over level ground, and the disc as it is thrown. */
export function setCalm(flier: FlightBatch, fit: DiscFit, unknowns: Unknowns): void {
  flier.setDisc(discModel({ ...fit.spec, stabilityOffset: unknowns.stability }));
  flier.setAir(FIELDWORK_DENSITY_KGPM3, 0, 0, OPEN);
  flier.setPlane(0, 0, 0);
}

/** Launch that carries the flat full-power ensemble farthest, calm and level. */
export function calmLaunch_deg(flier: FlightBatch, fit: DiscFit, unknowns: Unknowns): number {
  setCalm(flier, fit, unknowns);
  const release = { speed_mps: Math.exp(unknowns.logSpeed), hyzer_deg: 0, spinPerSpeed: fit.spinPerSpeed };
  return farthestLaunch_deg(flier, fit.radius_m, 'turf', release, scatterOf(unknowns));
}

export function calmMoments(
  flier: FlightBatch,
  fit: DiscFit,
  unknowns: Unknowns,
  launch_deg: number,
  rule: Cubature,
): RestMoments {
  setCalm(flier, fit, unknowns);
  const release = { speed_mps: Math.exp(unknowns.logSpeed), launch_deg, hyzer_deg: 0, spinPerSpeed: fit.spinPerSpeed };
  return restMoments(flier, fit.radius_m, 'turf', release, scatterOf(unknowns), rule);
}

/** Ensemble rest moments of one group's throws. */
export function groupMoments(
  flier: FlightBatch,
  fit: DiscFit,
  at: GroupFit,
  unknowns: Unknowns,
  rule: Cubature,
): RestMoments {
  const { group } = at;
  flier.setDisc(discModel({ ...fit.spec, stabilityOffset: unknowns.stability }));
  flier.setAir(FIELDWORK_DENSITY_KGPM3, group.windX_mps, group.windY_mps, OPEN);
  flier.setPlane(0, group.grade, 0);
  const release = {
    speed_mps: group.power * Math.exp(unknowns.logSpeed),
    launch_deg: at.launch_deg,
    hyzer_deg: SHAPE_HYZER_DEG[group.shape],
    spinPerSpeed: fit.spinPerSpeed,
  };
  return restMoments(flier, fit.radius_m, group.surface, release, scatterOf(unknowns), rule, group.grade, 0);
}

/**
 * Players throw each wind at the launch that carries farthest in it: the head or tail wind alone decides, over level ground.
 * Looks about the launch at hand: a parabola through three launches.
 */
export function chooseLaunch(flier: FlightBatch, fit: DiscFit, at: GroupFit, rule: Cubature): number {
  const { group } = at;
  flier.setDisc(discModel({ ...fit.spec, stabilityOffset: fit.unknowns.stability }));
  flier.setAir(FIELDWORK_DENSITY_KGPM3, group.windX_mps, 0, OPEN);
  flier.setPlane(0, 0, 0);
  const scatter = scatterOf(fit.unknowns);
  const release = {
    speed_mps: group.power * Math.exp(fit.unknowns.logSpeed),
    hyzer_deg: SHAPE_HYZER_DEG[group.shape],
    spinPerSpeed: fit.spinPerSpeed,
  };
  const step = 1.5;
  const reach = (launch_deg: number) =>
    restMoments(flier, fit.radius_m, group.surface, { ...release, launch_deg }, scatter, rule).along_m;
  const [low, middle, high] = [reach(at.launch_deg - step), reach(at.launch_deg), reach(at.launch_deg + step)];
  const bend = low - 2 * middle + high;
  const move = bend < 0 ? (0.5 * (low - high)) / bend : Math.sign(high - low) * 2;
  return Math.min(24, Math.max(1, at.launch_deg + step * Math.max(-2, Math.min(2, move))));
}

/** Variance of a group's mean that no number of throws takes away. */
export function shapeDoubt({ group, moments }: GroupFit): { along: number; left: number } {
  if (group.shape === 'flat') return { along: 0, left: 0 };
  return { along: (SHAPE_DOUBT.along * moments.along_m) ** 2, left: (SHAPE_DOUBT.left * moments.along_m) ** 2 };
}
