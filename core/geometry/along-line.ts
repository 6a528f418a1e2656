import { closestOnPolyline } from './closest-point.ts';
import type { LocalPoint } from './hole-map.ts';
import { distance_m } from './line-length.ts';

/** A place on a line: metres from its start, the point, and the unit vector along the line there. */
export type Station = Readonly<{ station_m: number; point: LocalPoint; along: LocalPoint }>;

/** A station and how the asked point lies to it: `left_m` is positive left of the line, negative right. */
export type NearestStation = Station & Readonly<{ distance_m: number; left_m: number }>;

/**
 * The place `station_m` metres along a line; stations before the start or past the end run on straight.
 * At a bend the direction is that of the leg the station begins.
 * @throws {RangeError} when the line has no length
 */
export function atStation(line: readonly LocalPoint[], station_m: number): Station {
  let start_m = 0;
  let last: Station | undefined;
  for (let i = 1; i < line.length; i++) {
    const [a, b] = [line[i - 1]!, line[i]!];
    const leg_m = distance_m(a, b);
    if (leg_m === 0) continue;
    const along: LocalPoint = [(b[0] - a[0]) / leg_m, (b[1] - a[1]) / leg_m];
    const into_m = station_m - start_m;
    last = { station_m, along, point: [a[0] + along[0] * into_m, a[1] + along[1] * into_m] };
    if (into_m < leg_m) return last;
    start_m += leg_m;
  }
  if (last === undefined) throw new RangeError(`the line [${line.join('; ')}] has no length`);
  return last;
}

/**
 * The place on the line nearest to a point. At a bend the direction is the mean of the two legs, so "across the line" is
 * fair to both; `left_m` has the sign of the side and the size of `distance_m`.
 * @throws {RangeError} when the line has no length
 */
export function nearestStation(line: readonly LocalPoint[], p: LocalPoint): NearestStation {
  const best = closestOnPolyline(p, line);
  const along = meanDirection(line, best.station_m);
  const cross = along[0] * (p[1] - best.point[1]) - along[1] * (p[0] - best.point[0]);
  return { ...best, along, left_m: cross < 0 ? -best.distance_m : best.distance_m };
}

function meanDirection(line: readonly LocalPoint[], station_m: number): LocalPoint {
  const before = atStation(line, Math.max(0, station_m - 1e-6)).along;
  const after = atStation(line, station_m).along;
  const sum: LocalPoint = [before[0] + after[0], before[1] + after[1]];
  const size = Math.hypot(sum[0], sum[1]);
  return size < 1e-9 ? after : [sum[0] / size, sum[1] / size];
}
