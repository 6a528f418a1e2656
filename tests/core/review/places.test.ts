import { describe, expect, it } from 'vitest';
import { localFrame, toLonLat } from '../../../core/geometry/local-frame.ts';
import { holeLies } from '../../../core/review/hole-lies.ts';
import { placeOf } from '../../../core/review/place-of.ts';
import { area, boxRing } from '../strategy/sketched-holes.ts';
import { bareHole } from '../strategy/small-world.ts';

const straight = bareHole({ basket: [0, 100] });
const dogleg = bareHole({
  basket: [60, 80],
  line: [
    [0, 0],
    [0, 80],
    [60, 80],
  ],
});

describe('where a written place is', () => {
  // by hand: the hole runs north, right of it is east; asin(3/5) round the basket gives a 3-4-5 triangle
  it.each([
    { what: 'on the line, before the basket', map: straight, place: { toBasket_m: 10 }, want: [0, 90] },
    { what: 'past the basket', map: straight, place: { toBasket_m: 10, isBeyond: true }, want: [0, 110] },
    { what: 'right of the line', map: straight, place: { toBasket_m: 5, side_m: 3 }, want: [3, 96] },
    { what: 'left of the line', map: straight, place: { toBasket_m: 5, side_m: -3 }, want: [-3, 96] },
    { what: 'past and right', map: straight, place: { toBasket_m: 5, side_m: 3, isBeyond: true }, want: [3, 104] },
    { what: 'all aside', map: straight, place: { toBasket_m: 5, side_m: 9 }, want: [5, 100] },
    { what: 'behind the tee', map: straight, place: { toBasket_m: 120 }, want: [0, -20] },
    { what: 'in the basket', map: straight, place: { toBasket_m: 0 }, want: [0, 100] },
    { what: 'on the last leg of a dogleg', map: dogleg, place: { toBasket_m: 20 }, want: [40, 80] },
    // 100 m from the basket on the first leg: √(100² − 60²) = 80 m south of the bend
    { what: 'on the first leg of a dogleg', map: dogleg, place: { toBasket_m: 100 }, want: [0, 0] },
  ])('$what', ({ map, place, want }) => {
    const { at, assumed } = placeOf(map, place);
    expect(Math.hypot(at[0] - want[0]!, at[1] - want[1]!)).toBeLessThan(1e-9);
    expect(assumed).toMatch(/line/);
  });

  it('a position is taken as it is', () => {
    const lonLat = toLonLat(localFrame(straight.origin[0], straight.origin[1]), [12, 34]);
    const { at, assumed } = placeOf(straight, { lonLat: [...lonLat] });
    expect(Math.hypot(at[0] - 12, at[1] - 34)).toBeLessThan(1e-6);
    expect(assumed).toBeNull();
    expect(placeOf(straight, { east_m: 1, north_m: 2 })).toEqual({ at: [1, 2], assumed: null });
  });
});

describe('where play goes on', () => {
  const water = bareHole({ basket: [0, 100], outOfBounds: [area(boxRing(-40, 40, 40, 60))] });
  const withDrop = { ...water, dropZones: [{ source: 'features[1]', assumed: [], at: [7, 61] as const }] };
  const rest = { east_m: 0, north_m: 50 };
  const next = (map: typeof water, t: object) => holeLies(map, [{ rest, ...t }])[0]!;

  it.each([
    // the straight way from the tee leaves bounds at 40 m; it is looked at every half metre
    {
      what: 'out-of-bounds, place in the water',
      map: water,
      t: { penalties: [{ kind: 'out-of-bounds' }] },
      want: [0, 39.5],
    },
    {
      what: 'lie written',
      map: water,
      t: { penalties: [{ kind: 'out-of-bounds' }], lie: { east_m: 3, north_m: 38 } },
      want: [3, 38],
    },
    { what: 'lost', map: water, t: { penalties: [{ kind: 'lost' }] }, want: [0, 0] },
    { what: 'unplayable', map: water, t: { penalties: [{ kind: 'unplayable' }] }, want: [0, 0] },
    { what: 'mando with a drop zone', map: withDrop, t: { penalties: [{ kind: 'mando' }] }, want: [7, 61] },
    { what: 'mando without', map: water, t: { penalties: [{ kind: 'mando' }] }, want: [0, 0] },
    {
      what: 'hazard: played where it lies',
      map: water,
      t: { rest: { east_m: 1, north_m: 30 }, penalties: [{ kind: 'hazard' }] },
      want: [1, 30],
    },
  ] as const)('$what (rules 804.01, 805.03, 806.02, 806.05)', ({ map, t, want }) => {
    const lie = next(map, t);
    expect(Math.hypot(lie.next![0] - want[0]!, lie.next![1] - want[1]!)).toBeLessThan(0.51);
  });

  it('says what was assumed, and nothing when all was written', () => {
    expect(next(water, { penalties: [{ kind: 'lost' }] }).assumed).toHaveLength(1);
    expect(next(water, { penalties: [{ kind: 'out-of-bounds' }], lie: { east_m: 3, north_m: 38 } }).assumed).toEqual(
      [],
    );
  });

  it('chains: the next throw starts where the last went on, a throw again starts from the tee', () => {
    const lies = holeLies(water, [
      { penalties: [{ kind: 'lost' }] },
      { rest: { east_m: 0, north_m: 70 } },
      { holed: true },
    ]);
    expect(lies.map(lie => lie.fromTee)).toEqual([true, true, false]);
    expect(lies[2]!.from).toEqual([0, 70]);
    expect(lies[2]!.next).toBeNull();
  });
});
