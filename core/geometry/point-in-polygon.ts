import type { LocalPoint, LocalPolygon } from './hole-map.ts';

/**
 * Whether a point lies in a polygon (even–odd over all rings, so holes are outside; a point on the edge may count either way).
 * @source Franklin's pnpoly: W. R. Franklin, "PNPOLY – point inclusion in polygon test" (1970–2003)
 */
export function isInPolygon(p: LocalPoint, polygon: LocalPolygon): boolean {
  let inside = false;
  for (const ring of polygon)
    for (let i = 1; i < ring.length; i++) {
      const [a, b] = [ring[i - 1]!, ring[i]!];
      if (a[1] > p[1] !== b[1] > p[1] && p[0] < a[0] + ((p[1] - a[1]) / (b[1] - a[1])) * (b[0] - a[0]))
        inside = !inside;
    }
  return inside;
}

/** Whether a point lies in any of the polygons. */
export function isInAny(p: LocalPoint, polygons: readonly LocalPolygon[]): boolean {
  return polygons.some(polygon => isInPolygon(p, polygon));
}
