import { WIND_TABLE_CELLS, type WindProfile } from '../air/wind-profile.ts';
import type { Terrain } from '../geometry/hole-map.ts';
import type { DiscModel } from './disc-model.ts';
import { stepFor_s } from './flight-step.ts';
import { loadKernel } from './load-kernel.ts';
import { releaseState, STATES } from './release-state.ts';

/** Flights a batch holds. */
export const MOST_FLIGHTS = 64;
const MOST_POINTS = 600;
const SPIN_FLOOR_RADPS = 3;
const PAGE_BYTES = 65_536;
const DEGREE = Math.PI / 180;

/**
 * Flies many throws of one disc in one air at once: the equations of `Flier` in WebAssembly, four flights abreast in single
 * precision (landings within a tenth of a millimetre of `Flier`'s at the same step, four times the rate).
 * Set disc, air and ground, `release` flights 0 to n−1, `fly(n)`, then read them one by one. What is set stays with the batch;
 * the flights themselves lie in the thread's one kernel: read them before another batch flies.
 */
export type FlightBatch = Readonly<{
  /** Step points `[x, y, z]` of all flights, those of flight i from `pathStart(i)` on; they hold until the next `fly` of any batch. */
  path(): Float32Array;
  pathStart(flight: number): number;
  pathPoints(flight: number): number;
  apex_m(flight: number): number;
  time_s(flight: number): number;
  /** False when it was still flying after 40 s (the landing then holds the last state). */
  hasLanded(flight: number): boolean;
  /** Copies state at touchdown into `out`: index with the constants of `LANDING`. */
  landing(flight: number, out: Float64Array): void;
  setDisc(model: DiscModel): void;
  /** Wind as the velocity of the air at 10 m over open ground, in the throw frame, for the releases that follow. */
  setAir(density_kgpm3: number, windX_mps: number, windY_mps: number, profile: WindProfile): void;
  /** Another wind in the same air, for the releases that follow. */
  setWind(windX_mps: number, windY_mps: number): void;
  /** Ground z = rise + gradX·x + gradY·y. */
  setPlane(rise_m: number, gradX: number, gradY: number): void;
  /** Ground from a hole's terrain, seen from `from` (local metres) with +x along `aimBearing_deg`; z counts from the ground there. */
  setTerrain(terrain: Terrain, fromEast_m: number, fromNorth_m: number, aimBearing_deg: number): void;
  /** Step of the integrator, as `Flier.setStep`. */
  setStep(step_s: number): void;
  /** Puts flight `flight` (0 to MOST_FLIGHTS − 1) at its release, `height_m` above the ground at the origin. */
  release(
    flight: number,
    speed_mps: number,
    azimuth_deg: number,
    launch_deg: number,
    nose_deg: number,
    hyzer_deg: number,
    spin_radps: number,
    height_m: number,
  ): void;
  /** Flies flights 0 to `count` − 1. */
  fly(count: number): void;
  /** After `fly` over a level plane at 0: keeps all flying through the ground to `drop_m` below, adding path points. */
  extend(count: number, drop_m: number): void;
}>;

/** What the thread's kernel holds at present: all batches of a thread use the same. */
const held: { by: object | null; profile: WindProfile | null; grid: Terrain | null } = {
  by: null,
  profile: null,
  grid: null,
};

/** @throws {RangeError} from its functions: for more flights than MOST_FLIGHTS, or when another batch took over in between */
export function createFlightBatch(): FlightBatch {
  const kernel = loadKernel();
  const self = {};
  const state = new Float64Array(STATES);
  let numbers = new Float32Array(kernel.memory.buffer);
  let integers = new Int32Array(kernel.memory.buffer);
  const stateAt = kernel.stateAt() / 4;
  const windXAt = kernel.windXAt() / 4;
  const windYAt = kernel.windYAt() / 4;
  const stepAt = kernel.stepAt() / 4;
  const timeAt = kernel.timeAt() / 4;
  const apexAt = kernel.apexAt() / 4;
  const pointsAt = kernel.pointsAt() / 4;
  const landedAt = kernel.landedAt() / 4;
  const discAt = kernel.discAt() / 4;
  const profileAt = kernel.profileAt() / 4;
  const pathAt = kernel.pathAt() / 4;
  const freeAt = kernel.freeAt();

  let disc: DiscModel | null = null;
  let density = 1.2;
  let windX = 0;
  let windY = 0;
  let profile: WindProfile | null = null;
  let step = 0.05;
  let plane = { rise: 0, gradX: 0, gradY: 0 };
  let terrain: Terrain | null = null;
  let view = { east: 0, north: 0, sin: 0, cos: 1 };
  /** True when something was set that the kernel does not know yet. */
  let isStale = true;

  /** One coefficient after the other, in the order kernel/derive.ts reads them. */
  function putDisc(of: DiscModel): void {
    const area = of.area_m2;
    const diameter = of.diameter_m;
    const inertia = of.inertia_kgm2;
    numbers[discAt] = of.lift0;
    numbers[discAt + 1] = of.liftSlope;
    numbers[discAt + 2] = of.dragMin;
    numbers[discAt + 3] = of.dragRise;
    numbers[discAt + 4] = 1 / (of.dragMax - of.dragMin);
    numbers[discAt + 5] = of.sineAtLeastDrag;
    numbers[discAt + 6] = of.turnMoment;
    numbers[discAt + 7] = of.baseMoment;
    numbers[discAt + 8] = of.turnSine;
    numbers[discAt + 9] = 1 / of.turnWidth;
    numbers[discAt + 10] = of.fadeMoment;
    numbers[discAt + 11] = of.fadeSine;
    numbers[discAt + 12] = of.fadeWidth ** 2;
    numbers[discAt + 13] = (density * area) / (2 * of.mass_kg);
    numbers[discAt + 14] = 0.5 * density * area * diameter;
    numbers[discAt + 15] = 0.25 * density * area * diameter * diameter * of.spinRoll;
    numbers[discAt + 16] = of.damping * 0.5 * density * area * diameter * diameter;
    numbers[discAt + 17] = (-of.spinDecay * density * area * diameter * diameter) / (4 * inertia);
    numbers[discAt + 18] = inertia;
    numbers[discAt + 19] = (SPIN_FLOOR_RADPS * inertia) ** 2;
  }

  function putProfile(next: WindProfile): void {
    if (next === held.profile) return;
    held.profile = next;
    for (let i = 0; i <= WIND_TABLE_CELLS; i++) {
      numbers[profileAt + 2 * i] = next[i];
      numbers[profileAt + 2 * i + 1] = i < WIND_TABLE_CELLS ? next[i + 1] - next[i] : 0;
    }
  }

  function putGrid(next: Terrain): void {
    if (next === held.grid) return;
    held.grid = next;
    const { height_m, columns, rows, x0_m, y0_m, cell_m } = next;
    const missing = freeAt + 4 * height_m.length - kernel.memory.buffer.byteLength;
    if (missing > 0) kernel.memory.grow(Math.ceil(missing / PAGE_BYTES));
    lookAgain();
    let highest = Number.NEGATIVE_INFINITY;
    for (let i = 0; i < height_m.length; i++) {
      numbers[freeAt / 4 + i] = height_m[i];
      highest = Math.max(highest, height_m[i]);
    }
    kernel.setGrid(freeAt, columns, rows, x0_m, y0_m, 1 / cell_m, highest);
  }

  /** The memory moves when any batch makes it grow. */
  function lookAgain(): void {
    if (numbers.buffer === kernel.memory.buffer) return;
    numbers = new Float32Array(kernel.memory.buffer);
    integers = new Int32Array(kernel.memory.buffer);
  }

  /** Tells the kernel what this batch was set to. */
  function takeOver(): void {
    if (disc === null || profile === null) throw new RangeError('set disc and air before a release');
    held.by = self;
    isStale = false;
    lookAgain();
    putDisc(disc);
    putProfile(profile);
    if (terrain === null) kernel.setPlane(plane.rise, plane.gradX, plane.gradY);
    else {
      putGrid(terrain);
      kernel.lookFrom(view.east, view.north, view.sin, view.cos);
    }
  }

  function checkHeld(): void {
    if (held.by !== self) throw new RangeError('another batch took the kernel over: release and fly again');
  }

  function checkCount(count: number): void {
    if (count > MOST_FLIGHTS) throw new RangeError(`a batch holds ${MOST_FLIGHTS} flights, got ${count}`);
  }

  return {
    path() {
      checkHeld();
      return numbers;
    },
    pathStart: flight => pathAt + flight * 3 * MOST_POINTS,
    pathPoints: flight => integers[pointsAt + flight],
    apex_m: flight => numbers[apexAt + flight],
    time_s: flight => numbers[timeAt + flight],
    hasLanded: flight => integers[landedAt + flight] === 1,
    landing(flight, out) {
      checkHeld();
      for (let q = 0; q < STATES; q++) out[q] = numbers[stateAt + q * MOST_FLIGHTS + flight];
    },
    setDisc(model) {
      disc = model;
      isStale = true;
    },
    setAir(density_kgpm3, windX_mps, windY_mps, windProfile) {
      density = density_kgpm3;
      windX = windX_mps;
      windY = windY_mps;
      profile = windProfile;
      isStale = true;
    },
    setWind(windX_mps, windY_mps) {
      windX = windX_mps;
      windY = windY_mps;
    },
    setPlane(rise_m, gradX, gradY) {
      plane = { rise: rise_m, gradX, gradY };
      terrain = null;
      isStale = true;
    },
    setTerrain(ground, fromEast_m, fromNorth_m, aimBearing_deg) {
      const bearing = aimBearing_deg * DEGREE;
      terrain = ground;
      view = { east: fromEast_m, north: fromNorth_m, sin: Math.sin(bearing), cos: Math.cos(bearing) };
      isStale = true;
    },
    setStep(step_s) {
      step = step_s;
    },
    release(flight, speed_mps, azimuth_deg, launch_deg, nose_deg, hyzer_deg, spin_radps, height_m) {
      checkCount(flight + 1);
      if (isStale || held.by !== self || disc === null) takeOver();
      const start_m = terrain === null ? plane.rise : 0;
      releaseState(speed_mps, azimuth_deg, launch_deg, nose_deg, hyzer_deg, spin_radps, height_m + start_m, state);
      for (let q = 0; q < STATES; q++) numbers[stateAt + q * MOST_FLIGHTS + flight] = state[q];
      numbers[windXAt + flight] = windX;
      numbers[windYAt + flight] = windY;
      numbers[stepAt + flight] = stepFor_s(disc!, density, speed_mps, spin_radps, Math.hypot(windX, windY), step);
    },
    fly(count) {
      checkCount(count);
      checkHeld();
      fillUp(count);
      kernel.fly(count, isWindy(count));
    },
    extend(count, drop_m) {
      checkCount(count);
      checkHeld();
      kernel.setPlane(-drop_m, 0, 0);
      kernel.flyOn(count, isWindy(count));
      isStale = true;
    },
  };

  function isWindy(count: number): boolean {
    for (let i = 0; i < count; i++) if (numbers[windXAt + i] !== 0 || numbers[windYAt + i] !== 0) return true;
    return false;
  }

  /** The last four are filled with copies of the last flight, so that none flies what was left there before. */
  function fillUp(count: number): void {
    for (let flight = count; flight % 4 !== 0; flight++) {
      for (let q = 0; q < STATES; q++) {
        const row = stateAt + q * MOST_FLIGHTS;
        numbers[row + flight] = numbers[row + count - 1];
      }
      numbers[windXAt + flight] = numbers[windXAt + count - 1];
      numbers[windYAt + flight] = numbers[windYAt + count - 1];
      numbers[stepAt + flight] = numbers[stepAt + count - 1];
    }
  }
}
