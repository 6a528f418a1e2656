import { closestOnRings } from '../geometry/closest-point.ts';
import type { HoleMap, LocalPeople, LocalPoint } from '../geometry/hole-map.ts';
import type { HoleReport } from '../geometry/hole-report.ts';
import { isInPolygon } from '../geometry/point-in-polygon.ts';
import type { RestPoint } from './shot-outcome.ts';

/** Throws that end this near to where people may be are counted; our own caution, no source. */
const NEAR_PEOPLE_M = 15;
const WORTH_SAYING = 0.02;

/** What to look out for on this hole with this shot, plain sentences for screen and sheet. */
export function holeCautions(map: HoleMap, report: HoleReport, ends: readonly RestPoint[]): string[] {
  const cautions: string[] = [];
  for (const crossing of report.pathCrossings) {
    cautions.push(
      `People may cross at ${Math.round(crossing.station_m)} m (${crossing.what}): do not throw until it is clear.`,
    );
  }
  for (const people of map.people) {
    const chance = ends.reduce((sum, end) => (isNear([end.x_m, end.y_m], people) ? sum + end.weight : sum), 0);
    if (chance >= WORTH_SAYING) {
      cautions.push(
        `About ${Math.round(100 * chance)} % of these throws end within ${NEAR_PEOPLE_M} m of ${people.what} (${people.source}): wait until nobody is there.`,
      );
    }
  }
  for (const blind of report.blindSpots) {
    cautions.push(
      `The landing ground at the ${blind.target} cannot be seen from the tee: send a spotter ahead or walk forward and look.`,
    );
  }
  return cautions;
}

function isNear(point: LocalPoint, people: LocalPeople): boolean {
  if (people.closed && isInPolygon(point, people.lines)) return true;
  return closestOnRings(point, [people.lines]).distance_m <= NEAR_PEOPLE_M;
}
