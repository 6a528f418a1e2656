import { z } from 'zod';
import { dayInputSchema } from '../../../core/air/day-input.ts';
import { RoundWindsSchema } from '../../../core/air/round-winds.ts';
import { ShotDrawingSchema } from '../../../core/strategy/hole-drawing.ts';
import { ShotSchema } from '../../../core/strategy/plan-report.ts';
import { Id, LimitsSchema, Name, Ref, ShotChoiceSchema } from './values.ts';

/** What one shot of the player's own choosing would come to. */
export const whatIf = {
  /** From the tee, with the best play after it; `regret` is against `choice`, or the plan’s own when that is left out. */
  evaluateShot: {
    input: z.strictObject({
      courseId: Id,
      playerId: Id,
      day: dayInputSchema,
      winds: RoundWindsSchema.optional().describe('as in startPlan'),
      startRef: Ref.optional().describe('as in startPlan'),
      ref: Ref,
      shot: ShotChoiceSchema,
      choice: ShotChoiceSchema.optional().describe('the shot to compare with, on the same samples'),
      layout: Name.optional(),
      limits: LimitsSchema.default({}).describe('those of the plan: what is played after this shot'),
      seed: z.int().min(0).max(2_147_483_647).default(1),
    }),
    output: z.strictObject({ shot: ShotSchema, drawing: ShotDrawingSchema }),
  },
};
