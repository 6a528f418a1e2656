import { describe, expect, it } from 'vitest';
import { closeRangePar, derivePar } from '../../../core/geometry/derive-par.ts';

describe('par by the close range method', () => {
  it.each([
    [120.0, 3],
    [120.1, 4],
    [192.0, 4],
    [192.1, 5],
    [264.0, 5],
    [264.1, 6],
  ])(
    '%d m with a 90 m tee throw and 30 m close range is par %d (by hand: R(1) 90, R(2) 162, R(3) 234)',
    (length, par) => {
      expect(closeRangePar(length, 90, 30)).toBe(par);
    },
  );

  it('makes 149.4 m a par 3 for an expert (published check pair of the method, 490 ft)', () => {
    expect(derivePar(149.4, 0)).toBe(3);
  });

  it('makes 149.4 m a par 5 for a novice of 1.8 D + c < 149.4 ≤ 2.6 D + c (published check pair; D 50, c 25 ours)', () => {
    expect(closeRangePar(149.4, 50, 25)).toBe(5);
  });

  it('counts 3 m of length for a metre of climb (common practice, no source)', () => {
    expect(derivePar(150, 0.5)).toBe(derivePar(151.5, 0));
    expect(derivePar(160, 0)).toBe(4);
    expect(derivePar(160, -12)).toBe(3);
  });

  it('is never under 3, and refuses what is no length', () => {
    expect(derivePar(20, -30)).toBe(3);
    expect(() => closeRangePar(Number.NaN, 90, 30)).toThrow(/effectiveLength_m/);
    expect(() => closeRangePar(100, 0, 30)).toThrow(/teeThrow_m/);
  });
});
