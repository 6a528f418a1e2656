import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chooseBag } from '../../../core/strategy/choose-bag.ts';
import type { HolePlan, ShotReport } from '../../../core/strategy/plan-report.ts';

/** A hole as far as the bag looks: throws with each disc from the tee. */
function hole(throws: readonly number[]): HolePlan {
  const [choice, ...alternatives] = throws
    .map((expectedThrows, i) => ({ discId: `d${i}`, disc: `Disc ${i}`, expectedThrows }) as ShotReport)
    .sort((a, b) => a.expectedThrows - b.expectedThrows);
  return { choice, alternatives, next: [] } as unknown as HolePlan;
}

const total = (holes: readonly (readonly number[])[], bag: readonly number[]) =>
  holes.reduce((sum, throws) => sum + Math.min(...bag.map(i => throws[i])), 0);

function subsets(of: number, size: number): number[][] {
  if (size === 0) return [[]];
  if (of < size) return [];
  return [...subsets(of - 1, size), ...subsets(of - 1, size - 1).map(rest => [...rest, of - 1])];
}

describe('chooseBag', () => {
  const tables = fc.array(fc.array(fc.double({ min: 2, max: 5, noNaN: true }), { minLength: 6, maxLength: 6 }), {
    minLength: 1,
    maxLength: 9,
  });

  it('is within 0.1 throws a hole of the best of all bags, for any table (exhaustive search)', () => {
    fc.assert(
      fc.property(tables, fc.integer({ min: 1, max: 5 }), (holes, count) => {
        const bag = chooseBag(holes.map(hole), count).carried.map(disc => Number(disc.discId.slice(1)));
        const least = Math.min(...subsets(6, count).map(subset => total(holes, subset)));
        expect(bag).toHaveLength(count);
        // greedy with exchange is no exact method: own bar
        expect(total(holes, bag) - least).toBeLessThan(0.1 * holes.length + 1e-9);
      }),
      { seed: 5, numRuns: 300 },
    );
  });

  it('a larger bag never costs throws, and no disc is worth less than nothing', () => {
    fc.assert(
      fc.property(tables, holes => {
        let before = Number.POSITIVE_INFINITY;
        for (let count = 1; count <= 6; count++) {
          const { carried } = chooseBag(holes.map(hole), count);
          const now = total(
            holes,
            carried.map(disc => Number(disc.discId.slice(1))),
          );
          expect(now).toBeLessThanOrEqual(before + 1e-9);
          for (const { worth } of carried) expect(worth).toBeGreaterThanOrEqual(-1e-9);
          before = now;
        }
      }),
      { seed: 6, numRuns: 200 },
    );
  });

  it('says what the best disc left at home would have saved', () => {
    const choice = chooseBag([hole([3, 2, 4]), hole([2, 3, 2.5])], 1);
    // by hand: disc 0 costs 5 in all, disc 1 5, disc 2 6.5; the first of equals is carried, the other would save 1
    expect(choice.carried.map(disc => disc.discId)).toEqual(['d0']);
    expect(choice.bestLeftHome).toEqual({ discId: 'd1', disc: 'Disc 1', worth: 1 });
  });

  it('refuses a count that is no number of discs', () => {
    expect(() => chooseBag([hole([3])], 0)).toThrow(RangeError);
  });
});
