import type { LonLat } from '../course/course.ts';
import type { LocalPoint } from './hole-map.ts';

/** Where a local frame sits on the WGS 84 ellipsoid. Plain data: crosses to workers. */
export type LocalFrame = Readonly<{ originLon_deg: number; originLat_deg: number }>;

// WGS 84 defining constants: NIMA TR 8350.2, 3rd edition, table 3.1.
const SEMI_MAJOR_AXIS_m = 6378137;
const FLATTENING = 1 / 298.257223563;
const ECCENTRICITY_SQUARED = FLATTENING * (2 - FLATTENING);
const RADIANS_PER_DEGREE = Math.PI / 180;
/** Nearer a pole than this the meridians converge too fast for the series below. */
const MAX_LATITUDE_deg = 89;

/**
 * A frame at the given origin: x east, y north, metres.
 * @throws {RangeError} when the origin is not finite or within a degree of a pole
 */
export function localFrame(originLon_deg: number, originLat_deg: number): LocalFrame {
  if (!Number.isFinite(originLon_deg)) throw new RangeError(`originLon_deg must be finite, got ${originLon_deg}`);
  if (!(Math.abs(originLat_deg) <= MAX_LATITUDE_deg))
    throw new RangeError(`originLat_deg must lie within ±${MAX_LATITUDE_deg}, got ${originLat_deg}`);
  return { originLon_deg, originLat_deg };
}

/**
 * Degrees to local metres: distance and direction of the geodesic from the origin, laid flat (azimuthal equidistant), so
 * lines between any two points of a hole keep their length too. Under 0.1 mm from the geodesic up to 1 km; height is dropped.
 * @throws {RangeError} when the position is not finite
 * @source Gauss's mid-latitude method, to first order in the convergence; held against Karney's geodesics in the tests
 */
export function toLocal(frame: LocalFrame, lonLat: LonLat): LocalPoint {
  const [lon_deg, lat_deg] = lonLat;
  if (!Number.isFinite(lon_deg) || !Number.isFinite(lat_deg))
    throw new RangeError(`position must be finite, got [${lon_deg}, ${lat_deg}]`);
  // The short way round, so that a hole may cross the antimeridian.
  const deltaLon = wrap_deg(lon_deg - frame.originLon_deg) * RADIANS_PER_DEGREE;
  const deltaLat = (lat_deg - frame.originLat_deg) * RADIANS_PER_DEGREE;
  const midLat = ((lat_deg + frame.originLat_deg) / 2) * RADIANS_PER_DEGREE;
  const { meridian_m, primeVertical_m } = radiiOfCurvature(midLat);
  const east_m = deltaLon * primeVertical_m * Math.cos(midLat);
  const north_m = deltaLat * meridian_m;
  // The mid-latitude plane points along the azimuth at mid-line; at the origin it is less by half the meridians' convergence.
  const halfConvergence = (deltaLon * Math.sin(midLat)) / 2;
  const [cos, sin] = [Math.cos(halfConvergence), Math.sin(halfConvergence)];
  return [east_m * cos - north_m * sin, north_m * cos + east_m * sin];
}

/**
 * Local metres back to degrees; the inverse of `toLocal` to 1e-9 m within 2 km. Longitude comes back in [-180, 180).
 * @throws {RangeError} when the point is not finite
 */
export function toLonLat(frame: LocalFrame, point: LocalPoint): readonly [lon_deg: number, lat_deg: number] {
  if (!Number.isFinite(point[0]) || !Number.isFinite(point[1]))
    throw new RangeError(`point must be finite, got [${point[0]}, ${point[1]}]`);
  const originLat = frame.originLat_deg * RADIANS_PER_DEGREE;
  const { meridian_m, primeVertical_m } = radiiOfCurvature(originLat);
  const lonPerMetre = 1 / (primeVertical_m * Math.cos(originLat) * RADIANS_PER_DEGREE);
  const latPerMetre = 1 / (meridian_m * RADIANS_PER_DEGREE);
  let lon_deg = frame.originLon_deg;
  let lat_deg = frame.originLat_deg;
  // Each pass shrinks the miss by about distance / Earth radius × tan(latitude): six passes end in rounding error.
  for (let pass = 0; pass < 6; pass++) {
    const [east_m, north_m] = toLocal(frame, [lon_deg, lat_deg]);
    lon_deg += (point[0] - east_m) * lonPerMetre;
    lat_deg += (point[1] - north_m) * latPerMetre;
  }
  return [wrap_deg(lon_deg), lat_deg];
}

/**
 * Radii of curvature of the ellipsoid, metres: along the meridian (M) and across it (N).
 * @param lat - geodetic latitude, radians
 * @source standard ellipsoid formulas: N = a/√w, M = a(1 − e²)/w^1.5 with w = 1 − e² sin²φ
 */
export function radiiOfCurvature(lat: number): Readonly<{ meridian_m: number; primeVertical_m: number }> {
  const w = 1 - ECCENTRICITY_SQUARED * Math.sin(lat) ** 2;
  const primeVertical_m = SEMI_MAJOR_AXIS_m / Math.sqrt(w);
  return { meridian_m: (primeVertical_m * (1 - ECCENTRICITY_SQUARED)) / w, primeVertical_m };
}

function wrap_deg(lon_deg: number): number {
  return lon_deg >= -180 && lon_deg < 180 ? lon_deg : lon_deg - 360 * Math.floor((lon_deg + 180) / 360);
}
