import type { Feature, Position } from 'geojson';
import { groundOffset_m, wrapLongitude_deg } from '../ground-distance.ts';
import { positionsOf } from '../positions.ts';

/** A throw, a roll and a walk farther than this from every tee, basket and hole nothing matters to the course. */
export const surroundings_m = 500;

/**
 * Which features lie, or reach, within 500 m of the box round the course's own.
 * @param own - indices of the course's features, at least one with a position
 * @returns for each feature, whether it is near
 */
export function nearCourse(features: readonly Feature[], own: readonly number[]): boolean[] {
  const places = own.flatMap(index => positionsOf(features[index]!.geometry));
  const [first] = places;
  if (first === undefined) throw new RangeError('a course needs a place: none of its features has one');
  // Longitudes beside the first, so that the antimeridian is no edge.
  const lonOf = (position: Position) => first[0]! + wrapLongitude_deg(position[0]! - first[0]!);
  const box = boxOf(places, lonOf);
  const middle = (box.south + box.north) / 2;
  const oneDegree_m = groundOffset_m([first[0]! - 0.0005, middle], [first[0]! + 0.0005, middle])[0] * 1000;
  const wide = surroundings_m / Math.max(oneDegree_m, 1);
  const high = surroundings_m / 110_574; // metres in a degree of latitude at the equator, the least: Snyder (1987), eq. 4-19
  return features.map(({ geometry }) => {
    const positions = positionsOf(geometry);
    if (positions.length === 0) return false;
    const its = boxOf(positions, lonOf);
    return (
      its.west <= box.east + wide &&
      its.east >= box.west - wide &&
      its.south <= box.north + high &&
      its.north >= box.south - high
    );
  });
}

function boxOf(positions: readonly Position[], lonOf: (position: Position) => number) {
  let [west, east, south, north] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const position of positions) {
    const [lon, lat] = [lonOf(position), position[1]!];
    [west, east] = [Math.min(west, lon), Math.max(east, lon)];
    [south, north] = [Math.min(south, lat), Math.max(north, lat)];
  }
  return { west, east, south, north };
}
