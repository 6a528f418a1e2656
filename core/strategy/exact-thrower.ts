import type { WindProfile } from '../air/wind-profile.ts';
import { TYPICAL_SCATTER } from '../flight/dispersion.ts';
import { LANDING, LANDING_NUMBERS } from '../flight/flier.ts';
import { type FlightBatch, MOST_FLIGHTS } from '../flight/flight-batch.ts';
import { groundPlay, SURFACE_FRICTION } from '../flight/ground-play.ts';
import { RELEASE_HEIGHT_M } from '../flight/release.ts';
import { ROLL_START, rollStart } from '../flight/rolling.ts';
import { SURFACES } from '../geometry/obstacle-raster.ts';
import type { FittedPlayer } from '../player/fitted-player.ts';
import { type Flown, fittedSpecial, flownAs } from './flown-as.ts';
import { createSpread } from './hole-out.ts';
import type { Ends, Lie, Marcher } from './march.ts';
import { createRollOff } from './roll-path.ts';
import type { ShotSpec } from './shots.ts';
import { createSampledThrow, planningScatter, sampleThrow, type WindScatter } from './throw-samples.ts';
import type { World } from './world.ts';

const DEGREE = Math.PI / 180;
/** Steps of a roll between the points of its path. */
const DRAWN_ROLL_STEPS = 4;

/** Step of the flights that search and answer: landing error p95 2 cm, most 0.2 m, far below the scatter. */
export const PLAN_STEP_S = 0.15;

/** The air over one hole. */
export type HoleAir = Readonly<{
  density_kgpm3: number;
  profile: WindProfile;
  windFrom_deg: number;
  scatter: WindScatter;
}>;

/** Throws flown for real: exact wind by height, the hole's terrain, ground play on its slope and surface. */
export type ExactThrower = Readonly<{
  /** What the last throw came to. */
  ends: Ends;
  /** State at touchdown of the last throw (`LANDING` indices), and from there to rest, throw frame. */
  landing: Float64Array;
  play: Float64Array;
  apex_m(): number;
  /** Points `[x, y, z]` of the last throw, throw frame, a roller's to where it comes to rest; they hold until the next throw. */
  path(): Float32Array;
  flier: FlightBatch;
  /** Sets disc, lie and aim for the throws that follow. */
  prepare(shot: ShotSpec, lie: Lie, aimBearing_deg: number): void;
  /** Flies sample `row` of `normals` (−1: the middle of the scatter); the results are in the fields above. */
  throwOnce(normals: Float64Array, row: number): void;
  /** Flies samples `firstRow` to `firstRow + rows − 1`; after each, `each` finds the results in the fields above. */
  throwRows(normals: Float64Array, firstRow: number, rows: number, each: (row: number) => void): void;
}>;

export function createExactThrower(
  world: World,
  player: FittedPlayer,
  air: HoleAir,
  flier: FlightBatch,
  marcher: Marcher,
  step_s: number,
): ExactThrower {
  const sampled = createSampledThrow();
  const play = new Float64Array(2);
  const spread = createSpread();
  const aimsOff_deg = new Float64Array(MOST_FLIGHTS);
  const speedsOff = new Float64Array(MOST_FLIGHTS);
  const releases_mps = new Float64Array(MOST_FLIGHTS);
  const landing = new Float64Array(LANDING_NUMBERS);
  const { raster } = world;
  const sloped = world.map.terrain.known;
  let shot: ShotSpec | null = null;
  let scatter = TYPICAL_SCATTER;
  let lie: Lie = { east_m: 0, north_m: 0, ground_m: 0 };
  let aim_deg = 0;
  /** The flight of the batch that is looked at. */
  let current = 0;
  let radius_m = 0;
  let flown: Flown | null = null;
  /** Of a roller on turf; null for a shot that does not roll. */
  let resistance: number | null = null;
  const rollsOff = createRollOff();
  const start = new Float64Array(3);
  let sin = 0;
  let cos = 1;

  function cell(x: number, y: number): number {
    const east = lie.east_m + sin * x - cos * y;
    const north = lie.north_m + cos * x + sin * y;
    const column = Math.min(raster.columns - 1, Math.max(0, Math.floor((east - raster.x0_m) / raster.cell_m)));
    const row = Math.min(raster.rows - 1, Math.max(0, Math.floor((north - raster.y0_m) / raster.cell_m)));
    return row * raster.columns + column;
  }

  function release(flight: number, normals: Float64Array, row: number): void {
    if (!shot || !flown) throw new RangeError('prepare a shot before throwing');
    sampleThrow(normals, row, scatter, air.scatter, sampled);
    const from = (air.windFrom_deg + sampled.windTurn_deg - aim_deg) * DEGREE;
    flier.setWind(-sampled.wind_mps * Math.cos(from), sampled.wind_mps * Math.sin(from));
    const speed = flown.releaseSpeed_mps * shot.power * sampled.speedShare;
    aimsOff_deg[flight] = sampled.azimuth_deg;
    speedsOff[flight] = sampled.speedShare - 1;
    releases_mps[flight] = speed;
    flier.release(
      flight,
      speed,
      sampled.azimuth_deg,
      shot.launch_deg + sampled.launch_deg,
      sampled.nose_deg,
      shot.hyzer_deg + sampled.hyzer_deg,
      flown.spinPerSpeed * speed,
      RELEASE_HEIGHT_M,
    );
  }

  /** Plays a flight out on the ground and sees what it meets on its way. */
  function comeToRest(flight: number): void {
    current = flight;
    flier.landing(flight, landing);
    const x = landing[LANDING.x];
    const y = landing[LANDING.y];
    const surface = SURFACE_FRICTION[SURFACES[raster.surface[cell(x, y)]]];
    let gradX = 0;
    let gradY = 0;
    if (sloped) {
      gradX = (raster.ground_m[cell(x + 2, y)] - raster.ground_m[cell(x - 2, y)]) / 4;
      gradY = (raster.ground_m[cell(x, y + 2)] - raster.ground_m[cell(x, y - 2)]) / 4;
    }
    const points = flier.pathPoints(flight);
    if (resistance !== null) {
      rollOut(flight, points, resistance);
      return;
    }
    groundPlay(landing, radius_m, surface, gradX, gradY, play);
    spread.aim_rad = aimsOff_deg[flight] * DEGREE;
    spread.aimSd_rad = scatter.azimuth_deg * DEGREE;
    spread.speed = speedsOff[flight];
    spread.speedSd = scatter.speed;
    spread.release_mps = releases_mps[flight];
    marcher.march(flier.path(), flier.pathStart(flight), points, lie, sin, cos, play[0], play[1], true, 0, spread);
  }

  function rollOut(flight: number, points: number, onTurf: number): void {
    // a roll leans against the plumb line, whatever the slope under it
    rollStart(landing, radius_m, 0, 0, start);
    rollsOff.vx_mps = start[ROLL_START.speed] * Math.cos(start[ROLL_START.heading]);
    rollsOff.vy_mps = start[ROLL_START.speed] * Math.sin(start[ROLL_START.heading]);
    rollsOff.bend_mps2 = start[ROLL_START.bend];
    rollsOff.resistance = onTurf;
    const { rolled } = marcher;
    rolled.points = 0;
    const first = flier.pathStart(flight);
    marcher.march(flier.path(), first, points, lie, sin, cos, 0, 0, true, 0, undefined, rollsOff);
    // stopped in the air: where it would have rolled to all the same
    if (rolled.points === 0) {
      const [x, y] = [landing[LANDING.x], landing[LANDING.y]];
      rolled.start(rollsOff, lie.east_m + sin * x - cos * y, lie.north_m + cos * x + sin * y, sin, cos, true);
      while (rolled.roll());
    }
    const last = rolled.points - 1;
    const de = rolled.trailEast[last] - rolled.trailEast[0];
    const dn = rolled.trailNorth[last] - rolled.trailNorth[0];
    play[0] = sin * de + cos * dn;
    play[1] = sin * dn - cos * de;
  }

  /** The flight and then the roll, its heights those of the ground. */
  function pathWithRoll(flight: Float32Array): Float32Array {
    const { trailEast, trailNorth, points } = marcher.rolled;
    const kept = Math.ceil((points - 1) / DRAWN_ROLL_STEPS);
    const all = new Float32Array(flight.length + 3 * kept);
    all.set(flight);
    for (let i = 1; i <= kept; i++) {
      const at = flight.length + 3 * (i - 1);
      const point = Math.min(points - 1, DRAWN_ROLL_STEPS * i);
      const de = trailEast[point] - lie.east_m;
      const dn = trailNorth[point] - lie.north_m;
      all[at] = sin * de + cos * dn;
      all[at + 1] = sin * dn - cos * de;
      all[at + 2] = raster.ground_m[cell(all[at], all[at + 1])] - lie.ground_m;
    }
    return all;
  }

  return {
    ends: marcher.ends,
    flier,
    landing,
    play,
    apex_m: () => flier.apex_m(current),
    path() {
      const first = flier.pathStart(current);
      const flight = flier.path().subarray(first, first + 3 * flier.pathPoints(current));
      return resistance === null ? flight : pathWithRoll(flight);
    },
    prepare(nextShot, from, aimBearing_deg) {
      shot = nextShot;
      scatter = planningScatter(player.throws[shot.throwIndex], shot);
      lie = from;
      aim_deg = aimBearing_deg;
      sin = Math.sin(aim_deg * DEGREE);
      cos = Math.cos(aim_deg * DEGREE);
      const fitted = player.throws[shot.throwIndex];
      flown = flownAs(fitted, shot.shape);
      resistance = shot.shape === 'roller' ? fittedSpecial(fitted, shot.shape).resistance : null;
      const { model } = flown;
      radius_m = model.diameter_m / 2;
      flier.setDisc(model);
      flier.setAir(air.density_kgpm3, 0, 0, air.profile);
      flier.setStep(step_s);
      if (sloped) flier.setTerrain(world.map.terrain, lie.east_m, lie.north_m, aim_deg);
      else flier.setPlane(0, 0, 0);
    },
    throwOnce(normals, row) {
      release(0, normals, row);
      flier.fly(1);
      comeToRest(0);
    },
    throwRows(normals, firstRow, rows, each) {
      for (let first = 0; first < rows; first += MOST_FLIGHTS) {
        const count = Math.min(MOST_FLIGHTS, rows - first);
        for (let flight = 0; flight < count; flight++) release(flight, normals, firstRow + first + flight);
        flier.fly(count);
        for (let flight = 0; flight < count; flight++) {
          comeToRest(flight);
          each(firstRow + first + flight);
        }
      }
    },
  };
}
