import { describe, expect, it } from 'vitest';
import { parseCourse } from '../../../core/course/parse-course.ts';
import {
  area,
  assumed,
  at,
  bad,
  collection,
  feature,
  good,
  hole,
  line,
  point,
  square,
  theProblem,
} from './course-file.ts';

const tee = { disc_golf: 'tee', ref: '1' };
const problemsOf = (input: unknown) => {
  const result = parseCourse(input, 'test.geojson');
  return result.ok ? [] : result.problems.map(({ path, message }) => `${path}: ${message}`);
};
const wanted = 'a course file is one GeoJSON FeatureCollection: {"type": "FeatureCollection", "features": [ ... ]}';

describe('the file', () => {
  it.each<[string, unknown, string]>([
    [
      'a single feature',
      point([0, 0], tee),
      `type: this is a single Feature; put it in the "features" list: ${wanted}`,
    ],
    ['a geometry', { type: 'Point', coordinates: [25, 60] }, `type: "type" is "Point"; ${wanted}`],
    ['no type', {}, `type: "type" is missing; ${wanted}`],
    ['a list', [], `type: ${wanted}`],
    ['nothing', null, `type: ${wanted}`],
    [
      'no features',
      { type: 'FeatureCollection' },
      'features: a FeatureCollection needs "features": a list of features',
    ],
    [
      'a feature that is none',
      collection(3),
      'features[0]: 3 is not a feature: write an object with "type": "Feature"',
    ],
    [
      'a feature of another type',
      collection({ ...point([0, 0], tee), type: 'Point' }),
      'features[0].type: every entry of "features" must have "type": "Feature"',
    ],
    [
      'properties that are no object',
      collection({ ...point([0, 0], tee), properties: 'tee' }),
      'features[0].properties: properties must be an object of tags, such as {"disc_golf": "tee"}',
    ],
    [
      'an id that is none',
      collection({ ...point([0, 0], tee), id: [] }),
      'features[0].id: id must be text or a number',
    ],
  ])('%s', (_, input, want) => expect(problemsOf(input)).toEqual([want]));

  it('without a hole says what to add', () => {
    expect(theProblem()).toBe(
      'features: the file has no hole: add a LineString tagged disc_golf=hole from tee to basket, or a disc_golf=tee and a disc_golf=basket with the same ref',
    );
    expect(theProblem(point([0, 0], { disc_golf: 'tee' }), point([80, 0], { disc_golf: 'basket' }))).toMatch(
      /^features: the file has no hole \(1 tee and 1 basket without refs are there\): add /,
    );
  });

  it('in another coordinate system is sent back; WGS 84 by its old names is taken', () => {
    const withCrs = (name: unknown) => ({ ...collection(...hole('1')), crs: { type: 'name', properties: { name } } });
    expect(problemsOf(withCrs('urn:ogc:def:crs:EPSG::3067'))).toEqual([
      'crs: crs urn:ogc:def:crs:EPSG::3067 is not WGS 84: export the course again in WGS 84 (EPSG:4326), longitude first, without "crs"',
    ]);
    expect(problemsOf({ ...collection(...hole('1')), crs: 7 })).toHaveLength(1);
    for (const name of ['urn:ogc:def:crs:OGC:1.3:CRS84', 'EPSG:4326', 'urn:ogc:def:crs:EPSG::4326']) {
      const result = parseCourse(withCrs(name), 'test.geojson');
      expect(result.ok && assumed(result.value)).toEqual([
        `crs: crs ${name} is WGS 84: positions are read as [longitude, latitude], as RFC 7946 has it`,
      ]);
    }
    expect(problemsOf({ ...collection(...hole('1')), crs: null })).toEqual([]);
  });
});

describe('positions', () => {
  const withPosition = (...coordinates: unknown[]) =>
    theProblem(...hole('1'), feature({ type: 'Point', coordinates }, tee));
  it.each<[string, unknown[], string]>([
    [
      'text',
      [25, '60'],
      'features[3].geometry.coordinates[1]: "60" is not a finite number: write degrees as a plain number, such as 24.9017',
    ],
    [
      'infinite',
      [25, Number.POSITIVE_INFINITY],
      'features[3].geometry.coordinates[1]: Infinity is not a finite number: write degrees as a plain number, such as 24.9017',
    ],
    [
      'no number',
      [Number.NaN, 60],
      'features[3].geometry.coordinates[0]: NaN is not a finite number: write degrees as a plain number, such as 24.9017',
    ],
    ['too short', [25], 'features[3].geometry.coordinates: a position needs two numbers: [longitude, latitude]'],
    [
      'swapped beyond the pole',
      [60, 125],
      'features[3].geometry.coordinates: latitude 125 lies beyond a pole: longitude and latitude look swapped; GeoJSON writes [longitude, latitude], so [125, 60]',
    ],
    [
      'beyond everything',
      [370_000, 6_670_000],
      'features[3].geometry.coordinates: latitude 6670000 lies outside −90…90: positions are degrees, [longitude, latitude]',
    ],
    ['round the world', [185, 60], 'features[3].geometry.coordinates: longitude 185 lies outside −180…180: write -175'],
    [
      'projected',
      [385_000, 60],
      'features[3].geometry.coordinates: longitude 385000 lies outside −180…180: positions are degrees on WGS 84, not projected metres',
    ],
  ])('%s', (_, coordinates, want) => expect(withPosition(...coordinates)).toBe(want));

  it('of one feature with one fault give one line', () => {
    const ring = [
      [60, 125],
      [60.1, 125],
      [60.1, 125.1],
      [60, 125],
    ];
    expect(theProblem(...hole('1'), feature({ type: 'Polygon', coordinates: [ring] }, { natural: 'wood' }))).toMatch(
      /^features\[3\]\.geometry\.coordinates\[0\]\[0\]: latitude 125 .* \(and 3 more like it in this feature\)$/,
    );
  });
});

describe('geometry', () => {
  const withGeometry = (geometry: Record<string, unknown> | null, properties: Record<string, unknown> | null) =>
    theProblem(...hole('1'), feature(geometry, properties));
  const types = 'Point, MultiPoint, LineString, MultiLineString, Polygon, MultiPolygon or GeometryCollection';

  it.each<[string, Record<string, unknown>, string]>([
    [
      'of unknown type',
      { type: 'Circle' },
      `features[3].geometry.type: a geometry is an object whose "type" is ${types}`,
    ],
    [
      'a line of one position',
      { type: 'LineString', coordinates: [[25, 60]] },
      'features[3].geometry.coordinates: a line needs at least two positions',
    ],
    [
      'a line that is none',
      { type: 'LineString', coordinates: 5 },
      'features[3].geometry.coordinates: coordinates must be a list of positions',
    ],
    [
      'a position that is none',
      { type: 'LineString', coordinates: [5, [25, 60]] },
      'features[3].geometry.coordinates[0]: 5 is not a position: write [longitude, latitude]',
    ],
    [
      'a ring left open',
      {
        type: 'Polygon',
        coordinates: [
          [
            [25, 60],
            [25.1, 60],
            [25.1, 60.1],
            [25, 60.1],
          ],
        ],
      },
      'features[3].geometry.coordinates[0]: the ring is not closed: repeat its first position [25, 60] at its end',
    ],
    [
      'a ring of two corners',
      {
        type: 'Polygon',
        coordinates: [
          [
            [25, 60],
            [25.1, 60],
            [25, 60],
          ],
        ],
      },
      'features[3].geometry.coordinates[0]: a ring needs at least four positions, the last equal to the first',
    ],
    [
      'a polygon without rings',
      { type: 'Polygon', coordinates: [] },
      'features[3].geometry.coordinates: a polygon needs at least one ring',
    ],
    [
      'a collection without geometries',
      { type: 'GeometryCollection' },
      'features[3].geometry.geometries: a GeometryCollection needs "geometries": a list of geometries',
    ],
  ])('%s', (_, geometry, want) => expect(withGeometry(geometry, { natural: 'wood' })).toBe(want));

  it('in a collection has no one meaning', () => {
    const geometry = { type: 'GeometryCollection', geometries: [{ type: 'Point', coordinates: at([0, 0]) }] };
    expect(withGeometry(geometry, { disc_golf: 'basket', ref: '9' })).toBe(
      'features[3].geometry: basket 9 is a GeometryCollection, which has no one meaning: split it into features of one geometry each',
    );
    expect(good(...hole('1'), feature(geometry, { colour: 'red' })).holes).toHaveLength(1);
  });

  it('may be missing where nothing hangs on it', () => {
    expect(withGeometry(null, { disc_golf: 'basket', ref: '9' })).toBe(
      'features[3].geometry: basket 9 has no geometry: draw it, or delete the feature',
    );
    expect(
      assumed(good(...hole('1'), feature(null, { natural: 'tree', name: 'Old oak' }), feature(null, null))),
    ).toEqual([
      'features[3]: tree "Old oak" has no geometry: left out',
      'features[4]: feature has no geometry: left out',
    ]);
  });

  it('that crosses itself is reported with ring and positions', () => {
    const bowTie = [
      [0, 0],
      [20, 20],
      [20, 0],
      [0, 20],
    ] as const;
    expect(theProblem(...hole('1'), area(bowTie, { natural: 'wood', name: 'Fen' }))).toBe(
      'features[3].geometry.coordinates[0]: wood "Fen": the outer ring crosses itself near [25.0001792, 60.0000898] (positions 0–1 and positions 2–3); put its corners in order round the outline',
    );
    const rings = [square(0, 0, 20), square(10, 10, 20)].map(corners => [...corners, corners[0]!].map(at));
    expect(
      theProblem(...hole('1'), feature({ type: 'MultiPolygon', coordinates: [rings] }, { landuse: 'forest' })),
    ).toMatch(
      /^features\[3\]\.geometry\.coordinates\[0\]\[[01]\]: wood: the rings cross one another near .* \(ring [01], positions \d–\d and ring [01], positions \d–\d\)/,
    );
    expect(
      theProblem(
        ...hole('1'),
        area(
          [
            [0, 0],
            [20, 0],
            [40, 0],
          ],
          { disc_golf: 'hazard' },
        ),
      ),
    ).toMatch(/hazard: the outer ring runs along itself near/);
    expect(
      theProblem(
        ...hole('1'),
        area(
          [
            [5, 5],
            [5, 5],
            [5, 5],
          ],
          { disc_golf: 'hazard' },
        ),
      ),
    ).toBe(
      'features[3].geometry.coordinates[0]: hazard: all positions of the ring are the same; draw an area or delete it',
    );
    // Nothing to the course: let through untouched.
    expect(good(...hole('1'), area(bowTie, { landuse: 'meadow' })).objects).toEqual([]);
  });
});

describe('tags', () => {
  it('are read nested, direct, and as converters write them', () => {
    const tags = (shape: (tags: Record<string, string>) => Record<string, unknown>) =>
      good(
        point([0, 0], shape({ disc_golf: 'tee', ref: '7' })),
        point([80, 0], shape({ disc_golf: 'basket', ref: '7', name: 'Knoll' })),
      ).holes.map(({ ref, basket }) => [ref, basket.name]);
    expect(tags(direct => direct)).toEqual([['7', 'Knoll']]);
    expect(tags(nested => ({ tags: nested }))).toEqual([['7', 'Knoll']]);
    expect(tags(nested => ({ type: 'node', id: 31, tags: nested, relations: [], meta: {} }))).toEqual([['7', 'Knoll']]);
    expect(tags(flat => ({ '@id': 'node/31', id: 'node/31', ...flat }))).toEqual([['7', 'Knoll']]);
    expect(tags(({ ref, ...rest }) => ({ ...rest, ref: Number(ref), height: null, note: ' ' }))).toEqual([
      ['7', 'Knoll'],
    ]);
  });

  it('name their place in the messages', () => {
    expect(theProblem(...hole('1'), point([5, 5], { tags: { natural: 'tree', height: 'tall' } }))).toMatch(
      /^features\[3\]\.properties\.tags\.height: /,
    );
    expect(theProblem(...hole('1'), point([5, 5], { natural: 'tree', height: 'tall' }))).toMatch(
      /^features\[3\]\.properties\.height: /,
    );
  });

  it('given twice must agree', () => {
    expect(theProblem(...hole('1'), point([5, 5], { natural: 'tree', height: 5, tags: { height: '8' } }))).toBe(
      'features[3].properties.height: "height" is 5 here but 8 in "tags": keep one of the two',
    );
    expect(
      good(...hole('1'), point([5, 5], { natural: 'tree', height: 5, tags: { height: '5' } })).objects,
    ).toHaveLength(1);
  });

  it('must be finite wherever they stand: an infinite number would not survive an export', () => {
    expect(
      problemsOf(collection(...hole('1'), point([5, 5], { survey: { runs: [1, Number.POSITIVE_INFINITY] } }))),
    ).toEqual(['features[3].properties.survey.runs[1]: this number is not finite: write a number of ordinary size']);
  });
});

it('lists every problem at once', () => {
  const problems = bad(
    ...hole('1'),
    line(
      [
        [0, 0],
        [40, 0],
      ],
      { disc_golf: 'hole', ref: '2', par: 'forty' },
    ),
    point([5, 5], { natural: 'tree', height: 900 }),
    point([6, 6], { disc_golf: 'mando' }),
  );
  expect(problems.map(({ path }) => path).sort()).toEqual([
    'features[3].properties.par',
    'features[4].properties.height',
    'features[5]',
  ]);
});

it('takes the name of the course feature, the collection or the file', () => {
  const named = (extra: unknown[], members: Record<string, unknown>) => {
    const result = parseCourse({ ...collection(...hole('1'), ...extra), ...members }, 'some/where/Back Forty.json');
    return result.ok ? result.value : undefined;
  };
  const course = (name: string) => point([0, 0], { leisure: 'disc_golf_course', name });
  expect(named([course('Alder Fen')], { name: 'export' })?.name).toBe('Alder Fen');
  expect(named([], { name: 'export' })?.name).toBe('export');
  expect(named([], {})?.name).toBe('Back Forty');
  const two = named([course('Alder Fen'), course('Birch Fen')], {});
  expect(two?.name).toBe('Alder Fen');
  expect(two && assumed(two)).toEqual([
    'features[4]: the file holds several courses (Alder Fen, Birch Fen): their holes are read as one course, named after the first',
  ]);
});
