import { LANDING } from './flier.ts';

const GRAVITY_MPS2 = 9.80665;
/** A disc that lands within this of standing on its edge rolls, one further over lies down (assumed; the share of it eases between). */
const STANDING_DEG = 28;
const LEANING_DEG = 40;
/** One that comes down flatly rolls on, one that drops steeply bites (assumed). */
const FLAT_DESCENT_DEG = 20;
const STEEP_DESCENT_DEG = 45;
/** Moment of inertia about the spin axis over mass × radius²: most of a disc is its rim (as in disc-model, 0.6 to 0.75). */
const INERTIA_SHARE = 0.68;
/** Slower than this a rolling disc falls over (assumed). */
export const FALLING_MPS = 1.5;
export const ROLL_STEP_M = 0.5;
const LONGEST_ROLL_M = 120;
/** A measured roller may go on further. */
export const LONGEST_ROLLER_M = 240;

/** Share of the landing that rolls: 1 for a disc on its edge that spins the way it travels, 0 for one that lands flat. */
export function rollingShare(landing: Float64Array, gx: number, gy: number, gz: number): number {
  const facing = landing[LANDING.nx] * gx + landing[LANDING.ny] * gy + landing[LANDING.nz] * gz;
  const lean_deg = (Math.asin(Math.min(1, Math.abs(facing))) * 180) / Math.PI;
  if (lean_deg >= LEANING_DEG) return 0;
  // spinning against its travel it bites and stops
  if (rimSpeed_mps(landing, 1, gx, gy, gz) <= 0) return 0;
  const vx = landing[LANDING.vx];
  const vy = landing[LANDING.vy];
  const vz = landing[LANDING.vz];
  const down = -(vx * gx + vy * gy + vz * gz);
  const descent_deg =
    (Math.asin(Math.min(1, Math.max(0, down / Math.sqrt(vx * vx + vy * vy + vz * vz)))) * 180) / Math.PI;
  return eased(lean_deg, STANDING_DEG, LEANING_DEG) * eased(descent_deg, FLAT_DESCENT_DEG, STEEP_DESCENT_DEG);
}

/** 1 up to `from`, 0 beyond `to`, straight between. */
const eased = (x: number, from: number, to: number): number => Math.min(1, Math.max(0, (to - x) / (to - from)));

/**
 * Rolls a disc from where it comes down on its edge: spin and travel even out without slip, then it rolls on, slowed by the ground,
 * bending towards the side it leans to, until it is too slow to stand.
 * @param resistance - rolling resistance of the surface: deceleration over gravity
 * @param gradX, gradY - ground slope (rise per metre along x and y)
 * @param out - receives the displacement from touchdown to rest `[dx_m, dy_m]`
 * @source steady rolling of a thin disc, tan(lean)·g = (1 + k)·v·turn rate (textbook mechanics; own derivation by torque balance);
 * sizes of resistance and of the fall are assumed, unvalidated
 */
export function roll(
  landing: Float64Array,
  radius_m: number,
  resistance: number,
  gradX: number,
  gradY: number,
  out: Float64Array,
  longest_m: number = LONGEST_ROLL_M,
): void {
  out[0] = 0;
  out[1] = 0;
  rollStart(landing, radius_m, gradX, gradY, start);
  let speed = start[ROLL_START.speed];
  let heading = start[ROLL_START.heading];
  const bend = start[ROLL_START.bend];
  for (let gone = 0; gone < longest_m && speed > FALLING_MPS; gone += ROLL_STEP_M) {
    const [cos, sin] = [Math.cos(heading), Math.sin(heading)];
    out[0] += ROLL_STEP_M * cos;
    out[1] += ROLL_STEP_M * sin;
    const slope = gradX * cos + gradY * sin;
    const square = speed * speed - 2 * GRAVITY_MPS2 * (resistance + slope) * ROLL_STEP_M;
    heading += (bend / (speed * speed)) * ROLL_STEP_M;
    if (square <= 0) return;
    speed = Math.sqrt(square);
  }
}

/** Indices into what `rollStart` writes: speed m/s, heading in the throw frame (radians, left positive), turn rate × speed m/s². */
export const ROLL_START = { speed: 0, heading: 1, bend: 2 } as const;
const start = new Float64Array(3);

/**
 * How a disc that came down on its edge rolls off, spin and travel evened out without slip.
 * @param gradX, gradY - ground slope (rise per metre along x and y)
 * @param out - receives the numbers of `ROLL_START`; speed 0 when it came straight down
 */
export function rollStart(
  landing: Float64Array,
  radius_m: number,
  gradX: number,
  gradY: number,
  out: Float64Array,
): void {
  const scale = 1 / Math.sqrt(gradX * gradX + gradY * gradY + 1);
  const [gx, gy, gz] = [-gradX * scale, -gradY * scale, scale];
  const vx = landing[LANDING.vx];
  const vy = landing[LANDING.vy];
  const along = Math.sqrt(vx * vx + vy * vy);
  out.fill(0);
  if (along < 1e-9) return;
  const rim = rimSpeed_mps(landing, radius_m, gx, gy, gz);
  const heading = Math.atan2(vy, vx);
  const facing = landing[LANDING.nx] * gx + landing[LANDING.ny] * gy + landing[LANDING.nz] * gz;
  // the upper edge leans away from where the top of the disc faces
  const lean = Math.asin(Math.max(-1, Math.min(1, facing)));
  const side = landing[LANDING.nx] * Math.sin(heading) - landing[LANDING.ny] * Math.cos(heading) > 0 ? 1 : -1;
  // angular momentum about the point of contact is kept while it stops slipping
  out[ROLL_START.speed] = (along + INERTIA_SHARE * rim) / (1 + INERTIA_SHARE);
  out[ROLL_START.heading] = heading;
  out[ROLL_START.bend] = (side * GRAVITY_MPS2 * Math.tan(lean)) / (1 + INERTIA_SHARE);
}

/** How fast the spin drives the lowest edge backwards, so the disc forwards, along its travel; per radius given. */
function rimSpeed_mps(landing: Float64Array, radius_m: number, gx: number, gy: number, gz: number): number {
  const vx = landing[LANDING.vx];
  const vy = landing[LANDING.vy];
  const along = Math.sqrt(vx * vx + vy * vy);
  if (along < 1e-9) return 0;
  // ω × r with r from the ground up: spin·n × up
  const nx = landing[LANDING.nx];
  const ny = landing[LANDING.ny];
  const nz = landing[LANDING.nz];
  const driveX = ny * gz - nz * gy;
  const driveY = nz * gx - nx * gz;
  return (landing[LANDING.spin] * radius_m * (driveX * vx + driveY * vy)) / along;
}
