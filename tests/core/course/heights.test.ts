import { expect, it } from 'vitest';
import { area, assumed, at, feature, good, hole, line, point, square, theProblem } from './course-file.ts';

const high = (xy: [number, number], height: number) => [...at(xy), height];

it('come from third coordinates and from ele, of any feature', () => {
  const course = good(
    feature({ type: 'Point', coordinates: high([0, 0], 101) }, { disc_golf: 'tee', ref: 1 }),
    point([80, 0], { disc_golf: 'basket', ref: 1, ele: '110.5' }),
    point([40, 40], { ele: 96, survey: 'yes' }),
    line(
      [
        [0, 50],
        [10, 50],
      ],
      { contour: 'elevation', ele: '330 ft' },
    ),
    area(square(20, 20, 5), { natural: 'wood', height: 9, min_height: 2, density: 0.5, ele: 99 }),
  );
  expect(course.heights.map(({ height_m }) => height_m)).toEqual([
    101,
    110.5,
    96,
    330 * 0.3048,
    330 * 0.3048,
    99,
    99,
    99,
    99,
  ]);
  expect(course.heights[0]!.position).toEqual(high([0, 0], 101));
  expect(course.holes[0]).toMatchObject({ tee: { height_m: 101 }, basket: { height_m: 110.5 } });
  expect(assumed(course)).toEqual([
    'features: heights come both as third coordinates (above the ellipsoid by RFC 7946) and as ele (above sea level): taken as measured from the same level',
  ]);
});

it('of one kind only are not called mixed', () => {
  expect(assumed(good(...hole('1'), point([5, 5], { ele: 3 })))).toEqual([]);
  expect(
    assumed(
      good(...hole('1'), feature({ type: 'Point', coordinates: high([5, 5], 3) }, { ele: 3 }), point([6, 6], {})),
    ),
  ).toEqual([]);
});

it('of a line end stand in for a tee without', () => {
  const drawn = feature(
    { type: 'LineString', coordinates: [high([0, 0], 5), high([80, 0], 9)] },
    { disc_golf: 'hole', ref: 1 },
  );
  expect(good(drawn, point([0, 0], { disc_golf: 'tee' })).holes[0]).toMatchObject({
    tee: { height_m: 5, featureIndex: 1 },
    basket: { height_m: 9, featureIndex: -1 },
  });
});

it('of a tee area are the mean of its corners', () => {
  const pad = feature(
    {
      type: 'Polygon',
      coordinates: [
        [
          [0, 0],
          [4, 0],
          [4, 4],
          [0, 4],
          [0, 0],
        ].map(([x, y]) => high([x!, y!], 100 + x!)),
      ],
    },
    { disc_golf: 'tee', ref: 1 },
  );
  expect(good(pad, point([80, 0], { disc_golf: 'basket', ref: 1 })).holes[0]!.tee.height_m).toBeCloseTo(102, 9);
});

it('that are all 0 are heights not given', () => {
  const flat = good(
    ...hole('1'),
    feature({ type: 'LineString', coordinates: [high([0, 9], 0), high([9, 9], 0)] }, { highway: 'path' }),
  );
  expect(flat.heights).toEqual([]);
  expect(flat.notMapped).toContain('heights');
  expect(assumed(flat)).toEqual(['features: every third coordinate is 0: read as heights not given']);
});

it('beyond belief are sent back', () => {
  expect(theProblem(...hole('1'), point([5, 5], { ele: 12000 }))).toBe(
    'features[3].properties.ele: ele 12000 is not believable: expected -500 to 9000 m; if it is in feet, write "12000 ft"',
  );
  expect(theProblem(...hole('1'), point([5, 5], { ele: 'high' }))).toMatch(
    /^features\[3\]\.properties\.ele: ele "high" is not a length/,
  );
  expect(theProblem(...hole('1'), feature({ type: 'Point', coordinates: high([5, 5], 99_999) }, {}))).toBe(
    'features[3].geometry.coordinates: third coordinate 99999 is not a believable height: expected -500 to 9000 m',
  );
});

it('below sea level are heights too', () => {
  expect(good(...hole('1'), point([5, 5], { ele: -3 })).heights).toEqual([{ position: at([5, 5]), height_m: -3 }]);
});
