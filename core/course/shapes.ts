import type { LineString, MultiPolygon, Point, Polygon, Position } from 'geojson';
import type { LonLat } from './course.ts';
import { groundOffset_m } from './ground-distance.ts';
import type { TaggedFeature } from './tags.ts';

/** A checked position as longitude, latitude and, when it is there, height; anything after that is dropped. */
export function lonLat(position: Position): LonLat {
  const [lon, lat, height] = position as [number, number, number?];
  return height === undefined ? [lon, lat] : [lon, lat, height];
}

/** The feature's points, one for each part of a MultiPoint; empty for other geometry. */
export function pointsOf({ geometry }: TaggedFeature): Point[] {
  if (geometry?.type === 'Point') return [geometry];
  return geometry?.type === 'MultiPoint'
    ? geometry.coordinates.map(coordinates => ({ type: 'Point', coordinates }))
    : [];
}

/** The feature's lines, one for each part of a MultiLineString; empty for other geometry. */
export function linesOf({ geometry }: TaggedFeature): LineString[] {
  if (geometry?.type === 'LineString') return [geometry];
  if (geometry?.type !== 'MultiLineString') return [];
  return geometry.coordinates.map(coordinates => ({ type: 'LineString', coordinates }));
}

/**
 * The feature's area. A closed line counts: converters leave closed ways as lines when they do not know the tag.
 * @returns undefined when it has none
 */
export function areaOf({ geometry }: TaggedFeature): Polygon | MultiPolygon | undefined {
  if (geometry?.type === 'Polygon' || geometry?.type === 'MultiPolygon') return geometry;
  return geometry?.type === 'LineString' && isClosed(geometry)
    ? { type: 'Polygon', coordinates: [geometry.coordinates] }
    : undefined;
}

/** The polygons an area is made of. */
export function polygonsOf(area: Polygon | MultiPolygon): Polygon[] {
  if (area.type === 'Polygon') return [area];
  return area.coordinates.map(coordinates => ({ type: 'Polygon', coordinates }));
}

export function isClosed({ coordinates }: LineString): boolean {
  const [first, last] = [coordinates[0]!, coordinates.at(-1)!];
  return coordinates.length >= 4 && first[0] === last[0] && first[1] === last[1];
}

/**
 * Centre of gravity of the polygon's outer ring on the ground, with the mean height of its corners when all have one.
 * @source own derivation: shoelace formula in metres about the first corner
 */
export function centreOf({ coordinates }: Polygon): LonLat {
  const corners = coordinates[0]!.slice(1).map(lonLat);
  const first = corners[0]!;
  const flat = corners.map(corner => groundOffset_m(first, corner));
  let [twiceArea, east, north] = [0, 0, 0];
  for (const [i, [x, y]] of flat.entries()) {
    const [nextX, nextY] = flat[(i + 1) % flat.length]!;
    const cross = x * nextY - nextX * y;
    twiceArea += cross;
    east += (x + nextX) * cross;
    north += (y + nextY) * cross;
  }
  const shift = twiceArea === 0 ? [0, 0] : [east / (3 * twiceArea), north / (3 * twiceArea)];
  const oneDegree = groundOffset_m([first[0] - 0.0005, first[1] - 0.0005], [first[0] + 0.0005, first[1] + 0.0005]);
  const lon = first[0] + (shift[0]! * 0.001) / oneDegree[0];
  const lat = first[1] + (shift[1]! * 0.001) / oneDegree[1];
  const inside = lon > 180 ? lon - 360 : lon < -180 ? lon + 360 : lon;
  const heights = corners.flatMap(corner => (corner[2] === undefined ? [] : [corner[2]]));
  if (heights.length < corners.length) return [inside, lat];
  return [inside, lat, heights.reduce((sum, height) => sum + height, 0) / heights.length];
}
