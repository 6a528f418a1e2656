import { z } from 'zod';
import { DISC_CLASSES } from './disc-class.ts';
import type { FittedPlayer, FittedThrow } from './fitted-player.ts';
import { readiness } from './readiness.ts';

const distance = z.number().describe('metres');

/** One disc from one hand: calm air, level turf, thrown flat at full power. */
const ThrowRowSchema = z.object({
  discId: z.string(),
  disc: z.string(),
  class: z.enum(DISC_CLASSES),
  hand: z.enum(['backhand', 'forehand']),
  role: z.enum(['putting', 'throwing']),
  n: z.number().min(0).describe('throws used, outliers counted by their weight'),
  averageDay_m: distance.describe('mean distance at rest: what planning uses'),
  best_m: distance.describe('95th percentile of the distance'),
  finish_m: distance.describe('mean sideways finish, right positive'),
  releaseSpeed_mps: z.number().min(0),
  stabilityOffset: z.number().describe('turn units, positive more stable than the numbers say'),
  scatter: z.object({ distance_m: distance, side_m: distance }).describe('one standard deviation of one throw'),
  basis: z.enum(['measured', 'borrowed', 'predicted']),
  uncertainty: z
    .object({ averageDay_m: distance, finish_m: distance, releaseSpeed_mps: z.number(), stabilityOffset: z.number() })
    .describe('one standard deviation of the fitted values'),
  readiness: z.object({ verdict: z.enum(['ready', 'too fast for now']), text: z.string() }),
  notes: z.array(z.string()),
});

/** What `throws --json` prints. */
export const ThrowsReportSchema = z.object({
  schema: z.literal('roundwright/throws@1'),
  player: z.string(),
  handedness: z.enum(['right', 'left']),
  throws: z.array(ThrowRowSchema),
  notes: z.array(z.string()).describe('what was assumed'),
});

export type ThrowsReport = z.output<typeof ThrowsReportSchema>;

/** The fitted range table of every disc and hand, in bag order, rounded to what the eye can use. */
export function throwsReport(player: FittedPlayer): ThrowsReport {
  return {
    schema: 'roundwright/throws@1',
    player: player.name,
    handedness: player.handedness,
    throws: player.throws.map(t => rowOf(player.throws, t)),
    notes: [...player.notes],
  };
}

function rowOf(bag: readonly FittedThrow[], t: FittedThrow): ThrowsReport['throws'][number] {
  return {
    discId: t.discId,
    disc: t.disc,
    class: t.class,
    hand: t.hand,
    role: t.role,
    n: t.n,
    averageDay_m: rounded(t.averageDay_m, 1),
    best_m: rounded(t.best_m, 1),
    finish_m: rounded(t.finish_m, 1),
    releaseSpeed_mps: rounded(t.releaseSpeed_mps, 2),
    stabilityOffset: rounded(t.stabilityOffset, 2),
    scatter: { distance_m: rounded(t.distanceSd_m, 1), side_m: rounded(t.sideSd_m, 1) },
    basis: t.basis,
    uncertainty: {
      averageDay_m: rounded(t.averageDaySd_m, 1),
      finish_m: rounded(t.finishSd_m, 1),
      releaseSpeed_mps: rounded(t.releaseSpeedSd * t.releaseSpeed_mps, 2),
      stabilityOffset: rounded(t.stabilityOffsetSd, 2),
    },
    readiness: readiness(bag, t),
    notes: [...t.notes],
  };
}

function rounded(value: number, digits: number): number {
  const scale = 10 ** digits;
  return Math.round(value * scale) / scale + 0; // + 0: no minus zero
}
