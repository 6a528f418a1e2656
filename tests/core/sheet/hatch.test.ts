import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { hatch } from '../../../core/sheet/drawing/hatch.ts';
import type { Place } from '../../../core/sheet/drawing/svg.ts';

type Segment = readonly [number, number, number, number];

function segments(data: string): Segment[] {
  return [...data.matchAll(/M(\S+) (\S+?)L(\S+) ([^M]+)/g)].map(
    match => match.slice(1, 5).map(Number) as unknown as Segment,
  );
}

const box = (x: number, y: number, w: number, h: number): Place[] => [
  [x, y],
  [x + w, y],
  [x + w, y + h],
  [x, y + h],
];

describe('hatching', () => {
  it('covers an area evenly: lines of all lengths times their spacing make up the area', () => {
    const lines = segments(hatch('out', [box(3, 4, 20, 12)], 40, 40));
    const length_mm = lines.reduce((sum, [ax, ay, bx, by]) => sum + Math.hypot(bx - ax, by - ay), 0);
    // [C] 20 × 12 mm of area over 1.25 mm of spacing: 192 mm, give or take a line at the edge
    expect(Math.abs(length_mm - 192)).toBeLessThanOrEqual(12);
  });

  it('leaves holes of an area white and stays inside the area', () => {
    const outer = box(2, 2, 30, 30);
    const inner = box(10, 10, 10, 10);
    for (const [ax, ay, bx, by] of segments(hatch('hazard', [outer, inner], 40, 40))) {
      for (const t of [0.02, 0.5, 0.98]) {
        const [x, y] = [ax + t * (bx - ax), ay + t * (by - ay)];
        expect(x > 1.99 && x < 32.01 && y > 1.99 && y < 32.01).toBe(true);
        expect(x > 10.02 && x < 19.98 && y > 10.02 && y < 19.98).toBe(false);
      }
    }
  });

  it('gives finite data of bounded size for areas of any size and shape', () => {
    const place = fc.tuple(
      fc.double({ min: -1e6, max: 1e6, noNaN: true }),
      fc.double({ min: -1e6, max: 1e6, noNaN: true }),
    );
    fc.assert(
      fc.property(fc.array(place, { minLength: 3, maxLength: 8 }), ring => {
        for (const kind of ['out', 'hazard', 'wood', 'solid', 'stems'] as const) {
          const data = hatch(kind, [ring], 30, 50);
          expect(data).not.toMatch(/NaN|Infinity|e[+-]/);
          expect(data.length).toBeLessThan(200_000);
        }
      }),
      { seed: 6, numRuns: 60 },
    );
  });
});
