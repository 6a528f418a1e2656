import type { PracticeHole } from './practice-hole.ts';

/** A fair target is reached about one round in three. */
const FAIR = 1 / 3;
/** What is reached more seldom is no target, were it the nearest to a third (own choice). */
const LEAST_FAIR = 0.1;
/** Scores on either side of the target that are told too. */
const BESIDE = 2;

type TargetChance = Readonly<{
  throws: number;
  /** Chance to finish in so many or fewer, throws independent of each other. */
  chance: number;
  /** The same when what the fit leaves unknown of the discs is the same all round. */
  chanceSameDay: number;
}>;

export type FairTarget = TargetChance &
  Readonly<{ /** Scores round it, fewest throws first, the target among them. */ beside: readonly TargetChance[] }>;

type Played = Pick<PracticeHole, 'scores' | 'roundScores'>;

/**
 * The score that is reached nearest to one round in three, in one of ten at least, its chance as simulated. Of two as
 * near, the easier.
 * @param holes - played under the limit; each with the same number of rounds
 * @throws {RangeError} without holes
 */
export function fairTarget(holes: readonly Played[]): FairTarget {
  if (holes.length === 0) throw new RangeError('holes must hold at least one hole, got none');
  const chances = roundChances(holes);
  const totals = roundTotals(holes);
  const within: number[] = [];
  chances.reduce((sum, chance, throws) => (within[throws] = sum + chance), 0);
  const at = (throws: number): TargetChance => ({
    throws,
    chance: Math.min(1, within[throws]!),
    chanceSameDay: totals.filter(total => total <= throws).length / totals.length,
  });
  let best = within.findIndex(chance => chance >= LEAST_FAIR);
  for (let throws = best; throws < within.length; throws++)
    if (Math.abs(within[throws]! - FAIR) <= Math.abs(within[best]! - FAIR) + 1e-9) best = throws;
  const first = Math.max(holes.length, best - BESIDE);
  const last = Math.min(within.length - 1, best + BESIDE);
  return { ...at(best), beside: Array.from({ length: last - first + 1 }, (_, i) => at(first + i)) };
}

/** Chances of round scores, holes independent: `[throws]`. */
export function roundChances(holes: readonly Pick<PracticeHole, 'scores'>[]): number[] {
  return holes.reduce<number[]>(
    (chances, { scores }) => {
      const next = new Array<number>(chances.length + scores.length).fill(0);
      chances.forEach((chance, total) => {
        scores.forEach((own, i) => {
          next[total + i + 1]! += chance * own;
        });
      });
      return next;
    },
    [1],
  );
}

/** Scores of the rounds in which the player is the same all round. */
function roundTotals(holes: readonly Played[]): number[] {
  return holes[0]!.roundScores.map((_, round) => holes.reduce((sum, { roundScores }) => sum + roundScores[round]!, 0));
}
