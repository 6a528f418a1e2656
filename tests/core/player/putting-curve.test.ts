import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitPutting, makeChance, puttingInterval, windMakeFactor } from '../../../core/player/putting-curve.ts';
import { randomOf } from './synthetic-player.ts';

const rowsOf = fc.array(
  fc
    .record({
      distance_m: fc.double({ min: 0, max: 40, noNaN: true }),
      attempts: fc.integer({ min: 1, max: 200 }),
      share: fc.double({ min: 0, max: 1, noNaN: true }),
    })
    .map(({ distance_m, attempts, share }) => ({ distance_m, attempts, makes: Math.round(share * attempts) })),
  { maxLength: 8 },
);

describe('putting curve', () => {
  it('never rises with distance, stays in [0, 1] and starts near 1, whatever the log', () => {
    fc.assert(
      fc.property(rowsOf, rows => {
        const curve = fitPutting(rows);
        let before = 1;
        for (let d = 0; d <= 80; d += 0.5) {
          const p = makeChance(curve, d);
          expect(p).toBeGreaterThanOrEqual(0);
          expect(p).toBeLessThanOrEqual(before);
          before = p;
        }
        expect(makeChance(curve, 0)).toBeGreaterThan(0.98);
      }),
      { seed: 11, numRuns: 60 },
    );
  });

  it('without a log is the stated default: half from about 6 m, marked predicted', () => {
    const curve = fitPutting([]);
    expect(curve.basis).toBe('predicted');
    expect(Math.abs(makeChance(curve, 6) - 0.52)).toBeLessThanOrEqual(0.02); // regression: the assumed default
  });

  it('marks a short log borrowed and a long one measured', () => {
    expect(fitPutting([{ distance_m: 5, attempts: 29, makes: 15 }]).basis).toBe('borrowed');
    expect(fitPutting([{ distance_m: 5, attempts: 30, makes: 15 }]).basis).toBe('measured');
  });

  it('finds a known curve again from 200 putts at each distance', () => {
    const truth = { floor: 0.002, ceiling: 0.995, half_m: 8, scale_m: 1.8 };
    const { uniform } = randomOf(4);
    const errors: number[] = [];
    for (let log = 0; log < 20; log++) {
      const rows = [2, 4, 6, 8, 10, 14].map(distance_m => {
        const p = makeChance(truth, distance_m);
        let makes = 0;
        for (let i = 0; i < 200; i++) if (uniform() < p) makes++;
        return { distance_m, attempts: 200, makes };
      });
      const curve = fitPutting(rows);
      for (const { distance_m } of rows) errors.push(makeChance(curve, distance_m) - makeChance(truth, distance_m));
    }
    const rms = Math.sqrt(errors.reduce((s, e) => s + e * e, 0) / errors.length);
    const bias = errors.reduce((s, e) => s + e, 0) / errors.length;
    // [C] binomial standard error of one row is at most √(0.25/200) = 0.035; a curve over six rows must do better
    expect(rms).toBeLessThan(0.025);
    expect(Math.abs(bias)).toBeLessThan(0.01);
  });

  it('leans on the log as it grows', () => {
    const at = (attempts: number) =>
      makeChance(fitPutting([{ distance_m: 10, attempts, makes: Math.round(0.6 * attempts) }]), 10);
    expect(at(5)).toBeGreaterThan(makeChance(fitPutting([]), 10));
    expect(Math.abs(at(2000) - 0.6)).toBeLessThanOrEqual(0.01);
    expect(Math.abs(at(5) - 0.6)).toBeGreaterThan(Math.abs(at(200) - 0.6));
  });

  it('falls with wind and never rises', () => {
    for (const d of [1, 5, 10, 30]) {
      expect(windMakeFactor(0, d)).toBe(1);
      for (let w = 0; w < 20; w++) expect(windMakeFactor(w + 1, d)).toBeLessThan(windMakeFactor(w, d));
    }
    for (let d = 0; d < 40; d++) expect(windMakeFactor(6, d + 1)).toBeLessThanOrEqual(windMakeFactor(6, d));
  });

  it('gives a row its interval', () => {
    // [C] Wilson's closed form
    const { rate, low, high } = puttingInterval({ distance_m: 5, attempts: 10, makes: 8 });
    expect(rate).toBe(0.8);
    expect(Math.abs(low - 0.49)).toBeLessThanOrEqual(0.0005);
    expect(Math.abs(high - 0.943)).toBeLessThanOrEqual(0.0005);
  });

  it('refuses impossible rows', () => {
    expect(() => fitPutting([{ distance_m: 5, attempts: 2, makes: 3 }])).toThrow(RangeError);
    expect(() => makeChance(fitPutting([]), -1)).toThrow('distance_m');
  });
});
