import type { Day } from '../air/day.ts';
import { windSd_mps } from '../air/gust.ts';
import { ratedArmSpeed_mps, releaseSpeedShare } from '../flight/disc-model.ts';
import type { Scatter } from '../flight/dispersion.ts';
import { SAMPLE_DIMENSIONS } from '../flight/normal-samples.ts';
import type { FittedThrow, SpecialThrow } from '../player/fitted-player.ts';
import { fittedSpecial, isSpecialShape } from './flown-as.ts';
import type { ShotSpec } from './shots.ts';

// Which column of a normal sample drives which quantity.
const SPEED = 0;
const AZIMUTH = 1;
const HYZER = 2;
const LAUNCH = 3;
const NOSE = 4;
const WIND_SPEED = 5;
const WIND_DIRECTION = 6;

/** Wind met by one throw, as scatter about the day's mean. */
export type WindScatter = Readonly<{ speed_mps: number; speedSd_mps: number; directionSd_deg: number }>;

export function windScatterOf(day: Day): WindScatter {
  const { speed_mps, directionSpread_deg } = day.wind;
  return { speed_mps, speedSd_mps: windSd_mps(day), directionSd_deg: speed_mps > 0 ? directionSpread_deg : 0 };
}

/** One sampled release and the air it meets; rewritten by `sampleThrow`. */
export type SampledThrow = {
  speedShare: number;
  azimuth_deg: number;
  hyzer_deg: number;
  launch_deg: number;
  nose_deg: number;
  /** Wind speed at 10 m, and its turn from the mean direction. */
  wind_mps: number;
  windTurn_deg: number;
};

export function createSampledThrow(): SampledThrow {
  return { speedShare: 1, azimuth_deg: 0, hyzer_deg: 0, launch_deg: 0, nose_deg: 0, wind_mps: 0, windTurn_deg: 0 };
}

/** Scatter of a bent line against a flat one while none was measured: assumed, the bank itself has to be hit. */
const BENT_SCATTER = 1.3;
/** Degrees of bank that move the landing as much as one turn unit of stability. @source own model: both move it 2–3 % of the distance */
const BANK_PER_TURN_UNIT_DEG = 1;

/** Degrees of bank and of launch added to the scatter of a disc thrown with none of its rated speed (assumed; in proportion). */
const UNDERPOWERED_BANK_DEG = 8;
const UNDERPOWERED_LAUNCH_DEG = 4;

/**
 * Scatter to plan with: the throw's own, wider on bent lines, wider (as a share) at part power because part power is judged
 * (assumed, half again as much at no power), wider by what the fieldwork leaves unknown of speed and stability, and wider for
 * a disc that is too fast for the arm, whose flight rests on the model where it is weakest.
 */
export function planningScatter(fitted: FittedThrow, shot: Pick<ShotSpec, 'shape' | 'hyzer_deg' | 'power'>): Scatter {
  if (isSpecialShape(shot.shape)) return specialScatter(fittedSpecial(fitted, shot.shape), shot.power);
  const { scatter } = fitted;
  const bent = shot.hyzer_deg === 0 ? 1 : BENT_SCATTER;
  const short = speedShortfall(fitted);
  return {
    speed: Math.hypot(scatter.speed * (1 + 0.5 * (1 - shot.power)), fitted.releaseSpeedSd),
    azimuth_deg: scatter.azimuth_deg * bent,
    hyzer_deg: Math.hypot(
      scatter.hyzer_deg * bent,
      fitted.stabilityOffsetSd * BANK_PER_TURN_UNIT_DEG,
      UNDERPOWERED_BANK_DEG * short,
    ),
    launch_deg: Math.hypot(scatter.launch_deg * bent, UNDERPOWERED_LAUNCH_DEG * short),
    nose_deg: scatter.nose_deg * bent,
  };
}

/** A roller's or an overhead throw's own scatter as it was measured, wider at part power, which was not, and by what the fit leaves unknown. */
function specialScatter({ scatter, doubt }: SpecialThrow, power: number): Scatter {
  const judged = 1 + 0.5 * (1 - power);
  return {
    ...scatter,
    speed: Math.hypot(scatter.speed * judged, doubt.speed),
    azimuth_deg: Math.hypot(scatter.azimuth_deg, doubt.azimuth_deg),
    hyzer_deg: Math.hypot(scatter.hyzer_deg * judged, doubt.hyzer_deg),
  };
}

/** By how much of it the arm misses the speed the disc is rated at: 0 fast enough, 0.3 a beginner with a fast driver. */
export function speedShortfall(fitted: FittedThrow): number {
  const arm_mps = fitted.releaseSpeed_mps / releaseSpeedShare(fitted.discSpeed);
  return Math.max(0, 1 - arm_mps / ratedArmSpeed_mps(fitted.discSpeed));
}

/** Offsets from the mean release for row `index` of `normals`; index −1 is the middle of the scatter. */
export function sampleThrow(
  normals: Float64Array,
  index: number,
  scatter: Scatter,
  wind: WindScatter,
  out: SampledThrow,
): void {
  if (index < 0) {
    out.speedShare = 1;
    out.azimuth_deg = 0;
    out.hyzer_deg = 0;
    out.launch_deg = 0;
    out.nose_deg = 0;
    out.wind_mps = wind.speed_mps;
    out.windTurn_deg = 0;
    return;
  }
  const at = index * SAMPLE_DIMENSIONS;
  out.speedShare = Math.max(0.2, 1 + scatter.speed * normals[at + SPEED]);
  out.azimuth_deg = scatter.azimuth_deg * normals[at + AZIMUTH];
  out.hyzer_deg = scatter.hyzer_deg * normals[at + HYZER];
  out.launch_deg = scatter.launch_deg * normals[at + LAUNCH];
  out.nose_deg = scatter.nose_deg * normals[at + NOSE];
  out.wind_mps = Math.max(0, wind.speed_mps + wind.speedSd_mps * normals[at + WIND_SPEED]);
  out.windTurn_deg = wind.directionSd_deg * normals[at + WIND_DIRECTION];
}
