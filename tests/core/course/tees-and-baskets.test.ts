import { describe, expect, it } from 'vitest';
import { groundDistance_m } from '../../../core/course/ground-distance.ts';
import { area, assumed, at, bad, feature, good, hole, line, point, square, theProblem } from './course-file.ts';

const tee = (x: number, y: number, more: object = {}) => point([x, y], { disc_golf: 'tee', ...more });
const basket = (x: number, y: number, more: object = {}) => point([x, y], { disc_golf: 'basket', ...more });
const play = (xys: (readonly [number, number])[], more: object = {}) => line(xys, { disc_golf: 'hole', ...more });

describe('several tees and baskets', () => {
  it('belong to the hole, those of the line first', () => {
    const course = good(
      tee(-30, 0, { ref: '1', name: 'long' }),
      tee(0, 0, { ref: '1', name: 'short' }),
      basket(110, 0, { ref: '1', name: 'B' }),
      basket(80, 0, { ref: '1', name: 'A' }),
      play(
        [
          [0, 0],
          [80, 0],
        ],
        { ref: '1' },
      ),
    );
    expect(course.holes[0]).toMatchObject({
      tee: { name: 'short' },
      basket: { name: 'A' },
      tees: [{ name: 'short' }, { name: 'long' }],
      baskets: [{ name: 'A' }, { name: 'B' }],
    });
  });

  it('may be shared between holes', () => {
    const course = good(tee(0, 0, { ref: '3;12' }), basket(80, 0, { ref: '3' }), basket(0, 70, { ref: '12' }));
    expect(course.holes.map(({ ref, tee, lineSource }) => [ref, tee.featureIndex, lineSource])).toEqual([
      ['3', 0, 'straight'],
      ['12', 0, 'straight'],
    ]);
  });

  it('at one distance from the line end are planned in file order, and it says so', () => {
    const course = good(
      play(
        [
          [0, 0],
          [80, 0],
        ],
        { ref: '1' },
      ),
      tee(0, 9, { ref: '1' }),
      tee(0, -9, { ref: '1' }),
    );
    expect(course.holes[0]!.tees.map(site => site.featureIndex)).toEqual([1, 2]);
    expect(assumed(course)[0]).toBe(
      'features[0]: hole 1: its tees tee 1 (features[1], 9.0 m) and tee 1 (features[2], 9.0 m) are equally near its end; features[1] is planned for',
    );
  });

  it('with lines of their own make one hole; two lines from one tee do not', () => {
    const course = good(
      play(
        [
          [0, 0],
          [80, 0],
        ],
        { ref: '1' },
      ),
      play(
        [
          [-40, 0],
          [80, 0],
        ],
        { ref: '1' },
      ),
      basket(80, 0),
    );
    expect(course.holes).toHaveLength(1);
    expect(course.holes[0]!.tees.map(({ position }) => position)).toEqual([at([0, 0]), at([-40, 0])]);
    expect(assumed(course)).toContain(
      'features[0]: hole 1 has several lines: this one is planned for unless a layout plays features[1]',
    );
    expect(
      theProblem(
        play(
          [
            [0, 0],
            [80, 0],
          ],
          { ref: '1' },
        ),
        play(
          [
            [1, 0],
            [60, 60],
          ],
          { ref: '01' },
        ),
      ),
    ).toBe(
      'features[1]: a second line for hole 01 from the same tee (the first is features[0]): give it another ref or delete it',
    );
  });
});

describe('a hole without a line', () => {
  it('is straight', () => {
    const course = good(tee(0, 0, { ref: '2', par: '3', dist: 80, name: 'pad' }), basket(80, 0, { ref: '2' }));
    expect(course.holes[0]).toMatchObject({
      ref: '2',
      par: 3,
      taggedLength_m: 80,
      line: [at([0, 0]), at([80, 0])],
      lineSource: 'straight',
    });
    expect(course.holes[0]!.name).toBeUndefined();
  });
  it('needs both partners', () => {
    expect(theProblem(...hole('1'), tee(0, 40, { ref: '2' }))).toBe(
      'features[3]: tee 2 has no basket: add a basket with ref=2, or a hole line from tee to basket',
    );
    expect(theProblem(...hole('1'), basket(0, 40, { ref: '2' }))).toBe(
      'features[3]: basket 2 has no tee: add a tee with ref=2, or a hole line from tee to basket',
    );
  });
});

describe('tees', () => {
  it('drawn as areas count at their centre, closed lines too', () => {
    const pad = { disc_golf: 'tee', ref: '1' };
    for (const drawn of [area(square(-2, -2, 4), pad), line([...square(-2, -2, 4), [-2, -2]], pad)]) {
      const [only] = good(drawn, basket(80, 0, { ref: '1' })).holes;
      expect(groundDistance_m(only!.tee.position, at([0, 0]))).toBeLessThanOrEqual(0.001);
    }
    // By hand: an L of three unit squares has its centre at 5/6 of a unit from the outer corner's sides.
    const [bent] = good(
      area(
        [
          [0, 0],
          [2, 0],
          [2, 1],
          [1, 1],
          [1, 2],
          [0, 2],
        ],
        pad,
      ),
      basket(80, 0, { ref: '1' }),
    ).holes;
    expect(groundDistance_m(bent!.tee.position, at([5 / 6, 5 / 6]))).toBeLessThanOrEqual(0.001);
  });
  it('of other shapes are sent back, and baskets that are no points', () => {
    expect(
      bad(
        ...hole('1'),
        line(
          [
            [0, 0],
            [3, 0],
          ],
          { disc_golf: 'tee' },
        ),
      )[0],
    ).toEqual({ path: 'features[3].geometry', message: 'tee must be a Point or a Polygon: draw it as one' });
    expect(bad(...hole('1'), area(square(0, 0, 1), { disc_golf: 'basket', ref: 5 }))[0]).toEqual({
      path: 'features[3].geometry',
      message: 'basket 5 must be a Point: draw it as one',
    });
  });
});

describe('a tee area across the antimeridian', () => {
  it.each([
    [179.99999, -179.99997],
    [179.99997, -179.99999],
  ])('from %d to %d has its centre on the right side', (west, east) => {
    const corners = [
      [west, 10],
      [east, 10],
      [east, 10.00002],
      [west, 10.00002],
      [west, 10],
    ];
    const pad = feature({ type: 'Polygon', coordinates: [corners] }, { disc_golf: 'tee', ref: 1 });
    const target = feature({ type: 'Point', coordinates: [179.999, 10] }, { disc_golf: 'basket', ref: 1 });
    const [lon, lat] = good(pad, target).holes[0]!.tee.position;
    // By hand: half way between the sides.
    expect(lon).toBeCloseTo(west > -east ? -179.99999 : 179.99999, 9);
    expect(lat).toBeCloseTo(10.00001, 9);
  });
});

it('reads what an OpenStreetMap converter writes: tags nested, no refs on tees and baskets, a line drawn backwards', () => {
  const osm = (type: string, id: number, geometry: Record<string, unknown>, tags: Record<string, string>) => ({
    type: 'Feature',
    id: `${type}/${id}`,
    properties: { type, id, tags, relations: [], meta: { version: 2 } },
    geometry,
  });
  const node = (id: number, xy: [number, number], tags: Record<string, string>) =>
    osm('node', id, { type: 'Point', coordinates: at(xy) }, tags);
  const way = (id: number, xys: [number, number][], tags: Record<string, string>) =>
    osm('way', id, { type: 'LineString', coordinates: xys.map(at) }, tags);
  const course = good(
    way(
      1,
      [
        [0, 0],
        [70, 0],
      ],
      { disc_golf: 'hole', ref: '1', par: '3' },
    ),
    way(
      2,
      [
        [150, 30],
        [110, 20],
        [80, 5],
      ],
      { disc_golf: 'hole', ref: '2', par: '3', dist: '75' },
    ),
    node(11, [0, 0], { disc_golf: 'tee' }),
    node(12, [70, 0], { disc_golf: 'basket' }),
    node(13, [80, 5], { disc_golf: 'tee' }),
    node(14, [150, 30], { disc_golf: 'basket' }),
  );
  expect(course.holes.map(({ ref, tee, basket }) => [ref, tee.featureIndex, basket.featureIndex])).toEqual([
    ['1', 2, 3],
    ['2', 4, 5],
  ]);
  expect(course.holes[1]!.line).toEqual([at([80, 5]), at([110, 20]), at([150, 30])]);
  expect(assumed(course)).toEqual(['features[1]: hole 2 is drawn from basket to tee: read the other way round']);
});
