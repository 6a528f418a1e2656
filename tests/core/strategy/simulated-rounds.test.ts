import { describe, expect, it } from 'vitest';
import { makeDayLibraries } from '../../../core/strategy/day-libraries.ts';
import { chiSquareAt, upperTail } from '../../bench/chi-square.ts';
import { sampleMean, shareWithin, simulateRounds, worstFifth } from '../../bench/round-simulation.ts';
import { aDay } from './a-day.ts';
import { BAG, inventedPlayer } from './invented-player.ts';
import { elbow, overWater, shortOpen } from './sketched-holes.ts';

const ROUNDS = 1500;
const ALLOWED_A_HOLE = 0.03; // the allowance agreed for the stated expectation

describe('rounds of three holes played throw by throw as planned, with fresh scatter', () => {
  const player = inventedPlayer({ arm_mps: 23, discs: [BAG[0], BAG[1], BAG[3]] });
  const libraries = makeDayLibraries(player, aDay(3, 60), {}, 5, 1);
  const maps = [shortOpen(), elbow(), overWater()];
  const simulated = simulateRounds(maps, libraries, ROUNDS);
  const { holes, even, guard, push, target } = simulated;

  it('cost on average what the plan states, to three standard errors and 0.03 a hole', () => {
    for (const hole of holes) {
      const { mean, error } = sampleMean(hole.scores);
      expect(Math.abs(mean - hole.expectedThrows), hole.ref).toBeLessThan(ALLOWED_A_HOLE + 3 * error);
    }
  });

  it('have the scores the plan states: chi-square at that allowance, chance above 1 %', () => {
    let chances = [1];
    for (const { stated } of holes) {
      const next = new Array<number>(chances.length + stated.length).fill(0);
      for (const [total, chance] of chances.entries())
        for (const [i, p] of stated.entries()) next[total + i + 1] += chance * p;
      chances = next;
    }
    const counts = chances.map((_, throws) => even.filter(total => total === throws).length);
    expect(counts.reduce((a, b) => a + b)).toBe(ROUNDS);
    expect(chiSquareAt(counts, chances, ALLOWED_A_HOLE * holes.length).chance).toBeGreaterThan(0.01);
  });

  it('reach the target more often with push than with even, and about as often as it says', () => {
    const gain = sampleMean(push.map((total, r) => Number(total <= target) - Number(even[r] <= target)));
    expect(gain.mean).toBeGreaterThan(-2 * gain.error);
    for (const [totals, stated] of [
      [push, simulated.statedPush],
      [even, simulated.statedEven],
    ] as const) {
      const error = Math.sqrt(0.25 / ROUNDS);
      // a mean 0.03 a hole off moves the chance by as much at most, as its density is below one a throw
      expect(Math.abs(shareWithin(totals, target) - stated)).toBeLessThan(3 * error + ALLOWED_A_HOLE * holes.length);
    }
    expect(simulated.statedPush).toBeGreaterThanOrEqual(simulated.statedEven);
  });

  it('end less badly with guard than with even in the worst fifth', () => {
    expect(worstFifth(guard)).toBeLessThanOrEqual(worstFifth(even) + 0.02);
  });
});

describe('the chi-square test', () => {
  it.each([
    // published tables of the chi-square distribution (upper 5 % and 1 % points)
    { freedom: 3, x: 7.815, chance: 0.05 },
    { freedom: 5, x: 11.07, chance: 0.05 },
    { freedom: 10, x: 23.209, chance: 0.01 },
    { freedom: 30, x: 43.773, chance: 0.05 },
  ])('has $chance above $x on $freedom', ({ freedom, x, chance }) => {
    expect(Math.abs(upperTail(x, freedom) - chance)).toBeLessThan(0.002);
  });

  it('passes counts of the stated chances, and of chances moved by the allowance, and fails others', () => {
    const chances = [0, 0.1, 0.4, 0.3, 0.15, 0.05];
    const exactly = chances.map(chance => chance * 10_000);
    expect(chiSquareAt(exactly, chances, 0).chance).toBeGreaterThan(0.99);
    const moved = chances.map((chance, i) => 10_000 * (0.95 * chance + 0.05 * (chances[i - 1] ?? 0)));
    moved[5] += 10_000 * 0.05 * 0.05; // what leaves at the end stays there
    expect(chiSquareAt(moved, chances, 0.05).chance).toBeGreaterThan(0.9);
    expect(chiSquareAt(moved, chances, 0.01).chance).toBeLessThan(0.01);
    expect(chiSquareAt([0, 1500, 3500, 2500, 1500, 1000], chances, 0.05).chance).toBeLessThan(0.001);
  });
});
