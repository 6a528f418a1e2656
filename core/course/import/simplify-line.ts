import type { Position } from 'geojson';
import type { LonLat } from '../course.ts';
import { groundOffset_m } from '../ground-distance.ts';

/**
 * A recorded line with as few corners as keep it within a tolerance of itself; ends stay.
 * @param line - at least two positions
 * @param tolerance_m - over 0
 * @throws {RangeError} for a line without two positions
 * @source Douglas and Peucker, Cartographica 10(2) (1973), 112–122; kept on a stack, so that a long track cannot overflow
 */
export function simplifyLine(line: readonly Position[], tolerance_m: number): Position[] {
  if (line.length < 2) throw new RangeError(`a line needs two positions, got ${line.length}`);
  const origin = line[0] as unknown as LonLat;
  const flat = line.map(position => groundOffset_m(origin, position as unknown as LonLat));
  const isKept = new Uint8Array(line.length);
  isKept[0] = isKept[line.length - 1] = 1;
  const spans: [number, number][] = [[0, line.length - 1]];
  for (let span = spans.pop(); span !== undefined; span = spans.pop()) {
    const [from, to] = span;
    let [farthest, distance_m] = [-1, tolerance_m];
    for (let i = from + 1; i < to; i++) {
      const off_m = distanceToSegment(flat[i]!, flat[from]!, flat[to]!);
      if (off_m > distance_m) [farthest, distance_m] = [i, off_m];
    }
    if (farthest === -1) continue;
    isKept[farthest] = 1;
    spans.push([from, farthest], [farthest, to]);
  }
  return line.filter((_, i) => isKept[i] === 1);
}

type Flat = readonly [east_m: number, north_m: number];

function distanceToSegment(p: Flat, a: Flat, b: Flat): number {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const lengthSq = dx * dx + dy * dy;
  const along = lengthSq === 0 ? 0 : ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / lengthSq;
  const t = Math.min(1, Math.max(0, along));
  return Math.hypot(p[0] - a[0] - t * dx, p[1] - a[1] - t * dy);
}
