import type { PlannedHole } from '../../backend/api/contract/plans.ts';
import type { HolePlan } from '../../core/strategy/plan-report.ts';
import type { ListedHole } from './hole-list.tsx';

export const SORTS = {
  order: 'course order',
  stake: 'what hangs on the choice',
  over: 'throws over par',
  penalty: 'penalty risk',
} as const;
export type SortName = keyof typeof SORTS;

/** Throws lost by taking the best shot of another class of disc: how much hangs on the choice. */
export function stakeOf(plan: HolePlan): number {
  const others = Object.values(plan.byClass).filter(shot => shot !== undefined && shot.class !== plan.choice.class);
  return others.length === 0 ? 0 : Math.min(...others.map(shot => shot.regret));
}

/** The holes by what matters, most first; holes not planned yet stay last, in course order. */
export function sorted(
  holes: readonly ListedHole[],
  planned: ReadonlyMap<string, PlannedHole>,
  sort: SortName,
): readonly ListedHole[] {
  if (sort === 'order') return holes;
  const weight = (hole: ListedHole): number => {
    const plan = planned.get(hole.ref)?.plan;
    if (plan === undefined) return Number.NEGATIVE_INFINITY;
    if (sort === 'stake') return stakeOf(plan);
    return sort === 'over' ? plan.expectedThrows - plan.par : plan.choice.penaltyChance;
  };
  return [...holes].sort((a, b) => weight(b) - weight(a));
}
