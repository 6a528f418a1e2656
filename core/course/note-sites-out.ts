import type { Polygon } from 'geojson';
import type { CourseHole, CourseObject, LonLat } from './course.ts';
import { wrapLongitude_deg } from './ground-distance.ts';
import type { Notes } from './notes.ts';
import { polygonsOf } from './shapes.ts';

/** Nobody tees off out-of-bounds: a tee or basket inside such an area is more likely an area drawn the wrong way round. */
export function noteSitesOut(holes: readonly CourseHole[], objects: readonly CourseObject[], notes: Notes): void {
  const areas = objects.flatMap(object =>
    object.kind === 'outOfBounds' && object.geometry.type !== 'LineString'
      ? [{ path: object.path, polygons: polygonsOf(object.geometry) }]
      : [],
  );
  for (const hole of holes) {
    for (const [what, { position }] of [['tee', hole.tee] as const, ['basket', hole.basket] as const]) {
      const area = areas.find(({ polygons }) => polygons.some(polygon => holds(polygon, position)));
      if (area === undefined) continue;
      notes.assumptions.push({
        path: area.path,
        message: `the ${what} of hole ${hole.ref} lies in this out-of-bounds: check the area, or tag it out_of_bounds=no`,
      });
    }
  }
}

/** Even–odd rule over all rings, so that an inner ring is out of the area; longitudes are taken from the position. */
function holds({ coordinates }: Polygon, [lon, lat]: LonLat): boolean {
  let inside = false;
  for (const ring of coordinates) {
    for (const [i, to] of ring.slice(1).entries()) {
      const from = ring[i]!;
      const [ax, ay] = [wrapLongitude_deg(from[0]! - lon), from[1]! - lat];
      const [bx, by] = [wrapLongitude_deg(to[0]! - lon), to[1]! - lat];
      if (ay > 0 !== by > 0 && ax - (ay * (bx - ax)) / (by - ay) > 0) inside = !inside;
    }
  }
  return inside;
}
