import type { WindProfile } from '../air/wind-profile.ts';
import { TYPICAL_SCATTER } from '../flight/dispersion.ts';
import { LANDING_NUMBERS } from '../flight/flier.ts';
import { type FlightBatch, MOST_FLIGHTS } from '../flight/flight-batch.ts';
import { groundPlay, SURFACE_FRICTION } from '../flight/ground-play.ts';
import { RELEASE_HEIGHT_M } from '../flight/release.ts';
import { LONGEST_ROLLER_M, ROLL_START, roll, rollStart } from '../flight/rolling.ts';
import type { FittedPlayer } from '../player/fitted-player.ts';
import { fittedSpecial, flownAs } from './flown-as.ts';
import type { ShotSpec } from './shots.ts';
import { createSampledThrow, planningScatter, sampleThrow, type WindScatter } from './throw-samples.ts';

/** Points of a stored path, equal in time; 26 keep the chord within 10 cm. */
export const PATH_POINTS = 26;
/** A roller's path ends under the ground with these; the two points after it hold how it rolls off: `[vx, vy, −1]`, `[bend, resistance, −1]`. */
export const ROLLER_POINTS = PATH_POINTS - 2;
/** Numbers a path: points, then the skid on level turf (along, left), then the ground covered between points where it meets the level. */
export const PATH_STRIDE = PATH_POINTS * 3 + 3;
const DIRECTIONS = 8;
const DEGREE = Math.PI / 180;
const SEARCH_STEP_S = 0.15;
const STILL: WindScatter = { speed_mps: 0, speedSd_mps: 0, directionSd_deg: 0 };

/**
 * Flights of every shot and sample in calm air and in eight winds of one speed. The path in any wind up to about that speed is a
 * weighted sum of the nine: quadratic in the speed, trigonometric in the direction.
 */
export type TrajectoryLibrary = Readonly<{
  shots: readonly ShotSpec[];
  /** Samples a shot, the first being the middle of the scatter. */
  samples: number;
  /** Speed of the eight winds at 10 m; 0 when only calm air is stored. */
  ringSpeed_mps: number;
  /** `[wind][shot][sample][PATH_STRIDE]`; wind 0 calm, then from 0°, 45° … relative to the aim. */
  paths: Float32Array;
  /** Wind met by each sample, the same for every shot: speed at 10 m, and turn from the day's mean direction. */
  windSpeed_mps: Float32Array;
  windTurn_deg: Float32Array;
  /** By how many standard deviations each sample's aim and speed are off. */
  aimNormals: Float32Array;
  speedNormals: Float32Array;
}>;

/** What flying a library needs besides the library itself. */
export type LibraryAir = Readonly<{
  player: FittedPlayer;
  /** Rows of standard normals (see flight/normal-samples), one a sample after the first. */
  normals: Float64Array;
  density_kgpm3: number;
  profile: WindProfile;
  /** How far below the lie paths go on, so that one table serves any terrain. */
  drop_m: number;
}>;

/** Speeds of the ring, ten a decade: a wind that changes a little needs no new flights. @source preferred numbers R10, ISO 3:1973 */
const RINGS_MPS = [1, 1.25, 1.6, 2, 2.5, 3.15, 4, 5, 6.3, 8, 10, 12.5, 16, 20, 25, 31.5, 40] as const;

/** The ring that serves a wind: 0 for calm air, else a speed the gusts seldom exceed. */
export function ringSpeed_mps({ speed_mps, speedSd_mps }: WindScatter): number {
  if (speed_mps <= 0) return 0;
  const wanted = speed_mps + speedSd_mps;
  return RINGS_MPS.find(ring => ring >= wanted) ?? wanted;
}

/** Numbers `paths` of a library takes. */
export function libraryLength(shots: number, samples: number, ring_mps: number): number {
  return (ring_mps > 0 ? 1 + DIRECTIONS : 1) * shots * samples * PATH_STRIDE;
}

/** A library with its wind, its paths not flown yet unless `paths` holds them. */
export function layOutLibrary(
  shots: readonly ShotSpec[],
  { normals }: Pick<LibraryAir, 'normals'>,
  rows: number,
  wind: WindScatter,
  ring_mps: number = ringSpeed_mps(wind),
  paths: Float32Array = new Float32Array(libraryLength(shots.length, rows + 1, ring_mps)),
): TrajectoryLibrary {
  const samples = rows + 1;
  const windSpeed_mps = new Float32Array(samples);
  const windTurn_deg = new Float32Array(samples);
  const aimNormals = new Float32Array(samples);
  const speedNormals = new Float32Array(samples);
  const sampled = createSampledThrow();
  for (let k = 0; k < samples; k++) {
    sampleThrow(normals, k - 1, TYPICAL_SCATTER, wind, sampled);
    aimNormals[k] = sampled.azimuth_deg / TYPICAL_SCATTER.azimuth_deg;
    speedNormals[k] = (sampled.speedShare - 1) / TYPICAL_SCATTER.speed;
    windSpeed_mps[k] = sampled.wind_mps;
    windTurn_deg[k] = sampled.windTurn_deg;
  }
  return { shots, samples, ringSpeed_mps: ring_mps, paths, windSpeed_mps, windTurn_deg, aimNormals, speedNormals };
}

/** Flies shots from…to−1 of a library into its `paths`. */
export function flyLibrary(
  library: TrajectoryLibrary,
  { player, normals, density_kgpm3, profile, drop_m }: LibraryAir,
  flier: FlightBatch,
  from: number,
  to: number,
): void {
  const { shots, samples, ringSpeed_mps: ring_mps, paths } = library;
  const winds = ring_mps > 0 ? 1 + DIRECTIONS : 1;
  const sampled = createSampledThrow();
  const play = new Float64Array(2);
  const landing = new Float64Array(LANDING_NUMBERS);
  flier.setStep(SEARCH_STEP_S);
  flier.setPlane(0, 0, 0);
  for (let s = from; s < to; s++) {
    const shot = shots[s];
    const fitted = player.throws[shot.throwIndex];
    const scatter = planningScatter(fitted, shot);
    const flown = flownAs(fitted, shot.shape);
    const resistance = shot.shape === 'roller' ? fittedSpecial(fitted, shot.shape).resistance : null;
    const radius_m = flown.model.diameter_m / 2;
    flier.setDisc(flown.model);
    flier.setAir(density_kgpm3, 0, 0, profile);
    // all winds and samples of a shot, as many at once as fit
    for (let first = 0; first < winds * samples; first += MOST_FLIGHTS) {
      const count = Math.min(MOST_FLIGHTS, winds * samples - first);
      for (let flight = 0; flight < count; flight++) {
        const w = Math.floor((first + flight) / samples);
        const k = (first + flight) % samples;
        const windFrom = (w - 1) * (360 / DIRECTIONS) * DEGREE;
        if (w === 0) flier.setWind(0, 0);
        else flier.setWind(-ring_mps * Math.cos(windFrom), ring_mps * Math.sin(windFrom));
        sampleThrow(normals, k - 1, scatter, STILL, sampled);
        const speed = flown.releaseSpeed_mps * shot.power * sampled.speedShare;
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
      flier.fly(count);
      for (let flight = 0; flight < count; flight++) {
        const at = pathAt(library, first + flight, s);
        flier.landing(flight, landing);
        if (resistance === null) groundPlay(landing, radius_m, SURFACE_FRICTION.turf, 0, 0, play);
        else rollOff(landing, radius_m, resistance, play, paths, at + 3 * ROLLER_POINTS);
        paths[at + 3 * PATH_POINTS] = play[0];
        paths[at + 3 * PATH_POINTS + 1] = play[1];
      }
      flier.extend(count, drop_m);
      for (let flight = 0; flight < count; flight++) {
        const at = pathAt(library, first + flight, s);
        const kept = resistance === null ? PATH_POINTS : ROLLER_POINTS;
        resample(flier.path(), flier.pathStart(flight), flier.pathPoints(flight), paths, at, kept);
        // steep ones skid about as far on a slope
        paths[at + 3 * PATH_POINTS + 2] = shot.shape === 'overhead' ? 0 : levelRun_m(paths, at);
      }
    }
  }
}

const start = new Float64Array(3);

/** A roller on level turf: how it rolls off into `paths` from `at`, and how far it comes into `play`. */
function rollOff(
  landing: Float64Array,
  radius_m: number,
  resistance: number,
  play: Float64Array,
  paths: Float32Array,
  at: number,
): void {
  roll(landing, radius_m, resistance, 0, 0, play, LONGEST_ROLLER_M);
  rollStart(landing, radius_m, 0, 0, start);
  paths[at] = start[ROLL_START.speed] * Math.cos(start[ROLL_START.heading]);
  paths[at + 1] = start[ROLL_START.speed] * Math.sin(start[ROLL_START.heading]);
  paths[at + 2] = -1;
  paths[at + 3] = start[ROLL_START.bend];
  paths[at + 4] = resistance;
  paths[at + 5] = -1;
}

/** Where the path of shot `s` stands in flight `flight` of its winds and samples. */
function pathAt({ shots, samples }: TrajectoryLibrary, flight: number, s: number): number {
  return ((Math.floor(flight / samples) * shots.length + s) * samples + (flight % samples)) * PATH_STRIDE;
}

/**
 * All paths of the library for one direction of the wind against the aim.
 * @param windFrom_deg - where the mean wind comes from, clockwise from the aim (0: headwind)
 * @param share - wind at this hole's exposure as a share of the open one
 * @param out - receives `[shot][sample][PATH_STRIDE]`
 */
export function pathsInWind(library: TrajectoryLibrary, windFrom_deg: number, share: number, out: Float32Array): void {
  const { shots, samples, paths, ringSpeed_mps } = library;
  const count = shots.length * samples;
  if (ringSpeed_mps === 0) {
    for (let i = 0; i < count * PATH_STRIDE; i++) out[i] = paths[i];
    return;
  }
  const block = count * PATH_STRIDE;
  const weights = new Float64Array(1 + DIRECTIONS);
  for (let k = 0; k < samples; k++) {
    const speed = (library.windSpeed_mps[k] * share) / ringSpeed_mps;
    windWeights(speed, (windFrom_deg + library.windTurn_deg[k]) * DEGREE, weights);
    const [w0, w1, w2, w3, w4, w5, w6, w7, w8] = weights;
    for (let s = 0; s < shots.length; s++) {
      const at = (s * samples + k) * PATH_STRIDE;
      for (let j = at; j < at + PATH_STRIDE; j++) {
        out[j] =
          w0 * paths[j] +
          w1 * paths[j + block] +
          w2 * paths[j + 2 * block] +
          w3 * paths[j + 3 * block] +
          w4 * paths[j + 4 * block] +
          w5 * paths[j + 5 * block] +
          w6 * paths[j + 6 * block] +
          w7 * paths[j + 7 * block] +
          w8 * paths[j + 8 * block];
      }
    }
  }
}

/**
 * Weights of the nine stored winds for a wind of `speed` (1: the ring's) from angle `from`; they sum to 1.
 * @source trigonometric interpolation on 8 equispaced angles (Dirichlet kernel), quadratic through +speed, 0, −speed
 */
function windWeights(speed: number, from: number, out: Float64Array): void {
  out[0] = 1 - speed * speed;
  for (let j = 0; j < DIRECTIONS; j++) {
    const angle = from - j * (360 / DIRECTIONS) * DEGREE;
    const ahead = dirichlet(angle);
    const behind = dirichlet(angle + Math.PI);
    out[1 + j] = (speed / 2) * (ahead - behind) + ((speed * speed) / 2) * (ahead + behind);
  }
}

function dirichlet(angle: number): number {
  return (
    (1 + 2 * Math.cos(angle) + 2 * Math.cos(2 * angle) + 2 * Math.cos(3 * angle) + Math.cos(4 * angle)) / DIRECTIONS
  );
}

/** Step points (equal in time but for the touchdown point) to `kept` points, linear between. */
function resample(
  path: Float32Array,
  start: number,
  points: number,
  out: Float32Array,
  at: number,
  kept: number,
): void {
  const last = points - 1;
  for (let i = 0; i < kept; i++) {
    const position = (i * last) / (kept - 1);
    const from = Math.min(last - 1, position | 0);
    const share = position - from;
    for (let c = 0; c < 3; c++) {
      const a = path[start + 3 * from + c];
      out[at + 3 * i + c] = a + share * (path[start + 3 * (from + 1) + c] - a);
    }
  }
}

function levelRun_m(paths: Float32Array, at: number): number {
  let i = 1;
  while (i < PATH_POINTS - 1 && paths[at + 3 * i + 2] > 0) i++;
  return Math.hypot(paths[at + 3 * i] - paths[at + 3 * i - 3], paths[at + 3 * i + 1] - paths[at + 3 * i - 2]);
}

/** Where a stored path rests on level ground at the lie's height: `out` receives `[along_m, left_m, metres forward per metre of fall]`. */
export function levelLanding(paths: Float32Array, at: number, out: Float64Array): void {
  let i = 1;
  while (i < PATH_POINTS - 1 && paths[at + 3 * i + 2] > 0) i++;
  const z0 = paths[at + 3 * i - 1];
  const z1 = paths[at + 3 * i + 2];
  const share = z0 > z1 ? Math.min(1, Math.max(0, z0 / (z0 - z1))) : 1;
  const x0 = paths[at + 3 * i - 3];
  const y0 = paths[at + 3 * i - 2];
  const dx = paths[at + 3 * i] - x0;
  const dy = paths[at + 3 * i + 1] - y0;
  out[0] = x0 + share * dx + paths[at + 3 * PATH_POINTS];
  out[1] = y0 + share * dy + paths[at + 3 * PATH_POINTS + 1];
  // metres forward per metre of fall
  out[2] = z0 > z1 ? Math.min(6, Math.sqrt(dx * dx + dy * dy) / (z0 - z1)) : 6;
}
