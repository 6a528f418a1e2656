import type { Feature } from 'geojson';
import { describe, expect, it } from 'vitest';
import { coursesInFile } from '../../../../core/course/import/courses-in-file.ts';
import { nearCourse } from '../../../../core/course/import/near-course.ts';
import { at as lonLat } from '../course-file.ts';

const point = (metres: readonly [number, number], properties: object, id?: string): Feature => ({
  type: 'Feature',
  ...(id === undefined ? {} : { id }),
  properties: { ...properties },
  geometry: { type: 'Point', coordinates: lonLat(metres) },
});
const square = (x: number, size: number, properties: object): Feature => ({
  type: 'Feature',
  properties: { ...properties },
  geometry: {
    type: 'Polygon',
    coordinates: [
      [
        [x, 0],
        [x + size, 0],
        [x + size, size],
        [x, size],
        [x, 0],
      ].map(metres => lonLat(metres as [number, number])),
    ],
  },
});

describe('coursesInFile', () => {
  it('gives each thing to the course it lies in, else to the nearest', () => {
    const features = [
      square(0, 200, { leisure: 'disc_golf_course', name: 'West' }),
      square(1000, 200, { leisure: 'disc_golf_course', name: 'East' }),
      point([50, 50], { disc_golf: 'tee', ref: '1' }),
      point([1050, 50], { disc_golf: 'tee', ref: '1' }),
      point([900, 50], { disc_golf: 'basket', ref: '1' }),
    ];
    const courses = coursesInFile(features, []);
    expect(courses.map(({ name, features: own }) => [name, own])).toEqual([
      ['West', [2]],
      ['East', [3, 4]],
    ]);
  });

  it('believes a relation more than a place', () => {
    const features = [
      square(0, 200, { leisure: 'disc_golf_course', name: 'West' }),
      point([50, 50], { disc_golf: 'tee', ref: '1' }, 'node/7'),
      point([60, 50], { disc_golf: 'tee', ref: '2' }, 'node/8'),
    ];
    const courses = coursesInFile(features, [{ id: 'relation/1', name: 'Guest', members: new Set(['node/7']) }]);
    expect(courses.map(({ name, features: own }) => [name, own])).toEqual([
      ['Guest', [1]],
      ['West', [2]],
    ]);
  });

  it('needs no course to be marked', () => {
    expect(coursesInFile([point([0, 0], { disc_golf: 'tee' })], [])).toMatchObject([{ name: '', features: [0] }]);
    expect(coursesInFile([point([0, 0], { natural: 'tree' })], [])).toEqual([]);
  });
});

describe('nearCourse', () => {
  const golf = [point([0, 0], { disc_golf: 'tee' }), point([300, 0], { disc_golf: 'basket' })];
  it('takes 500 m round the box of the course', () => {
    const others = [490, 510].map(north => point([150, north], { natural: 'tree' }));
    const beside = [-495, -505, 795, 805].map(east => point([east, 0], { natural: 'tree' }));
    expect(nearCourse([...golf, ...others, ...beside], [0, 1])).toEqual([
      true,
      true,
      true,
      false,
      true,
      false,
      true,
      false,
    ]);
  });
  it('takes what reaches in from outside', () => {
    const path: Feature = {
      type: 'Feature',
      properties: { highway: 'path' },
      geometry: { type: 'LineString', coordinates: [lonLat([-5000, 10]), lonLat([5000, 10])] },
    };
    expect(nearCourse([...golf, path], [0, 1])).toEqual([true, true, true]);
  });
  it('has no edge at the antimeridian', () => {
    const place = (lon: number): Feature => ({
      type: 'Feature',
      properties: {},
      geometry: { type: 'Point', coordinates: [lon, -17] },
    });
    expect(nearCourse([place(179.9995), place(-179.9995), place(179.9)], [0])).toEqual([true, true, false]);
  });
});
