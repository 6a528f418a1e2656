import { nearestStation } from './along-line.ts';
import { closestOnSegment } from './closest-point.ts';
import type { HoleMap, LocalPeople, LocalPoint } from './hole-map.ts';
import type { HoleReport } from './hole-report.ts';
import { crossings_m } from './line-crossings.ts';
import { isInPolygon } from './point-in-polygon.ts';

/** People nearer the line of play than this are named; our own caution, no source. */
const NEARBY_m = 20;

/** Where people's ways cross the line of play, and which others come within 20 m of it. */
export function findPeople(map: HoleMap): Pick<HoleReport, 'pathCrossings' | 'peopleNearby'> {
  const pathCrossings: HoleReport['pathCrossings'] = [];
  const peopleNearby: HoleReport['peopleNearby'] = [];
  for (const people of map.people) {
    const what = `${people.what} (${people.source})`;
    const stations = people.lines.flatMap(points => crossings_m(map.line, points));
    for (const station_m of stations) pathCrossings.push({ station_m, what });
    if (stations.length > 0) continue;
    const nearest = nearestTo(map.line, people);
    if (nearest !== undefined && nearest.distance_m <= NEARBY_m) peopleNearby.push({ ...nearest, what });
  }
  pathCrossings.sort((a, b) => a.station_m - b.station_m);
  peopleNearby.sort((a, b) => a.station_m - b.station_m);
  return { pathCrossings, peopleNearby };
}

function nearestTo(
  line: readonly LocalPoint[],
  people: LocalPeople,
): Omit<HoleReport['peopleNearby'][number], 'what'> | undefined {
  // An area drawn round the whole line of play: people may be anywhere on it.
  if (people.closed && isInPolygon(line[0]!, people.lines)) return { station_m: 0, distance_m: 0, side: 'left' };
  let best: { station_m: number; distance_m: number; side: 'left' | 'right' } | undefined;
  const consider = (point: LocalPoint): void => {
    const { station_m, distance_m, left_m } = nearestStation(line, point);
    if (best === undefined || distance_m < best.distance_m)
      best = { station_m, distance_m, side: left_m > 0 ? 'left' : 'right' };
  };
  for (const points of people.lines)
    for (const [i, p] of points.entries()) {
      consider(p);
      // Between two lines that do not cross, the nearest pair has an end of one of them in it.
      if (i > 0) for (const q of line) consider(closestOnSegment(q, points[i - 1]!, p).point);
    }
  return best;
}
