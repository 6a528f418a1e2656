import { exposureFromWoodShare } from '../air/exposure.ts';
import { type Exposure, windProfile, windRatioAt } from '../air/wind-profile.ts';
import { createFlightBatch, type FlightBatch } from '../flight/flight-batch.ts';
import { normalSamples } from '../flight/normal-samples.ts';
import { nearestStation } from '../geometry/along-line.ts';
import { closestOnPolyline } from '../geometry/closest-point.ts';
import type { HoleMap } from '../geometry/hole-map.ts';
import type { ObstacleRaster } from '../geometry/obstacle-raster.ts';
import type { Table } from './choose-shot.ts';
import type { DayLibraries } from './day-libraries.ts';
import { createExactThrower, type HoleAir, PLAN_STEP_S } from './exact-thrower.ts';
import { makeField } from './make-field.ts';
import { createMarcher } from './march.ts';
import { mixSeed } from './mix-seed.ts';
import { puttingValue } from './putting-value.ts';
import { createShotMarcher } from './shot-marcher.ts';
import { type FieldSolution, solveField } from './solve-field.ts';
import { windBins } from './wind-bins.ts';
import { makeWorld, type World } from './world.ts';

const ANSWER_ROWS = 512;
const CELL_M = 5;
const NARROW_CELL_M = 4;
const NARROW_M = 10;
const LONG_HOLE_M = 220;
const LONG_CELL_M = 6;
/** Height at which one hole's wind is compared with another's: about where discs fly. */
export const FLIGHT_HEIGHT_M = 4;
const SIDE_FOR_EXPOSURE_M = 15;

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
  const rooms = libraries.bins[exposure];
  const fieldBins = windBins(libraries.field, day.wind.from_deg, share, rooms.field);
  const allBins = windBins(libraries.all, day.wind.from_deg, share, rooms.all);
  const length_m = nearestStation(map.line, map.basket).station_m;
  const cell_m = narrowest_m < NARROW_M ? NARROW_CELL_M : length_m > LONG_HOLE_M ? LONG_CELL_M : CELL_M;
  const field = makeField(world, puttingValue(player.putting), cell_m);
  const seesObstacles =
    map.covers.length > 0 ||
    map.ceilings.length > 0 ||
    map.outOfBounds.length > 0 ||
    map.mandos.length > 0 ||
    map.islands.length > 0;
  const solution = solveField(
    world,
    field,
    fieldBins,
    createShotMarcher(world, fieldBins, marcher, player),
    seesObstacles,
  );
  const air: HoleAir = {
    density_kgpm3: day.density_kgpm3,
    profile,
    windFrom_deg: day.wind.from_deg,
    scatter: libraries.scatter,
  };
  const flier: FlightBatch = createFlightBatch();
  const table: Table = {
    world,
    field,
    player,
    bins: allBins,
    marcher: createShotMarcher(world, allBins, marcher, player),
    thrower: createExactThrower(world, player, air, flier, marcher, PLAN_STEP_S),
    windSpeed_mps: day.wind.speed_mps,
    searchNormals: normalSamples(64, mixSeed(seed, 3)),
    answerNormals: normalSamples(ANSWER_ROWS, mixSeed(seed, 4)),
  };
  return { world, solution, table, exposure, air };
}

function exposureOf(world: World): Exposure {
  const { raster, map } = world;
  let near = 0;
  let wooded = 0;
  for (let row = 0; row < raster.rows; row++) {
    for (let column = 0; column < raster.columns; column++) {
      const x = raster.x0_m + (column + 0.5) * raster.cell_m;
      const y = raster.y0_m + (row + 0.5) * raster.cell_m;
      if (closestOnPolyline([x, y], map.line).distance_m > SIDE_FOR_EXPOSURE_M) continue;
      near++;
      const cell = row * raster.columns + column;
      if (raster.highDensity[cell] > 0 && raster.highTop_m[cell] > 4) wooded++;
    }
  }
  return exposureFromWoodShare(near > 0 ? wooded / near : 0);
}
