import { z } from 'zod';
import { dayInputSchema } from '../../../core/air/day-input.ts';
import { RoundWindsSchema } from '../../../core/air/round-winds.ts';
import { MeasureNextSchema } from '../../../core/strategy/measure-next.ts';
import { Id, LimitsSchema, Name, ProblemSchema, Ref } from './values.ts';

const MeasuringStateSchema = z.strictObject({
  state: z.enum(['running', 'done', 'failed', 'cancelled']),
  done: z.int().describe('holes'),
  total: z.int(),
  answer: MeasureNextSchema.nullable().describe('null until done'),
  problems: z.array(ProblemSchema),
});
export type MeasuringState = z.output<typeof MeasuringStateSchema>;

/** Which disc to measure next: takes about as long as a plan or two; ask how far it is. */
export const measuring = {
  /** `measuringId` is made by the caller. One at a time: a new question gives up the one before. */
  startMeasuring: {
    input: z.strictObject({
      measuringId: Id,
      courseId: Id,
      playerId: Id,
      day: dayInputSchema.describe('empty: calm air at sea level'),
      winds: RoundWindsSchema.optional().describe('as in startPlan'),
      startRef: Ref.optional().describe('as in startPlan'),
      limits: LimitsSchema.default({}),
      layout: Name.optional().describe('of the course; as mapped when left out'),
      holes: z.array(Ref).min(1).max(200).optional().describe('all when left out'),
      throws: z.int().min(3).max(100).default(10).describe('throws of the session'),
      seed: z.int().min(0).max(2_147_483_647).default(1),
    }),
    output: z.strictObject({ total: z.int() }),
  },
  getMeasuring: { input: z.strictObject({ measuringId: Id }), output: MeasuringStateSchema },
  cancelMeasuring: {
    input: z.strictObject({ measuringId: Id }),
    output: z.strictObject({ cancelled: z.boolean() }),
  },
};
