import { atStation } from '../along-line.ts';
import type { LocalPoint } from '../hole-map.ts';
import { distance_m } from '../line-length.ts';

/** Ground beside a line is drawn this deep, or as deep as the inside of a bend leaves room for. */
const DEPTHS_m = [30, 20, 12, 6, 3, 1] as const;

/**
 * A ring round the ground on one side of a line between two stations.
 * @param away_m - from the line to the near edge; may be 0
 * @param side - 1 left, −1 right
 * @returns the closed ring, or undefined when the inside of a bend has no room for an edge that far away
 */
export function ringBeside(
  line: readonly LocalPoint[],
  from_m: number,
  to_m: number,
  away_m: number,
  side: 1 | -1,
): LocalPoint[] | undefined {
  const stretch = stretchOf(line, from_m, to_m);
  const near = parallel(stretch, away_m * side);
  if (near === undefined) return undefined;
  for (const depth_m of DEPTHS_m) {
    const far = parallel(stretch, (away_m + depth_m) * side);
    if (far !== undefined) return [...near, ...far.toReversed(), near[0]!];
  }
  return undefined;
}

/** The line between two stations, bends kept. */
function stretchOf(line: readonly LocalPoint[], from_m: number, to_m: number): LocalPoint[] {
  const points = [atStation(line, from_m).point];
  let station_m = 0;
  for (let i = 1; i < line.length - 1; i++) {
    station_m += distance_m(line[i - 1]!, line[i]!);
    if (station_m > from_m + 1e-6 && station_m < to_m - 1e-6) points.push(line[i]!);
  }
  return [...points, atStation(line, to_m).point];
}

/** The line moved to its left (negative: right), mitred at bends; undefined where a leg would turn round. */
function parallel(line: readonly LocalPoint[], left_m: number): LocalPoint[] | undefined {
  const directions = line.slice(1).map((b, i): LocalPoint => {
    const a = line[i]!;
    const leg_m = distance_m(a, b);
    return [(b[0] - a[0]) / leg_m, (b[1] - a[1]) / leg_m];
  });
  const moved = line.map(([x, y], i): LocalPoint => {
    const before = directions[Math.max(0, i - 1)]!;
    const after = directions[Math.min(directions.length - 1, i)]!;
    // The meeting point of both legs' parallels: along the sum of their normals, 1 + cos(turn) long.
    const [nx, ny] = [-(before[1] + after[1]), before[0] + after[0]];
    const scale = left_m / (1 + before[0] * after[0] + before[1] * after[1]);
    return [x + nx * scale, y + ny * scale];
  });
  const isForward = directions.every(([dx, dy], i) => {
    const [a, b] = [moved[i]!, moved[i + 1]!];
    return (b[0] - a[0]) * dx + (b[1] - a[1]) * dy > 0.05;
  });
  return isForward ? moved : undefined;
}
