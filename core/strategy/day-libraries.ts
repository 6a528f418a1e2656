import type { Day } from '../air/day.ts';
import { type Exposure, windProfile } from '../air/wind-profile.ts';
import { createFlightBatch, type FlightBatch } from '../flight/flight-batch.ts';
import { normalSamples } from '../flight/normal-samples.ts';
import type { FittedPlayer } from '../player/fitted-player.ts';
import { claimBlocks } from './claim-blocks.ts';
import { fieldShots, type ShotReach } from './field-shots.ts';
import { mixSeed } from './mix-seed.ts';
import { type Limits, type ShotSpec, shotCount, shotsOf } from './shots.ts';
import { type WindScatter, windScatterOf } from './throw-samples.ts';
import {
  flyLibrary,
  type LibraryAir,
  layOutLibrary,
  levelLanding,
  libraryLength,
  PATH_POINTS,
  PATH_STRIDE,
  ringSpeed_mps,
  type TrajectoryLibrary,
} from './trajectory-library.ts';
import { type BinRoom, binRoom, sharedBinRoom, sharedFloats } from './wind-bins.ts';

const SEARCH_ROWS = 2;
/** 12 samples choose, 20 value (see solve-field). */
const FIELD_ROWS = 32;
/** Shots of the field there is room for; more would cost time in every lie. */
const MOST_FIELD_SHOTS = 160;
/** Shots flown at a time by one thread. */
const BLOCK_SHOTS = 8;

/** One player's shots in one day's air: shared by all holes. */
export type DayLibraries = Readonly<{
  player: FittedPlayer;
  day: Day;
  shots: readonly ShotSpec[];
  /** All shots, the middle and two samples. */
  all: TrajectoryLibrary;
  /** The few shots that value later lies, with all samples. */
  field: TrajectoryLibrary;
  bins: WindRooms;
  scatter: WindScatter;
  drop_m: number;
  seed: number;
}>;

/** Flights of a bag, in memory that threads may share: whoever comes first flies the blocks nobody has flown yet. */
export type FlownRoom = Readonly<{ all: Float32Array; field: Float32Array; blocks: Int32Array }>;

/** Paths in one wind's bins, by exposure, in memory that threads may share. */
export type WindRooms = Readonly<Record<Exposure, Readonly<{ all: BinRoom; field: BinRoom }>>>;

/**
 * Room that threads share for the flights of a day; another day serves as well while `ringSpeed_mps`, air density, bag, limits
 * and seed are the same.
 */
export function sharedFlownRoom(player: FittedPlayer, day: Day, limits: Limits): FlownRoom {
  const { all, field, blocks } = roomSizes(player, day, limits);
  const states = new Int32Array(new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT * blocks));
  return { all: sharedFloats(all), field: sharedFloats(field), blocks: states };
}

/** Room that threads share for the paths of one wind (its speed, gusts and spread; not its direction). */
export function sharedWindRooms(player: FittedPlayer, day: Day, limits: Limits): WindRooms {
  const ring_mps = ringSpeed_mps(windScatterOf(day));
  const rooms = () => ({
    all: sharedBinRoom(shotCount(player, limits), SEARCH_ROWS + 1, ring_mps),
    field: sharedBinRoom(MOST_FIELD_SHOTS, FIELD_ROWS + 1, ring_mps),
  });
  return { open: rooms(), park: rooms(), wood: rooms() };
}

export function windRooms(): WindRooms {
  const rooms = () => ({ all: binRoom(), field: binRoom() });
  return { open: rooms(), park: rooms(), wood: rooms() };
}

function ownFlownRoom(player: FittedPlayer, day: Day, limits: Limits): FlownRoom {
  const { all, field, blocks } = roomSizes(player, day, limits);
  return { all: new Float32Array(all), field: new Float32Array(field), blocks: new Int32Array(blocks) };
}

function roomSizes(player: FittedPlayer, day: Day, limits: Limits): Readonly<Record<keyof FlownRoom, number>> {
  const ring_mps = ringSpeed_mps(windScatterOf(day));
  const shots = shotCount(player, limits);
  return {
    all: libraryLength(shots, SEARCH_ROWS + 1, ring_mps),
    field: libraryLength(MOST_FIELD_SHOTS, FIELD_ROWS + 1, ring_mps),
    blocks: Math.ceil(shots / BLOCK_SHOTS) + Math.ceil(MOST_FIELD_SHOTS / BLOCK_SHOTS),
  };
}

/**
 * Flies the bag once for a day. `drop_m`: how far below a lie the ground of the course can be.
 * @param flown, bins - shared with other threads that work for the same day
 * @throws {RangeError} when the limits leave no shot
 */
export function makeDayLibraries(
  player: FittedPlayer,
  day: Day,
  limits: Limits,
  drop_m: number,
  seed: number,
  flown: FlownRoom = ownFlownRoom(player, day, limits),
  bins: WindRooms = windRooms(),
): DayLibraries {
  const flier = createFlightBatch();
  const profile = windProfile('open');
  const shots = shotsOf(player, limits, flier, profile, day.density_kgpm3);
  if (shots.length === 0) throw new RangeError('no disc is left to throw under these limits');
  const scatter = windScatterOf(day);
  const air = (rows: number, salt: number): LibraryAir => ({
    player,
    normals: normalSamples(rows, mixSeed(seed, salt)),
    density_kgpm3: day.density_kgpm3,
    profile,
    drop_m,
  });
  const chosen = fieldShots(player, shots, calmReach(player, shots, air(0, 0), flier), MOST_FIELD_SHOTS);
  const [airOfAll, airOfField] = [air(SEARCH_ROWS, 1), air(FIELD_ROWS, 2)];
  const all = layOutLibrary(shots, airOfAll, SEARCH_ROWS, scatter, ringSpeed_mps(scatter), flown.all);
  const field = layOutLibrary(
    chosen.map(i => shots[i]),
    airOfField,
    FIELD_ROWS,
    scatter,
    ringSpeed_mps(scatter),
    flown.field,
  );
  const blocksOfAll = Math.ceil(shots.length / BLOCK_SHOTS);
  const blocks = blocksOfAll + Math.ceil(chosen.length / BLOCK_SHOTS);
  claimBlocks(flown.blocks, blocks, block => {
    const [library, from, its] =
      block < blocksOfAll ? [all, block, airOfAll] : [field, block - blocksOfAll, airOfField];
    const first = from * BLOCK_SHOTS;
    flyLibrary(library, its, flier, first, Math.min(first + BLOCK_SHOTS, library.shots.length));
  });
  return { player, day, shots, all, field, bins, scatter, drop_m, seed };
}

/** The same flights for another day of the same ring, air density and bag. */
export function librariesOn(libraries: DayLibraries, day: Day, bins: WindRooms): DayLibraries {
  const { seed, all, field } = libraries;
  const scatter = windScatterOf(day);
  const inWind = (library: TrajectoryLibrary, rows: number, salt: number) =>
    layOutLibrary(
      library.shots,
      { normals: normalSamples(rows, mixSeed(seed, salt)) },
      rows,
      scatter,
      library.ringSpeed_mps,
      library.paths,
    );
  return { ...libraries, day, scatter, bins, all: inWind(all, SEARCH_ROWS, 1), field: inWind(field, FIELD_ROWS, 2) };
}

/** Calm reach, bend and spread of every shot, by the middle of its scatter. */
function calmReach(player: FittedPlayer, shots: readonly ShotSpec[], air: LibraryAir, flier: FlightBatch): ShotReach[] {
  const calm = layOutLibrary(shots, air, 0, { speed_mps: 0, speedSd_mps: 0, directionSd_deg: 0 });
  flyLibrary(calm, air, flier, 0, shots.length);
  const point = new Float64Array(3);
  return shots.map((shot, s): ShotReach => {
    const first = s * PATH_STRIDE;
    levelLanding(calm.paths, first, point);
    const [along_m, left_m] = point;
    let apex_m = 0;
    for (let i = 2; i < PATH_POINTS * 3; i += 3) apex_m = Math.max(apex_m, calm.paths[first + i]);
    // the fitted throw knows its spread at full power; angles scatter in proportion to the distance
    const fitted = player.throws[shot.throwIndex];
    const spread_m = (Math.hypot(fitted.distanceSd_m, fitted.sideSd_m) * along_m) / Math.max(1, fitted.averageDay_m);
    return { along_m, left_m, spread_m, apex_m };
  });
}
