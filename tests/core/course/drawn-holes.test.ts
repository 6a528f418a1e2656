import { describe, expect, it } from 'vitest';
import { assumed, at, bad, feature, good, hole, line, point, theProblem } from './course-file.ts';

const tee = (x: number, y: number, more: object = {}) => point([x, y], { disc_golf: 'tee', ...more });
const basket = (x: number, y: number, more: object = {}) => point([x, y], { disc_golf: 'basket', ...more });
const play = (xys: (readonly [number, number])[], more: object = {}) => line(xys, { disc_golf: 'hole', ...more });

describe('a drawn hole', () => {
  it('keeps its facts and its bends; its ends are the tee and the basket', () => {
    const course = good(
      play(
        [
          [1, 1],
          [60, 0],
          [100, 50],
        ],
        { ref: '4', par: 4, dist: '410 ft', name: 'Elbow' },
      ),
      tee(0, 0, { ref: '4', name: 'long pad' }),
      basket(100, 52, { ref: '4' }),
    );
    expect(course.holes).toEqual([
      {
        ref: '4',
        name: 'Elbow',
        par: 4,
        taggedLength_m: 410 * 0.3048, // NIST SP 811 (2008), App. B.8
        tee: { position: at([0, 0]), ref: '4', name: 'long pad', featureIndex: 1 },
        basket: { position: at([100, 52]), ref: '4', featureIndex: 2 },
        tees: [{ position: at([0, 0]), ref: '4', name: 'long pad', featureIndex: 1 }],
        baskets: [{ position: at([100, 52]), ref: '4', featureIndex: 2 }],
        line: [at([0, 0]), at([60, 0]), at([100, 52])],
        lineSource: 'drawn',
      },
    ]);
    expect(course.assumptions).toEqual([]);
  });

  it('finds its tee and basket without refs, within 20 m and not beyond', () => {
    const course = good(
      play(
        [
          [0, 0],
          [80, 0],
        ],
        { ref: '1' },
      ),
      tee(-19.9, 0),
      basket(80, 19.9),
    );
    expect([course.holes[0]!.tee.featureIndex, course.holes[0]!.basket.featureIndex]).toEqual([1, 2]);
    const far = good(
      play(
        [
          [0, 0],
          [80, 0],
        ],
        { ref: '1' },
      ),
      tee(-20.1, 0),
      basket(80, 20.1),
    );
    expect(far.holes[0]).toMatchObject({
      tee: { position: at([0, 0]), ref: '1', featureIndex: -1 },
      basket: { position: at([80, 0]), featureIndex: -1 },
    });
    expect(assumed(far)).toEqual([
      "features[0]: hole 1: no tee lies within 20 m of the line's end, so the end itself is taken as the tee",
      "features[0]: hole 1: no basket lies within 20 m of the line's end, so the end itself is taken as the basket",
      "features[1]: tee has no ref and is nearest to no hole line's end within 20 m: left out; give it the ref of its hole",
      "features[2]: basket has no ref and is nearest to no hole line's end within 20 m: left out; give it the ref of its hole",
    ]);
  });

  it('drawn from basket to tee is turned round', () => {
    const course = good(
      play(
        [
          [80, 0],
          [40, 10],
          [0, 0],
        ],
        { ref: '1' },
      ),
      tee(0, 0),
      basket(80, 0),
    );
    expect(course.holes[0]!.line).toEqual([at([0, 0]), at([40, 10]), at([80, 0])]);
    expect(assumed(course)).toEqual(['features[0]: hole 1 is drawn from basket to tee: read the other way round']);
    // Ends some way off tell too when both do.
    expect(
      good(
        play(
          [
            [80, 0],
            [0, 0],
          ],
          { ref: '1' },
        ),
        tee(0, 12),
        basket(80, 12),
      ).holes[0]!.tee.featureIndex,
    ).toBe(1);
    // One end alone tells when the line is drawn right to it.
    expect(
      good(
        play(
          [
            [80, 0],
            [0, 0],
          ],
          { ref: '1' },
        ),
        tee(0, 3),
      ).holes[0]!.tee.position,
    ).toEqual(at([0, 3]));
  });

  it('drawn backwards on a crowded course is turned round, drawn forwards it is not', () => {
    const crowd = [tee(0, 0), basket(0, 15), basket(80, 0), tee(80, 12)];
    const ends = (xys: (readonly [number, number])[]) => good(play(xys, { ref: '1' }), ...crowd).holes[0]!;
    for (const { tee, basket } of [
      ends([
        [80, 0],
        [0, 0],
      ]),
      ends([
        [0, 0],
        [80, 0],
      ]),
    ]) {
      expect([tee.featureIndex, basket.featureIndex]).toEqual([1, 3]);
    }
  });

  it('keeps its drawn order when neither end tells', () => {
    const course = good(
      play(
        [
          [80, 0],
          [0, 0],
        ],
        { ref: '1' },
      ),
      tee(0, 15),
    );
    expect(course.holes[0]!.tee.position).toEqual(at([80, 0]));
  });

  it('between two tees and two baskets that tell nothing is reported', () => {
    expect(
      bad(
        play([
          [0, 0],
          [80, 0],
        ]),
        tee(0, 5),
        basket(0, -5),
        tee(80, 5),
        basket(80, -5),
      )[0],
    ).toEqual({
      path: 'features[0]',
      message:
        'hole: both ends have a tee and a basket equally near, so its direction cannot be told; give the line, its tee and its basket the same ref',
    });
  });

  it('near two baskets at one distance is reported, not guessed', () => {
    expect(
      theProblem(
        play(
          [
            [0, 0],
            [80, 0],
          ],
          { ref: '1' },
        ),
        basket(80, 8),
        basket(80, -8.5),
      ),
    ).toBe(
      'features[0]: hole 1: 2 baskets are equally near its end, basket (features[1], 8.0 m) and basket (features[2], 8.5 m); give the line and its basket the same ref, or draw the line right to it',
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
        tee(5, 0),
        tee(-5, 0),
      ),
    ).toMatch(/^features\[0\]: hole 1: 2 tees are equally near its end/);
    // Drawn right to one of them, or with the refs told, nothing is open.
    expect(
      good(
        play(
          [
            [0, 0],
            [80, 0],
          ],
          { ref: '1' },
        ),
        basket(80, 0),
        basket(80, 0.5),
      ).holes[0]!.basket.featureIndex,
    ).toBe(1);
    expect(
      good(
        play(
          [
            [0, 0],
            [80, 0],
          ],
          { ref: '1' },
        ),
        basket(80, 8),
        basket(80, -8.5, { ref: '1' }),
      ).holes[0]!.basket.featureIndex,
    ).toBe(2);
  });

  it('takes no tee or basket that names another hole', () => {
    const course = good(
      ...hole('2', 60),
      play(
        [
          [0, 0],
          [80, 50],
        ],
        { ref: '1' },
      ),
    );
    expect(course.holes[0]!.basket).toEqual({ position: at([80, 50]), ref: '1', featureIndex: -1 });
  });

  it('without ref takes that of its tee and basket, or a free number', () => {
    const course = good(
      play([
        [0, 0],
        [80, 0],
      ]),
      tee(0, 0, { ref: '07' }),
      basket(80, 0),
      play([
        [0, 40],
        [80, 40],
      ]),
      play(
        [
          [0, 80],
          [80, 80],
        ],
        { ref: '1' },
      ),
      play([
        [0, 120],
        [80, 120],
      ]),
    );
    expect(course.holes.map(({ ref, line: [start] }) => [ref, start])).toEqual([
      ['1', at([0, 80])],
      ['2', at([0, 40])],
      ['3', at([0, 120])],
      ['07', at([0, 0])],
    ]);
    expect(assumed(course)).toContain(
      'features[3]: hole lines without ref are numbered in file order: features[3] is hole 2, features[5] is hole 3; give them refs to change that',
    );
  });

  it('between a tee and a basket of different holes is reported', () => {
    expect(
      bad(
        play([
          [0, 0],
          [80, 0],
        ]),
        tee(0, 0, { ref: '4' }),
        basket(80, 0, { ref: '5' }),
      )[0],
    ).toEqual({
      path: 'features[0]',
      message: 'hole runs from tee 4 to basket 5, which name different holes: give the line a ref or mend theirs',
    });
  });

  it('is one line', () => {
    const multi = (parts: (readonly [number, number])[][]) =>
      feature(
        { type: 'MultiLineString', coordinates: parts.map(part => part.map(at)) },
        { disc_golf: 'hole', ref: '1' },
      );
    expect(
      good(
        multi([
          [
            [0, 0],
            [80, 0],
          ],
        ]),
      ).holes,
    ).toHaveLength(1);
    expect(
      theProblem(
        ...hole('2'),
        multi([
          [
            [0, 0],
            [40, 0],
          ],
          [
            [40, 0],
            [80, 0],
          ],
        ]),
      ),
    ).toBe('features[3].geometry: hole 1 must be one LineString from tee to basket, not 2 parts: draw it so');
    expect(theProblem(...hole('2'), point([0, 0], { disc_golf: 'hole', ref: '1' }))).toBe(
      'features[3].geometry: hole 1 must be one LineString from tee to basket: draw it so',
    );
  });

  it('loses positions that repeat', () => {
    expect(
      good(
        play(
          [
            [0, 0],
            [0, 0],
            [40, 9],
            [40, 9],
            [80, 0],
            [80, 0],
          ],
          { ref: '1' },
        ),
      ).holes[0]!.line,
    ).toEqual([at([0, 0]), at([40, 9]), at([80, 0])]);
  });
});
