import { atStation } from './along-line.ts';
import type { LocalPoint, LocalPolygon } from './hole-map.ts';
import { distance_m, lineLength_m } from './line-length.ts';
import { isInAny } from './point-in-polygon.ts';

/** A stretch of a line, metres from its start. */
export type Stretch = Readonly<{ from_m: number; to_m: number }>;

/** Stations at which `line` crosses (or touches) `other`, rising. Stretches where the two run along each other give none. */
export function crossings_m(line: readonly LocalPoint[], other: readonly LocalPoint[]): number[] {
  const stations: number[] = [];
  let start_m = 0;
  for (let i = 1; i < line.length; i++) {
    const [a, b] = [line[i - 1]!, line[i]!];
    const leg_m = distance_m(a, b);
    for (let j = 1; j < other.length; j++) {
      const t = crossingShare(a, b, other[j - 1]!, other[j]!);
      if (t !== undefined) stations.push(start_m + t * leg_m);
    }
    start_m += leg_m;
  }
  return stations.sort((p, q) => p - q).filter((station, k, all) => k === 0 || station - all[k - 1]! > 1e-6);
}

/** Stretches of the line that lie inside any of the polygons, rising, joined where they touch. */
export function stretchesInside(line: readonly LocalPoint[], polygons: readonly LocalPolygon[]): Stretch[] {
  const cuts = [0, lineLength_m(line)];
  for (const polygon of polygons) for (const ring of polygon) cuts.push(...crossings_m(line, ring));
  cuts.sort((p, q) => p - q);
  const stretches: Stretch[] = [];
  for (let k = 1; k < cuts.length; k++) {
    const [from_m, to_m] = [cuts[k - 1]!, cuts[k]!];
    if (to_m - from_m < 1e-6 || !isInAny(atStation(line, (from_m + to_m) / 2).point, polygons)) continue;
    const last = stretches.at(-1);
    if (last !== undefined && from_m - last.to_m < 1e-6)
      stretches[stretches.length - 1] = { from_m: last.from_m, to_m };
    else stretches.push({ from_m, to_m });
  }
  return stretches;
}

/** How far along a–b it meets c–d, 0…1; undefined when it does not, or runs parallel. */
export function crossingShare(a: LocalPoint, b: LocalPoint, c: LocalPoint, d: LocalPoint): number | undefined {
  const [rx, ry, sx, sy] = [b[0] - a[0], b[1] - a[1], d[0] - c[0], d[1] - c[1]];
  const cross = rx * sy - ry * sx;
  if (cross === 0) return undefined;
  const t = ((c[0] - a[0]) * sy - (c[1] - a[1]) * sx) / cross;
  const u = ((c[0] - a[0]) * ry - (c[1] - a[1]) * rx) / cross;
  return t >= 0 && t <= 1 && u >= 0 && u <= 1 ? t : undefined;
}
