import type { Sum, ThrowReview } from './review-report.ts';

type Summed = Pick<ThrowReview, 'gain' | 'choiceCost' | 'executionCost'>;

/**
 * Sums over throws; errors of single throws are taken as independent.
 * @param gainError - standard error of the gain, where it is known better: over a hole all values but the first cancel
 */
export function sumOf(throws: readonly Summed[], gainError?: number): Sum {
  const split = throws.filter(t => t.choiceCost !== null);
  return {
    throws: throws.length,
    split: split.length,
    gain: { ...added(throws.map(t => t.gain)), ...(gainError !== undefined && { standardError: gainError }) },
    choiceCost: added(split.map(t => t.choiceCost!)),
    executionCost: added(split.map(t => t.executionCost!)),
  };
}

function added(parts: readonly Readonly<{ throws: number; standardError: number }>[]) {
  return {
    throws: parts.reduce((sum, part) => sum + part.throws, 0),
    standardError: Math.sqrt(parts.reduce((sum, part) => sum + part.standardError ** 2, 0)),
  };
}
