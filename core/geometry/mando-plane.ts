import type { Mando } from '../course/course.ts';
import { nearestStation } from './along-line.ts';
import type { LocalMando, LocalPoint } from './hole-map.ts';
import { lineLength_m } from './line-length.ts';

/** How far a plane derived from a single object reaches to the wrong side. */
const DERIVED_REACH_m = 60;
/** Stands in for the height of an above or below mando that has none on the map. */
const ASSUMED_HEIGHT_m = 3;

/**
 * The plane a throw must not enter. A mapped line is the plane. From a single object it is derived: through the object, at right
 * angles to the line of play there, out to the wrong side (pass it on the left: the plane runs to the right); for above and
 * below, to both sides. The rules want the plane given by the course, so a derived one says it must be confirmed.
 * @param points - the mapped object in the local frame: one point, or a line
 */
export function mandoPlane(mando: Mando, points: readonly LocalPoint[], play: readonly LocalPoint[]): LocalMando {
  const at = middle(points);
  const assumed = [...mando.assumed];
  const isVertical = mando.side === 'above' || mando.side === 'below';
  if (isVertical && mando.height_m === undefined && !assumed.includes('height'))
    assumed.push(`height taken as ${ASSUMED_HEIGHT_m} m`);
  const height_m = mando.height_m ?? ASSUMED_HEIGHT_m;
  let line = points;
  if (points.length < 2 || lineLength_m(points) === 0) {
    const { along } = nearestStation(play, at);
    const right = (reach_m: number): LocalPoint => [at[0] + along[1] * reach_m, at[1] - along[0] * reach_m];
    line = [mando.side === 'left' ? at : right(-DERIVED_REACH_m), mando.side === 'right' ? at : right(DERIVED_REACH_m)];
    assumed.push('plane derived, confirm with the course');
  }
  return {
    source: mando.path,
    assumed,
    side: mando.side,
    at,
    line,
    low_m: mando.side === 'below' ? height_m : 0,
    high_m: mando.side === 'above' ? height_m : Number.POSITIVE_INFINITY,
  };
}

function middle(points: readonly LocalPoint[]): LocalPoint {
  const [a, b] = [points[Math.floor((points.length - 1) / 2)]!, points[Math.floor(points.length / 2)]!];
  return [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
}
