import { z } from 'zod';
import { dayInputSchema } from '../../../core/air/day-input.ts';
import { RoundWindsSchema } from '../../../core/air/round-winds.ts';
import { HoleDrawingSchema } from '../../../core/strategy/hole-drawing.ts';
import { HolePlanSchema, PlanReportSchema } from '../../../core/strategy/plan-report.ts';
import { Id, LimitsSchema, Name, ProblemSchema, Ref } from './values.ts';

export const ATTITUDES = ['even', 'guard', 'push'] as const;

/** What a plan is made for; the same request gives the same plan. */
const PlanRequestSchema = z.strictObject({
  courseId: Id,
  playerId: Id,
  day: dayInputSchema.describe('empty: calm air at sea level'),
  winds: RoundWindsSchema.optional().describe(
    'wind by tee time, each hole in its own: stands in place of the wind of `day`, whose height and place it is given for',
  ),
  startRef: Ref.optional().describe(
    'only with winds: thrown off first, the others follow round the course; the first hole when left out',
  ),
  attitude: z.enum(ATTITUDES).default('even'),
  target: z.int().min(1).max(500).optional().describe('throws for the round; only with push'),
  limits: LimitsSchema.default({}),
  layout: Name.optional().describe('plays these tees and baskets, in this order; the course as mapped when left out'),
  holes: z.array(Ref).min(1).max(200).optional().describe('all when left out'),
  seed: z.int().min(0).max(2_147_483_647).default(1),
});
export type PlanRequestData = z.output<typeof PlanRequestSchema>;

/** What stands over all holes. */
export const PlanSummarySchema = PlanReportSchema.omit({ holes: true });
export type PlanSummary = z.output<typeof PlanSummarySchema>;

/** One planned hole with what the map and the side view draw. */
export const PlannedHoleSchema = z.strictObject({ plan: HolePlanSchema, drawing: HoleDrawingSchema });
export type PlannedHole = z.output<typeof PlannedHoleSchema>;

export const PlanStateSchema = z.strictObject({
  planId: Id,
  request: PlanRequestSchema,
  state: z.enum(['running', 'done', 'failed', 'cancelled']),
  madeAt_ms: z.number().describe('Unix time'),
  done: z.int(),
  total: z.int(),
  holes: z.array(PlannedHoleSchema).describe('those planned so far, in course order'),
  summary: PlanSummarySchema.nullable().describe('null until done'),
  problems: z.array(ProblemSchema),
});
export type PlanState = z.output<typeof PlanStateSchema>;

/** Plans run in the background; holes arrive as events, the hole in view first. */
export const plans = {
  /**
   * `planId` is made by the caller (crypto.randomUUID()), so that no event can come before it is known.
   * A request that was planned before is answered from memory: its events follow at once.
   */
  startPlan: {
    input: PlanRequestSchema.extend({
      planId: Id,
      focusRef: Ref.optional().describe('the hole in view: planned first'),
      remember: z.boolean().default(true).describe('false: for a comparison; not what latestPlan gives'),
      quick: z
        .boolean()
        .default(false)
        .describe(
          'true while the wind is dragged: answered within some hundredths of a second when the hole was planned for another wind, roughly and not kept; else as usual',
        ),
      replaces: Id.optional().describe('a running plan this one makes useless: it is cancelled'),
    }),
    output: z.strictObject({ planId: Id, total: z.int() }),
  },
  cancelPlan: { input: z.strictObject({ planId: Id }), output: z.strictObject({ cancelled: z.boolean() }) },
  /** Everything there is of a plan; how a window that missed events catches up. */
  getPlan: { input: z.strictObject({ planId: Id }), output: PlanStateSchema },
  /** The newest finished plan of this course and player that still fits both, or null. */
  latestPlan: {
    input: z.strictObject({ courseId: Id, playerId: Id }),
    output: z.strictObject({ plan: PlanStateSchema.nullable() }),
  },
};
