import { describe, expect, it } from 'vitest';
import { windProfile } from '../../../core/air/wind-profile.ts';
import { createFlier, LANDING } from '../../../core/flight/flier.ts';
import { createFlightBatch } from '../../../core/flight/flight-batch.ts';
import { groundPlay, SURFACE_FRICTION } from '../../../core/flight/ground-play.ts';
import { normalSamples } from '../../../core/flight/normal-samples.ts';
import { shotsOf } from '../../../core/strategy/shots.ts';
import { levelLanding, PATH_POINTS, PATH_STRIDE, pathsInWind } from '../../../core/strategy/trajectory-library.ts';
import { windBins } from '../../../core/strategy/wind-bins.ts';
import { buildLibrary } from './build-library.ts';
import { inventedPlayer } from './invented-player.ts';

const DENSITY_KGPM3 = 1.2;
const OPEN = windProfile('open');
const STEP_S = 0.08;
const DROP_M = 10;
const player = inventedPlayer({ arm_mps: 23 });
const batch = createFlightBatch();
const flier = createFlier();
const shots = shotsOf(player, {}, batch, OPEN, DENSITY_KGPM3).filter((_, i) => i % 7 === 0);
const mean = (numbers: readonly number[]) => numbers.reduce((a, b) => a + b, 0) / numbers.length;
const quantile = (numbers: readonly number[], q: number) =>
  [...numbers].sort((a, b) => a - b)[Math.floor(q * numbers.length)];

/** The middle of each shot's scatter only; the ring of stored winds is at `ring_mps`. */
const libraryAt = (speed_mps: number, speedSd_mps: number) =>
  buildLibrary(
    player,
    shots,
    new Float64Array(0),
    0,
    DENSITY_KGPM3,
    OPEN,
    { speed_mps, speedSd_mps, directionSd_deg: 0 },
    DROP_M,
    batch,
  );

/** Touchdown and rest of a shot flown straight in one wind from `from_deg` against the aim. */
function flownIn(shotIndex: number, wind_mps: number, from_deg: number) {
  const shot = shots[shotIndex];
  const fitted = player.throws[shot.throwIndex];
  const from = (from_deg * Math.PI) / 180;
  const speed = fitted.releaseSpeed_mps * shot.power;
  flier.setDisc(fitted.model);
  flier.setStep(STEP_S);
  flier.setPlane(0, 0, 0);
  flier.setAir(DENSITY_KGPM3, -wind_mps * Math.cos(from), wind_mps * Math.sin(from), OPEN);
  flier.fly(speed, 0, shot.launch_deg, 0, shot.hyzer_deg, fitted.spinPerSpeed * speed, 1.2);
  const play = new Float64Array(2);
  groundPlay(flier.landing, fitted.model.diameter_m / 2, SURFACE_FRICTION.turf, 0, 0, play);
  return { x: flier.landing[LANDING.x] + play[0], y: flier.landing[LANDING.y] + play[1] };
}

function restErrors(library: ReturnType<typeof libraryAt>, share: number, step_deg: number): number[] {
  const out = new Float32Array(shots.length * PATH_STRIDE);
  const point = new Float64Array(3);
  const errors: number[] = [];
  for (let from = 0; from < 360; from += step_deg) {
    pathsInWind(library, from, share, out);
    for (let s = 0; s < shots.length; s++) {
      levelLanding(out, s * PATH_STRIDE, point);
      const want = flownIn(s, library.windSpeed_mps[0] * share, from);
      errors.push(Math.hypot(point[0] - want.x, point[1] - want.y));
    }
  }
  return errors;
}

describe('the trajectory library', () => {
  it('in calm air gives each flight back: same landing to the chord of a stored path', () => {
    const errors = restErrors(libraryAt(0, 0), 1, 360);
    // claim of trajectory-library.ts: 26 points keep the chord within 10 cm; the landing is on the last chords
    expect(quantile(errors, 0.9)).toBeLessThan(0.1);
    expect(Math.max(...errors)).toBeLessThan(0.15);
  });

  it('in calm air is what a windy day gives at no wind', () => {
    const calm = new Float32Array(shots.length * PATH_STRIDE);
    const still = new Float32Array(shots.length * PATH_STRIDE);
    pathsInWind(libraryAt(0, 0), 0, 1, calm);
    pathsInWind(libraryAt(5, 1), 123, 0, still);
    expect(still).toEqual(calm);
  });

  it('at the stored winds gives each flight back', () => {
    // ring speed = mean + one standard deviation; share 6/5 of the mean is the ring itself
    // (regression: the chord of a stored path and its long steps, 0.15 s, together)
    const errors = restErrors(libraryAt(5, 1), 6 / 5, 45);
    expect(quantile(errors, 0.95)).toBeLessThan(0.13);
  });

  it.each([
    { speed_mps: 3, sd_mps: 0.5, p95_m: 0.35 },
    { speed_mps: 5, sd_mps: 0.9, p95_m: 1.15 },
    { speed_mps: 8, sd_mps: 1.4, p95_m: 3.3 },
  ])(
    'between the stored winds of $speed_mps m/s rests within $p95_m m of the direct flight (p95, regression)',
    ({ speed_mps, sd_mps, p95_m }) => {
      const library = libraryAt(speed_mps, sd_mps);
      const errors = [0.4, 0.7, 1].flatMap(share => restErrors(library, share, 15));
      // measured p95 0.27, 0.93 and 2.80 m, means 0.10, 0.34 and 1.00 m
      expect(quantile(errors, 0.95)).toBeLessThan(p95_m);
    },
  );

  it('weighs the nine winds by weights that sum to 1: what is the same in all of them stays the same', () => {
    const library = libraryAt(5, 1);
    const same = { ...library, paths: library.paths.map((_, i) => (i % PATH_STRIDE) - 7) };
    const out = new Float32Array(shots.length * PATH_STRIDE);
    for (const from of [0, 11, 45, 137, 200, 359.5])
      for (const share of [0, 0.3, 1, 1.5]) {
        pathsInWind(same, from, share, out);
        out.forEach((value, i) => {
          expect(Math.abs(value - ((i % PATH_STRIDE) - 7))).toBeLessThan(1e-9);
        });
      }
  });

  it('mirrors: a wind from the right on one player is a wind from the left on the mirrored one', () => {
    const mirrored = inventedPlayer({ arm_mps: 23, handedness: 'left' });
    const scatter = { speed_mps: 5, speedSd_mps: 1, directionSd_deg: 0 };
    const left = buildLibrary(mirrored, shots, new Float64Array(0), 0, DENSITY_KGPM3, OPEN, scatter, DROP_M, batch);
    const a = new Float32Array(shots.length * PATH_STRIDE);
    const b = new Float32Array(shots.length * PATH_STRIDE);
    pathsInWind(libraryAt(5, 1), 70, 0.8, a);
    pathsInWind(left, -70, 0.8, b);
    for (let s = 0; s < shots.length; s++)
      for (let i = 0; i < PATH_STRIDE; i++) {
        const sideways = i < 3 * PATH_POINTS ? i % 3 === 1 : i === 3 * PATH_POINTS + 1;
        const at = s * PATH_STRIDE + i;
        // floats of 32 bits behind both
        expect(Math.abs(a[at] - (sideways ? -b[at] : b[at]))).toBeLessThan(1e-3);
      }
  });

  it('gives every sample its own wind, and the first the day’s mean', () => {
    const rows = 64;
    const scatter = { speed_mps: 5, speedSd_mps: 1, directionSd_deg: 10 };
    const library = buildLibrary(
      player,
      shots.slice(0, 1),
      normalSamples(rows, 3),
      rows,
      DENSITY_KGPM3,
      OPEN,
      scatter,
      0,
      batch,
    );
    expect(library.samples).toBe(rows + 1);
    expect(library.windSpeed_mps[0]).toBe(5);
    expect(library.windTurn_deg[0]).toBe(0);
    const speeds = Array.from(library.windSpeed_mps.slice(1));
    const turns = Array.from(library.windTurn_deg.slice(1));
    // a stratified sample of 64 has the mean and spread asked for
    expect(Math.abs(mean(speeds) - 5)).toBeLessThan(0.08);
    expect(Math.abs(Math.sqrt(mean(speeds.map(v => (v - 5) ** 2))) - 1)).toBeLessThan(0.1);
    expect(Math.abs(mean(turns))).toBeLessThan(0.8);
    expect(Math.abs(Math.sqrt(mean(turns.map(v => v * v))) - 10)).toBeLessThan(1);
  });
});

describe('wind bins', () => {
  it('turn the day’s wind against the aim: the bin of an aim holds the paths of that relative wind', () => {
    const library = libraryAt(5, 1);
    const bins = windBins(library, 250, 0.9);
    const out = new Float32Array(shots.length * PATH_STRIDE);
    // aims that fall on the middle of one of the 32 bins: 250 − aim a multiple of 11.25
    for (const [aim, relative] of [
      [250, 0],
      [160, 90],
      [340, 270],
      [70, 180],
      [250 - 11.25, 11.25],
      [-110, 0],
    ]) {
      pathsInWind(library, relative, 0.9, out);
      expect(bins.at(aim).paths).toEqual(out);
    }
    // half a bin off at most, by hand: 5.6° of wind from the side
    expect(bins.at(250 + 5.5)).toBe(bins.at(250));
    expect(bins.at(250 + 5.7)).not.toBe(bins.at(250));
  });
});
