import type { LocalPoint } from './hole-map.ts';

/** Axis-parallel box in the local frame, metres. */
export type Box = Readonly<{ west_m: number; south_m: number; east_m: number; north_m: number }>;

/** The box round the points, widened by `margin_m` on every side. No points: an inside-out box that meets nothing. */
export function boundingBox(points: Iterable<LocalPoint>, margin_m = 0): Box {
  let [west_m, south_m] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
  let [east_m, north_m] = [Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const [x, y] of points) {
    west_m = Math.min(west_m, x);
    east_m = Math.max(east_m, x);
    south_m = Math.min(south_m, y);
    north_m = Math.max(north_m, y);
  }
  return {
    west_m: west_m - margin_m,
    south_m: south_m - margin_m,
    east_m: east_m + margin_m,
    north_m: north_m + margin_m,
  };
}

/** Whether two boxes share any ground. */
export function boxesMeet(a: Box, b: Box): boolean {
  return a.west_m <= b.east_m && b.west_m <= a.east_m && a.south_m <= b.north_m && b.south_m <= a.north_m;
}
