import type { Input } from '../../backend/api/contract/api.ts';
import type { PlannedHole, PlanSummary } from '../../backend/api/contract/plans.ts';
import type { Backend } from '../../renderer/client/backend.ts';

/** A backend that only remembers what plans were asked for and cancelled. */
export function fakeBackend() {
  const asked: Input<'startPlan'>[] = [];
  const cancelled: string[] = [];
  const call = {
    startPlan: async (input: Input<'startPlan'>) => {
      asked.push(input);
      return { ok: true, value: { planId: input.planId, total: input.holes?.length ?? 2 } };
    },
    cancelPlan: async ({ planId }: { planId: string }) => {
      cancelled.push(planId);
      return { ok: true, value: { cancelled: true } };
    },
  };
  const backend = {
    call,
    subscribe: () => () => {},
    onReconnect: () => () => {},
    desktop: null,
  } as unknown as Backend;
  return { backend, asked, cancelled };
}

/** A planned hole as far as the feed looks into it. */
export const plannedHole = (ref: string) => ({ plan: { ref }, drawing: { ref } }) as unknown as PlannedHole;
export const SUMMARY = {} as PlanSummary;
