import { describe, expect, it } from 'vitest';
import type { PuttingCurve } from '../../../core/player/fitted-player.ts';
import { makeChance } from '../../../core/player/putting-curve.ts';
import { puttFrom, puttingCell, puttingDistribution, puttingValue } from '../../../core/strategy/putting-value.ts';
import { randomOf } from '../player/synthetic-player.ts';

/** Two invented putters: a steady one and a poor one. */
const STEADY: PuttingCurve = {
  floor: 0.002,
  ceiling: 0.995,
  half_m: 9.5,
  scale_m: 2,
  attempts: 500,
  basis: 'measured',
};
const POOR: PuttingCurve = { ...STEADY, ceiling: 0.985, half_m: 4, scale_m: 1.4 };
const CURVES = [
  { name: 'steady', curve: STEADY },
  { name: 'poor', curve: POOR },
];
const DISTANCES_M = [0, 1.5, 3, 6, 9.5, 12, 18, 25];

// The model (strategy design): V(d) = 1 + (1 − p(d))·(0.6·V(1.5) + 0.4·V(2 + d/4)).
/** Solved by hand: misses run down to 8/3 m, where V depends on itself and V(1.5) only; all is linear in V(1.5). */
function solved(curve: PuttingCurve): (distance_m: number) => number {
  type Line = readonly [constant: number, perNear: number];
  const line = (d: number, depth: number): Line => {
    const miss = 1 - makeChance(curve, d);
    if (depth === 0) return [1 / (1 - 0.4 * miss), (0.6 * miss) / (1 - 0.4 * miss)];
    const [c, n] = line(depth === 1 ? 8 / 3 : 2 + d / 4, depth - 1);
    return [1 + 0.4 * miss * c, 0.6 * miss + 0.4 * miss * n];
  };
  const [c, n] = line(1.5, 40);
  const near = c / (1 - n);
  return d => {
    const [constant, perNear] = line(d, 40);
    return constant + perNear * near;
  };
}

describe.each(CURVES)('the putting value of a $name putter', ({ curve }) => {
  const putting = puttingValue(curve);

  it('is the linear solution of the chain, to the 0.1 m table', () => {
    const want = solved(curve);
    for (const d of DISTANCES_M) expect(Math.abs(puttFrom(putting, d) - want(d))).toBeLessThan(0.006);
  });

  it('is the mean of 20,000 putted-out holes', () => {
    const { uniform } = randomOf(31);
    for (const start of [4, 9, 15]) {
      let putts = 0;
      let squares = 0;
      const holes = 20_000;
      for (let i = 0; i < holes; i++) {
        let n = 1;
        for (let d = start; uniform() > makeChance(curve, d); n++) d = uniform() < 0.6 ? 1.5 : 2 + d / 4;
        putts += n;
        squares += n * n;
      }
      const mean = putts / holes;
      const error = Math.sqrt((squares / holes - mean * mean) / holes);
      expect(Math.abs(puttFrom(putting, start) - mean)).toBeLessThan(4 * error + 0.006);
    }
  });

  it('never falls with distance, and its make chance never rises', () => {
    for (let i = 1; i < putting.value.length; i++) {
      expect(putting.value[i]).toBeGreaterThanOrEqual(putting.value[i - 1]);
      expect(putting.make[i]).toBeLessThanOrEqual(putting.make[i - 1]);
    }
    expect(putting.value[0]).toBeCloseTo(1 + (1 - curve.ceiling) * puttFrom(putting, 1.8), 2);
  });

  it('agrees with its distribution: chances rise to 1 and Σ (1 − F) is the value', () => {
    const layers = puttingDistribution(putting, 60);
    for (const d of DISTANCES_M) {
      const cell = puttingCell(putting, d);
      let mean = 1;
      layers.forEach((layer, n) => {
        expect(layer[cell]).toBeLessThanOrEqual(1);
        if (n > 0) expect(layer[cell]).toBeGreaterThanOrEqual(layers[n - 1][cell]);
        mean += 1 - layer[cell];
      });
      expect(layers[0][cell]).toBe(putting.make[cell]);
      expect(layers.at(-1)?.[cell]).toBeCloseTo(1, 6);
      // identity: mean of a count is the sum of its tail chances, the first of which is 1
      expect(mean).toBeCloseTo(putting.value[cell], 6);
    }
  });
});
