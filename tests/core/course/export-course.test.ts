import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { exportCourse } from '../../../core/course/export-course.ts';
import { parseCourse } from '../../../core/course/parse-course.ts';
import { parseCourseText } from '../../../core/course/parse-course-text.ts';
import { at, collection, hole } from './course-file.ts';

/** What JSON can hold: −0 is written as 0. */
const json = fc.jsonValue({ maxDepth: 3 }).map(value => JSON.parse(JSON.stringify(value)) as unknown);
const xy = fc.tuple(fc.integer({ min: -300, max: 300 }), fc.integer({ min: -300, max: 300 })).map(at);
const position = fc.oneof(
  xy,
  fc.tuple(xy, fc.integer({ min: -50, max: 900 })).map(([p, z]) => [...p, z]),
);
const line = fc.array(position, { minLength: 2, maxLength: 5 });
const ring = fc
  .uniqueArray(xy, { minLength: 3, maxLength: 5, selector: String })
  .map(corners => [...corners, corners[0]!]);
const geometry = fc.oneof(
  fc.constant(null),
  position.map(coordinates => ({ type: 'Point', coordinates })),
  fc.array(position, { maxLength: 3 }).map(coordinates => ({ type: 'MultiPoint', coordinates })),
  line.map(coordinates => ({ type: 'LineString', coordinates })),
  fc.array(line, { maxLength: 3 }).map(coordinates => ({ type: 'MultiLineString', coordinates })),
  fc.array(ring, { minLength: 1, maxLength: 2 }).map(coordinates => ({ type: 'Polygon', coordinates })),
  fc
    .array(fc.array(ring, { minLength: 1, maxLength: 1 }), { maxLength: 2 })
    .map(coordinates => ({ type: 'MultiPolygon', coordinates })),
  fc
    .array(
      position.map(coordinates => ({ type: 'Point', coordinates })),
      { maxLength: 2 },
    )
    .map(geometries => ({ type: 'GeometryCollection', geometries })),
);
const length = fc.oneof(fc.integer({ min: 1, max: 20 }), fc.constantFrom('3.5', '12 ft', '9\' 6"'));
const tags = fc.oneof(
  fc.record(
    { natural: fc.constantFrom('tree', 'wood', 'scrub', 'water', 'tree_row', 'rock'), height: length },
    { requiredKeys: ['natural'] },
  ),
  fc.record(
    {
      disc_golf: fc.constantFrom('tee', 'basket', 'hazard', 'island', 'fairway', 'out_of_bounds', 'drop_zone', 'bench'),
      ref: fc.constantFrom('1', '2', 3),
    },
    { requiredKeys: ['disc_golf'] },
  ),
  fc.record({ barrier: fc.constantFrom('hedge', 'wall', 'fence'), width: length }, { requiredKeys: ['barrier'] }),
  fc.record(
    { highway: fc.constantFrom('path', 'service'), out_of_bounds: fc.constantFrom('yes', 'no') },
    { requiredKeys: ['highway'] },
  ),
  fc.dictionary(fc.constantFrom('colour', 'note', '__proto__', 'constructor', 'toString', '@id', 'meta'), json, {
    noNullPrototype: true,
  }),
);
const properties = fc.oneof(
  tags,
  tags.map(nested => ({ type: 'way', id: 7, tags: nested, relations: [], meta: {} })),
  fc.constant(null),
);
const feature = fc
  .record(
    { geometry, properties, id: fc.oneof(fc.integer(), fc.string()), bbox: fc.constant([24, 59, 26, 61]), extra: json },
    { requiredKeys: ['geometry', 'properties'] },
  )
  .map(members => ({ type: 'Feature', ...members }));
const file = fc.record({
  features: fc.array(feature, { maxLength: 4 }),
  members: fc.dictionary(fc.constantFrom('name', 'generator', 'timestamp', '__proto__'), json, {
    noNullPrototype: true,
  }),
});

describe('import, export, import', () => {
  it('is the identity, whatever else the file holds', () => {
    let taken = 0;
    fc.assert(
      fc.property(file, ({ features, members }) => {
        const text = JSON.stringify({ ...members, ...collection(...hole('1'), ...hole('2', 50), ...features) });
        const first = parseCourseText(text, 'a.geojson');
        // Random shapes are often not a course; then there must be problems with places, and no more.
        if (!first.ok) {
          expect(first.problems.length).toBeGreaterThan(0);
          for (const { path, message } of first.problems)
            expect([path, message.length > 10]).toEqual([expect.stringMatching(/^features(\[\d+\]|$)/), true]);
          return;
        }
        taken += 1;
        const exported = exportCourse(first.value);
        expect(JSON.stringify(exported)).toBe(JSON.stringify(JSON.parse(text)));
        expect(parseCourse(exported, 'a.geojson')).toEqual(first);
      }),
      { seed: 5, numRuns: 1500 },
    );
    expect(taken).toBeGreaterThan(300);
  });

  it('leaves its input as it was', () => {
    const freeze = (value: unknown): unknown => {
      if (typeof value === 'object' && value !== null)
        for (const inner of Object.values(Object.freeze(value))) freeze(inner);
      return value;
    };
    const input = freeze(collection(...hole('1'), ...hole('2', 50)));
    const result = parseCourse(input, 'a.geojson');
    expect(result.ok && result.value.source).toBe(input);
  });

  it('gives a copy that can be changed without changing the course', () => {
    const result = parseCourse(collection(...hole('1')), 'a.geojson');
    if (!result.ok) throw new Error('unreachable');
    exportCourse(result.value).features[0]!.properties!.ref = '99';
    expect(result.value.source.features[0]!.properties!.ref).toBe('1');
  });
});

it('takes anything at all without throwing', () => {
  fc.assert(
    fc.property(
      fc.anything({ maxDepth: 4, withNullPrototype: true }),
      fc.array(fc.anything({ maxDepth: 4 })),
      (anything, features) => {
        expect(parseCourse(anything, 'a').ok).toBe(false);
        parseCourse({ type: 'FeatureCollection', features }, 'a');
        parseCourse(
          { type: 'FeatureCollection', features: [{ type: 'Feature', geometry: anything, properties: anything }] },
          'a',
        );
        parseCourseText(String(features), 'a');
      },
    ),
    { seed: 6, numRuns: 500 },
  );
});
