import { describe, expect, it } from 'vitest';
import {
  absoluteOf,
  biasOf,
  borrowing,
  coveredOf,
  FIFTH_GENERATOR,
  floorOf,
  recover,
  rmsOf,
  SIXTH_GENERATOR,
  slipShifts,
} from './fit-trials.ts';

// The quick version of tests/bench/fit-recovery.ts (docs/fit.md), on players the fit was never set on. Bars: the project's own
// requirement; where so few players cannot tell, wider by about two standard errors of this test [C] binomial, √(2·112).
describe.each([
  { g: FIFTH_GENERATOR, noise: 0.6 },
  { g: SIXTH_GENERATOR, noise: 1.6 },
])('16 players of the $g.name generator at 20 throws, scatter × $noise', ({ g, noise }) => {
  const recovery = recover(g, 16, 20, noise);

  it('release speed within 2 % (rms), hardly biased', () => {
    expect(rmsOf(recovery.speed)).toBeLessThan(0.02);
    expect(Math.abs(biasOf(recovery.speed))).toBeLessThan(0.005);
  });

  it('mean distance: bias within 1 m, error no more than a tenth over that of a plain mean of the throws', () => {
    expect(Math.abs(biasOf(recovery.distance))).toBeLessThan(0.5);
    expect(rmsOf(recovery.distance)).toBeLessThan(1.1 * floorOf(recovery.distance) + 0.1);
    expect(absoluteOf(recovery.distance)).toBeLessThan(rmsOf(recovery.distance));
  });

  it('90 % intervals hold the truth in 85 to 95 of 100, give or take 5 for so few players', () => {
    for (const sums of [recovery.speed, recovery.distance, recovery.finish, recovery.stability, recovery.best]) {
      expect(coveredOf(sums)).toBeGreaterThanOrEqual(0.8);
      expect(coveredOf(sums)).toBeLessThanOrEqual(1);
    }
  });
});

describe('one grip slip and borrowing, on players never set on', () => {
  it('a slip among 20 throws moves no mean by more than 1 %', () => {
    for (const shift of slipShifts(FIFTH_GENERATOR, 6, 20, 1)) expect(Math.abs(shift)).toBeLessThan(0.01);
  });

  it('at 3 throws borrowing beats the disc alone and the plain mean, against throws held back', () => {
    const { borrowed, alone, plain, floor } = borrowing(SIXTH_GENERATOR, 12, 3, 1);
    expect(borrowed).toBeLessThan(alone);
    expect(borrowed).toBeLessThan(plain);
    expect(borrowed).toBeGreaterThan(0.5 * floor);
  });
});
