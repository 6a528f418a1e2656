import { z } from 'zod';
import { headerOfColumn } from '../../core/player/csv-columns.ts';
import type { FittedPlayer } from '../../core/player/fitted-player.ts';
import type { PlayerFile } from '../../core/player/player-file.ts';
import { type CsvPlan, throwsIn } from './plan-csv-import.ts';

const metres = z.number();
const Fit = z
  .strictObject({ n: z.number(), averageDay_m: metres, sd_m: metres.describe('of the average day'), finish_m: metres })
  .describe('as throws --json has it');

/** What `throws --csv --json` prints. */
export const ThrowsImportSchema = z.strictObject({
  schema: z.literal('roundwright/throws-import@1'),
  player: z.string(),
  columns: z.array(z.strictObject({ name: z.string(), meaning: z.string().nullable() })),
  delimiter: z.enum([',', ';', '\t']),
  added: z.strictObject({
    throws: z.int(),
    sessions: z.array(z.strictObject({ date: z.string().nullable(), throws: z.int() })),
  }),
  leftOut: z.strictObject({
    bad: z.int().describe('rows'),
    known: z.int().describe('throws in whole sessions the player has already'),
  }),
  changed: z
    .array(
      z.strictObject({
        discId: z.string(),
        disc: z.string(),
        hand: z.enum(['backhand', 'forehand']),
        added: z.int().describe('throws'),
        before: Fit.nullable().describe('null: no throw from that hand was measured'),
        after: Fit,
      }),
    )
    .describe('discs with new throws'),
  written: z.string().nullable().describe('the file written'),
});
export type ThrowsImport = z.output<typeof ThrowsImportSchema>;

/** What an import adds, and what it does to the fitted throws of the discs thrown. */
export function importReport(
  file: PlayerFile,
  plan: CsvPlan,
  before: FittedPlayer,
  after: FittedPlayer,
  written: string | null,
): ThrowsImport {
  const thrown = plan.sessions.flatMap(({ throws }) => throws);
  const changed = after.throws.flatMap(t => {
    const added = thrown.filter(({ discId, hand }) => discId === t.discId && hand === t.hand).length;
    if (added === 0) return [];
    const old = before.throws.find(({ discId, hand }) => discId === t.discId && hand === t.hand);
    const { discId, disc, hand } = t;
    return [{ discId, disc, hand, added, before: old === undefined ? null : fitOf(old), after: fitOf(t) }];
  });
  return {
    schema: 'roundwright/throws-import@1',
    player: file.name,
    columns: plan.columns.map(({ name, meaning }) => ({ name, meaning: meaning && headerOfColumn(meaning) })),
    delimiter: plan.delimiter,
    added: {
      throws: throwsIn(plan.sessions),
      sessions: plan.sessions.map(({ date, throws }) => ({ date: date ?? null, throws: throws.length })),
    },
    leftOut: { bad: plan.rows.filter(({ problems }) => problems.length > 0).length, known: plan.known },
    changed,
    written,
  };
}

const tenth = (value: number) => Math.round(value * 10) / 10 + 0;

function fitOf({ n, averageDay_m, averageDaySd_m, finish_m }: FittedPlayer['throws'][number]) {
  return { n, averageDay_m: tenth(averageDay_m), sd_m: tenth(averageDaySd_m), finish_m: tenth(finish_m) };
}
