import { windProfile } from '../air/wind-profile.ts';
import type { DiscModel } from '../flight/disc-model.ts';
import { type RestMoments, type Scatter, SIGMA_POINTS } from '../flight/dispersion.ts';
import { type Flier, LANDING } from '../flight/flier.ts';
import { groundPlay, SURFACE_FRICTION } from '../flight/ground-play.ts';
import { plainFlightModel } from '../flight/plain-flight.ts';
import { RELEASE_HEIGHT_M } from '../flight/release.ts';
import { LONGEST_ROLLER_M, roll } from '../flight/rolling.ts';
import type { FittedThrow, SpecialShape, SpecialThrow } from './fitted-player.ts';
import type { SpecialGroup } from './special-record.ts';

/** What of a special throw is fitted to where it came to rest: one number for how far, one for how far to the side. */
export type SpecialUnknowns = Readonly<{
  /** Overhead: ln of the full-power release speed in m/s. Roller: ln of its resistance on turf. */
  far: number;
  /** Overhead: coefficient of the steady push to the left. Roller: lean in degrees, positive the upper edge away from the face. */
  side: number;
}>;

/** What flies: the part of a fitted special throw that its flight asks for. */
export type SpecialRelease = Pick<
  SpecialThrow,
  'shape' | 'model' | 'releaseSpeed_mps' | 'spinPerSpeed' | 'launch_deg' | 'hyzer_deg' | 'resistance'
>;

/** Assumed: how high an overhead throw and how far down a roller leave the hand; nobody measures it. */
const LAUNCH_DEG: Readonly<Record<SpecialShape, number>> = { roller: -4, overhead: 40 };
/** Assumed: fieldwork gives no temperature or altitude; dry air at 20 °C and sea level. */
const FIELDWORK_DENSITY_KGPM3 = 1.2;
const OPEN = windProfile('open');

export const FIRST_GUESS: Readonly<Record<SpecialShape, SpecialUnknowns>> = {
  roller: { far: Math.log(SURFACE_FRICTION.turf.rollingResistance), side: 0 },
  overhead: { far: Math.log(25), side: 0 },
};
/** Beyond these it is no such throw, or the wrong disc. */
const LIMITS: Readonly<Record<SpecialShape, Readonly<{ far: readonly [number, number]; side: number }>>> = {
  roller: { far: [Math.log(0.02), Math.log(2)], side: 30 },
  overhead: { far: [Math.log(5), Math.log(60)], side: 1 },
};

export function withinLimits(shape: SpecialShape, { far, side }: SpecialUnknowns): SpecialUnknowns {
  const limits = LIMITS[shape];
  return {
    far: Math.min(limits.far[1], Math.max(limits.far[0], far)),
    side: Math.min(limits.side, Math.max(-limits.side, side)),
  };
}

/** @param fitted - the disc thrown flat from the same hand: a roller leaves the hand at that speed and spin */
export function specialRelease(fitted: FittedThrow, shape: SpecialShape, unknowns: SpecialUnknowns): SpecialRelease {
  const disc: DiscModel = fitted.model;
  if (shape === 'roller')
    return {
      shape,
      model: plainFlightModel(disc, disc.dragMin, 0),
      releaseSpeed_mps: fitted.releaseSpeed_mps,
      spinPerSpeed: fitted.spinPerSpeed,
      launch_deg: LAUNCH_DEG.roller,
      hyzer_deg: unknowns.side - 90,
      resistance: Math.exp(unknowns.far),
    };
  return {
    shape,
    // assumed: it meets the air on its edge, with the least drag of the disc, and what glide it has goes into the speed
    model: plainFlightModel(disc, disc.dragMin, unknowns.side),
    releaseSpeed_mps: Math.exp(unknowns.far),
    // clockwise with the face to the left: it comes down spinning against its travel, and does not roll on
    spinPerSpeed: -Math.abs(fitted.spinPerSpeed),
    launch_deg: LAUNCH_DEG.overhead,
    hyzer_deg: 90,
    resistance: null,
  };
}

export const CALM_TURF: Omit<SpecialGroup, 'throws'> = {
  windX_mps: 0,
  windY_mps: 0,
  grade: 0,
  surface: 'turf',
  power: 1,
};

/** Where the scattered throw comes to rest under given conditions: means and standard deviations. */
export function specialMoments(
  flier: Flier,
  release: SpecialRelease,
  scatter: Scatter,
  { windX_mps, windY_mps, grade, surface, power }: Omit<SpecialGroup, 'throws'>,
): RestMoments {
  const play = new Float64Array(2);
  const radius_m = release.model.diameter_m / 2;
  flier.setDisc(release.model);
  flier.setAir(FIELDWORK_DENSITY_KGPM3, windX_mps, windY_mps, OPEN);
  flier.setPlane(0, grade, 0);
  const sums = { x: 0, y: 0, xx: 0, yy: 0 };
  SIGMA_POINTS.points.forEach((p, i) => {
    const speed = Math.max(1, power * release.releaseSpeed_mps * (1 + scatter.speed * p[0]!));
    flier.fly(
      speed,
      scatter.azimuth_deg * p[1]!,
      release.launch_deg + scatter.launch_deg * p[2]!,
      0,
      release.hyzer_deg + scatter.hyzer_deg * p[4]!,
      release.spinPerSpeed * speed,
      RELEASE_HEIGHT_M,
    );
    if (release.resistance === null) groundPlay(flier.landing, radius_m, SURFACE_FRICTION[surface], grade, 0, play);
    else roll(flier.landing, radius_m, resistanceOn(surface, release.resistance), grade, 0, play, LONGEST_ROLLER_M);
    const w = SIGMA_POINTS.weights[i]!;
    const x = flier.landing[LANDING.x]! + play[0]!;
    const y = flier.landing[LANDING.y]! + play[1]!;
    sums.x += w * x;
    sums.y += w * y;
    sums.xx += w * x * x;
    sums.yy += w * y * y;
  });
  return {
    along_m: sums.x,
    left_m: sums.y,
    alongSd_m: Math.sqrt(Math.max(0, sums.xx - sums.x ** 2)),
    leftSd_m: Math.sqrt(Math.max(0, sums.yy - sums.y ** 2)),
  };
}

/** A roller's resistance on another surface: in proportion to what is assumed of the surfaces. */
const resistanceOn = (surface: SpecialGroup['surface'], onTurf: number): number =>
  (onTurf * SURFACE_FRICTION[surface].rollingResistance) / SURFACE_FRICTION.turf.rollingResistance;
