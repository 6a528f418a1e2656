import { z } from 'zod';
import { createFlightBatch } from '../flight/flight-batch.ts';
import type { FittedPlayer } from '../player/fitted-player.ts';
import { sessionLesson } from '../player/session-lesson.ts';
import type { HoleMeasuring } from './measuring-hole.ts';
import { isAllowed, type Limits } from './shots.ts';

const distance = z.number().describe('metres');

const MeasureRowSchema = z.object({
  discId: z.string(),
  disc: z.string(),
  hand: z.enum(['backhand', 'forehand']),
  basis: z.enum(['measured', 'borrowed', 'predicted']),
  n: z.number().describe('throws used so far'),
  worth: z.number().describe('throws saved over these holes; noise can make a worth of nothing come out below 0'),
  standardError: z.number(),
  isClear: z.boolean().describe('more than nothing, beyond the sampling error'),
  isAsGoodAsFirst: z.boolean().describe('the sampling error cannot tell it from the first'),
  averageDaySd_m: z.object({ before: distance, after: distance }).describe('one standard deviation of the doubt'),
  finishSd_m: z.object({ before: distance, after: distance }),
  holes: z
    .array(z.object({ ref: z.string(), chance: z.number() }))
    .describe('where a throw may be chosen or aimed otherwise, likeliest first'),
});

/** Which disc to measure next for some holes, most worth first. */
export const MeasureNextSchema = z.object({
  course: z.string(),
  holes: z.array(z.string()),
  throws: z.int().describe('throws of the imagined session'),
  draws: z.int().describe('imagined results of it'),
  seed: z.int(),
  rows: z.array(MeasureRowSchema),
  method: z.string(),
});
export type MeasureNext = z.output<typeof MeasureNextSchema>;
type MeasureRow = MeasureNext['rows'][number];

const ONE_SIDED_95 = 1.6448536269514722; // Φ⁻¹(0.95)
const LEAST_CHANCE = 0.05;
/** A worth without any imagined result that changes a throw is nothing. */
const NOTHING = 1e-9;

const MEASURING_METHOD =
  'Expected value of sample information, approximate: results of the session are drawn from what the fit leaves unknown; under each the choice is made anew among the plan’s own finalists, from the tee and from the likely next lies, with power and aim put right, and the gain counted on fresh samples. Later lies keep the plan’s values; what a session teaches of your other discs, and the day’s own form, are left out, so a worth is rather low: about two thirds of what choosing anew in full found in a check.';

/** The throws worth asking about: allowed ones that a session would teach something of. */
export function askable(player: FittedPlayer, limits: Limits): number[] {
  return player.throws.flatMap((t, k) => (isAllowed(t, limits) ? [k] : []));
}

/**
 * Sums what measuring each disc is worth over the holes of a round.
 * @param holes - one after the other, all for the same throws, results and seed
 */
export function measureNext(
  course: string,
  player: FittedPlayer,
  holes: readonly HoleMeasuring[],
  question: Readonly<{ throws: number; draws: number; seed: number }>,
): MeasureNext {
  const flier = createFlightBatch();
  const indices = [...new Set(holes.flatMap(hole => hole.worths.map(w => w.throwIndex)))];
  const sums = indices.map(k => {
    const own = holes.flatMap(hole =>
      hole.worths.filter(w => w.throwIndex === k).map(worth => ({ ref: hole.ref, ...worth })),
    );
    const gains = Array.from({ length: question.draws }, (_, j) => own.reduce((sum, w) => sum + w.gains[j]!, 0));
    return { k, own, gains, worth: meanOf(gains) };
  });
  sums.sort((a, b) => b.worth - a.worth || a.k - b.k);
  const first = sums[0];
  const rows = sums.map(({ k, own, gains, worth }): MeasureRow => {
    const t = player.throws[k]!;
    const { before, after } = sessionLesson(t, question.throws, flier);
    const standardError = errorOf(gains);
    const behind = gains.map((gain, j) => first!.gains[j]! - gain);
    const shareLeft = (now: number, then: number) => (now > 0 ? then / now : 1);
    return {
      discId: t.discId,
      disc: t.disc,
      hand: t.hand,
      basis: t.basis,
      n: t.n,
      worth,
      standardError,
      isClear: worth > NOTHING && worth > ONE_SIDED_95 * standardError,
      isAsGoodAsFirst: meanOf(behind) <= ONE_SIDED_95 * errorOf(behind),
      averageDaySd_m: {
        before: t.averageDaySd_m,
        after: t.averageDaySd_m * shareLeft(before.along_m, after.along_m),
      },
      finishSd_m: { before: t.finishSd_m, after: t.finishSd_m * shareLeft(before.left_m, after.left_m) },
      holes: own
        .filter(w => w.changes >= LEAST_CHANCE)
        .sort((a, b) => b.changes - a.changes)
        .map(({ ref, changes }) => ({ ref, chance: changes })),
    };
  });
  return { course, holes: holes.map(hole => hole.ref), ...question, rows, method: MEASURING_METHOD };
}

function meanOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / Math.max(1, values.length);
}

/** Standard error of the mean over the imagined results: sampling of the flights is in it. */
function errorOf(values: readonly number[]): number {
  const mean = meanOf(values);
  const squares = values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  return Math.sqrt(squares / Math.max(1, values.length - 1) / Math.max(1, values.length));
}
