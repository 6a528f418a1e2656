import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { NO_AERODYNAMICS, type ReferenceDisc, SYNTHETIC_DISCS } from './coefficients.ts';
import { flyFastSpin } from './fast-spin-plain.ts';
import { productionSubject } from './production-subject.ts';
import { type ReferenceRelease, releaseOf, releaseState } from './release.ts';
import { flyRigidBody } from './rigid-body.ts';
import { type Arrival, fastSpinSubject, GLIDER, type IdentityThrow, rigidBodySubject } from './subject.ts';
import { STANDARD_GRAVITY_MPS2, type Surroundings } from './surroundings.ts';
import {
  difference,
  distance,
  dot,
  length,
  mirrored,
  scaled,
  sum,
  turnedLeft,
  type Vector,
  vector,
  ZERO,
} from './vector.ts';

// Exact identities of a thrown disc, own derivation; they need no aerodynamic data. Tolerance 1e-9 throughout, except
// for what a model interpolates at touchdown. Printed decimals: [C] computed from the formula beside them.

const EXACT = 1e-9;
const near = (got: number, want: number, tolerance: number): void =>
  expect(Math.abs(got - want), `got ${got}, want ${want}`).toBeLessThanOrEqual(tolerance);

const LEVEL_THROW: ReferenceRelease = {
  speed_mps: 20,
  spin_radps: -90,
  launch_deg: 8,
  nose_deg: 0,
  hyzer_deg: 0,
  azimuth_deg: 0,
  height_m: 1.2,
};

const anyRelease: fc.Arbitrary<ReferenceRelease> = fc
  .record({
    speed_mps: fc.double({ min: 14, max: 28, noNaN: true }),
    clockwise: fc.boolean(),
    launch_deg: fc.double({ min: 2, max: 15, noNaN: true }),
    nose_deg: fc.double({ min: -3, max: 5, noNaN: true }),
    hyzer_deg: fc.double({ min: -15, max: 20, noNaN: true }),
    azimuth_deg: fc.double({ min: -20, max: 20, noNaN: true }),
  })
  // advance ratio 0.46, assumed: any ordinary spin does here
  .map(({ clockwise, ...rest }) => ({ ...rest, height_m: 1.2, spin_radps: (clockwise ? -4.3 : 4.3) * rest.speed_mps }));

const anyWind: fc.Arbitrary<Vector> = fc
  .tuple(fc.double({ min: -6, max: 6, noNaN: true }), fc.double({ min: -6, max: 6, noNaN: true }))
  .map(([x, y]) => vector(x, y, 0));

const anyThrow: fc.Arbitrary<IdentityThrow> = fc.record({
  disc: fc.constant('typical' as const),
  start: anyRelease.map(releaseState),
  density_kgpm3: fc.double({ min: 0.9, max: 1.3, noNaN: true }),
  wind: anyWind,
});

const SEEDED = { seed: 20_240_607, numRuns: 25 };

/** The whole path, touchdown and time of `got` are those of `want` after `moved`. */
function expectSamePath(got: Arrival, want: Arrival, moved: (at: Vector, time_s: number) => Vector): void {
  near(got.time_s, want.time_s, EXACT);
  expect(got.path).toHaveLength(want.path.length);
  for (const [index, { time_s, position }] of want.path.entries()) {
    const off = distance(got.path[index]!.position, moved(position, time_s));
    expect(off, `point ${index} is ${off} m off`).toBeLessThanOrEqual(EXACT);
  }
}

it('a release is recovered from its state', () => {
  const property = fc.property(anyRelease, release => {
    const back = releaseOf(releaseState(release));
    for (const name of Object.keys(release) as (keyof ReferenceRelease)[]) near(back[name], release[name], EXACT);
  });
  fc.assert(property, SEEDED);
});

describe.each([fastSpinSubject, rigidBodySubject, productionSubject])(
  '$name',
  ({ simulate, touchdownTolerance_m, endTolerance }) => {
    const vacuumThrow: IdentityThrow = {
      disc: 'typical',
      start: releaseState({ ...LEVEL_THROW, launch_deg: 30, height_m: 0 }),
      density_kgpm3: 0,
      wind: ZERO,
    };

    it('T1: in vacuum, 20 m/s at 30° from the ground goes 35.3240 m in 2.03943 s', () => {
      const { position, time_s } = simulate(vacuumThrow);
      near(position.x, 35.324, 5e-5);
      near(time_s, 2.03943, 5e-6);
      near(position.x, (400 * Math.sin(Math.PI / 3)) / STANDARD_GRAVITY_MPS2, touchdownTolerance_m);
      near(position.y, 0, EXACT);
    });

    it('T10: as the air thins out the flight tends to the vacuum one and the disc keeps its attitude', () => {
      const vacuum = simulate(vacuumThrow);
      near(distance(vacuum.normal, vacuumThrow.start.normal), 0, EXACT);
      const thin = simulate({ ...vacuumThrow, density_kgpm3: 1e-12 });
      near(distance(thin.position, vacuum.position), 0, EXACT);
      near(distance(thin.normal, vacuum.normal), 0, EXACT);
      // and not at once: a thousandth of sea-level air is felt
      expect(distance(simulate({ ...vacuumThrow, density_kgpm3: 1.2e-3 }).position, vacuum.position)).toBeGreaterThan(
        1e-3,
      );
    });

    const slope_rad = Math.atan(GLIDER.drag / GLIDER.lift);
    const density_kgpm3 = 1.225;
    const area_m2 = (Math.PI * GLIDER.diameter_m ** 2) / 4;
    const glideSpeed_mps = Math.sqrt(
      (2 * GLIDER.mass_kg * STANDARD_GRAVITY_MPS2) / (density_kgpm3 * area_m2 * Math.hypot(GLIDER.lift, GLIDER.drag)),
    );
    const glide: IdentityThrow = {
      disc: 'glider',
      start: releaseState({
        ...LEVEL_THROW,
        speed_mps: glideSpeed_mps,
        launch_deg: (-slope_rad * 180) / Math.PI,
        nose_deg: (GLIDER.alpha_rad * 180) / Math.PI,
        height_m: 30,
      }),
      density_kgpm3,
      wind: ZERO,
    };

    it('T3: a glide at tan γ = CD/CL and V² = 2mg/(ρA√(CL²+CD²)) stays as it is: 16.6992° at 13.7867 m/s', () => {
      near((slope_rad * 180) / Math.PI, 16.6992, 5e-5);
      near(glideSpeed_mps, 13.7867, 5e-5);
      const { position, velocity, path } = simulate(glide);
      near(position.x, (30 * GLIDER.lift) / GLIDER.drag, touchdownTolerance_m);
      near(position.y, 0, EXACT);
      near(distance(velocity, glide.start.velocity), 0, EXACT);
      for (const { time_s, position: at } of path) {
        near(distance(at, sum(glide.start.position, scaled(glide.start.velocity, time_s))), 0, EXACT);
      }
    });

    it('T8: at constant airspeed the spin decays as exp(−ρAVd²·CN·t/4Izz)', () => {
      const { time_s, spin_radps } = simulate(glide);
      const decay_perS =
        (density_kgpm3 * area_m2 * glideSpeed_mps * GLIDER.diameter_m ** 2 * GLIDER.spinDecay) /
        (4 * GLIDER.axialInertia_kgm2);
      const expected = glide.start.spin_radps * Math.exp(-decay_perS * time_s);
      near(spin_radps / expected, 1, endTolerance);
      expect(spin_radps / glide.start.spin_radps).toBeLessThan(0.9); // the decay is there to be seen
    });

    it('T4: spin, sideways velocity, attitude and wind mirrored: the path is mirrored', () => {
      const property = fc.property(anyThrow, thrown => {
        const { position, velocity, normal, spin_radps } = thrown.start;
        const start = { position, velocity: mirrored(velocity), normal: mirrored(normal), spin_radps: -spin_radps };
        const [one, other] = [simulate(thrown), simulate({ ...thrown, start, wind: mirrored(thrown.wind) })];
        expectSamePath(other, one, mirrored);
        near(distance(other.normal, mirrored(one.normal)), 0, EXACT);
        near(other.spin_radps, -one.spin_radps, EXACT);
      });
      fc.assert(property, SEEDED);
    });

    it('T5: in a uniform wind the path is that of still air started with v − w, carried along by w·t', () => {
      const property = fc.property(anyThrow, thrown => {
        const start = { ...thrown.start, velocity: difference(thrown.start.velocity, thrown.wind) };
        const still = simulate({ ...thrown, start, wind: ZERO });
        const windy = simulate(thrown);
        expectSamePath(windy, still, (at, time_s) => sum(at, scaled(thrown.wind, time_s)));
        near(distance(windy.normal, still.normal), 0, EXACT);
      });
      fc.assert(property, SEEDED);
    });

    it('T6: mass, inertias and density multiplied alike: the same path', () => {
      const factors = fc.double({ min: 0.6, max: 1.6, noNaN: true });
      const property = fc.property(anyThrow, factors, (thrown, factor) => {
        const scaledUp = { ...thrown, massFactor: factor, density_kgpm3: factor * thrown.density_kgpm3 };
        expectSamePath(simulate(scaledUp), simulate(thrown), at => at);
      });
      fc.assert(property, SEEDED);
    });

    it('T7: aim and wind turned together: the path is turned', () => {
      const property = fc.property(anyThrow, fc.double({ min: -3, max: 3, noNaN: true }), (thrown, angle_rad) => {
        const turned = (v: Vector): Vector => turnedLeft(v, angle_rad);
        const { position, velocity, normal, spin_radps } = thrown.start;
        const start = { position, velocity: turned(velocity), normal: turned(normal), spin_radps };
        expectSamePath(simulate({ ...thrown, start, wind: turned(thrown.wind) }), simulate(thrown), turned);
      });
      fc.assert(property, SEEDED);
    });

    it('T9: in still air the energy never grows, and without drag it stays, for lift does no work', () => {
      const energy = (position: Vector, velocity: Vector): number =>
        dot(velocity, velocity) / 2 + STANDARD_GRAVITY_MPS2 * position.z;
      const property = fc.property(anyThrow, thrown => {
        const before = energy(thrown.start.position, thrown.start.velocity);
        const after = simulate({ ...thrown, wind: ZERO });
        expect(energy(after.position, after.velocity)).toBeLessThan(0.95 * before);
        // flat and slow, so that it comes down soon: nothing but the ground stops a disc without drag
        const { position, velocity, spin_radps } = thrown.start;
        const start = { position, velocity: vector(length(velocity) / 3, 0, 0), normal: vector(0, 0, 1), spin_radps };
        const free = simulate({ ...thrown, disc: 'dragless', start, wind: ZERO });
        near(
          energy(free.position, free.velocity) / energy(start.position, start.velocity),
          1,
          Math.max(1e-7, endTolerance),
        );
      });
      fc.assert(property, SEEDED);
    });
  },
);

describe.each([
  { name: 'plain fast-spin model', fly: flyFastSpin },
  { name: 'full rigid body', fly: flyRigidBody },
])('$name without gravity', ({ fly }) => {
  const weightless: Surroundings = { density_kgpm3: 1.225, gravity_mps2: 0, wind_mps: () => ZERO };

  it('T2: drag alone, CD 0.06: after 3 s x = (m/κ)·ln(1 + κ·v0·t/m) = 59.74703 m, v = 16.12148 m/s', () => {
    const inertia = 0.175 * 0.175 * 0.211 ** 2;
    const disc: ReferenceDisc = {
      mass_kg: 0.175,
      diameter_m: 0.211,
      axialInertia_kgm2: inertia,
      transverseInertia_kgm2: 0.51 * inertia,
      coefficients: { ...NO_AERODYNAMICS, drag: () => 0.06 },
    };
    const start = releaseState({ ...LEVEL_THROW, speed_mps: 25, launch_deg: 0 });
    const { position, velocity } = fly(disc, weightless, start, { step_s: 0.005, until_s: 3 }).end.state;
    near(position.x, 59.74703, 5e-6);
    near(velocity.x, 16.12148, 5e-6);
    const perMetre = (0.5 * 1.225 * (Math.PI / 4) * 0.211 ** 2 * 0.06) / 0.175;
    near(position.x, Math.log(1 + perMetre * 25 * 3) / perMetre, EXACT);
    near(distance(position, vector(position.x, 0, 1.2)), 0, EXACT);
  });

  it('T9: the speed never rises, and without drag stays', () => {
    const disc = SYNTHETIC_DISCS.F;
    const dragless: ReferenceDisc = { ...disc, coefficients: { ...disc.coefficients, drag: () => 0 } };
    const start = releaseState({ ...LEVEL_THROW, hyzer_deg: 12 });
    const limits = { step_s: 0.002, until_s: 3 };
    const speeds = fly(disc, weightless, start, limits).samples.map(sample => length(sample.state.velocity));
    for (const [index, speed] of speeds.slice(1).entries()) expect(speed).toBeLessThan(speeds[index]!);
    for (const { state } of fly(dragless, weightless, start, limits).samples) near(length(state.velocity), 20, EXACT);
  });
});
