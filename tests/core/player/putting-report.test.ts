import { describe, expect, it } from 'vitest';
import { puttingBand } from '../../../core/player/putting-band.ts';
import { makeChance } from '../../../core/player/putting-curve.ts';
import { PuttingReportSchema, puttingReport } from '../../../core/player/putting-report.ts';

const ROWS = [
  { distance_m: 3, attempts: 40, makes: 38 },
  { distance_m: 10, attempts: 20, makes: 8, date: '2026-05-01' },
  { distance_m: 10.01, attempts: 10, makes: 3 },
  { distance_m: 3, attempts: 10, makes: 10 },
  { distance_m: 25, attempts: 5, makes: 0 },
];

describe('the putting report', () => {
  const report = puttingReport('P', ROWS);

  it('keeps its schema, adds up by distance, nearest first', () => {
    PuttingReportSchema.parse(JSON.parse(JSON.stringify(report)));
    expect(report.rows).toEqual(ROWS);
    expect(report.byDistance.map(({ distance_m, attempts, makes }) => [distance_m, attempts, makes])).toEqual([
      [3, 50, 48],
      [10, 20, 8],
      [10.01, 10, 3],
      [25, 5, 0],
    ]);
  });

  it('parts the circles at 10 m and 20 m, the edge belonging to the inner one', () => {
    // Official Rules 806.01 (10 m); the 20 m ring is a convention of statistics
    expect(report.circles.map(({ name, attempts, makes }) => [name, attempts, makes])).toEqual([
      ['C1', 70, 56],
      ['C2', 10, 3],
      ['beyond', 5, 0],
    ]);
    const few = puttingReport('P', [{ distance_m: 4, attempts: 10, makes: 8 }]);
    // Wilson 95 % of 8/10: 0.490–0.943 (reference table, computed)
    const { low, high } = few.circles[0]!.measured!;
    expect(Math.abs(low - 0.49)).toBeLessThan(0.0006);
    expect(Math.abs(high - 0.943)).toBeLessThan(0.0006);
    expect(few.circles[1]!.measured).toBeNull();
    expect(few.notes).toEqual([
      expect.stringMatching(/^10 putts: fewer than 30/),
      expect.stringMatching(/all putts are from one distance/),
    ]);
  });

  it('an empty log is said to be assumed', () => {
    const empty = puttingReport('P', []);
    expect(empty.curve.basis).toBe('predicted');
    expect(empty.notes).toEqual([expect.stringMatching(/^no putts logged/)]);
    expect(empty.line.length).toBeGreaterThan(10);
  });
});

describe('the interval of the curve', () => {
  const distances_m = Array.from({ length: 41 }, (_, i) => i / 2);

  it('holds the curve, falls with distance and stays in [0, 1], whatever the log', () => {
    for (const rows of [
      [],
      ROWS,
      [{ distance_m: 8, attempts: 1, makes: 0 }],
      [{ distance_m: 0, attempts: 500, makes: 500 }],
    ]) {
      const band = puttingBand(rows, distances_m);
      band.forEach((at, i) => {
        expect(at.low).toBeGreaterThanOrEqual(0);
        expect(at.low).toBeLessThanOrEqual(at.chance);
        expect(at.chance).toBeLessThanOrEqual(at.high);
        expect(at.high).toBeLessThanOrEqual(1);
        if (i > 0) {
          expect(at.low).toBeLessThanOrEqual(band[i - 1]!.low);
          expect(at.high).toBeLessThanOrEqual(band[i - 1]!.high);
        }
      });
    }
  });

  it('narrows as the log grows', () => {
    const widthOf = (times: number) => {
      const rows = [4, 7, 11].map((distance_m, i) => ({
        distance_m,
        attempts: 10 * times,
        makes: [9, 6, 2][i]! * times,
      }));
      const [at] = puttingBand(rows, [8]);
      return at!.high - at!.low;
    };
    // a hundred times the tries: a tenth of the width, and a little less narrow for the prior
    expect(widthOf(100) / widthOf(1)).toBeLessThan(0.2);
    expect(widthOf(100) / widthOf(1)).toBeGreaterThan(0.08);
  });

  it('holds the true chance of invented putters about as often as it says', () => {
    // [C] 300 putters drawn from known curves, 5 distances × 20 tries; seeded generator as above; 95 % ± 3 standard errors
    let state = 99;
    const uniform = () => {
      state = (state * 1103515245 + 12345) % 2147483648;
      return (state + 0.5) / 2147483648;
    };
    let inside = 0;
    let looked = 0;
    for (let putter = 0; putter < 300; putter++) {
      const truth = { floor: 0.003, ceiling: 0.992, half_m: 4 + 6 * uniform(), scale_m: 1.4 + 1.4 * uniform() };
      const rows = [3, 5, 7, 9, 12].map(distance_m => {
        const chance = makeChance(truth, distance_m);
        return { distance_m, attempts: 20, makes: Array.from({ length: 20 }, uniform).filter(u => u < chance).length };
      });
      for (const { distance_m, low, high } of puttingBand(rows, [4, 6, 8, 10])) {
        const chance = makeChance(truth, distance_m);
        looked++;
        if (chance >= low && chance <= high) inside++;
      }
    }
    expect(inside / looked).toBeGreaterThan(0.92);
    expect(inside / looked).toBeLessThan(0.99);
  });
});
