import { z } from 'zod';
import { type AnhyzerSign, anhyzerText } from './anhyzer-sign.ts';
import { bagLayout, DOUBLE_UNDER_SD, FINISH_GAP_M, GAP_M, HEADWIND_MPS, LEANS } from './bag-layout.ts';
import { DISC_CLASSES } from './disc-class.ts';
import type { DiscSigns } from './disc-signs.ts';
import type { FittedPlayer, FittedThrow } from './fitted-player.ts';
import { readiness } from './readiness.ts';
import { SpecialReportSchema, specialReports } from './special-report.ts';
import { driftText, type StabilityDrift } from './stability-drift.ts';

const distance = z.number().describe('metres');
const hand = z.enum(['backhand', 'forehand']);
const interval = z.object({ low: z.number(), high: z.number() });

const ReadinessSchema = z.object({
  verdict: z.enum(['ready', 'too fast for now']),
  disc: z.string(),
  gate: z
    .object({ what: z.string(), from_m: distance, to_m: distance, feet: z.string() })
    .nullable()
    .describe('what opens the disc (common practice, no source); null when it suits any arm'),
  evidence: z.object({ disc: z.string(), averageDay_m: distance }).nullable().describe("the player's own slower disc"),
  cost: z.object({ longer_m: distance, wider_m: distance }).nullable().describe('against that disc'),
  text: z.string(),
});

const AnhyzerSchema = z.object({
  basis: z.enum(['measured', 'model']),
  flat_m: distance,
  anhyzer_m: distance,
  gain_m: distance.describe('anhyzer less flat'),
  gainSd_m: distance.describe('one standard deviation of the doubt'),
  throws: z.int().describe('measured on anhyzer'),
  isShown: z.boolean().describe('clearly farther on anhyzer'),
  text: z.string(),
});

const DriftSchema = z.object({
  change: z.number().describe('turn units from the first to the last session'),
  low: z.number().describe('90 % interval'),
  high: z.number(),
  days: z.int(),
  verdict: z.enum(['less stable', 'more stable', 'no change shown']),
  sessions: z.array(
    z.object({
      date: z.string(),
      day: z.int(),
      throws: z.number(),
      stability: z.number().describe('turn units'),
      sd: z.number(),
    }),
  ),
  text: z.string(),
});

/** One disc from one hand: calm air, level turf, thrown flat at full power. */
const ThrowRowSchema = z.object({
  discId: z.string(),
  disc: z.string(),
  class: z.enum(DISC_CLASSES),
  hand,
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
    .object({
      averageDay_m: distance,
      best_m: distance,
      finish_m: distance,
      releaseSpeed_mps: z.number(),
      stabilityOffset: z.number(),
    })
    .describe('one standard deviation of the fitted values'),
  interval90: z
    .object({ averageDay_m: interval, best_m: interval, finish_m: interval })
    .describe('holds the truth nine times in ten'),
  readiness: ReadinessSchema,
  anhyzer: AnhyzerSchema.nullable().describe('sign of a disc too fast; null for discs that suit any arm'),
  drift: DriftSchema.nullable().describe('stability over the sessions; null while there are too few'),
  notes: z.array(z.string()),
  specials: z.array(SpecialReportSchema).describe('rollers and overhead throws, where any were measured'),
});

const LayoutSchema = z.object({
  thresholds: z
    .object({ gap_m: distance, finishGap_m: distance, double_sd: z.number(), headwind_mps: z.number() })
    .describe('assumed'),
  gaps: z.array(
    z.object({ hand, shorter: z.string(), longer: z.string(), from_m: distance, to_m: distance, isSure: z.boolean() }),
  ),
  finishGaps: z.array(z.object({ hand, lean: z.enum(LEANS), longest_m: distance.nullable(), reach_m: distance })),
  doubles: z.array(
    z.object({
      hand,
      discs: z.tuple([z.string(), z.string()]),
      apart_m: distance,
      apartSds: z.number().describe('standard deviations of one throw, calm'),
      apartInHeadwindSds: z.number(),
      tellApartChance: z.number().describe('from one landing; 0.5 is a coin'),
      isSure: z.boolean(),
    }),
  ),
  spots: z.array(
    z.object({
      discId: z.string(),
      disc: z.string(),
      hand,
      averageDay_m: distance,
      finish_m: distance,
      lean: z.enum(LEANS),
      headwind: z.object({ distance_m: distance, finish_m: distance }),
    }),
  ),
});

/** What `throws --json` prints. */
export const ThrowsReportSchema = z.object({
  schema: z.literal('roundwright/throws@1'),
  player: z.string(),
  handedness: z.enum(['right', 'left']),
  throws: z.array(ThrowRowSchema),
  layout: LayoutSchema.describe('the throwing discs by distance and finish, each hand for itself'),
  notes: z.array(z.string()).describe('what was assumed'),
});

export type ThrowsReport = z.output<typeof ThrowsReportSchema>;
export type ThrowRow = ThrowsReport['throws'][number];

const NORMAL_90 = 1.6448536269514722; // Φ⁻¹(0.95)
const METRES = { length: 'm', speed: 'mps' } as const;

/**
 * The fitted range table of every disc and hand, in bag order, rounded to what the eye can use.
 * @param signs - of every throw of the player, in any order
 * @throws {RangeError} naming the throw without signs
 */
export function throwsReport(player: FittedPlayer, signs: readonly DiscSigns[]): ThrowsReport {
  return {
    schema: 'roundwright/throws@1',
    player: player.name,
    handedness: player.handedness,
    throws: player.throws.map(t => {
      const own = signs.find(s => s.discId === t.discId && s.hand === t.hand);
      if (own === undefined) throw new RangeError(`no signs were found for ${t.discId} ${t.hand}`);
      return rowOf(player.throws, t, own);
    }),
    layout: layoutOf(player.throws),
    notes: [...player.notes],
  };
}

function rowOf(bag: readonly FittedThrow[], t: FittedThrow, signs: DiscSigns): ThrowRow {
  const ready = readiness(bag, t);
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
      best_m: rounded(t.bestSd_m, 1),
      finish_m: rounded(t.finishSd_m, 1),
      releaseSpeed_mps: rounded(t.releaseSpeedSd * t.releaseSpeed_mps, 2),
      stabilityOffset: rounded(t.stabilityOffsetSd, 2),
    },
    interval90: {
      averageDay_m: intervalOf(t.averageDay_m, t.averageDaySd_m),
      best_m: intervalOf(t.best_m, t.bestSd_m),
      finish_m: intervalOf(t.finish_m, t.finishSd_m),
    },
    readiness: {
      ...ready,
      evidence: ready.evidence && { ...ready.evidence, averageDay_m: rounded(ready.evidence.averageDay_m, 1) },
      cost: ready.cost && { longer_m: rounded(ready.cost.longer_m, 1), wider_m: rounded(ready.cost.wider_m, 1) },
    },
    anhyzer: signs.anhyzer && anhyzerOf(signs.anhyzer, ready.verdict),
    drift: signs.drift && driftOf(signs.drift),
    notes: [...t.notes],
    specials: specialReports(t.specials),
  };
}

const intervalOf = (value: number, sd: number) => ({
  low: rounded(value - NORMAL_90 * sd, 1),
  high: rounded(value + NORMAL_90 * sd, 1),
});

function anhyzerOf(sign: AnhyzerSign, verdict: ThrowRow['readiness']['verdict']): ThrowRow['anhyzer'] {
  return {
    ...sign,
    flat_m: rounded(sign.flat_m, 1),
    anhyzer_m: rounded(sign.anhyzer_m, 1),
    gain_m: rounded(sign.gain_m, 1),
    gainSd_m: rounded(sign.gainSd_m, 1),
    text: anhyzerText(sign, verdict, METRES),
  };
}

function driftOf(drift: StabilityDrift): ThrowRow['drift'] {
  return {
    change: rounded(drift.change, 2),
    low: rounded(drift.low, 2),
    high: rounded(drift.high, 2),
    days: drift.days,
    verdict: drift.verdict,
    sessions: drift.sessions.map(s => ({
      ...s,
      throws: rounded(s.throws, 1),
      stability: rounded(s.stability, 2),
      sd: rounded(s.sd, 2),
    })),
    text: driftText(drift),
  };
}

function layoutOf(throws: readonly FittedThrow[]): ThrowsReport['layout'] {
  const { gaps, finishGaps, doubles, spots } = bagLayout(throws);
  return {
    thresholds: {
      gap_m: GAP_M,
      finishGap_m: FINISH_GAP_M,
      double_sd: DOUBLE_UNDER_SD,
      headwind_mps: HEADWIND_MPS,
    },
    gaps: gaps.map(gap => ({ ...gap, from_m: rounded(gap.from_m, 1), to_m: rounded(gap.to_m, 1) })),
    finishGaps: finishGaps.map(gap => ({
      ...gap,
      longest_m: gap.longest_m === null ? null : rounded(gap.longest_m, 1),
      reach_m: rounded(gap.reach_m, 1),
    })),
    doubles: doubles.map(double => ({
      ...double,
      discs: [...double.discs],
      apart_m: rounded(double.apart_m, 1),
      apartSds: rounded(double.apartSds, 2),
      apartInHeadwindSds: rounded(double.apartInHeadwindSds, 2),
      tellApartChance: rounded(double.tellApartChance, 2),
    })),
    spots: spots.map(spot => ({
      ...spot,
      averageDay_m: rounded(spot.averageDay_m, 1),
      finish_m: rounded(spot.finish_m, 1),
      headwind: { distance_m: rounded(spot.headwind.distance_m, 1), finish_m: rounded(spot.headwind.finish_m, 1) },
    })),
  };
}

function rounded(value: number, digits: number): number {
  const scale = 10 ** digits;
  return Math.round(value * scale) / scale + 0; // + 0: no minus zero
}
