import { z } from 'zod';
import { PHASES } from './thrown.ts';

const Interval = z.object({ low: z.number(), high: z.number() }).describe('90 %');

export const MEASURES = ['gain', 'choiceCost', 'executionCost', ...PHASES] as const;

const PointSchema = z.object({
  roundId: z.string(),
  date: z.string(),
  course: z.string(),
  value: z.number().nullable().describe('throws a hole; null when the round says nothing about it'),
});

const TrendSchema = z.object({
  measure: z
    .enum(MEASURES)
    .describe('gain and its parts over all throws; a phase: execution cost of the throws from there'),
  words: z.string(),
  isBetterUp: z.boolean(),
  points: z.array(PointSchema),
  n: z.int().min(0),
  mean: z.number().nullable(),
  meanInterval: Interval.nullable().describe('null with fewer than 3 rounds'),
  perRound: z.number().nullable().describe('change from one round to the next, straight line'),
  perRoundInterval: Interval.nullable().describe('null with fewer than 5 rounds'),
  verdict: z.enum(['tooFew', 'cannotTell', 'better', 'worse']),
  text: z.string(),
});
export type Trend = z.output<typeof TrendSchema>;

const SeasonShotSchema = z.object({
  roundId: z.string(),
  date: z.string(),
  course: z.string(),
  ref: z.string(),
  number: z.int(),
  disc: z.string().nullable(),
  phase: z.enum(PHASES),
  toBasket_m: z.number(),
  holed: z.boolean(),
  gain: z.number(),
  choiceCost: z.number().nullable(),
  executionCost: z.number().nullable(),
});
export type SeasonShot = z.output<typeof SeasonShotSchema>;

/** Several reviewed rounds of one player, oldest first. */
export const SeasonSchema = z.object({
  rounds: z.array(
    z.object({
      roundId: z.string(),
      date: z.string(),
      course: z.string(),
      holes: z.int(),
      score: z.int(),
      par: z.int(),
      expected: z.number(),
      gain: z.number(),
      choiceCost: z.number(),
      executionCost: z.number(),
    }),
  ),
  trends: z.array(TrendSchema),
  best: z.array(SeasonShotSchema),
  worst: z.array(SeasonShotSchema),
  worstChoices: z.array(SeasonShotSchema),
  notes: z.array(z.string()),
});
export type Season = z.output<typeof SeasonSchema>;
