import { z } from 'zod';
import { DISC_CLASSES } from '../../../core/player/disc-class.ts';
import { SHOT_SHAPES } from '../../../core/strategy/plan-report.ts';

/** Longest text of a file taken in one call; the files themselves are some hundred kilobytes. */
const LONGEST_TEXT = 20_000_000;

/** Text that every store and file system gives back as it was: no lone surrogates, no control characters but line ends and tabs. */
export const isPlainText = (text: string) => text.isWellFormed() && !/[\p{Cc}--[\t\n\r]]/v.test(text);
const NOT_PLAIN = 'holds characters that cannot be kept: control characters, or half of a character';
export const plainText = (most: number, message = `must be at most ${most} characters`) =>
  z.string().max(most, message).refine(isPlainText, NOT_PLAIN);

export const Id = z.uuid('must be an id of the library');
export const Ref = plainText(60).min(1).describe('a hole, as the course spells it');
export const Name = plainText(120).trim().min(1, 'is empty: write a name');
export const FileName = plainText(255).min(1);
export const FileText = z
  .string()
  .max(LONGEST_TEXT, `is longer than ${LONGEST_TEXT / 1e6} million characters`)
  .refine(text => text.isWellFormed(), 'is not UTF-8 text: save the file as UTF-8');

/** A whole library, elevation models included. */
export const LONGEST_LIBRARY = 50_000_000;
export const LibraryText = z
  .string()
  .max(LONGEST_LIBRARY, `is longer than ${LONGEST_LIBRARY / 1e6} million characters`)
  .refine(text => text.isWellFormed(), 'is not UTF-8 text: save the file as UTF-8');

export const ProblemSchema = z.strictObject({ path: z.string(), message: z.string() });
export const LonLatSchema = z.tuple([z.number(), z.number()]).describe('longitude, latitude in degrees (WGS 84)');
export const LocalPointSchema = z.tuple([z.number(), z.number()]).describe('metres east, north of the tee');

/** What takes a change back: hand `changeId` to `undo`, which answers with the change that does it again. */
export const UndoSchema = z.strictObject({ changeId: Id, what: z.string().describe('e.g. "Delete Old Orchard"') });
export type Undo = z.output<typeof UndoSchema>;
export const ChangedSchema = z.strictObject({ undo: UndoSchema });

/** A text file to offer for saving. */
export const TextFileSchema = z.strictObject({ fileName: z.string(), text: z.string() });

/** A shot as it can be asked for: every `ShotReport` carries these. */
export const ShotChoiceSchema = z.strictObject({
  discId: z.string().min(1).max(200),
  hand: z.enum(['backhand', 'forehand']),
  shape: z.enum(SHOT_SHAPES),
  height: z.enum(['low', 'standard', 'high']),
  hyzer_deg: z.number().min(-120).max(90),
  launch_deg: z.number().min(-20).max(60),
  power: z.number().min(0.1).max(1).describe('share of the full release speed'),
  aimBearing_deg: z.number().min(-360).max(360),
});
export type ShotChoice = z.output<typeof ShotChoiceSchema>;

export const LimitsSchema = z.strictObject({
  classes: z.array(z.enum(DISC_CLASSES)).min(1).max(5).optional(),
  hands: z
    .array(z.enum(['backhand', 'forehand']))
    .min(1)
    .max(2)
    .optional(),
  discIds: z.array(z.string().max(200)).min(1).max(200).optional(),
});
