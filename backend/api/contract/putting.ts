import { z } from 'zod';
import { PuttingReportSchema } from '../../../core/player/putting-report.ts';
import { ChangedSchema, Id, plainText } from './values.ts';

const Place = z.int().min(0).max(1_000_000);
/** As entered; bounds are checked with the whole player. */
const PuttEntry = z.strictObject({
  distance_m: z.number(),
  attempts: z.number(),
  makes: z.number(),
  date: plainText(60).optional(),
});
export type PuttEntry = z.output<typeof PuttEntry>;
const row = {
  playerId: Id,
  place: Place,
  was: PuttEntry.describe('the row as seen; refused when another stands there'),
};

/** The putting log of a player. */
export const putting = {
  getPutting: { input: z.strictObject({ playerId: Id }), output: PuttingReportSchema },
  addPutts: { input: z.strictObject({ playerId: Id, putts: PuttEntry }), output: ChangedSchema },
  updatePutts: { input: z.strictObject({ ...row, to: PuttEntry }), output: ChangedSchema },
  removePutts: { input: z.strictObject(row), output: ChangedSchema },
};
