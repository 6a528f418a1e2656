import type { Day } from '../air/day.ts';
import { exposureFromWoodShare } from '../air/exposure.ts';
import { type Exposure, windProfile, windRatioAt } from '../air/wind-profile.ts';
import { createFlier, type Flier } from '../flight/flier.ts';
import { normalSamples } from '../flight/normal-samples.ts';
import { nearestStation } from '../geometry/along-line.ts';
import type { HoleMap } from '../geometry/hole-map.ts';
import type { ObstacleRaster } from '../geometry/obstacle-raster.ts';
import type { FittedPlayer } from '../player/fitted-player.ts';
import type { Table } from './choose-shot.ts';
import { createExactThrower, type HoleAir } from './exact-thrower.ts';
import { fieldShots, type ShotReach } from './field-shots.ts';
import { makeField } from './make-field.ts';
import { createMarcher } from './march.ts';
import { puttingValue } from './putting-value.ts';
import { createShotMarcher } from './shot-marcher.ts';
import { type Limits, type ShotSpec, shotsOf } from './shots.ts';
import { type FieldSolution, solveField } from './solve-field.ts';
import { type WindScatter, windScatterOf } from './throw-samples.ts';
import {
  buildLibrary,
  levelLanding,
  PATH_POINTS,
  PATH_STRIDE,
  pathsInWind,
  type TrajectoryLibrary,
} from './trajectory-library.ts';
import { windBins } from './wind-bins.ts';
import { makeWorld, type World } from './world.ts';

const SEARCH_ROWS = 2;
/** 12 samples choose, 20 value (see solve-field). */
const FIELD_ROWS = 32;
const ANSWER_ROWS = 512;
const CELL_M = 5;
const NARROW_CELL_M = 4;
const NARROW_M = 10;
const LONG_HOLE_M = 220;
const LONG_CELL_M = 6;
/** Height at which one hole's wind is compared with another's: about where discs fly. */
export const FLIGHT_HEIGHT_M = 4;
const SIDE_FOR_EXPOSURE_M = 15;

/** One player's shots in one day's air: shared by all holes. */
export type DayLibraries = Readonly<{
  player: FittedPlayer;
  day: Day;
  shots: readonly ShotSpec[];
  /** All shots, the middle and two samples. */
  all: TrajectoryLibrary;
  /** The few shots that value later lies, with all samples. */
  field: TrajectoryLibrary;
  scatter: WindScatter;
  drop_m: number;
  seed: number;
}>;

/**
 * Flies the bag once for a day. `drop_m`: how far below a lie the ground of the course can be.
 * @throws {RangeError} when the limits leave no shot
 */
export function makeDayLibraries(
  player: FittedPlayer,
  day: Day,
  limits: Limits,
  drop_m: number,
  seed: number,
): DayLibraries {
  const flier = createFlier();
  const profile = windProfile('open');
  const shots = shotsOf(player, limits, flier, profile, day.density_kgpm3);
  if (shots.length === 0) throw new RangeError('no disc is left to throw under these limits');
  const scatter = windScatterOf(day);
  const build = (some: readonly ShotSpec[], rows: number, salt: number): TrajectoryLibrary =>
    buildLibrary(
      player,
      some,
      normalSamples(rows, mixSeed(seed, salt)),
      rows,
      day.density_kgpm3,
      profile,
      scatter,
      drop_m,
      flier,
    );
  const all = build(shots, SEARCH_ROWS, 1);
  const chosen = fieldShots(player, shots, reachOf(all, player));
  const field = build(
    chosen.map(i => shots[i]),
    FIELD_ROWS,
    2,
  );
  return { player, day, shots, all, field, scatter, drop_m, seed };
}

/** One hole ready to be asked: its value everywhere and the table behind `chooseShot`. */
export type SolvedHole = Readonly<{
  world: World;
  solution: FieldSolution;
  table: Table;
  exposure: Exposure;
  air: HoleAir;
}>;

/** Values a hole for a day's libraries. Deterministic in its arguments. */
export function solveHole(
  map: HoleMap,
  raster: ObstacleRaster,
  libraries: DayLibraries,
  narrowest_m: number,
): SolvedHole {
  const { player, day, seed } = libraries;
  const world = makeWorld(map, raster);
  const exposure = exposureOf(world);
  const profile = windProfile(exposure);
  const share = windRatioAt(profile, FLIGHT_HEIGHT_M) / windRatioAt(windProfile('open'), FLIGHT_HEIGHT_M);
  const marcher = createMarcher(world);
  const fieldBins = windBins(libraries.field, day.wind.from_deg, share);
  const allBins = windBins(libraries.all, day.wind.from_deg, share);
  const length_m = nearestStation(map.line, map.basket).station_m;
  const cell_m = narrowest_m < NARROW_M ? NARROW_CELL_M : length_m > LONG_HOLE_M ? LONG_CELL_M : CELL_M;
  const field = makeField(world, puttingValue(player.putting), cell_m);
  const seesObstacles =
    map.covers.length > 0 ||
    map.ceilings.length > 0 ||
    map.outOfBounds.length > 0 ||
    map.mandos.length > 0 ||
    map.islands.length > 0;
  const solution = solveField(world, field, fieldBins, createShotMarcher(world, fieldBins, marcher), seesObstacles);
  const air: HoleAir = {
    density_kgpm3: day.density_kgpm3,
    profile,
    windFrom_deg: day.wind.from_deg,
    scatter: libraries.scatter,
  };
  const flier: Flier = createFlier();
  const table: Table = {
    world,
    field,
    player,
    bins: allBins,
    marcher: createShotMarcher(world, allBins, marcher),
    thrower: createExactThrower(world, player, air, flier, marcher, 0.08),
    windSpeed_mps: day.wind.speed_mps,
    searchNormals: normalSamples(64, mixSeed(seed, 3)),
    answerNormals: normalSamples(ANSWER_ROWS, mixSeed(seed, 4)),
  };
  return { world, solution, table, exposure, air };
}

/** A different stream for each use of one seed. @source integer hash finaliser (from memory, Steele et al. 2014, SplitMix) */
function mixSeed(seed: number, salt: number): number {
  let h = (seed ^ Math.imul(salt, 0x9e3779b9)) | 0;
  h = Math.imul(h ^ (h >>> 16), 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
  return (h ^ (h >>> 16)) | 0;
}

function exposureOf(world: World): Exposure {
  const { raster, map } = world;
  let near = 0;
  let wooded = 0;
  for (let row = 0; row < raster.rows; row++) {
    for (let column = 0; column < raster.columns; column++) {
      const x = raster.x0_m + (column + 0.5) * raster.cell_m;
      const y = raster.y0_m + (row + 0.5) * raster.cell_m;
      if (nearestStation(map.line, [x, y]).distance_m > SIDE_FOR_EXPOSURE_M) continue;
      near++;
      const cell = row * raster.columns + column;
      if (raster.highDensity[cell] > 0 && raster.highTop_m[cell] > 4) wooded++;
    }
  }
  return exposureFromWoodShare(near > 0 ? wooded / near : 0);
}

/** Calm reach, bend and spread of every shot, from the library's middle and samples. */
function reachOf(library: TrajectoryLibrary, player: FittedPlayer): ShotReach[] {
  const { shots, samples } = library;
  const calm = new Float64Array(shots.length * samples * PATH_STRIDE);
  pathsInWind({ ...library, ringSpeed_mps: 0 }, 0, 0, calm);
  const point = new Float64Array(3);
  return shots.map((shot, s): ShotReach => {
    const first = s * samples * PATH_STRIDE;
    levelLanding(calm, first, point);
    const [along_m, left_m] = point;
    let apex_m = 0;
    for (let i = 2; i < PATH_POINTS * 3; i += 3) apex_m = Math.max(apex_m, calm[first + i]);
    // the fitted throw knows its spread at full power; angles scatter in proportion to the distance
    const fitted = player.throws[shot.throwIndex];
    const spread_m = (Math.hypot(fitted.distanceSd_m, fitted.sideSd_m) * along_m) / Math.max(1, fitted.averageDay_m);
    return { along_m, left_m, spread_m, apex_m };
  });
}
