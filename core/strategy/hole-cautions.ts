import { closestOnRings } from '../geometry/closest-point.ts';
import type { HoleMap, LocalPeople, LocalPoint } from '../geometry/hole-map.ts';
import type { HoleReport } from '../geometry/hole-report.ts';
import { isInPolygon } from '../geometry/point-in-polygon.ts';
import { nameInText } from '../units/name-in-text.ts';
import type { RestPoint } from './shot-outcome.ts';

/** Throws that end this near to where people may be are counted; our own caution, no source. */
const NEAR_PEOPLE_M = 15;
const WORTH_SAYING = 0.02;

/** What to look out for on this hole with this shot, plain sentences for screen and sheet. */
export function holeCautions(map: HoleMap, report: HoleReport, ends: readonly RestPoint[]): string[] {
  const cautions: string[] = [];
  for (const crossing of report.pathCrossings) {
    cautions.push(
      `People may cross at ${Math.round(crossing.station_m)} m (${nameInText(crossing.what)}): do not throw until it is clear.`,
    );
  }
  for (const people of map.people) {
    const chance = ends.reduce((sum, end) => (isNear([end.x_m, end.y_m], people) ? sum + end.weight : sum), 0);
    if (chance >= WORTH_SAYING) {
      cautions.push(
        `About ${Math.round(100 * chance)} % of these throws end within ${NEAR_PEOPLE_M} m of ${nameInText(`${people.what} (${people.source})`)}: wait until nobody is there.`,
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

/** A rolling disc is in people's way all along: this near to it is on its way (assumed). */
const ON_ITS_WAY_M = 5;

/**
 * Where a roller runs over or past people's ways.
 * @param track - middle of the throw from hand to rest, local metres
 */
export function rollCautions({ people }: Pick<HoleMap, 'people'>, track: readonly LocalPoint[]): string[] {
  return people.flatMap(({ what, source, lines, closed }) => {
    const nearest = track.find(
      at => (closed && isInPolygon(at, lines)) || closestOnRings(at, [lines]).distance_m <= ON_ITS_WAY_M,
    );
    if (nearest === undefined) return [];
    const station_m = Math.round(Math.hypot(nearest[0], nearest[1]));
    return [
      `The roller runs over or close past ${nameInText(`${what} (${source})`)}, ${station_m} m from the tee: throw only when nobody is on it or near it.`,
    ];
  });
}

function isNear(point: LocalPoint, people: LocalPeople): boolean {
  if (people.closed && isInPolygon(point, people.lines)) return true;
  return closestOnRings(point, [people.lines]).distance_m <= NEAR_PEOPLE_M;
}
