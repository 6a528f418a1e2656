import { expect, it } from 'vitest';
import { fairTarget, roundChances } from '../../../core/practice/fair-target.ts';

// two holes: 2, 3 or 4 throws with these shares; four rounds for the other count
const easy = { scores: [0, 0.5, 0.5], roundScores: [2, 2, 3, 3] };
const hard = { scores: [0, 0.2, 0.4, 0.4], roundScores: [2, 4, 3, 4] };

it('adds up independent holes', () => {
  // [C] computed by hand: 4: 0.5·0.2; 5: 0.5·0.4 + 0.5·0.2; 6: 0.5·0.4 + 0.5·0.4; 7: 0.5·0.4
  const chances = roundChances([easy, hard]);
  [0, 0, 0, 0, 0.1, 0.3, 0.4, 0.2].forEach((chance, throws) => {
    expect(Math.abs(chances[throws]! - chance)).toBeLessThan(1e-12);
  });
});

it('picks the score reached nearest to one round in three, with its neighbours and the other count', () => {
  // [C] by hand: within 4: 0.1, 5: 0.4, 6: 0.8; 0.4 is nearest to 1/3. Rounds total 4, 6, 6, 7: within 5 one in four
  const target = fairTarget([easy, hard]);
  expect(target.throws).toBe(5);
  expect(target.chance).toBeCloseTo(0.4, 12);
  expect(target.chanceSameDay).toBe(0.25);
  expect(target.beside.map(({ throws }) => throws)).toEqual([3, 4, 5, 6, 7]);
  expect(target.beside.at(-1)!.chance).toBeCloseTo(1, 12);
  expect(target.beside.at(-1)!.chanceSameDay).toBe(1);
});

it('is no score that is next to never reached, though the next is further from a third', () => {
  // within 1: 1 %, within 2: 70 %
  const hole = { scores: [0.01, 0.69, 0.3], roundScores: [2] };
  expect(fairTarget([hole]).throws).toBe(2);
});

it('takes the easier of two that are as near', () => {
  // within 1: 1/3 − 1/6, within 2: 1/3 + 1/6
  const hole = { scores: [1 / 6, 1 / 3, 1 / 2], roundScores: [1] };
  expect(fairTarget([hole]).throws).toBe(2);
});

it('needs holes', () => {
  expect(() => fairTarget([])).toThrow(RangeError);
});
