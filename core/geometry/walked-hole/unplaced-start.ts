import type { FeatureCollection, Position } from 'geojson';
import { positionsOf } from '../../course/positions.ts';
import { localFrame, toLonLat } from '../local-frame.ts';

/** Nowhere in particular, in the sea where no course is: off the coast where the equator meets longitude 0. */
const MADE_UP: readonly [lon_deg: number, lat_deg: number] = [0, 0];
/** Far enough that nothing on one hole counts for another, near enough to be one course. */
const APART_m = 800;

/** Where a hole without a place is drawn: north of everything the map has, so that it meets nothing. */
export function unplacedStart(file: FeatureCollection): readonly [lon_deg: number, lat_deg: number] {
  const positions = file.features.flatMap(feature => positionsOf(feature.geometry));
  const first = positions.reduce<Position | undefined>(
    (north, position) => (north === undefined || position[1]! > north[1]! ? position : north),
    undefined,
  );
  if (first === undefined || !(Math.abs(first[1]!) <= 84)) return MADE_UP;
  return toLonLat(localFrame(first[0]!, first[1]!), [0, APART_m]);
}
