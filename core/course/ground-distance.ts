import type { LonLat } from './course.ts';

/** WGS 84 defining constants: NIMA TR8350.2 (2000), table 3.1. */
const equatorialRadius_m = 6378137;
const flattening = 1 / 298.257223563;
const eccentricitySq = flattening * (2 - flattening);

/** Brings a difference of longitudes into −180…180°, so that the antimeridian is no edge. */
export function wrapLongitude_deg(difference_deg: number): number {
  return difference_deg - 360 * Math.round(difference_deg / 360);
}

/**
 * East and north of `from` to `to` on a plane that touches the WGS 84 ellipsoid at their mid-latitude
 * (radii of curvature M and N): within 0.02 mm of the geodesic length up to 1 km between 75° south and north.
 * Farther apart it is only good for saying how far apart.
 * @returns `[east_m, north_m]`
 * @source radii of curvature: Snyder, Map Projections: A Working Manual (1987), eqs 4-18 and 4-20
 */
export function groundOffset_m(from: LonLat, to: LonLat): readonly [east_m: number, north_m: number] {
  const mid_rad = (((from[1] + to[1]) / 2) * Math.PI) / 180;
  const w = 1 - eccentricitySq * Math.sin(mid_rad) ** 2;
  const meridianRadius_m = (equatorialRadius_m * (1 - eccentricitySq)) / w ** 1.5;
  const parallelRadius_m = (equatorialRadius_m / Math.sqrt(w)) * Math.cos(mid_rad);
  const east_m = ((wrapLongitude_deg(to[0] - from[0]) * Math.PI) / 180) * parallelRadius_m;
  return [east_m, (((to[1] - from[1]) * Math.PI) / 180) * meridianRadius_m];
}

/** Metres over the ground between two positions; see `groundOffset_m` for how good. */
export function groundDistance_m(a: LonLat, b: LonLat): number {
  return Math.hypot(...groundOffset_m(a, b));
}

/** Metres along a line of positions. */
export function lineLength_m(line: readonly LonLat[]): number {
  return line.slice(1).reduce((sum, position, i) => sum + groundDistance_m(line[i]!, position), 0);
}
