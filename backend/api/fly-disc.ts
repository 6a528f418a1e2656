import { z } from 'zod';
import { type Day, makeDay } from '../../core/air/day.ts';
import { windProfile } from '../../core/air/wind-profile.ts';
import { problemPath } from '../../core/course/problem-path.ts';
import { discModel, ratedArmSpeed_mps } from '../../core/flight/disc-model.ts';
import { farthestLaunch_deg, TYPICAL_SCATTER } from '../../core/flight/dispersion.ts';
import { createFlightBatch } from '../../core/flight/flight-batch.ts';
import { type FlightReport, flightReport, windInThrowFrame } from '../../core/flight/flight-report.ts';
import { RELEASE_HEIGHT_M, releaseSpin_radps } from '../../core/flight/release.ts';
import type { FittedPlayer, FittedThrow } from '../../core/player/fitted-player.ts';
import type { Problem, Result } from '../../core/units/result.ts';

const between = (low: number, high: number, what: string) =>
  z
    .number(`must be ${what}`)
    .min(low, `must be ${what}, ${low} to ${high}`)
    .max(high, `must be ${what}, ${low} to ${high}`);

const Numbers = z.strictObject({
  speed: between(0, 16, 'the speed number'),
  glide: between(0, 8, 'the glide number'),
  turn: between(-7, 3, 'the turn number'),
  fade: between(-1, 7, 'the fade number'),
});

/** One throw to simulate. `disc`: trade flight numbers, or the id of one of the player's discs. */
const FlyInputSchema = z.strictObject({
  disc: z.union([Numbers, z.string()]),
  mass_g: between(60, 400, 'a mass in grams').optional(),
  speed_mps: between(1, 45, 'a release speed in m/s').optional(),
  launch_deg: between(-30, 60, 'a launch angle in degrees').optional(),
  nose_deg: between(-30, 30, 'a nose angle in degrees').default(0),
  hyzer_deg: between(-90, 90, 'a hyzer angle in degrees').default(0),
  hand: z.enum(['backhand', 'forehand'], 'must be backhand or forehand').default('backhand'),
  handedness: z.enum(['right', 'left'], 'must be right or left').optional(),
  wind_mps: between(0, 40, 'a wind in m/s').default(0),
  windFrom_deg: between(-360, 360, 'degrees clockwise from the aim').optional(),
  temperature_C: z.number().optional(),
  altitude_m: z.number().optional(),
  surface: z.enum(['longGrass', 'turf', 'hardpan'], 'must be longGrass, turf or hardpan').default('turf'),
});
export type FlyInput = z.input<typeof FlyInputSchema>;
type Asked = z.output<typeof FlyInputSchema>;

/** Below this share of the arm speed its numbers are made for, a fast disc's flight is not backed by anything (assumed). */
const UNDER_RATED = 0.88;
const FAST_DISC_SPEED = 9;

/**
 * Simulates one throw.
 * @param player - whose disc it is, when `input.disc` is an id
 * @returns the flight, or every problem with paths as in the input
 */
export function flyDisc(input: FlyInput, player?: FittedPlayer): Result<FlightReport> {
  const parsed = FlyInputSchema.safeParse(input);
  if (!parsed.success) return { ok: false, problems: parsed.error.issues.flatMap(readable) };
  const asked = parsed.data;
  const day = stillDay(asked);
  const thrown = throwOf(asked, player);
  if (!day.ok || !thrown.ok)
    return { ok: false, problems: [...(day.ok ? [] : day.problems), ...(thrown.ok ? [] : thrown.problems)] };
  const { model, speed_mps, spinPerSpeed, scatter, notes } = thrown.value;
  const profile = windProfile('open');
  const windFrom_deg = (((asked.windFrom_deg ?? 0) % 360) + 360) % 360;
  const air = {
    density_kgpm3: day.value.density_kgpm3,
    wind_mps: asked.wind_mps,
    windFrom_deg,
    profile,
  };
  const said = [...day.value.notes, ...notes];
  if (asked.wind_mps > 0 && asked.windFrom_deg === undefined) said.push('No direction given: a headwind.');
  let { launch_deg } = asked;
  if (launch_deg === undefined) {
    const flier = createFlightBatch();
    flier.setDisc(model);
    flier.setAir(air.density_kgpm3, ...windInThrowFrame(air), profile);
    const release = { speed_mps, hyzer_deg: asked.hyzer_deg, spinPerSpeed };
    launch_deg = farthestLaunch_deg(flier, model.diameter_m / 2, asked.surface, release, scatter);
    said.push(`No launch given: ${launch_deg.toFixed(1)}°, which carries this throw farthest on average.`);
  }
  const release = {
    speed_mps,
    launch_deg,
    nose_deg: asked.nose_deg,
    hyzer_deg: asked.hyzer_deg,
    spin_radps: spinPerSpeed * speed_mps,
    height_m: RELEASE_HEIGHT_M,
  };
  return { ok: true, value: flightReport(model, release, air, asked.surface, said) };
}

type Thrown = Pick<FittedThrow, 'model' | 'spinPerSpeed' | 'scatter'> &
  Readonly<{ speed_mps: number; notes: readonly string[] }>;

function throwOf(asked: Asked, player: FittedPlayer | undefined): Result<Thrown> {
  if (typeof asked.disc === 'string') return fittedThrowOf(asked, asked.disc, player);
  const { speed_mps } = asked;
  if (speed_mps === undefined) return refused('speed_mps', 'is missing: give the release speed, such as 22 or 50mph');
  const { disc } = asked;
  const model = discModel({ ...disc, ...(asked.mass_g === undefined ? {} : { mass_kg: asked.mass_g / 1000 }) });
  const spinPerSpeed = releaseSpin_radps(asked.hand, asked.handedness ?? 'right', 1, model.diameter_m);
  const rated_mps = ratedArmSpeed_mps(disc.speed);
  const slow = disc.speed >= FAST_DISC_SPEED && speed_mps < UNDER_RATED * rated_mps;
  const notes = [
    'Flown from the trade numbers alone: throws of your own make it better (--player).',
    ...(slow
      ? [`Its numbers are made for about ${rated_mps.toFixed(0)} m/s: at ${speed_mps.toFixed(1)} m/s uncertain.`]
      : []),
  ];
  return { ok: true, value: { model, spinPerSpeed, scatter: TYPICAL_SCATTER, speed_mps, notes } };
}

function fittedThrowOf(asked: Asked, discId: string, player: FittedPlayer | undefined): Result<Thrown> {
  if (player === undefined)
    return refused('disc', `"${discId}" is not four numbers like 7/5/-1/1.5; for a disc by its id give the player too`);
  if (asked.mass_g !== undefined) return refused('mass_g', "the mass of a player's disc stands in the player file");
  if (asked.handedness !== undefined && asked.handedness !== player.handedness)
    return refused('handedness', `the player file says ${player.handedness}-handed`);
  const ofDisc = player.throws.filter(t => t.discId === discId);
  if (ofDisc.length === 0) {
    const ids = [...new Set(player.throws.map(t => t.discId))].join(', ');
    return refused('disc', `"${discId}" is not a disc of ${player.name}: one of ${ids}`);
  }
  const fitted = ofDisc.find(t => t.hand === asked.hand);
  if (fitted === undefined)
    return refused('hand', `${ofDisc[0]!.disc} has no ${asked.hand}: no ${asked.hand} throw is measured`);
  const { model, spinPerSpeed, scatter, releaseSpeed_mps, notes } = fitted;
  return {
    ok: true,
    value: { model, spinPerSpeed, scatter, speed_mps: asked.speed_mps ?? releaseSpeed_mps, notes: sentences(notes) },
  };
}

const sentences = (notes: readonly string[]) => notes.map(note => `${note.charAt(0).toUpperCase()}${note.slice(1)}.`);

/** One flight meets the mean wind: gusts and swings are left out on purpose. */
function stillDay(asked: Asked): Result<Day> {
  const wind = { speed_mps: asked.wind_mps, from_deg: 0, gust_mps: asked.wind_mps, directionSpread_deg: 0 };
  return makeDay({ wind, temperature_C: asked.temperature_C, altitude_m: asked.altitude_m });
}

/** A union hides what is wrong inside it: the numbers of a disc are looked at on their own. */
function readable(issue: z.core.$ZodIssue): Problem[] {
  const path = problemPath(issue.path) || 'input';
  if (issue.code !== 'invalid_union') return [{ path, message: issue.message }];
  return (issue.errors[0] ?? []).map(inner => ({
    path: problemPath([...issue.path, ...inner.path]),
    message: inner.message,
  }));
}

function refused(path: string, message: string): Result<never> {
  return { ok: false, problems: [{ path, message }] };
}
