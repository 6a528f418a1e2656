import fc from 'fast-check';
import { type Exposure, type WindProfile, windProfile } from '../../../core/air/wind-profile.ts';
import { type DiscSpec, discModel } from '../../../core/flight/disc-model.ts';
import { createFlier, LANDING } from '../../../core/flight/flier.ts';
import { groundPlay, SURFACE_FRICTION } from '../../../core/flight/ground-play.ts';
import type { SurfaceName } from '../../../core/geometry/hole-map.ts';
import { heaviestLegal_g } from '../../../core/player/disc-legality.ts';

export type AnyFlight = Readonly<{
  disc: DiscSpec;
  speed_mps: number;
  azimuth_deg: number;
  launch_deg: number;
  nose_deg: number;
  hyzer_deg: number;
  spin_radps: number;
  height_m: number;
  density_kgpm3: number;
  windX_mps: number;
  windY_mps: number;
  exposure: Exposure;
  gradX: number;
  gradY: number;
  step_s: number;
  surface: SurfaceName;
}>;

const STEPS = 2 ** 24;
/** Mostly even over the range, now and then one of the odd doubles (tiny, minus zero, the ends) that break formulas. */
export const between = (min: number, max: number): fc.Arbitrary<number> =>
  fc.oneof(
    { weight: 4, arbitrary: fc.integer({ min: 0, max: STEPS }).map(i => min + ((max - min) * i) / STEPS) },
    { weight: 1, arbitrary: fc.double({ min, max, noNaN: true }) },
  );

const anyAir = {
  density_kgpm3: between(0.7, 1.45),
  windX_mps: between(-30, 30),
  windY_mps: between(-30, 30),
  exposure: fc.constantFrom<Exposure>('open', 'park', 'wood'),
  gradX: between(-0.5, 0.5),
  gradY: between(-0.5, 0.5),
  step_s: fc.constantFrom(0.02, 0.05, 0.08),
  surface: fc.constantFrom<SurfaceName>('longGrass', 'turf', 'hardpan'),
};
const anyAttitude = {
  azimuth_deg: between(-180, 180),
  launch_deg: between(-90, 90),
  nose_deg: between(-180, 180),
  hyzer_deg: between(-180, 180),
};

/** Far beyond what a thrower or a maker can do: ratings out of range, spins of 0 to 250 rad/s either way, wind of 42 m/s. */
export const extremeFlight: fc.Arbitrary<AnyFlight> = fc.record({
  disc: fc.record({
    speed: between(-2, 20),
    glide: between(-1, 10),
    turn: between(-8, 4),
    fade: between(-1, 8),
    mass_kg: between(0.1, 0.25),
    diameter_m: between(0.15, 0.45),
    rimWidth_m: between(0.002, 0.05),
    wear: between(0, 1),
    stabilityOffset: between(-4, 4),
  }),
  speed_mps: between(0, 45),
  ...anyAttitude,
  spin_radps: between(-250, 250),
  height_m: between(0, 3),
  ...anyAir,
});

/** Discs within the published limits of size and mass, with trade numbers in their range, thrown anyhow in any wind. */
export const legalFlight: fc.Arbitrary<AnyFlight> = fc.record({
  disc: fc
    .record({
      speed: between(1, 15),
      glide: between(1, 7),
      turn: between(-5, 1),
      fade: between(0, 5),
      // 21–40 cm: PDGA rules of play, disc technical standards (section 805 of an older edition); rim to 2.6 cm: from memory
      diameter_m: between(0.21, 0.4),
      rimWidth_m: between(0.008, 0.026),
      massShare: between(0.6, 1),
      wear: between(0, 1),
    })
    .map(({ massShare, ...disc }) => ({
      ...disc,
      mass_kg: (massShare * heaviestLegal_g(1000 * disc.diameter_m)) / 1000,
    })),
  speed_mps: between(0, 40),
  ...anyAttitude,
  spin_radps: between(-200, 200),
  height_m: between(0.1, 2.5),
  ...anyAir,
});

const flier = createFlier();
const play = new Float64Array(2);
const PROFILES: Readonly<Record<Exposure, WindProfile>> = {
  open: windProfile('open'),
  park: windProfile('park'),
  wood: windProfile('wood'),
};

export type Flown = Readonly<{
  landed: boolean;
  /** Touchdown, `LANDING` indices; the last state when it never landed. */
  state: Float64Array;
  /** From touchdown to rest. */
  play_m: readonly [x: number, y: number];
  apex_m: number;
  time_s: number;
  /** `[x, y, z]` of every path point. */
  path: Float64Array;
  pathTimes: Float64Array;
}>;

/** Flies and plays out; the arrays are views that the next call overwrites. */
export function flown(flight: AnyFlight): Flown {
  const model = discModel(flight.disc);
  flier.setDisc(model);
  flier.setAir(flight.density_kgpm3, flight.windX_mps, flight.windY_mps, PROFILES[flight.exposure]);
  flier.setPlane(0, flight.gradX, flight.gradY);
  flier.setStep(flight.step_s);
  const landed = flier.fly(
    flight.speed_mps,
    flight.azimuth_deg,
    flight.launch_deg,
    flight.nose_deg,
    flight.hyzer_deg,
    flight.spin_radps,
    flight.height_m,
  );
  play.fill(0);
  if (landed)
    groundPlay(flier.landing, model.diameter_m / 2, SURFACE_FRICTION[flight.surface], flight.gradX, flight.gradY, play);
  return {
    landed,
    state: flier.landing,
    play_m: [play[0], play[1]],
    apex_m: flier.apex_m(),
    time_s: flier.time_s(),
    path: flier.path.subarray(0, 3 * flier.pathPoints()),
    pathTimes: flier.pathTimes.subarray(0, flier.pathPoints()),
  };
}

/** What is wrong with a flight's numbers; empty when nothing is. */
export function flaws({ state, play_m, apex_m, time_s, path, pathTimes }: Flown): string[] {
  const found: string[] = [];
  if (![...state, ...play_m, apex_m, time_s].every(Number.isFinite)) found.push('a number at the end is not finite');
  if (!path.every(Number.isFinite)) found.push('a path point is not finite');
  if (pathTimes.some((time, i) => i > 0 && !(time >= pathTimes[i - 1]))) found.push('path times fall');
  // 40 m of skid and slide, or 120 m for one that rolls on its edge (limits of the own model)
  if (!(Math.hypot(...play_m) <= 120 + 1e-9)) found.push('plays out more than 120 m');
  const normal = Math.hypot(state[LANDING.nx], state[LANDING.ny], state[LANDING.nz]);
  if (!(Math.abs(normal - 1) < 1e-9)) found.push(`the normal has length ${normal}`);
  return found;
}
