/**
 * What a choice is for. `even`: fewest expected throws. `guard`: lowest mean of the worst fifth of rounds. `push`: best chance to
 * finish at or under a target; `after[s]` is the chance to make it when this hole takes s throws.
 */
export type Attitude =
  | Readonly<{ kind: 'even' }>
  | Readonly<{ kind: 'guard' /** Standard deviation of the round's score. */; roundSd: number }>
  | Readonly<{ kind: 'push'; after: readonly number[] }>;

export const EVEN: Attitude = { kind: 'even' };

/** Mean of the worst fifth of a normal distribution, in standard deviations above its mean: φ(z₀.₈)/0.2. */
const WORST_FIFTH = 1.4;
const PUSH_TIE = 1e-4;

/**
 * What to minimise over the shots of one hole.
 * `guard` adds what the hole's variance adds to the mean of the round's worst fifth: for a round of many holes that mean is
 * μ + 1.4·σ, and d(1.4·σ)/d(σ_hole²) = 1.4/(2σ).
 * @param scores - `scores[i]` = chance of i + 1 throws, the last entry that or worse
 * @source own derivation; normal tail mean from published normal tables
 */
export function costOf(attitude: Attitude, scores: readonly number[], expectedThrows: number): number {
  switch (attitude.kind) {
    case 'even':
      return expectedThrows;
    case 'guard':
      return expectedThrows + (WORST_FIFTH / (2 * attitude.roundSd)) * varianceOf(scores);
    case 'push': {
      const reached = scores.reduce((sum, chance, i) => sum + chance * (attitude.after[i + 1] ?? 0), 0);
      return -reached + PUSH_TIE * expectedThrows;
    }
    default:
      return attitude satisfies never;
  }
}

function varianceOf(scores: readonly number[]): number {
  const mean = scores.reduce((sum, chance, i) => sum + chance * (i + 1), 0);
  return scores.reduce((sum, chance, i) => sum + chance * (i + 1 - mean) ** 2, 0);
}
