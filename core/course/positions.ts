import type { Geometry, Position } from 'geojson';

/** Every position of a geometry in file order, a ring's closing one left out; of a collection, none. */
export function positionsOf(geometry: Geometry | null): Position[] {
  switch (geometry?.type) {
    case undefined:
    case 'GeometryCollection':
      return [];
    case 'Point':
      return [geometry.coordinates];
    case 'MultiPoint':
    case 'LineString':
      return geometry.coordinates;
    case 'MultiLineString':
      return geometry.coordinates.flat();
    case 'Polygon':
      return geometry.coordinates.flatMap(ring => ring.slice(1));
    case 'MultiPolygon':
      return geometry.coordinates.flatMap(polygon => polygon.flatMap(ring => ring.slice(1)));
    default:
      return geometry satisfies never;
  }
}
