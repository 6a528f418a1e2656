import type { DiscModel } from './disc-model.ts';

// The less a disc spins the faster it may start to tumble within a step. At 50 ms this binds under 40 rad/s (a backhand of
// 9 m/s), at 80 ms under 64 (15 m/s).
const STEP_PER_SPIN_S2 = 0.00125;
/** Largest stiffness × step of a fine step; RK4 itself is stable to 2.78 on the real axis. */
const FINE_STIFFNESS = 1.6;
/** Steps this long or longer are for searches: the guards give them more room (landing error p95 2 cm, most 0.2 m at 0.15 s). */
const COARSE_STEP_S = 0.1;
const COARSE_STEP_PER_SPIN_S2 = 0.0025;
const COARSE_STIFFNESS = 2.2;
const LEAST_STEP_FOR_SPIN_S = 0.02;

/** The longest step a throw may be flown with: `asked_s`, less for one that hardly spins or is very fast. */
export function stepFor_s(
  disc: DiscModel,
  density_kgpm3: number,
  speed_mps: number,
  spin_radps: number,
  wind_mps: number,
  asked_s: number,
): number {
  const accel = (density_kgpm3 * disc.area_m2) / (2 * disc.mass_kg);
  const drag = disc.liftSlope + disc.dragMin + (disc.dragMax - disc.dragMin);
  const stiffness = accel * (speed_mps + 1.3 * wind_mps + 1) * drag;
  const isCoarse = asked_s >= COARSE_STEP_S;
  const perSpin = isCoarse ? COARSE_STEP_PER_SPIN_S2 : STEP_PER_SPIN_S2;
  const most = isCoarse ? COARSE_STIFFNESS : FINE_STIFFNESS;
  const calm = Math.min(asked_s, Math.max(LEAST_STEP_FOR_SPIN_S, perSpin * Math.abs(spin_radps)));
  return stiffness * calm > most ? most / stiffness : calm;
}
