import { SURFACE_FRICTION } from '../flight/ground-play.ts';
import { FALLING_MPS, LONGEST_ROLLER_M, ROLL_STEP_M } from '../flight/rolling.ts';
import { type ObstacleRaster, SURFACES } from '../geometry/obstacle-raster.ts';

const GRAVITY_MPS2 = 9.80665;
/** Stored paths are walked in longer steps, as flights are. */
const SEARCH_STEP_M = 1;
/** Over which the slope under a rolling disc is taken. */
const SLOPE_REACH_M = 2;
const MOST_POINTS = Math.ceil(LONGEST_ROLLER_M / ROLL_STEP_M) + 2;
/** Resistance of each of SURFACES against turf. */
const RESISTANCE = SURFACES.map(
  surface => SURFACE_FRICTION[surface].rollingResistance / SURFACE_FRICTION.turf.rollingResistance,
);

/** How a roller rolls off from where it came down, throw frame; rewritten for every throw. */
export type RollOff = {
  /** Along and to the left of the aim. */
  vx_mps: number;
  vy_mps: number;
  /** Turn rate × speed, left positive. */
  bend_mps2: number;
  /** On turf: deceleration over gravity. */
  resistance: number;
};

export function createRollOff(): RollOff {
  return { vx_mps: 0, vy_mps: 0, bend_mps2: 0, resistance: 0 };
}

/** A roll over a hole's ground, step by step: nothing is in its way. Allocates nothing. */
export type RollPath = {
  east: number;
  north: number;
  /** Length of the last step. */
  step_m: number;
  /** Where it has been since the start, local metres; the first `points` are valid. */
  readonly trailEast: Float64Array;
  readonly trailNorth: Float64Array;
  points: number;
  start(from: RollOff, east: number, north: number, sinAim: number, cosAim: number, exact: boolean): void;
  /** Rolls on by a step; false when it has fallen over. */
  roll(): boolean;
};

/** @source as `roll` in flight/rolling (steady rolling of a thin disc), over the ground and surfaces of a hole */
export function createRollPath(raster: ObstacleRaster): RollPath {
  const { columns, rows, x0_m, y0_m, cell_m, ground_m, surface } = raster;
  let hasSlope: boolean | null = null;
  let dx = 0;
  let dy = 0;
  let square = 0;
  let bend = 0;
  let resistance = 0;
  let gone = 0;

  function cellAt(east: number, north: number): number {
    const column = Math.min(columns - 1, Math.max(0, Math.floor((east - x0_m) / cell_m)));
    const row = Math.min(rows - 1, Math.max(0, Math.floor((north - y0_m) / cell_m)));
    return row * columns + column;
  }

  function slope(): number {
    hasSlope ??= ground_m.some(height => height !== 0);
    if (!hasSlope) return 0;
    const { east, north } = path;
    const ahead = ground_m[cellAt(east + SLOPE_REACH_M * dx, north + SLOPE_REACH_M * dy)];
    const behind = ground_m[cellAt(east - SLOPE_REACH_M * dx, north - SLOPE_REACH_M * dy)];
    return (ahead - behind) / (2 * SLOPE_REACH_M);
  }

  function keep(): void {
    if (path.points === MOST_POINTS) return;
    path.trailEast[path.points] = path.east;
    path.trailNorth[path.points] = path.north;
    path.points++;
  }

  const path: RollPath = {
    east: 0,
    north: 0,
    step_m: ROLL_STEP_M,
    trailEast: new Float64Array(MOST_POINTS),
    trailNorth: new Float64Array(MOST_POINTS),
    points: 0,
    start(from, east, north, sinAim, cosAim, exact) {
      const speed = Math.sqrt(from.vx_mps * from.vx_mps + from.vy_mps * from.vy_mps);
      const along = speed > 0 ? from.vx_mps / speed : 1;
      const left = speed > 0 ? from.vy_mps / speed : 0;
      dx = sinAim * along - cosAim * left;
      dy = cosAim * along + sinAim * left;
      square = speed * speed;
      bend = from.bend_mps2;
      resistance = from.resistance;
      gone = 0;
      path.east = east;
      path.north = north;
      path.step_m = exact ? ROLL_STEP_M : SEARCH_STEP_M;
      path.points = 0;
      keep();
    },
    roll() {
      if (square <= FALLING_MPS * FALLING_MPS || gone >= LONGEST_ROLLER_M) return false;
      const step = path.step_m;
      const slowing = resistance * RESISTANCE[surface[cellAt(path.east, path.north)]] + slope();
      path.east += step * dx;
      path.north += step * dy;
      gone += step;
      keep();
      const turn = (bend * step) / square;
      const cos = Math.cos(turn);
      const sin = Math.sin(turn);
      const turned = dx * cos - dy * sin;
      dy = dx * sin + dy * cos;
      dx = turned;
      square -= 2 * GRAVITY_MPS2 * slowing * step;
      return true;
    },
  };
  return path;
}
