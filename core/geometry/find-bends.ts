import { bearing_deg, turn_deg } from './bearing.ts';
import type { LocalPoint } from './hole-map.ts';
import { distance_m } from './line-length.ts';

/** A line drawn by hand wavers by less than this. */
const LEAST_TURN_deg = 3;
/** Turns to the same side this close together are one bend drawn round. */
const ONE_BEND_m = 12;

/** Bends of a line of play: station of the (turn-weighted) middle, turn in degrees, right positive. */
export function findBends(line: readonly LocalPoint[]): { station_m: number; angle_deg: number }[] {
  const bends: { station_m: number; angle_deg: number; last_m: number }[] = [];
  let station_m = 0;
  for (let i = 1; i < line.length - 1; i++) {
    const [before, here, after] = [line[i - 1]!, line[i]!, line[i + 1]!];
    station_m += distance_m(before, here);
    const angle_deg = turn_deg(bearing_deg(before, here), bearing_deg(here, after));
    const last = bends.at(-1);
    if (last !== undefined && station_m - last.last_m <= ONE_BEND_m && last.angle_deg * angle_deg > 0) {
      const whole = last.angle_deg + angle_deg;
      last.station_m = (last.station_m * last.angle_deg + station_m * angle_deg) / whole;
      last.angle_deg = whole;
      last.last_m = station_m;
    } else if (angle_deg !== 0) bends.push({ station_m, angle_deg, last_m: station_m });
  }
  return bends
    .filter(bend => Math.abs(bend.angle_deg) >= LEAST_TURN_deg)
    .map(bend => ({ station_m: bend.station_m, angle_deg: bend.angle_deg }));
}
