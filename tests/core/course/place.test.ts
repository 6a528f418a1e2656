import { describe, expect, it } from 'vitest';
import { assumed, bad, feature, good, hole, point, theProblem } from './course-file.ts';

const pointAt = (coordinates: number[], properties: Record<string, unknown>) =>
  feature({ type: 'Point', coordinates }, properties);
const lineAt = (coordinates: number[][], properties: Record<string, unknown>) =>
  feature({ type: 'LineString', coordinates }, properties);

describe('swapped longitude and latitude', () => {
  it('of one feature', () => {
    expect(
      theProblem(...hole('1'), ...hole('2', 50), pointAt([60.0003, 25.0003], { disc_golf: 'tee', ref: '3' })),
    ).toMatch(
      /^features\[6\]\.geometry\.coordinates: tee 3: longitude and latitude are swapped \(\[60\.0003, 25\.0003\] lies \d+ km from the rest of the course, \[25\.0003, 60\.0003\] lies in it\); GeoJSON writes \[longitude, latitude\]$/,
    );
  });
  it('of surroundings', () => {
    expect(theProblem(...hole('1'), pointAt([60.0003, 25.0003], { natural: 'tree' }))).toMatch(
      /^features\[3\]\.geometry\.coordinates: feature: longitude and latitude are swapped/,
    );
  });
  it('throughout, told by the published lengths', () => {
    // [C] in GeographicLib: 0.002° of longitude is 111.6 m at 60° north, 201.8 m at 25° north.
    const holes = ['1', '2', '3'].map((ref, i) =>
      lineAt(
        [
          [60, 25 + i / 1000],
          [60, 25.002 + i / 1000],
        ],
        { disc_golf: 'hole', ref, dist: '112' },
      ),
    );
    expect(theProblem(...holes)).toMatch(
      /^features: longitude and latitude look swapped throughout: the hole lines fit their dist within 0 % with the order reversed, and miss it by 68 % as written/,
    );
    const upright = ['1', '2', '3'].map((ref, i) =>
      lineAt(
        [
          [25 + i / 1000, 60],
          [25.002 + i / 1000, 60],
        ],
        { disc_golf: 'hole', ref, dist: '112' },
      ),
    );
    expect(good(...upright).holes).toHaveLength(3);
    // Where both orders fit, and where neither does (feet without a unit), nothing is told.
    const diagonal = ['1', '2', '3'].map((ref, i) =>
      lineAt(
        [
          [45, 45 + i / 1000],
          [45.001, 45.001 + i / 1000],
        ],
        { disc_golf: 'hole', ref, dist: '136' },
      ),
    );
    expect(good(...diagonal).holes).toHaveLength(3);
    const feet = upright.map(drawn => ({ ...drawn, properties: { ...(drawn.properties as object), dist: '366' } }));
    expect(good(...feet).holes).toHaveLength(3);
  });
});

it('a basket hundreds of kilometres off is reported, surroundings there are mentioned', () => {
  expect(theProblem(...hole('1'), ...hole('2', 50), pointAt([20, 55], { disc_golf: 'basket', ref: '3' }))).toMatch(
    /^features\[6\]\.geometry\.coordinates: basket 3 lies 6\d\d km from the rest of the course: mend its position, or put it in a file of its own$/,
  );
  expect(assumed(good(...hole('1'), pointAt([20, 55], { natural: 'water' })))).toEqual([
    expect.stringMatching(/^features\[3\]: feature begins 6\d\d km from the course: probably no part of it$/),
  ]);
});

describe('the antimeridian', () => {
  // [C] H3 of the hole-sized lines: 199.9966 m by GeographicLib.
  const [tee, basket] = [
    [179.9995, 0],
    [-179.9987034, 0],
  ];
  it('is no edge for a hole', () => {
    const course = good(
      lineAt([tee, basket], { disc_golf: 'hole', ref: '1', dist: 200 }),
      pointAt(tee, { disc_golf: 'tee' }),
      pointAt(basket, { disc_golf: 'basket' }),
    );
    expect(course.holes[0]).toMatchObject({
      tee: { position: tee, featureIndex: 1 },
      basket: { position: basket, featureIndex: 2 },
    });
    expect(assumed(course)).toEqual([
      'features: the course crosses the antimeridian (longitude 180): positions on either side are joined the short way',
    ]);
  });
  it('is no edge for areas, which may still cross themselves', () => {
    const around = (corners: number[][]) =>
      feature({ type: 'Polygon', coordinates: [[...corners, corners[0]!]] }, { natural: 'wood' });
    const corners = [
      [179.9999, 0],
      [-179.9999, 0],
      [-179.9999, 0.0002],
      [179.9999, 0.0002],
    ];
    expect(good(lineAt([tee, basket], { disc_golf: 'hole' }), around(corners)).objects).toHaveLength(1);
    expect(
      theProblem(
        lineAt([tee, basket], { disc_golf: 'hole' }),
        around([corners[0]!, corners[2]!, corners[1]!, corners[3]!]),
      ),
    ).toMatch(/crosses itself near \[-?180\.0000000, 0\.0001000\]/);
  });
  it('leaves some shapes without a reading', () => {
    const wood = (ring: number[][]) => feature({ type: 'Polygon', coordinates: [ring] }, { natural: 'wood' });
    expect(
      bad(
        ...hole('1'),
        wood([
          [25, 60],
          [150, 60],
          [25, 61],
          [25, 60],
        ]),
      )[0],
    ).toEqual({
      path: 'features[3].geometry.coordinates[0][0]',
      message:
        'wood: from longitude 25 to 150 it could go either way round the world; cut it at the antimeridian or mend the positions',
    });
    expect(
      theProblem(
        ...hole('1'),
        wood([
          [25, 60],
          [100, 60],
          [175, 60],
          [-110, 60],
          [-40, 60],
          [25, 60],
        ]),
      ),
    ).toBe('features[3].geometry.coordinates[0]: wood: the ring runs right round a pole; draw the area itself');
    expect(
      bad(
        ...hole('1'),
        lineAt(
          [
            [25, 60],
            [-140, 60],
          ],
          { highway: 'path' },
        ),
      )[0]!.message,
    ).toMatch(/^way: from longitude 25 to -140 it could go either way/);
  });
});

it('takes a file of one hole as a place', () => {
  expect(
    good(point([0, 0], { disc_golf: 'tee', ref: 1 }), point([60, 0], { disc_golf: 'pin', ref: 1 })).holes,
  ).toHaveLength(1);
});
