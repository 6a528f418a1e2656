import { z } from 'zod';
import type { WindProfile } from '../air/wind-profile.ts';
import type { SurfaceName } from '../geometry/hole-map.ts';
import type { DiscModel } from './disc-model.ts';
import { createFlier, LANDING } from './flier.ts';
import { groundPlay, SURFACE_FRICTION } from './ground-play.ts';
import type { Release } from './release.ts';

const metres = z.number();

/** One simulated flight; the throw frame: x along the aim, y to the left of it, z up from the ground under the thrower. */
export const FlightReportSchema = z.object({
  schema: z.literal('roundwright/fly@1'),
  path: z
    .array(z.tuple([z.number(), metres, metres, metres]))
    .describe('[t_s, x_m, y_m, z_m] from the hand to touchdown, equal steps of time but the last'),
  apex_m: metres.describe('highest point above the ground under the thrower'),
  carry_m: metres.describe('along the aim to touchdown'),
  rest: z.object({ x_m: metres, y_m: metres.describe('left positive') }).describe('where it comes to rest'),
  time_s: z.number().describe('in the air'),
  release: z.object({
    speed_mps: z.number(),
    launch_deg: z.number(),
    nose_deg: z.number(),
    hyzer_deg: z.number().describe('positive: tilted towards the fade side'),
    spin_radps: z.number().describe('counter-clockwise seen from above positive'),
    height_m: metres,
  }),
  air: z.object({
    density_kgpm3: z.number(),
    wind_mps: z.number().describe('at 10 m over open ground'),
    windFrom_deg: z.number().describe('clockwise from the aim: 0 headwind, 90 from the right, 180 tailwind'),
  }),
  surface: z.enum(['longGrass', 'turf', 'hardpan']),
  notes: z.array(z.string()),
});
export type FlightReport = Readonly<z.output<typeof FlightReportSchema>>;

/** Wind against the aim, not true north; `profile` scales it by height. */
export type FlightAir = Readonly<{
  density_kgpm3: number;
  wind_mps: number;
  windFrom_deg: number;
  profile: WindProfile;
}>;

const DEGREE = Math.PI / 180;
const STEP_S = 0.05;

/**
 * Flies one disc over level ground and reports its path.
 * @param notes - what was assumed before the flight, passed through; what the flight itself says is added
 */
export function flightReport(
  model: DiscModel,
  release: Omit<Release, 'azimuth_deg'>,
  air: FlightAir,
  surface: SurfaceName,
  notes: readonly string[] = [],
): FlightReport {
  const flier = createFlier();
  flier.setDisc(model);
  flier.setAir(air.density_kgpm3, ...windInThrowFrame(air), air.profile);
  flier.setPlane(0, 0, 0);
  flier.setStep(STEP_S);
  const { speed_mps, launch_deg, nose_deg, hyzer_deg, spin_radps, height_m } = release;
  const landed = flier.fly(speed_mps, 0, launch_deg, nose_deg, hyzer_deg, spin_radps, height_m);
  const play = new Float64Array(2);
  if (landed) groundPlay(flier.landing, model.diameter_m / 2, SURFACE_FRICTION[surface], 0, 0, play);
  const [x_m, y_m] = [flier.landing[LANDING.x]!, flier.landing[LANDING.y]!];
  return {
    schema: 'roundwright/fly@1',
    path: Array.from({ length: flier.pathPoints() }, (_, i): [number, number, number, number] => [
      flier.pathTimes[i]!,
      flier.path[3 * i]!,
      flier.path[3 * i + 1]!,
      flier.path[3 * i + 2]!,
    ]),
    apex_m: flier.apex_m(),
    carry_m: x_m,
    rest: { x_m: x_m + play[0]!, y_m: y_m + play[1]! },
    time_s: flier.time_s(),
    release: { speed_mps, launch_deg, nose_deg, hyzer_deg, spin_radps, height_m },
    air: { density_kgpm3: air.density_kgpm3, wind_mps: air.wind_mps, windFrom_deg: air.windFrom_deg },
    surface,
    notes: landed ? [...notes] : [...notes, `Still in the air after ${flier.time_s().toFixed(0)} s: cut off there.`],
  };
}

/** Velocity of the air along x (ahead) and y (left) of a wind from `windFrom_deg`, clockwise from the aim. */
export function windInThrowFrame({
  wind_mps,
  windFrom_deg,
}: Pick<FlightAir, 'wind_mps' | 'windFrom_deg'>): [x_mps: number, y_mps: number] {
  const from = windFrom_deg * DEGREE;
  return [-wind_mps * Math.cos(from), wind_mps * Math.sin(from)];
}
