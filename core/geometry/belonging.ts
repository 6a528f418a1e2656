import type { Course, CourseHole, CourseObject, LonLat } from '../course/course.ts';
import { nearestStation } from './along-line.ts';
import { lineLength_m } from './line-length.ts';
import { localFrame, toLocal } from './local-frame.ts';

/** An object without a hole's number counts for the nearest hole within this distance. */
const NEAREST_HOLE_m = 40;

/** Whether the map gives an object to this hole, to another, or (no `ref`, or the ref of no hole) to none. */
export function ownerOf(course: Course, hole: CourseHole, object: CourseObject): 'own' | 'other' | 'none' {
  if (object.ref === undefined || !course.holes.some(h => h.ref === object.ref)) return 'none';
  return object.ref === hole.ref ? 'own' : 'other';
}

/**
 * Whether a mando or drop zone is this hole's: by its `ref`, else because this hole's line of play is the nearest within 40 m
 * (the earlier hole of the file, when two are equally near).
 * @param positions - of the object; the middle one counts
 */
export function isForHole(
  course: Course,
  hole: CourseHole,
  object: CourseObject,
  positions: readonly LonLat[],
): boolean {
  const owner = ownerOf(course, hole, object);
  if (owner !== 'none') return owner === 'own';
  const middle = positions[Math.floor(positions.length / 2)]!;
  const frame = localFrame(middle[0], middle[1]);
  let nearest: { hole: CourseHole; away_m: number } | undefined;
  for (const candidate of course.holes) {
    const line = candidate.line.map(position => toLocal(frame, position));
    if (lineLength_m(line) === 0) continue;
    const away_m = nearestStation(line, [0, 0]).distance_m;
    if (away_m <= NEAREST_HOLE_m && (nearest === undefined || away_m < nearest.away_m - 1e-6))
      nearest = { hole: candidate, away_m };
  }
  return nearest?.hole.ref === hole.ref;
}
