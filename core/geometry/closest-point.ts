import type { LocalPoint, LocalPolygon } from './hole-map.ts';
import { distance_m } from './line-length.ts';

/**
 * Nearest point of segment a–b to p, in the hole's local frame.
 * @param p, a, b - `[east_m, north_m]`; a may equal b
 * @returns `point` as `[east_m, north_m]`; `t` in [0, 1] along a→b, 0 when a equals b
 * @throws {RangeError} naming the points, if no finite t exists (a NaN or infinity got in)
 * @source Ericson, Real-Time Collision Detection (2005), §5.1.2
 */
export function closestOnSegment(
  p: LocalPoint,
  a: LocalPoint,
  b: LocalPoint,
): Readonly<{ point: LocalPoint; t: number }> {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const lengthSq = dx * dx + dy * dy;
  const along = lengthSq === 0 ? 0 : ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / lengthSq;
  if (!Number.isFinite(along)) throw new RangeError(`no nearest point to [${p}] on [${a}]–[${b}]`);
  const t = Math.min(1, Math.max(0, along));
  return { point: [a[0] + t * dx, a[1] + t * dy], t };
}

/** Nearest point of the polygons' rings to p, and how far it is (from inside too: the distance to the edge), metres. */
export function closestOnRings(
  p: LocalPoint,
  polygons: readonly LocalPolygon[],
): Readonly<{ point: LocalPoint; distance_m: number }> {
  let best: { point: LocalPoint; distance_m: number } = { point: p, distance_m: Number.POSITIVE_INFINITY };
  for (const polygon of polygons)
    for (const ring of polygon)
      for (let i = 1; i < ring.length; i++) {
        const { point } = closestOnSegment(p, ring[i - 1]!, ring[i]!);
        const away_m = distance_m(p, point);
        if (away_m < best.distance_m) best = { point, distance_m: away_m };
      }
  return best;
}

/**
 * Nearest point of a line to p, its station from the line's start, and how far it is, metres.
 * @throws {RangeError} when the line has fewer than two points or no length
 */
export function closestOnPolyline(
  p: LocalPoint,
  line: readonly LocalPoint[],
): Readonly<{ point: LocalPoint; station_m: number; distance_m: number }> {
  let start_m = 0;
  let best: { point: LocalPoint; station_m: number; distance_m: number } | undefined;
  for (let i = 1; i < line.length; i++) {
    const [a, b] = [line[i - 1]!, line[i]!];
    const leg_m = distance_m(a, b);
    if (leg_m === 0) continue;
    const { point, t } = closestOnSegment(p, a, b);
    const away_m = distance_m(p, point);
    if (best === undefined || away_m < best.distance_m)
      best = { station_m: start_m + t * leg_m, point, distance_m: away_m };
    start_m += leg_m;
  }
  if (best === undefined) throw new RangeError(`the line [${line.join('; ')}] has no length`);
  return best;
}
