import { describe, expect, it } from 'vitest';
import { assumed, good, hole, line, point, theProblem } from './course-file.ts';

const tee = (x: number, y: number, more: object = {}) => point([x, y], { disc_golf: 'tee', ...more });
const basket = (x: number, y: number, more: object = {}) => point([x, y], { disc_golf: 'basket', ...more });
const play = (xys: (readonly [number, number])[], more: object = {}) => line(xys, { disc_golf: 'hole', ...more });

describe('absurd holes', () => {
  it.each<[string, unknown[], string]>([
    [
      'zero length, drawn',
      [
        play(
          [
            [0, 0],
            [0.2, 0],
          ],
          { ref: '1' },
        ),
      ],
      'features[3].geometry.coordinates: hole 1 has a line of zero length (0.20 m): draw it from tee to basket',
    ],
    [
      'zero length, straight',
      [tee(0, 40, { ref: '1' }), basket(0, 40.5, { ref: '1' })],
      'features[3]: hole 1 is 0.50 m long from tee to basket: move one of them, or draw the line from tee to basket',
    ],
    [
      'a loop',
      [
        play(
          [
            [0, 40],
            [50, 60],
            [0, 40],
          ],
          { ref: '1' },
        ),
      ],
      'features[3]: hole 1 is 0.00 m long from tee to basket: move one of them, or draw the line from tee to basket',
    ],
    [
      'too long',
      [
        play(
          [
            [0, 40],
            [3000, 40],
          ],
          { ref: '1' },
        ),
      ],
      'features[3]: hole 1 is 3.0 km long: check its positions and the refs of its tee and basket',
    ],
    [
      'somewhat too long',
      [
        play(
          [
            [0, 40],
            [1600, 40],
          ],
          { ref: '1' },
        ),
      ],
      'features[3]: hole 1 is 1.6 km long: check its positions and the refs of its tee and basket',
    ],
    [
      'a tee far off',
      [tee(-4000, 0, { ref: '9' })],
      'features[3]: ref=9 lies 4.0 km from hole 9: mend its ref or its position',
    ],
    [
      'par',
      [
        play(
          [
            [0, 40],
            [80, 40],
          ],
          { ref: '1', par: 40 },
        ),
      ],
      'features[3].properties.par: par 40 is not believable: write one whole number from 2 to 9',
    ],
    [
      'half a par',
      [
        play(
          [
            [0, 40],
            [80, 40],
          ],
          { ref: '1', par: '3.5' },
        ),
      ],
      'features[3].properties.par: par 3.5 is not believable: write one whole number from 2 to 9',
    ],
    [
      'dist',
      [
        play(
          [
            [0, 40],
            [80, 40],
          ],
          { ref: '1', dist: '8000' },
        ),
      ],
      'features[3].properties.dist: dist 8000 is not believable: expected 5 to 1500 m',
    ],
    [
      'dist text',
      [
        play(
          [
            [0, 40],
            [80, 40],
          ],
          { ref: '1', dist: '80,5' },
        ),
      ],
      'features[3].properties.dist: dist "80,5" is not a length: write the decimals after a point: 80.5',
    ],
  ])('%s', (_, features, want) => expect(theProblem(...hole('9'), ...features)).toBe(want));
});

it('compares the published length with the map', () => {
  const said = (dist: unknown) =>
    assumed(good(point([0, 0], { disc_golf: 'tee', ref: 1, dist }), basket(100, 0, { ref: 1 })));
  expect(said('115')).toEqual([]);
  expect(said('150')).toEqual(['features[0]: hole 1: dist says 150 m but the map measures 100 m; the map is used']);
  expect(said('328')).toEqual([
    'features[0]: hole 1: dist says 328 m but the map measures 100 m; the map is used; it looks like feet: write the unit, as in "300 ft"',
  ]);
});

it('lists holes in natural order', () => {
  const course = good(...['10', '2', '10A', '1'].flatMap((ref, i) => hole(ref, 40 * i)));
  expect(course.holes.map(({ ref }) => ref)).toEqual(['1', '2', '10', '10A']);
});
