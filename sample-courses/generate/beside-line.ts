import { atStation } from '../../core/geometry/along-line.ts';
import type { LocalPoint } from '../../core/geometry/hole-map.ts';
import { distance_m } from '../../core/geometry/line-length.ts';

/** Half the stretch over which the direction of a bent line is averaged, so that edges drawn beside it stay smooth. */
const SMOOTHING_M = 12;

/** The point `left_m` to the left of the line at a station (negative: to the right). */
export function besideLine(line: readonly LocalPoint[], station_m: number, left_m: number): LocalPoint {
  const before = atStation(line, station_m - SMOOTHING_M).point;
  const after = atStation(line, station_m + SMOOTHING_M).point;
  const chord_m = distance_m(before, after);
  const [x, y] = atStation(line, station_m).point;
  return [x - (left_m * (after[1] - before[1])) / chord_m, y + (left_m * (after[0] - before[0])) / chord_m];
}

/** A strip along the line as a ring (not closed): from `right_m` to `left_m`, offsets to the left, at each station. */
export function strip(
  line: readonly LocalPoint[],
  stations_m: readonly number[],
  right_m: (station_m: number) => number,
  left_m: (station_m: number) => number,
): LocalPoint[] {
  return [
    ...stations_m.map(s => besideLine(line, s, right_m(s))),
    ...stations_m.toReversed().map(s => besideLine(line, s, left_m(s))),
  ];
}

/** Stations from one to the other, both included, evenly spaced at about `step_m`. */
export function stations(from_m: number, to_m: number, step_m: number): number[] {
  const steps = Math.max(1, Math.round((to_m - from_m) / step_m));
  return Array.from({ length: steps + 1 }, (_, i) => from_m + ((to_m - from_m) * i) / steps);
}
