import type { LocalPoint, LocalPolygon } from '../../core/geometry/hole-map.ts';

/** Whether a point lies in one of the polygons (even-odd over all rings, so holes count). */
export function isInside(point: LocalPoint, polygons: readonly LocalPolygon[]): boolean {
  return polygons.some(rings => {
    let inside = false;
    for (const ring of rings)
      for (let i = 0, j = ring.length - 1; i < ring.length; j = i++) {
        const [ax, ay] = ring[i]!;
        const [bx, by] = ring[j]!;
        if (ay > point[1] !== by > point[1] && point[0] < ((bx - ax) * (point[1] - ay)) / (by - ay) + ax)
          inside = !inside;
      }
    return inside;
  });
}
