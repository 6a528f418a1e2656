import { z } from 'zod';
import { ShotSchema } from '../strategy/plan-report.ts';
import { PENALTY_KINDS, PHASES } from './thrown.ts';

const throwsNumber = z.number().describe('throws');
const Point = z.tuple([z.number(), z.number()]).describe('metres east, north of the tee');
const Estimate = z.object({
  throws: throwsNumber,
  standardError: z.number().min(0).describe('of the samples it was worked out on, one sigma'),
});

const KNOWN = ['shot', 'line', 'disc', 'putt', 'nothing'] as const;

/** One throw, judged. `gain` = value before − value after − 1 − penalties; choice and execution cost are its two parts, bad side up. */
const ThrowReviewSchema = z.object({
  number: z.int().min(1),
  phase: z.enum(PHASES),
  from: Point,
  toBasket_m: z.number().min(0),
  rest: Point.nullable().describe('where it came to rest; null when holed or not written'),
  next: Point.nullable().describe('where play went on; null when holed'),
  holed: z.boolean(),
  penalties: z.array(z.object({ kind: z.enum(PENALTY_KINDS), throws: z.int().min(0) })),
  discId: z.string().nullable(),
  disc: z.string().nullable(),
  hand: z.enum(['backhand', 'forehand']).nullable(),
  shape: z.string().nullable().describe('as written; null when it was not'),
  known: z
    .enum(KNOWN)
    .describe(
      'shot: all of it was written; line: part of it, disc: only the disc (the rest at its best, so choiceCost is a lower bound); putt; nothing: only the gain can be told',
    ),
  valueBefore: Estimate.describe('expected throws to hole out from the lie, best play'),
  valueAfter: Estimate,
  gain: Estimate.describe('throws won (lost when negative)'),
  choiceCost: Estimate.nullable().describe('given up by choosing it; 0 when no better choice is known'),
  choiceMeasured: throwsNumber
    .nullable()
    .describe('the same before what cannot be told from nothing was put to 0 (and into the execution)'),
  executionCost: Estimate.nullable().describe('lost by how it turned out (won when negative)'),
  best: ShotSchema.nullable().describe('the shot with the fewest expected throws; null when that is a putt'),
  played: ShotSchema.nullable().describe('the shot as it was taken to be meant; null for a putt and when not known'),
  notes: z.array(z.string()),
});
export type ThrowReview = z.output<typeof ThrowReviewSchema>;

const SumSchema = z.object({
  throws: z.int().min(0),
  split: z.int().min(0).describe('throws whose gain could be split into choice and execution'),
  gain: Estimate,
  choiceCost: Estimate,
  executionCost: Estimate,
});
export type Sum = z.output<typeof SumSchema>;

const HoleReviewSchema = z.object({
  ref: z.string(),
  par: z.int(),
  score: z.int().min(1),
  penalties: z.int().min(0),
  startValue: Estimate.describe('expected throws from the tee; minus the score it is the sum of the gains'),
  exposure: z.enum(['open', 'park', 'wood']),
  teeChoice: ShotSchema.describe('what the plan asks for from the tee in this wind'),
  sum: SumSchema,
  throws: z.array(ThrowReviewSchema),
  notes: z.array(z.string()),
});
export type HoleReview = z.output<typeof HoleReviewSchema>;

const GroupSchema = z.object({ key: z.string(), name: z.string(), sum: SumSchema });
export type Group = z.output<typeof GroupSchema>;

/** A round judged in one wind. */
const WindReviewSchema = z.object({
  air: z.object({
    windSpeed_mps: z.number(),
    windFrom_deg: z.number(),
    gust_mps: z.number(),
    source: z.string(),
    notes: z.array(z.string()),
  }),
  holes: z.array(HoleReviewSchema),
  total: z.object({
    score: z.int().min(0),
    par: z.int().min(0),
    startValue: throwsNumber,
    sum: SumSchema,
  }),
  byDisc: z.array(GroupSchema),
  byHand: z.array(GroupSchema),
  byShape: z.array(GroupSchema),
  byPhase: z.array(GroupSchema),
});
export type WindReview = z.output<typeof WindReviewSchema>;

/** What the real wind would have asked for, hole by hole. */
const WindHoleSchema = z.object({
  ref: z.string(),
  planned: z.object({ title: z.string(), discId: z.string(), disc: z.string(), expectedThrows: z.number() }),
  real: z.object({ title: z.string(), discId: z.string(), disc: z.string(), expectedThrows: z.number() }),
  isOtherDisc: z.boolean(),
  stayingCost: throwsNumber
    .nullable()
    .describe('what throwing the planned shot costs in the real wind; null when it could not be told'),
});
export type WindHole = z.output<typeof WindHoleSchema>;

/** What `review --json` prints. */
export const ReviewReportSchema = z.object({
  schema: z.literal('roundwright/review@1'),
  course: z.string(),
  player: z.string(),
  date: z.string(),
  seed: z.int(),
  asPlanned: WindReviewSchema.describe('judged in the wind it was planned for'),
  asItWas: WindReviewSchema.nullable().describe('judged in the wind that blew; null when none was given'),
  windHoles: z.array(WindHoleSchema).describe('the plan remade in the wind that blew; empty when none was given'),
  unfinished: z.array(z.string()).describe('holes that were not holed out: not reviewed'),
  notes: z.array(z.string()),
});
export type ReviewReport = z.output<typeof ReviewReportSchema>;

/** Differences under this are the model's own error and are shown as nothing. @source measured on the project's prototype */
export const NOISE_THROWS = 0.03;
