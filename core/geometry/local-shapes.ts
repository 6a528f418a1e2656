import type { LineString, MultiPolygon, Point, Polygon } from 'geojson';
import type { LonLat } from '../course/course.ts';
import { type Box, boundingBox, boxesMeet } from './bounding-box.ts';
import type { LocalPoint, LocalPolygon } from './hole-map.ts';
import { type LocalFrame, toLocal } from './local-frame.ts';
import { strip } from './strip.ts';

/** A GeoJSON line in the local frame. */
export function localLine(frame: LocalFrame, geometry: LineString): LocalPoint[] {
  return geometry.coordinates.map(position => toLocal(frame, asLonLat(position)));
}

/** GeoJSON areas in the local frame, rings closed. */
export function localPolygons(frame: LocalFrame, geometry: Polygon | MultiPolygon): LocalPolygon[] {
  const areas = geometry.type === 'Polygon' ? [geometry.coordinates] : geometry.coordinates;
  return areas.map(rings => rings.map(ring => closed(ring.map(position => toLocal(frame, asLonLat(position))))));
}

/**
 * An area or strip as polygons, empty when nothing of it comes into the box. Of a long strip only the legs near the box are made.
 */
export function localGround(
  frame: LocalFrame,
  geometry: Polygon | MultiPolygon | LineString,
  width_m: number,
  box: Box,
): LocalPolygon[] {
  if (geometry.type !== 'LineString') return localPolygons(frame, geometry).filter(polygon => meets(polygon, box));
  return runsNear(localLine(frame, geometry), width_m, box).flatMap(run => strip(run, width_m));
}

/** Positions of any geometry we map, in file order. */
export function positionsOf(geometry: Point | LineString | Polygon | MultiPolygon): LonLat[] {
  if (geometry.type === 'Point') return [asLonLat(geometry.coordinates)];
  if (geometry.type === 'LineString') return geometry.coordinates.map(asLonLat);
  const rings = geometry.type === 'Polygon' ? geometry.coordinates : geometry.coordinates.flat();
  return rings.flat().map(asLonLat);
}

/** Whether any ground of the polygon may lie in the box. */
export function meets(polygon: LocalPolygon, box: Box): boolean {
  return boxesMeet(boundingBox(polygon[0] ?? []), box);
}

/** Maximal runs of the line whose legs, half a width fatter, meet the box. */
function runsNear(line: readonly LocalPoint[], width_m: number, box: Box): LocalPoint[][] {
  const runs: LocalPoint[][] = [];
  let isOpen = false;
  for (let i = 1; i < line.length; i++) {
    const near = boxesMeet(boundingBox([line[i - 1]!, line[i]!], width_m / 2), box);
    if (near && isOpen) runs.at(-1)!.push(line[i]!);
    else if (near) runs.push([line[i - 1]!, line[i]!]);
    isOpen = near;
  }
  return runs;
}

/** A position of the file; its height, when there, stays behind: the terrain has it. */
function asLonLat(position: readonly number[]): LonLat {
  const [lon_deg, lat_deg] = position;
  if (lon_deg === undefined || lat_deg === undefined)
    throw new RangeError(`position must have a longitude and a latitude, got [${position}]`);
  return [lon_deg, lat_deg];
}

function closed(ring: LocalPoint[]): LocalPoint[] {
  const [first, last] = [ring[0], ring.at(-1)];
  if (first === undefined || last === undefined) return ring;
  return first[0] === last[0] && first[1] === last[1] ? ring : [...ring, first];
}
