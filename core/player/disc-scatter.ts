import { z } from 'zod';
import { DEGREE_FIVE, SIGMA_POINTS, TYPICAL_SCATTER } from '../flight/dispersion.ts';
import { createFlightBatch, type FlightBatch } from '../flight/flight-batch.ts';
import { normalSamples } from '../flight/normal-samples.ts';
import type { Hand } from '../flight/release.ts';
import { civilDay } from './civil-day.ts';
import {
  calmMoments,
  chooseLaunch,
  type DiscFit,
  type GroupFit,
  groupMoments,
  SHAPE_HYZER_DEG,
  scatterOf,
  setCalm,
  startFit,
} from './disc-fit.ts';
import { fieldRecords } from './fieldwork.ts';
import type { FittedPlayer, FittedThrow, SpecialStatus } from './fitted-player.ts';
import { FlownSpreadSchema, type FlownThrow, flownSpread } from './flown-spread.ts';
import { type FieldThrow, isUsableForFit, type PlayerFile } from './player-file.ts';
import { restSamples } from './rest-samples.ts';
import { SpecialReportSchema, specialReports } from './special-report.ts';
import { cm, roundedSpread, SpreadEllipseSchema, spreadEllipses } from './spread-ellipse.ts';
import { driftText, stabilityDrift } from './stability-drift.ts';
import { bagSpread, rulerOf, weighThrows } from './weigh-throws.ts';

const metres = z.number();
const place = { session: z.int().describe('place in the file'), place: z.int().describe('place in its session') };
const PointSchema = z.strictObject({
  ...place,
  along_m: metres,
  side_m: metres.nullable().describe('right positive; null: not measured'),
  weight: z.number().describe('what it counts in the fit, 1 to almost 0'),
  standing: z.enum(['counts', 'counts less', 'set aside']),
});
/** Throws under one set of conditions, or all flat ones with the wind and slope taken out. */
const ViewSchema = z.strictObject({
  conditions: z
    .strictObject({
      shape: z.enum(['flat', 'hyzer', 'anhyzer']),
      power: z.number(),
      wind_mps: z.number().describe('at 10 m'),
      windFrom_deg: z.number().describe('clockwise from the line: 0 headwind, 90 from the right'),
      grade: z.number().describe('rise per metre'),
      surface: z.enum(['longGrass', 'turf', 'hardpan']),
    })
    .nullable()
    .describe('null: flat throws of all sessions, moved to calm air, level turf and full power'),
  sessions: z.array(z.int()),
  points: z.array(PointSchema),
  measured: z.array(SpreadEllipseSchema).describe('of the points, by their weight'),
  fitted: FlownSpreadSchema,
});
type ScatterView = z.output<typeof ViewSchema>;

/** One disc from one hand as it was measured, with the fit over it. */
export const DiscScatterSchema = z.strictObject({
  discId: z.string(),
  disc: z.string(),
  hand: z.enum(['backhand', 'forehand']),
  basis: z.enum(['measured', 'borrowed', 'predicted']),
  averageDay_m: metres,
  averageDaySd_m: metres,
  finish_m: metres.describe('right positive'),
  finishSd_m: metres,
  views: z.array(ViewSchema),
  specials: z.array(SpecialReportSchema).describe('its rollers and overhead throws, where any were measured'),
  unused: z
    .array(z.strictObject({ ...place, along_m: metres, side_m: metres.nullable(), why: z.string() }))
    .describe('throws that say nothing of the arm'),
  byDay: z
    .array(
      z.strictObject({
        session: z.int(),
        date: z.string(),
        day: z.number().describe('after the first'),
        throws: z.number().describe('outliers by their weight'),
        along_m: metres.describe('mean distance, moved to calm air, level turf and full power'),
        sd_m: metres.describe('of that mean, from the fitted spread; day-to-day spread not counted'),
      }),
    )
    .describe('flat throws of dated sessions, oldest first'),
  drift: z
    .strictObject({
      sessions: z.array(
        z.strictObject({
          date: z.string(),
          day: z.number().describe('after the first'),
          throws: z.number(),
          stability: z.number().describe('turn units, positive more stable than the numbers say'),
          sd: z.number(),
        }),
      ),
      verdict: z.enum(['less stable', 'more stable', 'no change shown']),
      text: z.string(),
    })
    .nullable()
    .describe('null: fewer than two dated sessions with sides, a week apart'),
});
export type DiscScatter = z.output<typeof DiscScatterSchema>;

/** Under this a throw is as good as left out; the fit's own limit. */
const SET_ASIDE_UNDER = 0.05;
const SPREAD_FLIGHTS = 256;
const FEWEST_FOR_MEAN = 2;
/** The fit's own step, and a finer one for what is drawn. */
const WEIGH_STEP_S = 0.12;
const DRAW_STEP_S = 0.08;

/**
 * What was measured of a disc from one hand, how far each throw counts, and the fitted flight over it.
 * @param player - fitted from the same file
 * @throws {RangeError} when the player has no such disc from that hand
 */
export function discScatter(file: PlayerFile, player: FittedPlayer, discId: string, hand: Hand, seed = 1): DiscScatter {
  const fitted = player.throws.find(t => t.discId === discId && t.hand === hand);
  if (fitted === undefined) throw new RangeError(`discId and hand must be of the player, got ${discId}, ${hand}`);
  const flier = createFlightBatch();
  flier.setStep(WEIGH_STEP_S);
  const fits = fieldRecords(file).map(record => startFit(record, file.handedness));
  for (const fit of fits) setUnknowns(flier, fit, player);
  const own = fits.find(({ record }) => record.disc.id === discId && record.hand === hand);
  if (own === undefined)
    throw new RangeError(`the fitted player must be of this file, which has no ${discId}, ${hand}`);
  const normals = normalSamples(SPREAD_FLIGHTS, seed);
  // as exactly as the fit itself looks at a disc, or throws at the edge would count otherwise here
  for (const at of own.groups) at.moments = groupMoments(flier, own, at, own.unknowns, DEGREE_FIVE);
  setCalm(flier, own, own.unknowns);
  const sample = restSamples(flier, own.radius_m, thrownOf(own, fitted.launch_deg), scatterOf(own.unknowns), normals);
  weighThrows(own, rulerOf(sample.along_m, sample.left_m), bagSpread(fits.filter(({ groups }) => groups.length > 0)));
  const drift = stabilityDrift(file, player, fitted, flier);
  flier.setStep(DRAW_STEP_S);
  const calm = calmView(flier, own, fitted, normals);
  return {
    discId,
    disc: fitted.disc,
    hand,
    basis: fitted.basis,
    averageDay_m: cm(fitted.averageDay_m),
    averageDaySd_m: cm(fitted.averageDaySd_m),
    finish_m: cm(fitted.finish_m),
    finishSd_m: cm(fitted.finishSd_m),
    views: [calm, ...own.groups.map(at => groupView(flier, own, at, normals))],
    byDay: byDay(file, calm.points, fitted.distanceSd_m),
    specials: specialReports(fitted.specials),
    unused: unusedThrows(file, discId, hand, fitted.specials ?? []),
    drift: drift && {
      sessions: drift.sessions.map(({ date, day, throws, stability, sd }) => ({ date, day, throws, stability, sd })),
      verdict: drift.verdict,
      text: driftText(drift),
    },
  };
}

/** The fit's last state again: what it ended with, and each group's moments there. */
function setUnknowns(flier: FlightBatch, fit: DiscFit, player: FittedPlayer): void {
  const { disc, hand } = fit.record;
  const t = player.throws.find(x => x.discId === disc.id && x.hand === hand);
  if (t === undefined) return;
  fit.unknowns = {
    logSpeed: Math.log(t.releaseSpeed_mps),
    stability: t.stabilityOffset,
    logLongScatter: Math.log(t.scatter.speed / TYPICAL_SCATTER.speed),
    logSideScatter: Math.log(t.scatter.azimuth_deg / TYPICAL_SCATTER.azimuth_deg),
  };
  for (const at of fit.groups) {
    at.launch_deg = t.launch_deg;
    for (let pass = 0; pass < 2; pass++) at.launch_deg = chooseLaunch(flier, fit, at, SIGMA_POINTS);
    at.moments = groupMoments(flier, fit, at, fit.unknowns, SIGMA_POINTS);
  }
}

/** Over level turf. */
const thrownOf = (fit: DiscFit, launch_deg: number, power = 1, hyzer_deg = 0): FlownThrow => ({
  speed_mps: power * Math.exp(fit.unknowns.logSpeed),
  launch_deg,
  hyzer_deg,
  spinPerSpeed: fit.spinPerSpeed,
  radius_m: fit.radius_m,
  scatter: scatterOf(fit.unknowns),
  surface: 'turf',
  grade: 0,
});

/** Flat throws of all sessions, each moved by what the model says its wind, slope, surface and power did to it. */
function calmView(flier: FlightBatch, fit: DiscFit, fitted: FittedThrow, normals: Float64Array): ScatterView {
  const calm = calmMoments(flier, fit, fit.unknowns, fitted.launch_deg, DEGREE_FIVE);
  const flat = fit.groups.filter(({ group }) => group.shape === 'flat');
  const points = flat.flatMap(at => pointsOf(at, calm.along_m - at.moments.along_m, at.moments.left_m - calm.left_m));
  setCalm(flier, fit, fit.unknowns);
  return {
    conditions: null,
    sessions: sessionsOf(points),
    points,
    measured: measuredSpread(points),
    fitted: flownSpread(flier, thrownOf(fit, fitted.launch_deg), normals),
  };
}

function groupView(flier: FlightBatch, fit: DiscFit, at: GroupFit, normals: Float64Array): ScatterView {
  const { group } = at;
  const points = pointsOf(at, 0, 0);
  // leaves disc, air and ground of the group set
  groupMoments(flier, fit, at, fit.unknowns, SIGMA_POINTS);
  const from = (Math.atan2(group.windY_mps, -group.windX_mps) * 180) / Math.PI;
  return {
    conditions: {
      shape: group.shape,
      power: group.power,
      wind_mps: cm(Math.hypot(group.windX_mps, group.windY_mps)),
      windFrom_deg: Math.round((from + 360) % 360) % 360,
      grade: group.grade,
      surface: group.surface,
    },
    sessions: sessionsOf(points),
    points,
    measured: measuredSpread(points),
    fitted: flownSpread(
      flier,
      {
        ...thrownOf(fit, at.launch_deg, group.power, SHAPE_HYZER_DEG[group.shape]),
        surface: group.surface,
        grade: group.grade,
      },
      normals,
    ),
  };
}

function pointsOf(at: GroupFit, further_m: number, right_m: number): ScatterView['points'] {
  return at.group.throws.map(({ along_m, left_m, path }, i) => {
    const weight = at.weights[i]!;
    return {
      ...placeOf(path),
      along_m: cm(along_m + further_m),
      side_m: left_m === null ? null : cm(-left_m + right_m),
      weight: Math.round(weight * 1000) / 1000,
      standing: weight < SET_ASIDE_UNDER ? 'set aside' : weight < 0.95 ? 'counts less' : 'counts',
    };
  });
}

function placeOf(path: string): { session: number; place: number } {
  const [, session, place] = /^sessions\[(\d+)\]\.throws\[(\d+)\]$/.exec(path) ?? [];
  if (session === undefined || place === undefined) throw new RangeError(`path must name a throw, got ${path}`);
  return { session: Number(session), place: Number(place) };
}

const sessionsOf = (points: ScatterView['points']) => [...new Set(points.map(({ session }) => session))];

const measuredSpread = (points: ScatterView['points']) =>
  roundedSpread(
    spreadEllipses(
      points.flatMap(({ along_m, side_m, weight }) => (side_m === null ? [] : [{ along_m, side_m, weight }])),
    ),
  );

/** Mean distance of each dated session with at least two throws that count. */
function byDay(file: PlayerFile, points: ScatterView['points'], distanceSd_m: number): DiscScatter['byDay'] {
  const dated = sessionsOf(points).flatMap(session => {
    const { date } = file.sessions[session]!;
    const day = date === undefined ? null : civilDay(date);
    const own = points.filter(point => point.session === session);
    const throws = own.reduce((sum, { weight }) => sum + weight, 0);
    if (date === undefined || day === null || throws < FEWEST_FOR_MEAN) return [];
    const along_m = own.reduce((sum, point) => sum + point.weight * point.along_m, 0) / throws;
    return [
      { session, date, day, throws: cm(throws), along_m: cm(along_m), sd_m: cm(distanceSd_m / Math.sqrt(throws)) },
    ];
  });
  dated.sort((a, b) => a.day - b.day);
  return dated.map(at => ({ ...at, day: at.day - dated[0]!.day }));
}

function unusedThrows(
  file: PlayerFile,
  discId: string,
  hand: Hand,
  specials: readonly SpecialStatus[],
): DiscScatter['unused'] {
  return file.sessions.flatMap(({ throws }, session) =>
    throws.flatMap((t, place) => {
      if (t.discId !== discId || t.hand !== hand || isUsableForFit(t)) return [];
      return [{ session, place, along_m: t.distance_m, side_m: t.side_m ?? null, why: whyUnused(t, specials) }];
    }),
  );
}

/** A throw that says nothing of the arm may still count among throws of its own kind. */
function whyUnused(t: FieldThrow, specials: readonly SpecialStatus[]): string {
  if (t.shape !== 'roller' && t.shape !== 'overhead') return 'part power without a number';
  if (t.side_m === undefined) return `${t.shape} without its sideways finish`;
  if (t.power === 'part') return `${t.shape} at part power without a number`;
  const own = specials.find(({ shape }) => shape === t.shape);
  if (own === undefined || own.problem !== null) return `${t.shape}: not fitted`;
  return own.fit === null
    ? `${t.shape}: kept until there are ${own.needed} more`
    : `${t.shape}: counts among those, which are fitted on their own`;
}
