import { describe, expect, it } from 'vitest';
import { windProfile } from '../../../core/air/wind-profile.ts';
import { discModel } from '../../../core/flight/disc-model.ts';
import { createFlier, LANDING, LANDING_NUMBERS } from '../../../core/flight/flier.ts';
import { createFlightBatch, MOST_FLIGHTS } from '../../../core/flight/flight-batch.ts';
import { normalSamples, SAMPLE_DIMENSIONS } from '../../../core/flight/normal-samples.ts';
import type { Terrain } from '../../../core/geometry/hole-map.ts';

const DENSITY_KGPM3 = 1.2;
const OPEN = windProfile('open');
const PUTTER = discModel({ speed: 2, glide: 3, turn: 0, fade: 1 });
const DRIVER = discModel({ speed: 12, glide: 5, turn: -1.5, fade: 3 });
const normals = normalSamples(64, 5);
const landing = new Float64Array(LANDING_NUMBERS);

type Throw = readonly [speed: number, azimuth: number, launch: number, nose: number, hyzer: number, spin: number];

/** Scattered throws of one hand. */
const throwsOf = (count: number, speed_mps: number, hand: 1 | -1): Throw[] =>
  Array.from({ length: count }, (_, i) => {
    const z = (d: number) => normals[i * SAMPLE_DIMENSIONS + d]!;
    const speed = speed_mps * (1 + 0.04 * z(0));
    return [speed, 3 * z(1), 9 + 3 * z(2), 2 * z(3), 8 * z(4), hand * 4.6 * speed];
  });

/** A hill to the north-east, on a grid of 10 m. */
const HILL: Terrain = {
  known: true,
  x0_m: -60,
  y0_m: -40,
  cell_m: 10,
  columns: 22,
  rows: 22,
  height_m: Float32Array.from(
    { length: 22 * 22 },
    (_, i) => 0.04 * (i % 22) * 10 + 3 * Math.sin(Math.floor(i / 22) / 3),
  ),
};

describe('a batch of flights against the same flights one by one (two programs for the same equations)', () => {
  const cases = [thrown('putter', PUTTER, 19), thrown('driver', DRIVER, 26)].flatMap(model =>
    [0, 4, 9].flatMap(wind_mps =>
      [0.15, 0.08].flatMap(step_s =>
        (['plane', 'slope', 'hill'] as const).map(ground => ({ ...model, wind_mps, step_s, ground })),
      ),
    ),
  );

  it.each(cases)(
    '$name, wind $wind_mps m/s, step $step_s s, $ground',
    ({ model, speed_mps, wind_mps, step_s, ground }) => {
      const flier = createFlier();
      const batch = createFlightBatch();
      for (const each of [flier, batch]) {
        each.setDisc(model);
        each.setStep(step_s);
        if (ground === 'hill') each.setTerrain(HILL, 12, 7, 35);
        else each.setPlane(0, ground === 'slope' ? -0.06 : 0, ground === 'slope' ? 0.03 : 0);
        each.setAir(DENSITY_KGPM3, -0.6 * wind_mps, 0.8 * wind_mps, OPEN);
      }
      // not a multiple of four: the last three lanes of the last four are fillers
      const releases = throwsOf(29, speed_mps, 1);
      releases.forEach((t, i) => {
        batch.release(i, ...t, 1.3);
      });
      batch.fly(releases.length);
      releases.forEach((t, i) => {
        expect(flier.fly(...t, 1.3)).toBe(batch.hasLanded(i));
        batch.landing(i, landing);
        // [C] computed over mixed throws: landings 0.32 mm apart at most (docs/benchmarks.md); the bounds on speed, normal, time and
        // path are of the same make: regression, a few times what single precision leaves here
        for (const axis of [LANDING.x, LANDING.y, LANDING.z])
          expect(Math.abs(landing[axis]! - flier.landing[axis]!)).toBeLessThan(5e-4);
        for (const q of [LANDING.vx, LANDING.vy, LANDING.vz])
          expect(Math.abs(landing[q]! - flier.landing[q]!)).toBeLessThan(5e-4);
        for (const q of [LANDING.nx, LANDING.ny, LANDING.nz])
          expect(Math.abs(landing[q]! - flier.landing[q]!)).toBeLessThan(1e-4);
        expect(landing[LANDING.spin]! / flier.landing[LANDING.spin]!).toBeCloseTo(1, 5);
        expect(Math.abs(batch.time_s(i) - flier.time_s())).toBeLessThan(1e-4);
        expect(Math.abs(batch.apex_m(i) - flier.apex_m())).toBeLessThan(1e-3);
        expect(batch.pathPoints(i)).toBe(flier.pathPoints());
        const start = batch.pathStart(i);
        for (let p = 0; p < 3 * flier.pathPoints(); p++)
          expect(Math.abs(batch.path()[start + p]! - flier.path[p]!)).toBeLessThan(1e-3);
      });
    },
  );

  it('keeps flying through the ground to the depth asked', () => {
    const flier = createFlier();
    const batch = createFlightBatch();
    for (const each of [flier, batch]) {
      each.setDisc(DRIVER);
      each.setStep(0.15);
      each.setPlane(0, 0, 0);
      each.setAir(DENSITY_KGPM3, -3, 1, OPEN);
    }
    const releases = throwsOf(8, 24, -1);
    releases.forEach((t, i) => {
      batch.release(i, ...t, 1.3);
    });
    batch.fly(8);
    batch.extend(8, 12);
    releases.forEach((t, i) => {
      flier.fly(...t, 1.3);
      flier.extend(12);
      const points = flier.pathPoints();
      expect(batch.pathPoints(i)).toBe(points);
      const last = batch.pathStart(i) + 3 * (points - 1);
      expect(batch.path()[last + 2]).toBeCloseTo(-12, 3);
      for (let c = 0; c < 3; c++)
        expect(Math.abs(batch.path()[last + c]! - flier.path[3 * (points - 1) + c]!)).toBeLessThan(2e-3);
    });
  });
});

function thrown(name: string, model: typeof PUTTER, speed_mps: number) {
  return { name, model, speed_mps };
}

describe('a batch of flights', () => {
  const set = (batch = createFlightBatch()) => {
    batch.setDisc(DRIVER);
    batch.setStep(0.15);
    batch.setPlane(0, 0, 0);
    batch.setAir(DENSITY_KGPM3, 0, 0, OPEN);
    return batch;
  };

  it('mirrors exactly: the other hand lands as far to the other side', () => {
    const batch = set();
    const other = new Float64Array(LANDING_NUMBERS);
    batch.setWind(-3, 2);
    batch.release(0, 24, 2, 10, 1, 5, -110, 1.3);
    batch.setWind(-3, -2);
    batch.release(1, 24, -2, 10, 1, 5, 110, 1.3);
    batch.fly(2);
    batch.landing(0, landing);
    batch.landing(1, other);
    expect(other[LANDING.x]).toBe(landing[LANDING.x]);
    expect(other[LANDING.y]).toBe(-landing[LANDING.y]!);
  });

  it('gives a flight the same landing wherever it stands in the batch and whatever flies beside it', () => {
    const batch = set();
    const first = new Float64Array(LANDING_NUMBERS);
    batch.release(0, 24, 2, 10, 1, 5, -110, 1.3);
    batch.fly(1);
    batch.landing(0, first);
    throwsOf(MOST_FLIGHTS, 22, 1).forEach((t, i) => {
      batch.release(i, ...t, 1.3);
    });
    batch.release(37, 24, 2, 10, 1, 5, -110, 1.3);
    batch.fly(MOST_FLIGHTS);
    batch.landing(37, landing);
    expect([...landing]).toEqual([...first]);
  });

  it('says when a flight is still in the air after 40 s', () => {
    const batch = set();
    // from 5 km up nothing comes down that soon
    batch.release(0, 24, 0, 10, 0, 0, -110, 5000);
    batch.fly(1);
    expect(batch.hasLanded(0)).toBe(false);
    expect(batch.time_s(0)).toBeCloseTo(40, 0);
  });

  it('stays finite and within its room for throws no hand makes (extremes of speed, attitude and spin)', () => {
    const batch = set();
    for (let round = 0; round < 20; round++) {
      batch.setWind(30 * Math.sin(round), 30 * Math.cos(round));
      for (let i = 0; i < MOST_FLIGHTS; i++) {
        const z = (d: number) => normals[((i + 7 * round) % 64) * SAMPLE_DIMENSIONS + d]!;
        batch.release(i, Math.abs(20 * z(0)), 90 * z(1), 40 * z(2), 60 * z(3), 90 * z(4), 40 * z(5) ** 3, 1.3);
      }
      batch.fly(MOST_FLIGHTS);
      for (let i = 0; i < MOST_FLIGHTS; i++) {
        batch.landing(i, landing);
        expect([...landing].every(Number.isFinite)).toBe(true);
        expect(batch.pathPoints(i)).toBeLessThanOrEqual(600);
      }
    }
  });

  it("keeps its settings while another batch flies in between, and does not hand out the other one's flights", () => {
    const [one, two] = [set(), set()];
    two.setDisc(PUTTER);
    two.setTerrain(HILL, 12, 7, 35);
    const alone = new Float64Array(LANDING_NUMBERS);
    one.release(0, 24, 2, 10, 1, 5, -110, 1.3);
    one.fly(1);
    one.landing(0, alone);
    two.release(0, 18, 2, 10, 1, 5, -80, 1.3);
    two.fly(1);
    expect(() => one.landing(0, landing)).toThrow(/took the kernel over/);
    expect(() => one.fly(1)).toThrow(RangeError);
    one.release(0, 24, 2, 10, 1, 5, -110, 1.3);
    one.fly(1);
    one.landing(0, landing);
    expect([...landing]).toEqual([...alone]);
  });

  it('refuses more flights than it holds, and a release before disc and air', () => {
    const batch = set();
    expect(() => batch.fly(MOST_FLIGHTS + 1)).toThrow(RangeError);
    expect(() => batch.release(MOST_FLIGHTS, 20, 0, 10, 0, 0, -90, 1.3)).toThrow(/64/);
    expect(() => createFlightBatch().release(0, 20, 0, 10, 0, 0, -90, 1.3)).toThrow(/disc and air/);
  });
});
