import { z } from 'zod';
import { FitChangeSchema } from '../../../core/review/fit-change.ts';
import { ReviewReportSchema } from '../../../core/review/review-report.ts';
import { RoundFileSchema } from '../../../core/review/round-file.ts';
import { SeasonSchema } from '../../../core/review/season-report.ts';
import { ChangedSchema, FileName, FileText, Id, ProblemSchema, TextFileSchema } from './values.ts';

const RoundLineSchema = z.strictObject({
  roundId: Id,
  courseId: Id,
  playerId: Id,
  course: z.string(),
  player: z.string(),
  date: z.string(),
  holes: z.int().describe('entered'),
  finished: z.int().describe('of them holed out'),
  score: z.int().describe('throws and penalties of the finished holes'),
  par: z.int().describe('of the finished holes'),
  reviewed: z.enum(['no', 'yes', 'older']).describe('older: the round, the bag or the course was changed since'),
});
export type RoundLine = z.output<typeof RoundLineSchema>;

const ReviewStateSchema = z.strictObject({
  roundId: Id,
  state: z.enum(['none', 'running', 'done', 'failed', 'cancelled']),
  done: z.int(),
  total: z.int(),
  report: ReviewReportSchema.nullable().describe('the last one made, also while a new one is made'),
  isOlder: z.boolean().describe('the round, the bag or the course was changed since the report was made'),
  problems: z.array(ProblemSchema),
});
export type ReviewState = z.output<typeof ReviewStateSchema>;

const OfferedThrowSchema = z.strictObject({
  key: z.string(),
  ref: z.string(),
  number: z.int(),
  discId: z.string().nullable(),
  disc: z.string().nullable(),
  hand: z.enum(['backhand', 'forehand']).nullable(),
  distance_m: z.number().nullable().describe('null when it is no measure of the disc'),
  side_m: z.number().nullable().describe('right positive; null when the aim was not written'),
  power: z.union([z.number(), z.string()]).nullable(),
  isPlain: z.boolean().describe('a full throw of a known line: ticked at first'),
  why: z.string().describe('why it cannot be taken, or what to look at before it is'),
});

const Keys = z.array(z.string().min(1).max(80)).min(1, 'are none: choose at least one throw').max(1000);

/** Rounds that were played, their review, what they would teach the fit, and the season. */
export const rounds = {
  listRounds: { input: z.strictObject({ playerId: Id }), output: z.array(RoundLineSchema) },
  getRound: {
    input: z.strictObject({ roundId: Id }),
    output: z.strictObject({ roundId: Id, courseId: Id, playerId: Id, round: RoundFileSchema }),
  },
  /** JSON or CSV, told apart by the text; nothing is kept. */
  previewRound: {
    input: z.strictObject({ courseId: Id, playerId: Id, fileName: FileName, text: FileText }),
    output: z.strictObject({ round: RoundFileSchema }),
  },
  importRound: {
    input: z.strictObject({ courseId: Id, playerId: Id, fileName: FileName, text: FileText }),
    output: ChangedSchema.extend({ roundId: Id }),
  },
  /** Keeps a round as entered, also with holes not finished yet; a new one without `roundId`. */
  saveRound: {
    input: z.strictObject({
      roundId: Id.optional(),
      courseId: Id,
      playerId: Id,
      round: RoundFileSchema,
      what: z.string().max(120).optional().describe('for undo, e.g. "throw 2 of hole 4"'),
    }),
    output: ChangedSchema.extend({ roundId: Id }),
  },
  removeRound: { input: z.strictObject({ roundId: Id }), output: ChangedSchema },
  exportRound: {
    input: z.strictObject({ roundId: Id, format: z.enum(['json', 'csv']) }),
    output: TextFileSchema,
  },
  /** Begins in the background; ask `getReview` how far it is. A review that still holds is not made again. */
  startReview: { input: z.strictObject({ roundId: Id }), output: z.strictObject({ total: z.int() }) },
  cancelReview: { input: z.strictObject({ roundId: Id }), output: z.strictObject({ cancelled: z.boolean() }) },
  getReview: { input: z.strictObject({ roundId: Id }), output: ReviewStateSchema },
  /** The throws of a reviewed round as fieldwork; nothing is added yet. */
  offerRound: {
    input: z.strictObject({ roundId: Id }),
    output: z.strictObject({ throws: z.array(OfferedThrowSchema) }),
  },
  /** The range table before and after. */
  previewFit: {
    input: z.strictObject({ roundId: Id, keys: Keys }),
    output: z.strictObject({ changes: z.array(FitChangeSchema) }),
  },
  acceptFit: { input: z.strictObject({ roundId: Id, keys: Keys }), output: ChangedSchema.extend({ added: z.int() }) },
  getSeason: {
    input: z.strictObject({ playerId: Id }),
    output: SeasonSchema.extend({
      waiting: z.array(RoundLineSchema).describe('not reviewed, or changed since'),
    }),
  },
};
