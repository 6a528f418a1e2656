import type { LocalPoint } from './hole-map.ts';

/** Length along a line of local points, metres; 0 for fewer than two points. */
export function lineLength_m(line: readonly LocalPoint[]): number {
  let length_m = 0;
  for (let i = 1; i < line.length; i++) length_m += distance_m(line[i - 1]!, line[i]!);
  return length_m;
}

/** Straight distance between two local points, metres. */
export function distance_m(a: LocalPoint, b: LocalPoint): number {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  // some times faster than hypot, which guards against sizes no course has
  return Math.sqrt(dx * dx + dy * dy);
}
