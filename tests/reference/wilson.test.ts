import { describe, expect, it } from 'vitest';
import { wilsonInterval } from '../../core/player/wilson-interval.ts';

// [C] computed from the closed form of Wilson, J. Am. Stat. Assoc. 22 (1927) 209–212, z = 1.959964, to three digits
describe('Wilson 95 % interval', () => {
  it.each([
    { makes: 8, attempts: 10, low: 0.49, high: 0.943 },
    { makes: 24, attempts: 30, low: 0.627, high: 0.905 },
    { makes: 80, attempts: 100, low: 0.711, high: 0.867 },
    { makes: 0, attempts: 10, low: 0, high: 0.278 },
    { makes: 10, attempts: 10, low: 0.722, high: 1 },
  ])('$makes of $attempts is $low to $high', ({ makes, attempts, low, high }) => {
    const interval = wilsonInterval(makes, attempts);
    expect(Math.abs(interval.low - low)).toBeLessThanOrEqual(0.0005);
    expect(Math.abs(interval.high - high)).toBeLessThanOrEqual(0.0005);
  });

  it('swaps its ends with makes and misses (symmetry of the formula)', () => {
    for (const makes of [0, 3, 7, 19]) {
      const one = wilsonInterval(makes, 20);
      const other = wilsonInterval(20 - makes, 20);
      expect(Math.abs(one.low - (1 - other.high))).toBeLessThanOrEqual(1e-12);
    }
  });

  it.each([
    [3, 2],
    [-1, 2],
    [0, 0],
    [Number.NaN, 5],
  ])('refuses %s of %s', (makes, attempts) => expect(() => wilsonInterval(makes, attempts)).toThrow(RangeError));
});
