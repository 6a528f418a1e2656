import fc from 'fast-check';
import type { Feature, FeatureCollection, Polygon, Position } from 'geojson';
import { describe, expect, it } from 'vitest';
import {
  addFeatures,
  copyFeature,
  moveFeature,
  removeFeature,
  reshapeFeature,
} from '../../../../core/course/edit/edit-features.ts';
import { addLayout, layoutHolesOf, setLayoutHoles } from '../../../../core/course/edit/edit-layouts.ts';
import { changeTags, tagOf } from '../../../../core/course/edit/edit-tags.ts';
import { canRemoveVertex, insertVertex, moveVertex, removeVertex } from '../../../../core/course/edit/edit-vertices.ts';
import { kindOf } from '../../../../core/course/edit/kinds.ts';
import { placeHole, unplacedLine } from '../../../../core/course/edit/place-hole.ts';
import { attachSite, renumberHole, renumberHoles } from '../../../../core/course/edit/renumber-holes.ts';
import {
  bearingAndDistance,
  offset_m,
  positionAt,
  shiftPosition,
} from '../../../../core/course/edit/shift-position.ts';
import { snap } from '../../../../core/course/edit/snap.ts';
import { verticesOf } from '../../../../core/course/edit/vertices.ts';
import { exportCourse } from '../../../../core/course/export-course.ts';
import { parseCourse } from '../../../../core/course/parse-course.ts';
import { area, at, collection, feature, hole, line, point, square } from '../course-file.ts';

const drawn = (): FeatureCollection =>
  ({
    ...collection(
      ...hole('1'),
      ...hole('2', 200),
      area(square(30, 20, 20), { natural: 'wood', height: '9', colour: 'green', '@id': 'way/7' }),
      point([40, 300], { kiosk: 'yes', nested: { a: [1, null] } }),
      feature(
        { type: 'Point', coordinates: [...at([10, 9]), 12.5] },
        { type: 'node', tags: { natural: 'tree' }, meta: 1 },
      ),
      feature(null, { disc_golf: 'layout', name: 'All', holes: [{ ref: '1', note: 'kept' }, { ref: '2' }] }),
    ),
    generator: 'a test',
    bbox: [24, 59, 26, 61],
  }) as unknown as FeatureCollection;

const frozen = <T>(value: T): T => {
  if (typeof value === 'object' && value !== null)
    for (const inner of Object.values(Object.freeze(value))) frozen(inner);
  return value;
};
const near = (a: Position, b: readonly number[], m = 0.01) =>
  expect(Math.hypot(...offset_m(a, [b[0]!, b[1]!]))).toBeLessThanOrEqual(m);

describe('a shift', () => {
  it('is undone by its opposite, also over the antimeridian and at 70° north', () => {
    const place = fc.tuple(
      fc.double({ min: -180, max: 180, noNaN: true }),
      fc.double({ min: -75, max: 75, noNaN: true }),
    );
    const metres = fc.double({ min: -400, max: 400, noNaN: true });
    fc.assert(
      fc.property(place, metres, metres, (from, east_m, north_m) => {
        const to = shiftPosition([...from, 7], east_m, north_m);
        const [gotEast_m, gotNorth_m] = offset_m(from, to);
        // Two positions are kept to 1e-8°, about a millimetre.
        return Math.hypot(gotEast_m - east_m, gotNorth_m - north_m) < 0.002 && to[2] === 7;
      }),
      { seed: 41 },
    );
  });

  it('by bearing and distance reads back', () => {
    const { bearing_deg, distance_m } = bearingAndDistance(at([0, 0]), positionAt(at([0, 0]), 237, 61.5));
    expect(Math.abs(bearing_deg - 237)).toBeLessThan(0.01);
    expect(Math.abs(distance_m - 61.5)).toBeLessThan(0.005);
    expect(() => shiftPosition([0, 89.5], 1, 1)).toThrow('latitude must lie within ±89°, got 89.5');
  });
});

describe('vertices', () => {
  const [wood] = [drawn().features[6]!.geometry as Polygon];

  it('of a ring move with its closing position', () => {
    const moved = moveVertex(wood, [0, 0], at([25, 15])) as Polygon;
    expect(moved.coordinates[0]![0]).toEqual(at([25, 15]));
    expect(moved.coordinates[0]!.at(-1)).toEqual(at([25, 15]));
    expect(verticesOf(moved)).toHaveLength(4);
  });

  it('go in and out of lines and rings, and the last ones stay', () => {
    const five = insertVertex(wood, [0, 3], at([29, 30]));
    expect(verticesOf(five)).toHaveLength(5);
    const three = removeVertex(removeVertex(five, [0, 0]), [0, 0]) as Polygon;
    expect(three.coordinates[0]![0]).toEqual(three.coordinates[0]!.at(-1));
    expect(canRemoveVertex(three, [0, 1])).toBe(false);
    expect(() => removeVertex(three, [0, 1])).toThrow('one of the last');
    expect(() => moveVertex(three, [0, 9], [0, 0])).toThrow('has no vertex 0.9');
  });
});

describe('tags', () => {
  it('are written where the file keeps them', () => {
    const file = changeTags(frozen(drawn()), 8, { height: '12', natural: 'tree' });
    expect(file.features[8]!.properties).toEqual({ type: 'node', tags: { natural: 'tree', height: '12' }, meta: 1 });
    expect(changeTags(file, 8, { height: null }).features[8]).toEqual(drawn().features[8]);
    expect(tagOf(file.features[8]!, 'height')).toBe('12');
    expect(changeTags(frozen(drawn()), 6, { height: 14 }).features[6]!.properties).toEqual({
      natural: 'wood',
      height: 14,
      colour: 'green',
      '@id': 'way/7',
    });
  });

  it('tell the kind', () => {
    expect(drawn().features.map(kindOf)).toEqual([
      ...['tee', 'basket', 'line', 'tee', 'basket', 'line'],
      ...['wood', undefined, 'tree', undefined],
    ]);
  });
});

describe('snapping', () => {
  it.each([
    { name: 'a basket before a nearer vertex', from: [79, 1.5], reach_m: 3, to: 'site', is: [80, 0] },
    { name: 'a corner of a wood', from: [29, 19.5], reach_m: 3, to: 'vertex', is: [30, 20] },
    { name: 'an edge', from: [40, 19], reach_m: 3, to: 'edge', is: [40, 20] },
    { name: 'the closing edge of a ring', from: [29, 30], reach_m: 3, to: 'edge', is: [30, 30] },
    { name: 'the line of play', from: [40, -2], reach_m: 3, to: 'edge', is: [40, 0] },
  ] as const)('finds $name', ({ from, reach_m, to, is }) => {
    const found = snap(drawn(), at(from), reach_m);
    expect(found?.to).toBe(to);
    near(found!.position, at(is));
  });

  it('takes a basket before a plain corner that is nearer', () => {
    const file = addFeatures(drawn(), area(square(78, 1, 5), { natural: 'scrub' }) as unknown as Feature);
    const found = snap(file, at([78.4, 0.8]), 3);
    expect([found?.to, found?.featureIndex]).toEqual(['site', 1]);
  });

  it('holds on to nothing out of reach, nor to itself', () => {
    expect(snap(drawn(), at([40, 15]), 3)).toBeUndefined();
    expect(snap(drawn(), at([29, 19.5]), 3, 6)).toBeUndefined();
  });
});

describe('holes', () => {
  it('change places everywhere they are named', () => {
    const file = renumberHole(frozen(drawn()), '1', '2');
    const refs = file.features.slice(0, 6).map(f => tagOf(f, 'ref'));
    expect(refs).toEqual(['2', '2', '2', '1', '1', '1']);
    expect(layoutHolesOf(file.features[9]!)).toEqual([{ ref: '2', note: 'kept' }, { ref: '1' }]);
  });

  it('that share a basket keep sharing it, and roads keep their numbers', () => {
    const road = feature(
      { type: 'LineString', coordinates: [at([0, 9]), at([9, 9])] },
      { highway: 'service', barrier: 'kerb', ref: '1' },
    );
    const file = collection(point([0, 0], { disc_golf: 'basket', ref: '1; 10' }), road) as unknown as FeatureCollection;
    const renumbered = renumberHoles(file, new Map([['10', '11']]));
    expect(renumbered.features.map(f => tagOf(f, 'ref'))).toEqual(['1;11', '1']);
    expect(tagOf(renumberHoles(file, new Map([['1', '5']])).features[1]!, 'ref')).toBe('1');
  });

  it('are given tees and baskets', () => {
    expect(tagOf(attachSite(drawn(), 1, '2').features[1]!, 'ref')).toBe('2');
    expect(tagOf(attachSite(drawn(), 1, '2', 'also').features[1]!, 'ref')).toBe('1;2');
    expect(tagOf(attachSite(drawn(), 1, '#01', 'also').features[1]!, 'ref')).toBe('1');
  });
});

/** Any edit, as a function over files; indexes count round. */
const edit = fc.oneof(
  fc.tuple(fc.nat(), fc.integer({ min: -20, max: 20 }), fc.integer({ min: -20, max: 20 })).map(
    ([i, x, y]) =>
      (file: FeatureCollection) =>
        placed(file, i) ? moveFeature(file, i % file.features.length, x, y) : file,
  ),
  fc.tuple(fc.nat(), fc.integer({ min: 5, max: 20 })).map(
    ([i, x]) =>
      (file: FeatureCollection) =>
        placed(file, i) && !isGolf(file, i) ? copyFeature(file, i % file.features.length, x, 0) : file,
  ),
  fc
    .nat()
    .map(i => (file: FeatureCollection) => (isGolf(file, i) ? file : removeFeature(file, i % file.features.length))),
  fc.tuple(fc.nat(), fc.nat(), fc.integer({ min: -3, max: 3 })).map(([i, v, x]) => (file: FeatureCollection) => {
    const index = i % file.features.length;
    const { geometry } = file.features[index]!;
    const vertices = verticesOf(geometry);
    if (vertices.length === 0) return file;
    const { path, position } = vertices[v % vertices.length]!;
    return reshapeFeature(file, index, moveVertex(geometry, path, shiftPosition(position, x, x)));
  }),
  fc.tuple(fc.nat(), fc.constantFrom('note', 'colour', '__proto__'), fc.string()).map(
    ([i, key, value]) =>
      (file: FeatureCollection) =>
        changeTags(file, i % file.features.length, { [key]: value }),
  ),
  fc
    .integer({ min: 3, max: 60 })
    .map(
      x => (file: FeatureCollection) =>
        addFeatures(file, point([x, 60], { natural: 'tree', height: x % 9 === 0 ? '9 ft' : 8 }) as unknown as Feature),
    ),
  fc.constant((file: FeatureCollection) => renumberHole(file, '1', '2')),
  fc.constant((file: FeatureCollection) => addLayout(file, `L${file.features.length}`, [{ ref: '2' }])),
  fc.constant((file: FeatureCollection) =>
    file.features.reduce(
      (f, feature, i) => (layoutHolesOf(feature) ? setLayoutHoles(f, i, layoutHolesOf(feature)!.toReversed()) : f),
      file,
    ),
  ),
);
const placed = (file: FeatureCollection, i: number) => file.features[i % file.features.length]!.geometry !== null;
const isGolf = (file: FeatureCollection, i: number) =>
  tagOf(file.features[i % file.features.length]!, 'disc_golf') !== undefined;

describe('edit, export, parse', () => {
  it('keeps everything else, and leaves the old values as they were', () => {
    let read = 0;
    fc.assert(
      fc.property(fc.array(edit, { maxLength: 12 }), edits => {
        const stack = [frozen(drawn())];
        for (const step of edits) stack.push(frozen(step(stack.at(-1)!)));
        const last = stack.at(-1)!;
        // Nothing but the drawn features changes: the kiosk and the members of the file are as they came.
        expect(last).toMatchObject({ type: 'FeatureCollection', generator: 'a test' });
        const course = parseCourse(last, 'a');
        // A random move may tear a tee from its line or shrink a ring; such a draft is refused with problems, not mangled.
        if (course.ok) {
          read++;
          expect(exportCourse(course.value)).toEqual(last);
          const again = parseCourse(JSON.parse(JSON.stringify(exportCourse(course.value))), 'a');
          expect(again.ok && again.value.holes).toEqual(course.value.holes);
        }
        // Undo: the first value is still the file that was opened.
        expect(stack[0]).toEqual(drawn());
      }),
      { seed: 12, numRuns: 200 },
    );
    expect(read).toBeGreaterThan(60);
  });

  it('shares every untouched feature with the old file', () => {
    const file = drawn();
    const moved = moveFeature(file, 6, 3, 4);
    expect(moved.features.filter((f, i) => f === file.features[i])).toHaveLength(9);
    expect(moved).not.toHaveProperty('bbox');
    near((moved.features[6]!.geometry as Polygon).coordinates[0]![0]!, at([33, 24]));
    const copied = copyFeature(file, 6, 0, 50);
    expect(copied.features[10]!.properties).toEqual(file.features[6]!.properties);
  });
});

describe('a hole without a place', () => {
  const nowhere = () =>
    ({
      ...collection(
        ...hole('1'),
        point([0, 1000], { disc_golf: 'tee', ref: '9' }),
        point([60, 1080], { disc_golf: 'basket', ref: '9' }),
        line(
          [
            [0, 1000],
            [60, 1080],
          ],
          { disc_golf: 'hole', ref: '9', placed: 'no' },
        ),
        point([20, 1030], { natural: 'tree' }),
      ),
      start: [0, 0],
      placed: 'no',
    }) as unknown as FeatureCollection;

  it('is put where it is with everything round it, and nothing else moves', () => {
    const to = [-73.5, 45.5];
    const before = nowhere();
    const file = placeHole(frozen(nowhere()), '09', to);
    expect(file.features.slice(0, 3)).toEqual(before.features.slice(0, 3));
    expect(tagOf(file.features[5]!, 'placed')).toBeUndefined();
    expect(unplacedLine(file, '9')).toBeUndefined();
    expect(file).not.toHaveProperty('placed');
    near(verticesOf(file.features[3]!.geometry)[0]!.position, to);
    for (const [i, east_m, north_m] of [
      [4, 60, 80],
      [6, 20, 30],
    ] as const) {
      const [gotEast_m, gotNorth_m] = offset_m(to, verticesOf(file.features[i]!.geometry)[0]!.position);
      // The test file is laid out with rounded metres per degree, good to a centimetre over this distance.
      expect(Math.hypot(gotEast_m - east_m, gotNorth_m - north_m)).toBeLessThan(0.05);
    }
  });

  it('is the only one that can be placed', () => {
    expect(() => placeHole(nowhere(), '1', [0, 0])).toThrow('hole 1 has no line with placed=no');
  });
});
