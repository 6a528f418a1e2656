import { atStation, nearestStation } from './along-line.ts';
import { type CorridorSample, corridorAlong } from './corridor.ts';
import { gapWindow } from './gap-window.ts';
import type { HoleMap, LocalGap, LocalPoint } from './hole-map.ts';
import type { CeilingReport, GapReport, HoleReport } from './hole-report.ts';
import { crossings_m } from './line-crossings.ts';
import { distance_m } from './line-length.ts';
import { findNarrows, type Narrows } from './narrows.ts';
import { isInAny } from './point-in-polygon.ts';

/** A mapped gap is on the line of play when its middle lies within this of it. */
const ON_LINE_m = 15;

/** Gaps along the line of play, mapped ones and those that trees and woods leave; the narrowest place of all. */
export function findGaps(map: HoleMap, ceilings: readonly CeilingReport[]): Pick<HoleReport, 'gaps' | 'narrowest'> {
  const samples = corridorAlong(map);
  const mapped = map.gaps.flatMap(gap => mappedGap(map, gap));
  const found = findNarrows(samples)
    .filter(narrows => !mapped.some(gap => isSame(gap, narrows)))
    .map(narrows => foundGap(map, narrows, ceilings));
  const gaps = [...mapped, ...found].sort((a, b) => a.station_m - b.station_m);
  return { gaps, narrowest: narrowest(samples, mapped) };
}

function mappedGap(map: HoleMap, gap: LocalGap): GapReport[] {
  const [a, b] = gap.posts;
  const middle = nearestStation(map.line, [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2]);
  const crossing_m = crossings_m(map.line, gap.posts)[0];
  if (crossing_m === undefined && middle.distance_m > ON_LINE_m) return [];
  const station_m = crossing_m ?? middle.station_m;
  const high_m = Number.isFinite(gap.high_m) ? gap.high_m : null;
  return [
    {
      station_m,
      from_m: station_m,
      to_m: station_m,
      width_m: distance_m(a, b),
      low_m: gap.low_m,
      high_m,
      ...gapWindow(map, gap.posts, gap.low_m, high_m),
      source: `${gap.source} (mapped)`,
    },
  ];
}

/** The posts of a mapped gap are often mapped as trees too: the mapped gap stands for both. */
function isSame(gap: GapReport, { station_m, from_m, to_m, width_m }: Narrows): boolean {
  const isHere = Math.abs(gap.station_m - station_m) <= 3 || (gap.station_m >= from_m - 1 && gap.station_m <= to_m + 1);
  return isHere && to_m - from_m <= 6 && Math.abs(gap.width_m - width_m) <= 1.5;
}

function foundGap(map: HoleMap, narrows: Narrows, ceilings: readonly CeilingReport[]): GapReport {
  const { station_m, from_m, to_m, width_m, left, right } = narrows;
  const over = ceilings.filter(ceiling => ceiling.from_m <= station_m && ceiling.to_m >= station_m);
  const high_m = over.length === 0 ? null : Math.min(...over.map(ceiling => ceiling.clearance_m));
  const at: LocalPoint = atStation(map.line, station_m).point;
  // What blocks the line above knee height ends the corridor; what is left is low enough to throw over.
  const low_m = Math.max(0, ...map.covers.filter(c => c.height_m <= 1 && isInAny(at, c.polygons)).map(c => c.height_m));
  return {
    station_m,
    from_m,
    to_m,
    width_m,
    low_m,
    high_m,
    ...gapWindow(map, [left.at, right.at], low_m, high_m),
    source: `between ${left.source} and ${right.source}`,
  };
}

function narrowest(samples: readonly CorridorSample[], mapped: readonly GapReport[]): HoleReport['narrowest'] {
  let best: HoleReport['narrowest'] = null;
  for (const { station_m, width_m, source } of mapped)
    if (best === null || width_m < best.width_m)
      best = { station_m, width_m, left_source: `${source}, post`, right_source: `${source}, post` };
  for (const { station_m, left, right } of samples) {
    if (left === undefined || right === undefined) continue;
    const width_m = left.away_m + right.away_m;
    if (best === null || width_m < best.width_m - 1e-6)
      best = { station_m, width_m, left_source: left.source, right_source: right.source };
  }
  return best;
}
