import { withoutRepeats } from './build-hole.ts';
import type { CourseHole, LonLat, Site } from './course.ts';
import { groundDistance_m, groundOffset_m } from './ground-distance.ts';

/** A drawn line that starts and ends this near to the tee and basket is theirs. */
const ownLine_m = 0.5;

/**
 * The line of play from one of the hole's tees to one of its baskets: as drawn for the two, else over those bends of the
 * hole's line that lie between them.
 */
export function lineBetween(hole: CourseHole, tee: Site, basket: Site): readonly LonLat[] {
  const lines = [hole.line, ...(hole.otherLines ?? [])];
  const starts = (line: readonly LonLat[]) => groundDistance_m(line[0]!, tee.position) < ownLine_m;
  const ends = (line: readonly LonLat[]) => groundDistance_m(line.at(-1)!, basket.position) < ownLine_m;
  const whole = lines.find(line => starts(line) && ends(line));
  const like = whole ?? lines.find(starts) ?? lines.find(ends) ?? hole.line;
  const bends = whole === undefined ? bendsBetween(like, tee.position, basket.position) : like.slice(1, -1);
  return withoutRepeats([tee.position, ...bends, basket.position]);
}

function bendsBetween(line: readonly LonLat[], tee: LonLat, basket: LonLat): LonLat[] {
  const [from_m, to_m] = [stationOf(line, tee), stationOf(line, basket)];
  let station_m = 0;
  return line.slice(1, -1).filter((bend, i) => {
    station_m += groundDistance_m(line[i]!, bend);
    return station_m > from_m && station_m < to_m;
  });
}

/** Metres along the line to the place nearest to a position; beyond the last leg it runs on straight. */
function stationOf(line: readonly LonLat[], position: LonLat): number {
  let best = { away_m: Number.POSITIVE_INFINITY, station_m: 0 };
  let start_m = 0;
  for (const [i, from] of line.slice(0, -1).entries()) {
    const [dx, dy] = groundOffset_m(from, line[i + 1]!);
    const [px, py] = groundOffset_m(from, position);
    const leg_m = Math.hypot(dx, dy);
    const share = leg_m === 0 ? 0 : (px * dx + py * dy) / leg_m ** 2;
    const t = Math.max(0, i === line.length - 2 ? share : Math.min(1, share));
    const away_m = Math.hypot(px - t * dx, py - t * dy);
    if (away_m < best.away_m - 1e-9) best = { away_m, station_m: start_m + t * leg_m };
    start_m += leg_m;
  }
  return best.station_m;
}
