import type { Position } from 'geojson';
import { groundOffset_m, wrapLongitude_deg } from '../ground-distance.ts';

/** One millimetre on the ground is about 1e-8°; more digits would only make the file longer. */
const DIGITS = 8;

/** East and north of one position to another, metres. Good to a kilometre or so; see `groundOffset_m`. */
export function offset_m(from: Position, to: Position): readonly [east_m: number, north_m: number] {
  return groundOffset_m([from[0]!, from[1]!], [to[0]!, to[1]!]);
}

/**
 * The position so many metres east and north of another, to the millimetre; the inverse of `offset_m`. Heights and whatever
 * else follows longitude and latitude are kept.
 * @throws {RangeError} when a number is not finite, or the place lies within a degree of a pole
 */
export function shiftPosition(from: Position, east_m: number, north_m: number): Position {
  if (!Number.isFinite(east_m) || !Number.isFinite(north_m))
    throw new RangeError(`shift must be finite, got ${east_m} m east, ${north_m} m north`);
  if (!(Math.abs(from[1]!) <= 89)) throw new RangeError(`latitude must lie within ±89°, got ${from[1]}`);
  let [lon, lat] = [from[0]!, from[1]!];
  // The scale hardly changes over a course: each pass shrinks the miss a thousandfold and more.
  for (let pass = 0; pass < 4; pass++) {
    const [gotEast_m, gotNorth_m] = offset_m(from, [lon, lat]);
    const perDegree = offset_m([lon - 0.0005, lat - 0.0005], [lon + 0.0005, lat + 0.0005]);
    lon += ((east_m - gotEast_m) * 0.001) / perDegree[0];
    lat += ((north_m - gotNorth_m) * 0.001) / perDegree[1];
  }
  return [tidy(wrapLongitude_deg(lon)), tidy(lat), ...from.slice(2)];
}

/**
 * The position at a true bearing and distance from another.
 * @param bearing_deg - clockwise from true north
 */
export function positionAt(from: Position, bearing_deg: number, distance_m: number): Position {
  const bearing = (bearing_deg * Math.PI) / 180;
  return shiftPosition(from, distance_m * Math.sin(bearing), distance_m * Math.cos(bearing));
}

/** True bearing in [0, 360) and distance from one position to another; bearing 0 when they are the same. */
export function bearingAndDistance(from: Position, to: Position): { bearing_deg: number; distance_m: number } {
  const [east_m, north_m] = offset_m(from, to);
  const bearing_deg = ((Math.atan2(east_m, north_m) * 180) / Math.PI + 360) % 360;
  return { bearing_deg, distance_m: Math.hypot(east_m, north_m) };
}

const tidy = (degrees: number): number => Number(degrees.toFixed(DIGITS));
