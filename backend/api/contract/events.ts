import { z } from 'zod';
import { PlannedHoleSchema, PlanSummarySchema } from './plans.ts';
import { Id, ProblemSchema } from './values.ts';

/** What the backend says unasked. */
export const AppEventSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('planProgress'), planId: Id, done: z.int(), total: z.int() }),
  z.strictObject({ kind: z.literal('holePlanned'), planId: Id, ref: z.string(), hole: PlannedHoleSchema }),
  z.strictObject({ kind: z.literal('planDone'), planId: Id, summary: PlanSummarySchema }),
  z.strictObject({ kind: z.literal('planFailed'), planId: Id, problems: z.array(ProblemSchema) }),
  z.strictObject({ kind: z.literal('planCancelled'), planId: Id }),
  z.strictObject({
    kind: z.literal('libraryChanged'),
    areas: z.array(z.enum(['courses', 'players', 'pins', 'rounds', 'settings', 'plans'])),
  }),
]);
export type AppEvent = z.output<typeof AppEventSchema>;
