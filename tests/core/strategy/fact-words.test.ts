import { describe, expect, it } from 'vitest';
import { bothInThrows, shareWords } from '../../../core/strategy/fact-words.ts';

describe('facts in a player’s words', () => {
  it.each([
    { other: -0.01, chosen: -0.03, want: 'the wind helps the choice more: 0.03 throws against 0.01' },
    { other: -0.03, chosen: -0.01, want: 'the wind helps the choice less: 0.01 throws against 0.03' },
    { other: 0.05, chosen: 0.02, want: 'the wind costs it 0.05 throws, the choice only 0.02' },
    { other: 0.02, chosen: 0.05, want: 'the wind costs it 0.02 throws, the choice 0.05' },
    { other: 0.02, chosen: -0.01, want: 'the wind costs it 0.02 throws and saves the choice 0.01' },
    { other: 0.02, chosen: 0.004, want: 'the wind costs it 0.02 throws and leaves the choice as it is' },
    { other: 0, chosen: -0.04, want: 'the wind saves the choice 0.04 throws and leaves it as it is' },
  ])('$other and $chosen: $want', ({ other, chosen, want }) =>
    expect(bothInThrows('the wind', other, chosen)).toBe(want),
  );

  it('says how much of the difference it is in words, never as a share of a share', () => {
    expect([1.4, 0.9, 0.7, 0.5, 0.3].map(shareWords)).toEqual(
      ['all', 'all', 'most', 'about half', 'part'].map(words => `that is ${words} of the difference`),
    );
  });
});
