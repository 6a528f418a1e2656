import { describe, expect, it } from 'vitest';
import { WIND_TABLE_CELLS, windRatioAt } from '../../../core/air/wind-profile.ts';
import { createFlier, LANDING } from '../../../core/flight/flier.ts';
import { fromDiscModel } from './coefficients.ts';
import { flyFastSpin } from './fast-spin-plain.ts';
import { type MixedThrow, mixedThrows } from './mixed-throws.ts';
import { solveUntil } from './odex-solver.ts';
import { productionEquations } from './production-equations.ts';
import { releaseState } from './release.ts';
import { flyRigidBody } from './rigid-body.ts';
import { heightAboveGround, STANDARD_GRAVITY_MPS2, type Surroundings } from './surroundings.ts';
import { distance, scaled, type Vector, vector } from './vector.ts';

const LONGEST_S = 40;
const THROWS = mixedThrows(42, 11);

const flier = createFlier();
function productionLanding(
  { disc, release, air, ground }: MixedThrow,
  step_s: number,
): { landing: Vector; time_s: number } {
  flier.setDisc(disc);
  flier.setAir(air.density_kgpm3, air.wind_mps.x, air.wind_mps.y, air.profile);
  flier.setPlane(ground.height_m, ground.slopeX, ground.slopeY);
  flier.setStep(step_s);
  const { speed_mps, azimuth_deg, launch_deg, nose_deg, hyzer_deg, spin_radps, height_m } = release;
  expect(flier.fly(speed_mps, azimuth_deg, launch_deg, nose_deg, hyzer_deg, spin_radps, height_m)).toBe(true);
  const [x, y, z] = [LANDING.x, LANDING.y, LANDING.z].map(index => flier.landing[index]!);
  return { landing: vector(x!, y!, z!), time_s: flier.time_s() };
}

function solvedLanding({ disc, release, air, ground }: MixedThrow): { landing: Vector; time_s: number } {
  const { position, velocity, normal, spin_radps } = releaseState(release);
  const start = [position, velocity, normal].flatMap(({ x, y, z }) => [x, y, z]).concat(spin_radps);
  const at = (y: readonly number[]): Vector => vector(y[0]!, y[1]!, y[2]!);
  const gap = (y: readonly number[]): number => heightAboveGround(ground, at(y));
  const end = solveUntil(productionEquations(disc, air), start, gap, LONGEST_S, 1e-10);
  if (end === null) throw new RangeError('the solved flight never came down');
  return { landing: at(end.state), time_s: end.time };
}

const surroundings = ({ air }: MixedThrow): Surroundings => ({
  density_kgpm3: air.density_kgpm3,
  gravity_mps2: STANDARD_GRAVITY_MPS2,
  wind_mps: height_m => scaled(air.wind_mps, windRatioAt(air.profile, height_m)),
});

const sorted = (values: readonly number[]): number[] => [...values].sort((a, b) => a - b);
const percentile95 = (values: readonly number[]): number => sorted(values)[Math.ceil(0.95 * values.length) - 1]!;
const report = (values: readonly number[]): string => {
  const mean = values.reduce((total, value) => total + value, 0) / values.length;
  return `mean ${mean.toExponential(2)}, p95 ${percentile95(values).toExponential(2)}, max ${Math.max(...values).toExponential(2)} m`;
};

const solved = THROWS.map(solvedLanding);
const UNIFORM = new Float64Array(WIND_TABLE_CELLS + 1).fill(1);
const IN_UNIFORM_WIND = THROWS.map(thrown => ({ ...thrown, air: { ...thrown.air, profile: UNIFORM } }));

describe('production integrator, 42 mixed throws', () => {
  // Limits: own prototype, 420 mixed flights: p95 ≤ 2 mm, max ≤ 10 mm. The 80 ms of the searches keep them only where the
  // wind is smooth: the log law's steep last half metre over the ground is crossed in two or three steps.
  it.each([
    { wind: 'log-law wind', step_s: 0.05, throws: THROWS },
    { wind: 'uniform wind', step_s: 0.08, throws: IN_UNIFORM_WIND },
  ])('lands where ODEX does on the same equations: $wind, steps of $step_s s', ({ step_s, throws }) => {
    const errors = throws.map(thrown => {
      const [got, want] = [productionLanding(thrown, step_s), solvedLanding(thrown)];
      expect(Math.abs(got.time_s - want.time_s)).toBeLessThan(2e-3);
      return distance(got.landing, want.landing);
    });
    expect(percentile95(errors), report(errors)).toBeLessThanOrEqual(2e-3);
    expect(Math.max(...errors), report(errors)).toBeLessThanOrEqual(10e-3);
  });

  it('the throws are ordinary ones that fly', () => {
    const carries = solved.map(({ landing }) => Math.hypot(landing.x, landing.y));
    expect(sorted(carries)[Math.floor(carries.length / 2)]).toBeGreaterThan(40);
    const times = solved.map(({ time_s }) => time_s);
    expect(times.reduce((total, time) => total + time, 0) / times.length).toBeGreaterThan(3);
  });

  it('lands within 0.10 m (95 %) of the full rigid body thrown without wobble', () => {
    const errors = THROWS.map(thrown => {
      const limits = { step_s: 0.004, until_s: LONGEST_S, ground: thrown.ground };
      const full = flyRigidBody(fromDiscModel(thrown.disc), surroundings(thrown), releaseState(thrown.release), limits);
      return distance(full.end.state.position, productionLanding(thrown, 0.05).landing);
    });
    console.info(`production against rigid body: ${report(errors)}`);
    // Limit: own prototype (mean 0.022, p95 0.072, max 0.119 m over 420 flights, launches unknown).
    expect(percentile95(errors), report(errors)).toBeLessThanOrEqual(0.1);
    // two models that agreed to the millimetre would be one model
    expect(percentile95(errors), report(errors)).toBeGreaterThan(0.01);
    expect(Math.max(...errors), report(errors)).toBeLessThan(0.3);
  });

  it('the plain fast-spin model with the adapted coefficients solves the same equations, guards apart', () => {
    const errors = THROWS.map((thrown, index) => {
      const limits = { step_s: 0.01, until_s: LONGEST_S, ground: thrown.ground };
      const plain = flyFastSpin(fromDiscModel(thrown.disc), surroundings(thrown), releaseState(thrown.release), limits);
      return distance(plain.end.state.position, solved[index]!.landing);
    });
    // the spin floor of 3 rad/s slows precession by (3/spin)², 1e-3 of a few metres of curve
    expect(Math.max(...errors), report(errors)).toBeLessThan(0.05);
  });
});
