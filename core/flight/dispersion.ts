import type { SurfaceName } from '../geometry/hole-map.ts';
import { LANDING, LANDING_NUMBERS } from './flier.ts';
import type { FlightBatch } from './flight-batch.ts';
import { groundPlay, SURFACE_FRICTION } from './ground-play.ts';
import { RELEASE_HEIGHT_M } from './release.ts';

/** One standard deviation of each release quantity, independent of one another. */
export type Scatter = Readonly<{
  /** Share of the release speed. */
  speed: number;
  azimuth_deg: number;
  hyzer_deg: number;
  launch_deg: number;
  nose_deg: number;
}>;

/** Assumed placeholder until throws are measured: no published scatter of golf discs was found. */
export const TYPICAL_SCATTER: Scatter = {
  speed: 0.035,
  azimuth_deg: 2.5,
  hyzer_deg: 3,
  launch_deg: 1.5,
  nose_deg: 1.5,
};

/** The middle of a throw's scatter. */
export type MeanRelease = Readonly<{
  speed_mps: number;
  launch_deg: number;
  hyzer_deg: number;
  /** Signed spin per release speed, rad/m. */
  spinPerSpeed: number;
}>;

/** Where a scattered throw comes to rest, throw frame: `along` the aim, `left` of it. */
export type RestMoments = Readonly<{ along_m: number; left_m: number; alongSd_m: number; leftSd_m: number }>;

export type Cubature = Readonly<{
  /** Rows of 5 standard normals. */ points: readonly (readonly number[])[];
  weights: readonly number[];
}>;

const AXES = 5;

/** Degree-3 sigma points (10 flights): mean to about 0.2 % of the distance. */
export const SIGMA_POINTS: Cubature = sigmaPoints();
/**
 * Degree-5 cubature (51 flights): mean to 0.1 m, SD to 2 %. Axis weights are negative: good for moments, never for counting chances.
 * @source Stroud, Approximate Calculation of Multiple Integrals (1971), Gaussian weight, degree 5 (form from memory; exactness tested)
 */
export const DEGREE_FIVE: Cubature = degreeFive();

/**
 * Mean and spread of the rest position over a throw's scatter, by cubature. Disc, air and ground are those set on the flier.
 * @param gradX, gradY - ground slope the disc plays out on (the flier's plane)
 */
export function restMoments(
  flier: FlightBatch,
  radius_m: number,
  surface: SurfaceName,
  release: MeanRelease,
  scatter: Scatter,
  rule: Cubature,
  gradX = 0,
  gradY = 0,
): RestMoments {
  const play = new Float64Array(2);
  const landing = new Float64Array(LANDING_NUMBERS);
  const friction = SURFACE_FRICTION[surface];
  let sumX = 0;
  let sumY = 0;
  let sumXX = 0;
  let sumYY = 0;
  for (let i = 0; i < rule.points.length; i++) {
    const p = rule.points[i];
    const speed = Math.max(1, release.speed_mps * (1 + scatter.speed * p[0]));
    flier.release(
      i,
      speed,
      scatter.azimuth_deg * p[1],
      release.launch_deg + scatter.launch_deg * p[2],
      scatter.nose_deg * p[3],
      release.hyzer_deg + scatter.hyzer_deg * p[4],
      release.spinPerSpeed * speed,
      RELEASE_HEIGHT_M,
    );
  }
  flier.fly(rule.points.length);
  for (let i = 0; i < rule.points.length; i++) {
    const w = rule.weights[i];
    flier.landing(i, landing);
    groundPlay(landing, radius_m, friction, gradX, gradY, play);
    const x = landing[LANDING.x] + play[0];
    const y = landing[LANDING.y] + play[1];
    sumX += w * x;
    sumY += w * y;
    sumXX += w * x * x;
    sumYY += w * y * y;
  }
  return {
    along_m: sumX,
    left_m: sumY,
    alongSd_m: Math.sqrt(Math.max(0, sumXX - sumX * sumX)),
    leftSd_m: Math.sqrt(Math.max(0, sumYY - sumY * sumY)),
  };
}

/**
 * Launch angle that carries the scattered throw farthest on average (not the nominal flight: drivers sit on a cliff).
 * @returns degrees, within [1, 24]; golden-section search to 0.1°
 */
export function farthestLaunch_deg(
  flier: FlightBatch,
  radius_m: number,
  surface: SurfaceName,
  release: Omit<MeanRelease, 'launch_deg'>,
  scatter: Scatter,
): number {
  const reach = (launch_deg: number) =>
    restMoments(flier, radius_m, surface, { ...release, launch_deg }, scatter, SIGMA_POINTS).along_m;
  const golden = (Math.sqrt(5) - 1) / 2;
  let low = 1;
  let high = 24;
  let a = high - golden * (high - low);
  let b = low + golden * (high - low);
  let atA = reach(a);
  let atB = reach(b);
  while (high - low > 0.2) {
    if (atA > atB) {
      high = b;
      b = a;
      atB = atA;
      a = high - golden * (high - low);
      atA = reach(a);
    } else {
      low = a;
      a = b;
      atA = atB;
      b = low + golden * (high - low);
      atB = reach(b);
    }
  }
  return (low + high) / 2;
}

function axisPoint(value: number, axis: number): number[] {
  return Array.from({ length: AXES }, (_, i) => (i === axis ? value : 0));
}

function sigmaPoints(): Cubature {
  const points: number[][] = [];
  for (let i = 0; i < AXES; i++) for (const sign of [1, -1]) points.push(axisPoint(sign * Math.sqrt(AXES), i));
  return { points, weights: points.map(() => 1 / points.length) };
}

function degreeFive(): Cubature {
  const n = AXES;
  const gamma = Math.sqrt(n + 2);
  const points: number[][] = [axisPoint(0, 0)];
  const weights = [2 / (n + 2)];
  for (let i = 0; i < n; i++) {
    for (const sign of [1, -1]) {
      points.push(axisPoint(sign * gamma, i));
      weights.push((4 - n) / (2 * (n + 2) ** 2));
    }
  }
  const reach = gamma / Math.SQRT2;
  for (let i = 0; i < n; i++) {
    for (let j = i + 1; j < n; j++) {
      for (const a of [1, -1]) {
        for (const b of [1, -1]) {
          points.push(Array.from({ length: n }, (_, k) => (k === i ? a * reach : k === j ? b * reach : 0)));
          weights.push(1 / (n + 2) ** 2);
        }
      }
    }
  }
  return { points, weights };
}
