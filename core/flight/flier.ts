import { WIND_TABLE_CELLS, WIND_TABLE_TOP_M, type WindProfile } from '../air/wind-profile.ts';
import type { Terrain } from '../geometry/hole-map.ts';
import type { DiscModel } from './disc-model.ts';
import { stepFor_s } from './flight-step.ts';
import { NX, NY, NZ, releaseState, SPIN, STATES, VX, VY, VZ, X, Y, Z } from './release-state.ts';

const GRAVITY_MPS2 = 9.80665; // standard gravity, CGPM 1901
const MAX_TIME_S = 40;
/** Path points are kept no closer in time than this, so that a fine step needs no longer path. */
const LEAST_SPACING_S = 0.04;
const MAX_POINTS = MAX_TIME_S / LEAST_SPACING_S + 200;
const DEGREE = Math.PI / 180;
// Guards, all inactive in ordinary throws: precession cap, spin floor in the precession denominator.
const PRECESSION_CAP_RADPS = 10;
const SPIN_FLOOR_RADPS = 3;
/** A step over which the normal would turn further is cut to this: only barely spinning discs tumble so. */
const MOST_TURN_RAD = 1;
const CELLS_PER_ROOT_M = WIND_TABLE_CELLS / Math.sqrt(WIND_TABLE_TOP_M);

/**
 * Reusable flight integrator: fast-spin precession (no nutation), RK4, contact solved on the cubic Hermite of the last step.
 * Set disc, air and ground, call `fly`, then read the fields; `fly` allocates nothing.
 */
export type Flier = Readonly<{
  /** Where it touched down, velocity, normal and spin there: index with the constants of `LANDING`. */
  landing: Float64Array;
  /** Step points `[x, y, z]` from the hand to touchdown, at least 0.04 s apart; the first `3·pathPoints()` numbers are valid. */
  path: Float64Array;
  /** Seconds since the release of each point of `path`. */
  pathTimes: Float64Array;
  pathPoints(): number;
  apex_m(): number;
  time_s(): number;
  setDisc(model: DiscModel): void;
  /** Wind as the velocity of the air at 10 m over open ground, in the throw frame; `profile` scales it by height. */
  setAir(density_kgpm3: number, windX_mps: number, windY_mps: number, profile: WindProfile): void;
  /** Ground z = rise + gradX·x + gradY·y. */
  setPlane(rise_m: number, gradX: number, gradY: number): void;
  /** Ground from a hole's terrain, seen from `from` (local metres) with +x along `aimBearing_deg`; z counts from the ground there. */
  setTerrain(terrain: Terrain, fromEast_m: number, fromNorth_m: number, aimBearing_deg: number): void;
  /**
   * Step of the integrator: 0.05 s for single flights (landing error p95 about 2 mm in a log-law wind), 0.08 s for answers
   * (5 mm), 0.15 s inside searches (2 cm).
   */
  setStep(step_s: number): void;
  /** @returns true when it touched down, false when it was still flying after 40 s (the landing then holds the last state). */
  fly(
    speed_mps: number,
    azimuth_deg: number,
    launch_deg: number,
    nose_deg: number,
    hyzer_deg: number,
    spin_radps: number,
    height_m: number,
  ): boolean;
  /** After `fly`: keeps flying through the ground to `drop_m` below touchdown, adding path points (for look-up tables that serve any terrain). */
  extend(drop_m: number): boolean;
}>;

/** Indices into `Flier.landing`. */
export const LANDING = { x: X, y: Y, z: Z, vx: VX, vy: VY, vz: VZ, nx: NX, ny: NY, nz: NZ, spin: SPIN } as const;
/** Numbers of a landing. */
export const LANDING_NUMBERS = STATES;

/**
 * @source equations of motion: fast-spin limit of the rigid-body equations (own derivation, checked against the full
 * rigid-body model in tests); coefficient forms: see disc-model.ts. Every coefficient is (function of sin α)·cos α, so that
 * cos α cancels and no direction is singular.
 */
export function createFlier(): Flier {
  const state = new Float64Array(STATES);
  const next = new Float64Array(STATES);
  const trial = new Float64Array(STATES);
  const k1 = new Float64Array(STATES);
  const k2 = new Float64Array(STATES);
  const k3 = new Float64Array(STATES);
  const k4 = new Float64Array(STATES);
  const landing = new Float64Array(STATES);
  const path = new Float64Array(3 * MAX_POINTS);
  const pathTimes = new Float64Array(MAX_POINTS);
  let points = 0;
  let apex = 0;
  let time = 0;
  let step = 0.05;
  let lastStep = 0.05;

  // disc
  let disc: DiscModel | null = null;
  let lift0 = 0;
  let liftSlope = 0;
  let dragMin = 0;
  let dragRise = 0;
  let dragSpan = 1;
  let leastDrag = 0;
  let turnMoment = 0;
  let baseMoment = 0;
  let turnSine = 0;
  let turnScale = 1;
  let fadeMoment = 0;
  let fadeSine = 0;
  let fadeWidthSq = 0;
  let inertia = 1;
  let area = 0;
  let diameter = 0;
  let mass = 1;
  let spinRoll = 0;
  let damping = 0;
  let spinDecay = 0;
  // air
  let density = 1.2;
  let windX = 0;
  let windY = 0;
  let windy = false;
  let profile: WindProfile = new Float64Array(WIND_TABLE_CELLS + 1);
  // folded constants
  let accel = 0;
  let torque = 0;
  let rollTorque = 0;
  let dampTorque = 0;
  let decay = 0;
  let spinFloorSq = 0;
  // ground
  let rise = 0;
  let gradX = 0;
  let gradY = 0;
  let terrain: Terrain | null = null;
  let originEast = 0;
  let originNorth = 0;
  let eastPerX = 1;
  let northPerX = 0;
  let terrainZero = 0;

  function fold(): void {
    accel = (density * area) / (2 * mass);
    torque = 0.5 * density * area * diameter;
    rollTorque = 0.25 * density * area * diameter * diameter * spinRoll;
    dampTorque = damping * 0.5 * density * area * diameter * diameter;
    decay = (-spinDecay * density * area * diameter * diameter) / (4 * inertia);
    spinFloorSq = (SPIN_FLOOR_RADPS * inertia) ** 2;
  }

  function derive(s: Float64Array, d: Float64Array): void {
    const vx = s[VX];
    const vy = s[VY];
    const vz = s[VZ];
    const nx = s[NX];
    const ny = s[NY];
    const nz = s[NZ];
    const spin = s[SPIN];
    let ux = vx;
    let uy = vy;
    if (windy) {
      const z = s[Z];
      const cell = z <= 0 ? 0 : z >= WIND_TABLE_TOP_M ? WIND_TABLE_CELLS : Math.sqrt(z) * CELLS_PER_ROOT_M;
      const i = cell >= WIND_TABLE_CELLS ? WIND_TABLE_CELLS - 1 : cell | 0;
      const low = profile[i];
      const ratio = low + (profile[i + 1] - low) * (cell - i);
      ux -= windX * ratio;
      uy -= windY * ratio;
    }
    const speedSq = ux * ux + uy * uy + vz * vz;
    const speed = Math.sqrt(speedSq) + 1e-12;
    // inside a step the normal is not of length 1: unclamped, a disc that tumbles would feel forces that no air gives
    const sine = Math.max(-1, Math.min(1, -(ux * nx + uy * ny + vz * nz) / speed));
    const lift = lift0 + liftSlope * sine;
    const off = sine - leastDrag;
    const rising = dragRise * off * off;
    const drag = dragMin + rising / (1 + rising / dragSpan);
    const alongNormal = accel * speedSq * lift;
    const alongAir = accel * speed * (lift * sine - drag);
    d[X] = vx;
    d[Y] = vy;
    d[Z] = vz;
    d[VX] = alongNormal * nx + alongAir * ux;
    d[VY] = alongNormal * ny + alongAir * uy;
    d[VZ] = alongNormal * nz + alongAir * vz - GRAVITY_MPS2;
    const t = (sine - turnSine) * turnScale;
    const h = sine - fadeSine;
    const hinge = 0.5 * (h + Math.sqrt(h * h + fadeWidthSq));
    const hingeSq = hinge * hinge;
    const moment =
      baseMoment + turnMoment * 0.5 * (1 - t / Math.sqrt(1 + t * t)) + (fadeMoment * hingeSq) / (1 + 6 * hingeSq);
    const pitch = torque * speed * moment;
    const roll = rollTorque * spin;
    const damp = dampTorque * speed;
    const momentum = inertia * spin;
    const denominator = momentum * momentum + damp * damp + spinFloorSq;
    let b1 = (momentum * pitch + damp * roll) / denominator;
    let b2 = (momentum * roll - damp * pitch) / denominator;
    // |e1| = |e2| = V cos α
    const rateSq = (b1 * b1 + b2 * b2) * speedSq * (1 - sine * sine);
    if (rateSq > PRECESSION_CAP_RADPS * PRECESSION_CAP_RADPS) {
      const rate = Math.sqrt(rateSq);
      const over = rate - PRECESSION_CAP_RADPS;
      const soft = (PRECESSION_CAP_RADPS + over / (1 + over / 30)) / rate;
      b1 *= soft;
      b2 *= soft;
    }
    const sv = sine * speed;
    d[NX] = b1 * (uy * nz - vz * ny) + b2 * (ux + sv * nx);
    d[NY] = b1 * (vz * nx - ux * nz) + b2 * (uy + sv * ny);
    d[NZ] = b1 * (ux * ny - uy * nx) + b2 * (vz + sv * nz);
    d[SPIN] = decay * speed * spin;
  }

  function groundAt(x: number, y: number): number {
    if (terrain === null) return rise + gradX * x + gradY * y;
    const east = originEast + eastPerX * x - northPerX * y;
    const north = originNorth + northPerX * x + eastPerX * y;
    let column = (east - terrain.x0_m) / terrain.cell_m;
    let row = (north - terrain.y0_m) / terrain.cell_m;
    const lastColumn = terrain.columns - 1;
    const lastRow = terrain.rows - 1;
    column = column < 0 ? 0 : Math.min(column, lastColumn);
    row = row < 0 ? 0 : Math.min(row, lastRow);
    const c = column >= lastColumn ? Math.max(0, lastColumn - 1) : column | 0;
    const r = row >= lastRow ? Math.max(0, lastRow - 1) : row | 0;
    const fc = column - c;
    const fr = row - r;
    const at = r * terrain.columns + c;
    const up = lastRow > 0 ? terrain.columns : 0;
    const right = lastColumn > 0 ? 1 : 0;
    const heights = terrain.height_m;
    const south = heights[at] + (heights[at + right] - heights[at]) * fc;
    const northern = heights[at + up] + (heights[at + up + right] - heights[at + up]) * fc;
    return south + (northern - south) * fr - terrainZero;
  }

  function normalise(s: Float64Array): void {
    const nx = s[NX];
    const ny = s[NY];
    const nz = s[NZ];
    const inverse = 1 / (Math.sqrt(nx * nx + ny * ny + nz * nz) || 1);
    s[NX] = nx * inverse;
    s[NY] = ny * inverse;
    s[NZ] = nz * inverse;
  }

  /** @returns the time it went on: `longest`, less while the disc tumbles */
  function rungeKuttaStep(longest: number): number {
    derive(state, k1);
    const turning = Math.sqrt(k1[NX] * k1[NX] + k1[NY] * k1[NY] + k1[NZ] * k1[NZ]);
    const dt = turning * longest > MOST_TURN_RAD ? MOST_TURN_RAD / turning : longest;
    const half = 0.5 * dt;
    for (let i = 0; i < STATES; i++) trial[i] = state[i] + half * k1[i];
    derive(trial, k2);
    for (let i = 0; i < STATES; i++) trial[i] = state[i] + half * k2[i];
    derive(trial, k3);
    for (let i = 0; i < STATES; i++) trial[i] = state[i] + dt * k3[i];
    derive(trial, k4);
    const sixth = dt / 6;
    for (let i = 0; i < STATES; i++) next[i] = state[i] + sixth * (k1[i] + 2 * (k2[i] + k3[i]) + k4[i]);
    normalise(next);
    return dt;
  }

  function hermite(i: number, dt: number, u: number): number {
    const u2 = u * u;
    const u3 = u2 * u;
    return (
      (2 * u3 - 3 * u2 + 1) * state[i] +
      (u3 - 2 * u2 + u) * dt * state[i + VX] +
      (3 * u2 - 2 * u3) * next[i] +
      (u3 - u2) * dt * next[i + VX]
    );
  }

  function gapInStep(dt: number, u: number): number {
    return hermite(Z, dt, u) - groundAt(hermite(X, dt, u), hermite(Y, dt, u));
  }

  /** Share of the step at touchdown: Illinois false position on the Hermite gap. */
  function touchdown(dt: number, gapBefore: number, gapAfter: number): number {
    let low = 0;
    let high = 1;
    let gapLow = gapBefore;
    let gapHigh = gapAfter;
    let u = 1;
    for (let i = 0; i < 40; i++) {
      u = (low * gapHigh - high * gapLow) / (gapHigh - gapLow);
      const gap = gapInStep(dt, u);
      if (Math.abs(gap) < 1e-9 || high - low < 1e-12) break;
      if (gap > 0) {
        low = u;
        gapLow = gap;
        gapHigh *= 0.5;
      } else {
        high = u;
        gapHigh = gap;
        gapLow *= 0.5;
      }
    }
    return u;
  }

  function land(dt: number, u: number): void {
    for (let i = 0; i < 3; i++) landing[i] = hermite(i, dt, u);
    const w = 1 - u;
    for (let i = VX; i < STATES; i++) landing[i] = w * state[i] + u * next[i];
    normalise(landing);
    time += dt * u;
  }

  function record(s: Float64Array): void {
    const at = 3 * points;
    path[at] = s[X];
    path[at + 1] = s[Y];
    path[at + 2] = s[Z];
    pathTimes[points] = time;
    points++;
    if (s[Z] > apex) apex = s[Z];
  }

  function fly(
    speed_mps: number,
    azimuth_deg: number,
    launch_deg: number,
    nose_deg: number,
    hyzer_deg: number,
    spin_radps: number,
    height_m: number,
  ): boolean {
    if (disc === null) throw new RangeError('set a disc before flying');
    const start = height_m + groundAt(0, 0);
    releaseState(speed_mps, azimuth_deg, launch_deg, nose_deg, hyzer_deg, spin_radps, start, state);
    points = 0;
    apex = start;
    time = 0;
    record(state);
    const wind_mps = Math.sqrt(windX * windX + windY * windY);
    return run(height_m, stepFor_s(disc, density, speed_mps, spin_radps, wind_mps, step));
  }

  function run(gapAtStart: number, longest: number): boolean {
    lastStep = longest;
    let gapBefore = gapAtStart;
    const spacing = longest * Math.max(1, Math.floor(LEAST_SPACING_S / longest + 1e-9));
    while (time < MAX_TIME_S) {
      const dt = rungeKuttaStep(longest);
      const gapAfter = next[Z] - groundAt(next[X], next[Y]);
      if (gapAfter <= 0) {
        land(dt, gapBefore <= 0 ? 0 : touchdown(dt, gapBefore, gapAfter));
        record(landing);
        return true;
      }
      state.set(next);
      time += dt;
      gapBefore = gapAfter;
      if (state[Z] > apex) apex = state[Z];
      if (time - pathTimes[points - 1] > spacing - 1e-9 && points < MAX_POINTS - 1) record(state);
    }
    landing.set(state);
    return false;
  }

  function extend(drop_m: number): boolean {
    state.set(landing);
    const kept = { rise, gradX, gradY, terrain };
    terrain = null;
    rise = landing[Z] - drop_m;
    gradX = 0;
    gradY = 0;
    const touched = run(drop_m, lastStep);
    ({ rise, gradX, gradY, terrain } = kept);
    return touched;
  }

  return {
    landing,
    path,
    pathTimes,
    pathPoints: () => points,
    apex_m: () => apex,
    time_s: () => time,
    setDisc(model) {
      disc = model;
      ({
        lift0,
        liftSlope,
        dragMin,
        dragRise,
        turnMoment,
        baseMoment,
        turnSine,
        fadeMoment,
        fadeSine,
        spinRoll,
        damping,
        spinDecay,
      } = model);
      dragSpan = model.dragMax - model.dragMin;
      leastDrag = model.sineAtLeastDrag;
      turnScale = 1 / model.turnWidth;
      fadeWidthSq = model.fadeWidth ** 2;
      inertia = model.inertia_kgm2;
      area = model.area_m2;
      diameter = model.diameter_m;
      mass = model.mass_kg;
      fold();
    },
    setAir(density_kgpm3, windX_mps, windY_mps, windProfile) {
      density = density_kgpm3;
      windX = windX_mps;
      windY = windY_mps;
      windy = windX !== 0 || windY !== 0;
      profile = windProfile;
      fold();
    },
    setPlane(rise_m, slopeX, slopeY) {
      terrain = null;
      rise = rise_m;
      gradX = slopeX;
      gradY = slopeY;
    },
    setTerrain(ground, fromEast_m, fromNorth_m, aimBearing_deg) {
      terrain = ground;
      originEast = fromEast_m;
      originNorth = fromNorth_m;
      eastPerX = Math.sin(aimBearing_deg * DEGREE);
      northPerX = Math.cos(aimBearing_deg * DEGREE);
      terrainZero = 0;
      terrainZero = groundAt(0, 0);
    },
    setStep(step_s) {
      step = step_s;
    },
    fly,
    extend,
  };
}
