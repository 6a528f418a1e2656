import type { HoleMap, LocalPoint } from './hole-map.ts';
import { distance_m } from './line-length.ts';
import { groundHeight } from './terrain.ts';

/** Height of the hand at release above the tee, as in the basket-view table of the geometry tests. */
const RELEASE_m = 1.2;

/**
 * How an opening looks from the tee at release height: degrees wide between its edges, degrees high over its middle.
 * @param high_m - upper edge above the ground; null: open above, and so is the answer
 */
export function gapWindow(
  map: HoleMap,
  [a, b]: readonly [LocalPoint, LocalPoint],
  low_m: number,
  high_m: number | null,
): { windowWidth_deg: number; windowHeight_deg: number | null } {
  const tee = map.line[0]!;
  const middle: LocalPoint = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
  const [ax, ay, bx, by] = [a[0] - tee[0], a[1] - tee[1], b[0] - tee[0], b[1] - tee[1]];
  const width = Math.abs(Math.atan2(ax * by - ay * bx, ax * bx + ay * by));
  const away_m = distance_m(tee, middle);
  const ground_m = groundHeight(map.terrain, middle[0], middle[1]) - groundHeight(map.terrain, tee[0], tee[1]);
  const elevation = (z_m: number): number => Math.atan2(ground_m + z_m - RELEASE_m, away_m);
  return {
    windowWidth_deg: degrees(width),
    windowHeight_deg: high_m === null ? null : degrees(elevation(high_m) - elevation(low_m)),
  };
}

const degrees = (radians: number): number => (radians * 180) / Math.PI;
