import type { Scatter } from '../flight/dispersion.ts';
import { SAMPLE_DIMENSIONS } from '../flight/normal-samples.ts';

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

/**
 * Part-power throws are judged, not just thrown: their speed scatters more as a share (assumed, half again as much at no power).
 */
export function speedScatterAt(scatter: Scatter, power: number): number {
  return scatter.speed * (1 + 0.5 * (1 - power));
}

/** Offsets from the mean release for row `index` of `normals`; index −1 is the middle of the scatter. */
export function sampleThrow(
  normals: Float64Array,
  index: number,
  scatter: Scatter,
  power: number,
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
  out.speedShare = Math.max(0.2, 1 + speedScatterAt(scatter, power) * normals[at + SPEED]);
  out.azimuth_deg = scatter.azimuth_deg * normals[at + AZIMUTH];
  out.hyzer_deg = scatter.hyzer_deg * normals[at + HYZER];
  out.launch_deg = scatter.launch_deg * normals[at + LAUNCH];
  out.nose_deg = scatter.nose_deg * normals[at + NOSE];
  out.wind_mps = Math.max(0, wind.speed_mps + wind.speedSd_mps * normals[at + WIND_SPEED]);
  out.windTurn_deg = wind.directionSd_deg * normals[at + WIND_DIRECTION];
}
