import { expect } from 'vitest';
import type { Course } from '../../../core/course/course.ts';
import { parseCourse } from '../../../core/course/parse-course.ts';
import type { Problem } from '../../../core/units/result.ts';

/** Hand-made course files for the tests, laid out in metres about 60° north, 25° east. */

type Xy = readonly [east_m: number, north_m: number];
type Json = Record<string, unknown>;

/** Metres per degree at 60° on WGS 84: [C] computed from M = 6383453.857 m and N = 6394209.174 m at that latitude. */
const [perDegreeEast_m, perDegreeNorth_m] = [55800.002, 111412.287];

export const at = ([x, y]: Xy): [number, number] => [25 + x / perDegreeEast_m, 60 + y / perDegreeNorth_m];

export const feature = (geometry: Json | null, properties: Json | null): Json => ({
  type: 'Feature',
  geometry,
  properties,
});
export const point = (xy: Xy, properties: Json) => feature({ type: 'Point', coordinates: at(xy) }, properties);
export const line = (xys: readonly Xy[], properties: Json) =>
  feature({ type: 'LineString', coordinates: xys.map(at) }, properties);
export const area = (xys: readonly Xy[], properties: Json) =>
  feature({ type: 'Polygon', coordinates: [[...xys, xys[0]!].map(at)] }, properties);
export const square = (x: number, y: number, side: number): Xy[] => [
  [x, y],
  [x + side, y],
  [x + side, y + side],
  [x, y + side],
];

export const collection = (...features: unknown[]): Json => ({ type: 'FeatureCollection', features });

/** Tee, basket and line of one plain hole, 80 m long, `y` metres north. */
export const hole = (ref: string, y = 0): Json[] => [
  point([0, y], { disc_golf: 'tee', ref }),
  point([80, y], { disc_golf: 'basket', ref }),
  line(
    [
      [0, y],
      [80, y],
    ],
    { disc_golf: 'hole', ref, par: '3' },
  ),
];

export function good(...features: unknown[]): Course {
  const result = parseCourse(collection(...features), 'test.geojson');
  expect(result.ok ? [] : result.problems).toEqual([]);
  if (!result.ok) throw new Error('unreachable');
  return result.value;
}

export function bad(...features: unknown[]): readonly Problem[] {
  const result = parseCourse(collection(...features), 'test.geojson');
  if (result.ok) throw new Error('the file was taken, but it should not have been');
  return result.problems;
}

/** The one problem, as `path: message`. */
export function theProblem(...features: unknown[]): string {
  const problems = bad(...features);
  expect(problems).toHaveLength(1);
  return `${problems[0]!.path}: ${problems[0]!.message}`;
}

export const assumed = (course: Course): string[] =>
  course.assumptions.map(({ path, message }) => `${path}: ${message}`);
