import { describe, expect, it } from 'vitest';
import { windSd_mps } from '../../../core/air/gust.ts';

const sd = (speed_mps: number, gust_mps: number) => windSd_mps({ wind: { speed_mps, gust_mps } });

describe('scatter of the wind from throw to throw', () => {
  it('is a third of the gust above the mean in still air, less when the wind carries eddies past', () => {
    expect(sd(0, 3)).toBeCloseTo(1, 12);
    expect(sd(8, 11)).toBeLessThan(sd(4, 7));
    expect(sd(4, 7)).toBeLessThan(1);
  });
  it('has no step where the short form takes over', () => {
    const edge = (1e-3 * 68) / 5;
    expect(Math.abs(sd(edge * 0.999, edge * 0.999 + 3) - sd(edge * 1.001, edge * 1.001 + 3))).toBeLessThanOrEqual(1e-6);
  });
  it('refuses a gust below the mean', () => expect(() => sd(5, 4)).toThrow(/speed_mps ≤ gust_mps, got 5 and 4/));
});
