import type { Course } from '../../core/course/course.ts';
import { besideLongitude } from '../../core/geometry/beside-longitude.ts';
import { radiiOfCurvature } from '../../core/geometry/local-frame.ts';
import type { DegreeBox } from './cut-window.ts';

/** A hole's ground reaches 80 m round its line of play; the rest lets a tee be moved without the file. */
const MARGIN_m = 200;
const RADIANS_PER_DEGREE = Math.PI / 180;

/** The box round all tees, baskets and lines of play, with room for the ground beside them. */
export function courseBox(course: Course): DegreeBox {
  const positions = course.holes.flatMap(({ line, tees, baskets }) => [
    ...line,
    ...tees.map(({ position }) => position),
    ...baskets.map(({ position }) => position),
  ]);
  const reference_deg = positions[0]![0];
  // The short way round from the first tee: a course across the antimeridian stays one piece.
  const lon = positions.map(([lon_deg]) => besideLongitude(lon_deg, reference_deg));
  const lat = positions.map(([, lat_deg]) => lat_deg);
  const [west_deg, east_deg] = [Math.min(...lon), Math.max(...lon)];
  const [south_deg, north_deg] = [Math.min(...lat), Math.max(...lat)];
  const middle = ((south_deg + north_deg) / 2) * RADIANS_PER_DEGREE;
  const { meridian_m, primeVertical_m } = radiiOfCurvature(middle);
  const dLat = MARGIN_m / (meridian_m * RADIANS_PER_DEGREE);
  const dLon = MARGIN_m / (primeVertical_m * Math.cos(middle) * RADIANS_PER_DEGREE);
  return {
    west_deg: west_deg - dLon,
    south_deg: south_deg - dLat,
    east_deg: east_deg + dLon,
    north_deg: north_deg + dLat,
  };
}
