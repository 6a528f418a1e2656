import { describe, expect, it } from 'vitest';
import { inverseNormal, normalSamples, SAMPLE_DIMENSIONS } from '../../../core/flight/normal-samples.ts';

/** Standard normal distribution function by its Taylor series about 0 (own derivation), good to 1e-14 for |z| < 6. */
function normalShare(z: number): number {
  let term = z;
  let sum = z;
  for (let n = 1; n < 200; n++) {
    term *= (z * z) / (2 * n + 1);
    sum += term;
  }
  return 0.5 + (Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI)) * sum;
}

describe('the normal quantile', () => {
  it.each([
    { p: 0.975, want: 1.959964 },
    { p: 0.995, want: 2.575829 },
    { p: 0.9, want: 1.281552 },
    { p: 0.95, want: 1.644854 },
    { p: 0.99, want: 2.326348 },
    { p: 0.5, want: 0 },
  ])('at $p is $want (tables of the standard normal, NIST and ISO, six places)', ({ p, want }) => {
    expect(Math.abs(inverseNormal(p) - want)).toBeLessThan(5e-7);
    expect(Math.abs(inverseNormal(1 - p) + want)).toBeLessThan(5e-7);
  });

  it('undoes the distribution function from the far tails to the middle', () => {
    for (let z = -5; z <= 5; z += 0.01) expect(Math.abs(inverseNormal(normalShare(z)) - z)).toBeLessThan(1e-6);
  });

  it.each([0, 1, -0.1, 1.1, Number.NaN])('refuses the probability %d', p => {
    expect(() => inverseNormal(p)).toThrow(RangeError);
  });
});

describe('normal samples', () => {
  const column = (points: Float64Array, d: number) =>
    Array.from({ length: points.length / SAMPLE_DIMENSIONS }, (_, i) => points[i * SAMPLE_DIMENSIONS + d]);

  it.each([1, 2, 77, 123456])(
    'of seed %d fall one into each of 256 equal shares, in every dimension (Sobol 1967: a (t, s)-sequence)',
    seed => {
      const points = normalSamples(256, seed);
      for (let d = 0; d < SAMPLE_DIMENSIONS; d++) {
        const strata = column(points, d).map(z => Math.floor(normalShare(z) * 256));
        expect(new Set(strata).size).toBe(256);
      }
    },
  );

  it('fill the plane of the first two dimensions one to each 16 × 16 box (Sobol: t = 0 in two dimensions)', () => {
    const points = normalSamples(256, 5);
    const boxes = Array.from({ length: 256 }, (_, i) => {
      const [u, v] = [0, 1].map(d => Math.floor(normalShare(points[i * SAMPLE_DIMENSIONS + d]) * 16));
      return 16 * u + v;
    });
    expect(new Set(boxes).size).toBe(256);
  });

  it('are uncorrelated, of mean 0 and variance 1 (definition of independent standard normals)', () => {
    const points = normalSamples(4096, 9);
    const columns = Array.from({ length: SAMPLE_DIMENSIONS }, (_, d) => column(points, d));
    columns.forEach((a, i) => {
      expect(Math.abs(a.reduce((x, y) => x + y, 0) / a.length)).toBeLessThan(0.002);
      columns.forEach((b, j) => {
        const product = a.reduce((sum, x, k) => sum + x * b[k], 0) / a.length;
        expect(Math.abs(product - (i === j ? 1 : 0))).toBeLessThan(i === j ? 0.01 : 0.03);
      });
    });
  });

  it('are the same for the same seed, others for another, and longer sets begin with the shorter', () => {
    expect(normalSamples(64, 3)).toEqual(normalSamples(64, 3));
    expect(normalSamples(64, 3)).not.toEqual(normalSamples(64, 4));
    expect(normalSamples(128, 3).slice(0, 64 * SAMPLE_DIMENSIONS)).toEqual(normalSamples(64, 3));
    expect(normalSamples(64, -1)).not.toEqual(normalSamples(64, 1));
    expect(normalSamples(4096, 0).every(Number.isFinite)).toBe(true);
  });
});
