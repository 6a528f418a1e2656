import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { describe, expect, it } from 'vitest';
import { costOf } from '../../../core/strategy/attitude.ts';
import { type HoleOptions, pushRound } from '../../../core/strategy/push-round.ts';

// Two ways to play each hole: safe is 3 in seven of ten, bold makes more twos and more fives. Invented chances.
const SAFE = [0, 0.1, 0.7, 0.2];
const BOLD = [0, 0.32, 0.36, 0.2, 0.12];
const HOLE: HoleOptions = [SAFE, BOLD];
const mean = (scores: readonly number[]) => scores.reduce((sum, chance, i) => sum + chance * (i + 1), 0);

describe('push', () => {
  it('agrees with enumerating every pure plan and score on two holes, and beats them by looking at the score', () => {
    // [C] computed by hand enumeration: bold first, then safe when in need of 3 or fewer is covered, see the loops
    const target = 5;
    let best = 0;
    for (const first of HOLE) {
      let reached = 0;
      first.forEach((chance, i) => {
        const left = target - (i + 1);
        const within = (scores: readonly number[]) => scores.reduce((sum, p, k) => (k + 1 <= left ? sum + p : sum), 0);
        reached += chance * Math.max(...HOLE.map(within));
      });
      best = Math.max(best, reached);
    }
    expect(pushRound([HOLE, HOLE], target).chance).toBeCloseTo(best, 12);
  });

  it('reaches its stated chance in 20,000 rounds played by its own rule, and more often than the even plan', () => {
    const holes = Array.from({ length: 9 }, () => HOLE);
    const target = 25;
    const pushed = pushRound(holes, target);
    const rng = xoroshiro128plus(7);
    const uniform = () => (rng.next() >>> 0) / 2 ** 32;
    const draw = (scores: readonly number[]) => {
      let u = uniform();
      for (let i = 0; i < scores.length; i++) {
        u -= scores[i];
        if (u < 0) return i + 1;
      }
      return scores.length;
    };
    const rounds = 20_000;
    let made = 0;
    let even = 0;
    for (let round = 0; round < rounds; round++) {
      let left = target;
      for (let h = 0; h < holes.length; h++) {
        const chanceOf = (scores: readonly number[]) =>
          scores.reduce(
            (sum, p, i) => sum + (left - i - 1 >= 0 ? p * afterwards(holes.length - h - 1, left - i - 1) : 0),
            0,
          );
        left -= draw(chanceOf(BOLD) > chanceOf(SAFE) ? BOLD : SAFE);
      }
      if (left >= 0) made++;
      let total = 0;
      for (let h = 0; h < holes.length; h++) total += draw(SAFE);
      if (total <= target) even++;
    }
    const error = 3 * Math.sqrt(0.25 / rounds);
    expect(Math.abs(made / rounds - pushed.chance)).toBeLessThan(error);
    expect(Math.abs(even / rounds - pushed.chanceEven)).toBeLessThan(error);
    expect(pushed.chance).toBeGreaterThan(pushed.chanceEven);
  });

  const memo = new Map<string, number>();
  function afterwards(holes: number, left: number): number {
    const key = `${holes} ${left}`;
    const known = memo.get(key);
    if (known !== undefined) return known;
    const chance = pushRound(
      Array.from({ length: holes }, () => HOLE),
      left,
    ).chance;
    memo.set(key, chance);
    return chance;
  }

  it('never does worse than even, and its chance rises with the target', () => {
    const holes = Array.from({ length: 18 }, () => HOLE);
    const chances = [45, 48, 51, 54, 57, 60].map(target => pushRound(holes, target));
    for (const { chance, chanceEven } of chances) expect(chance).toBeGreaterThanOrEqual(chanceEven);
    for (let i = 1; i < chances.length; i++) expect(chances[i].chance).toBeGreaterThanOrEqual(chances[i - 1].chance);
  });
});

describe('guard', () => {
  it('adds what the variance of a hole adds to the mean of the worst fifth of a round', () => {
    // own derivation checked by convolution: 18 independent holes, one swapped from safe to bold
    const worstFifth = (holes: readonly (readonly number[])[]) => {
      let chances = [1];
      for (const scores of holes) {
        const next = new Array<number>(chances.length + scores.length).fill(0);
        for (const [so, chance] of chances.entries())
          for (const [i, p] of scores.entries()) next[so + i + 1] += chance * p;
        chances = next;
      }
      let left = 0.2;
      let sum = 0;
      for (let total = chances.length - 1; total >= 0 && left > 0; total--) {
        const take = Math.min(left, chances[total]);
        sum += take * total;
        left -= take;
      }
      return sum / 0.2;
    };
    const safe = Array.from({ length: 18 }, () => SAFE);
    const swapped = [BOLD, ...safe.slice(1)];
    const roundSd = Math.sqrt(18 * (SAFE.reduce((s, p, i) => s + p * (i + 1) ** 2, 0) - mean(SAFE) ** 2));
    const guard = { kind: 'guard' as const, roundSd };
    const stated = costOf(guard, BOLD, mean(BOLD)) - costOf(guard, SAFE, mean(SAFE));
    expect(Math.abs(stated - (worstFifth(swapped) - worstFifth(safe)))).toBeLessThan(0.03);
  });

  it('prefers the steadier of two shots with one mean', () => {
    const steady = [0, 0, 1];
    const wild = [0, 0.5, 0, 0.5];
    const guard = { kind: 'guard' as const, roundSd: 2.5 };
    expect(costOf(guard, steady, 3)).toBeLessThan(costOf(guard, wild, 3));
    expect(costOf({ kind: 'even' }, steady, 3)).toBe(costOf({ kind: 'even' }, wild, 3));
  });
});
