import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bearing_deg, turn_deg } from '../../../core/geometry/bearing.ts';
import { localFrame, toLocal, toLonLat } from '../../../core/geometry/local-frame.ts';

describe('local frame', () => {
  it('comes back from degrees to the same metres within 1e-6 (two directions of our own formula, property)', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -180, max: 180, noNaN: true }),
        fc.double({ min: -80, max: 80, noNaN: true }),
        fc.double({ min: -2000, max: 2000, noNaN: true }),
        fc.double({ min: -2000, max: 2000, noNaN: true }),
        (lon, lat, x, y) => {
          const frame = localFrame(lon, lat);
          const back = toLocal(frame, toLonLat(frame, [x, y]));
          expect(Math.hypot(back[0] - x, back[1] - y)).toBeLessThan(1e-6);
        },
      ),
      { seed: 11 },
    );
  });

  it('puts x east and y north, on both sides of the antimeridian (by definition of the frame)', () => {
    const frame = localFrame(179.9999, -17);
    expect(toLocal(frame, [-179.9999, -17])[0]).toBeGreaterThan(21);
    expect(toLocal(frame, [-179.9999, -17])[0]).toBeLessThan(22);
    expect(toLocal(frame, [179.9999, -16.999])[1]).toBeGreaterThan(110);
    expect(toLonLat(frame, [30, 0])[0]).toBeLessThan(-179.9);
  });

  it('refuses what has no place, naming the value', () => {
    expect(() => localFrame(0, 89.5)).toThrow(/originLat_deg.*89.5/);
    expect(() => localFrame(Number.NaN, 0)).toThrow(/originLon_deg.*NaN/);
    expect(() => toLocal(localFrame(0, 0), [0, Number.POSITIVE_INFINITY])).toThrow(RangeError);
    expect(() => toLonLat(localFrame(0, 0), [Number.NaN, 0])).toThrow(RangeError);
  });
});

describe('bearings', () => {
  it.each([
    [[0, 1], 0],
    [[1, 0], 90],
    [[0, -1], 180],
    [[-1, 0], 270],
    [[-1, 1], 315],
  ] as const)('towards %o is %d° (clockwise from north, by definition)', (to, want) => {
    expect(bearing_deg([0, 0], to)).toBeCloseTo(want, 12);
  });

  it('turns right positive, the short way round (by definition)', () => {
    expect(turn_deg(350, 10)).toBe(20);
    expect(turn_deg(10, 350)).toBe(-20);
    expect(turn_deg(0, 180)).toBe(180);
  });

  it('has none between a point and itself', () => {
    expect(() => bearing_deg([1, 2], [1, 2])).toThrow(RangeError);
  });
});
