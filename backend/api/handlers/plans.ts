import type { AppContext } from '../app-context.ts';
import type { plans } from '../contract/plans.ts';
import type { Handlers } from '../dispatch.ts';
import { currentSettings } from './settings.ts';

export function planHandlers(app: AppContext): Pick<Handlers, keyof typeof plans> {
  const { plans: desk } = app;
  return {
    startPlan: input => desk.start(input),
    cancelPlan: ({ planId }) => ({ ok: true, value: { cancelled: desk.cancel(planId) } }),
    getPlan: ({ planId }) => desk.get(planId),
    latestPlan: ({ courseId, playerId }) => ({
      ok: true,
      value: { plan: desk.latest(courseId, playerId, currentSettings(app).ref) },
    }),
  };
}
