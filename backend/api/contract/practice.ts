import { z } from 'zod';
import { dayInputSchema } from '../../../core/air/day-input.ts';
import { PracticeLimitSchema, PracticeReportSchema } from '../../../core/practice/practice-report.ts';
import { Id, ProblemSchema } from './values.ts';

const PracticeStateSchema = z.strictObject({
  state: z.enum(['running', 'done', 'failed', 'cancelled']),
  stage: z.enum(['looking', 'playing', 'comparing']).describe('at lengths; planning and simulating; the whole bag'),
  done: z.int().describe('holes of this stage'),
  total: z.int(),
  what: z.string().describe('the hole done last'),
  report: PracticeReportSchema.nullable().describe('null until done'),
  problems: z.array(ProblemSchema),
});
export type PracticeState = z.output<typeof PracticeStateSchema>;

/** Practice rounds: looked for in the background; ask how far it is. */
export const practice = {
  /** `practiceId` is made by the caller. One at a time: a new search gives up the one before. Answers are kept while the app is open. */
  startPractice: {
    input: z.strictObject({
      practiceId: Id,
      playerId: Id,
      courseIds: z
        .array(Id)
        .min(1)
        .max(500)
        .optional()
        .describe('courses to look through; the whole library when left out'),
      limit: PracticeLimitSchema,
      holes: z.int().min(1).max(36).default(18).describe('of a round, at most'),
      rounds: z.int().min(1).max(5).default(1).describe('courses to plan a round on, the best first'),
      compare: z.boolean().default(true).describe('also say what the limit costs against the whole bag'),
      day: dayInputSchema.describe('empty: calm air at sea level'),
      seed: z.int().min(0).max(2_147_483_647).default(1),
    }),
    output: z.strictObject({ courses: z.int() }),
  },
  getPractice: { input: z.strictObject({ practiceId: Id }), output: PracticeStateSchema },
  cancelPractice: {
    input: z.strictObject({ practiceId: Id }),
    output: z.strictObject({ cancelled: z.boolean() }),
  },
  /** One of its rounds on paper: self-contained HTML, black-and-white safe. */
  renderPracticeSheet: {
    input: z.strictObject({
      practiceId: Id,
      courseId: Id.describe('the round on this course'),
      paper: z.enum(['a4', 'letter']).default('a4'),
      length: z.enum(['m', 'ft']),
      speed: z.enum(['mps', 'kmh', 'mph', 'kn']),
    }),
    output: z.strictObject({ title: z.string(), fileName: z.string(), html: z.string() }),
  },
};
