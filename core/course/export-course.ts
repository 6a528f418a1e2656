import type { FeatureCollection } from 'geojson';
import type { Course } from './course.ts';

/**
 * The course as a GeoJSON file: the one it was read from, with all features, properties and members that mean nothing
 * here. A copy: changing it does not change the course.
 */
export function exportCourse(course: Course): FeatureCollection {
  return copy(course.source) as FeatureCollection;
}

function copy(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(copy);
  if (typeof value !== 'object' || value === null) return value;
  // fromEntries defines its keys, so that a key named __proto__ stays a plain key.
  return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, copy(inner)]));
}
