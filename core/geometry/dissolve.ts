import { featureCollection, polygon, union } from '@turf/turf';
import type { LocalPoint, LocalPolygon } from './hole-map.ts';

/**
 * The pieces merged into polygons without inner seams. Works in the plane, so local metres go in and come out.
 * Should the merging library give up on a degenerate piece, the pieces come back as they are: the same ground, with seams.
 */
export function dissolve(pieces: readonly LocalPolygon[]): LocalPolygon[] {
  if (pieces.length < 2) return [...pieces];
  const features = pieces.map(piece => polygon(piece.map(ring => ring.map(([x, y]) => [x, y]))));
  try {
    const merged = union(featureCollection(features))?.geometry;
    if (merged === undefined) return [...pieces];
    const polygons = merged.type === 'Polygon' ? [merged.coordinates] : merged.coordinates;
    return polygons.map(rings => rings.map(ring => ring.map(([x, y]): LocalPoint => [x!, y!])));
  } catch {
    return [...pieces];
  }
}
