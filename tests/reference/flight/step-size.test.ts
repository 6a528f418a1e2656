import { describe, expect, it } from 'vitest';
import { CASES, expectNear } from './check-cases.ts';
import { SYNTHETIC_DISCS } from './coefficients.ts';
import { flyFastSpin } from './fast-spin-plain.ts';
import { releaseState } from './release.ts';
import { flyRigidBody, rigidBodyEquations } from './rigid-body.ts';
import { STILL_AIR, type Surroundings } from './surroundings.ts';
import { euler, rungeKutta4 } from './trajectory.ts';
import { cross, distance, dot, length, scaled, sum, type Vector, vector } from './vector.ts';

// Every expected number: [C] computed from the formula in the title or by the two formulations of the check vectors, own
// derivation.

describe('torque-free wobble of disc M', () => {
  const disc = SYNTHETIC_DISCS.M;
  const spin_radps = -99.484;
  const inVacuum: Surroundings = { ...STILL_AIR, density_kgpm3: 0, gravity_mps2: 0 };
  const normal = vector(0, 0, 1);
  const start = {
    position: vector(0, 0, 0),
    velocity: vector(0, 0, 0),
    normal,
    angularMomentum: sum(
      scaled(normal, disc.axialInertia_kgm2 * spin_radps),
      vector(2 * disc.transverseInertia_kgm2, 0, 0),
    ),
  };
  const momentum = length(start.angularMomentum);

  it('turns at 195.08 rad/s, once in 32.21 ms, on a cone of 0.5874°', () => {
    const rate = momentum / disc.transverseInertia_kgm2;
    expectNear([rate], [195.08], 0.005);
    expectNear([(1000 * 2 * Math.PI) / rate], [32.21], 0.005);
    const cosine = Math.abs(dot(start.angularMomentum, normal)) / momentum;
    expectNear([(Math.acos(cosine) * 180) / Math.PI], [0.5874], 5e-5);
    // the integrated motion comes round when the formula says, and is on the far side of the cone half-way
    const equations = rigidBodyEquations(disc, inVacuum);
    const period_s = (2 * Math.PI) / rate;
    let state = start;
    let farthest = 0;
    for (let step = 0; step < 200; step++) {
      state = rungeKutta4(equations, state, period_s / 200);
      farthest = Math.max(farthest, length(cross(state.normal, normal)));
    }
    expect(distance(state.normal, normal)).toBeLessThan(1e-7);
    expectNear([(Math.asin(farthest) * 180) / Math.PI], [2 * 0.5874], 1e-4);
    expect(distance(state.angularMomentum, start.angularMomentum)).toBe(0);
    expectNear([dot(state.angularMomentum, state.normal)], [dot(start.angularMomentum, normal)], 1e-12);
  });
});

describe('step size, case B after 4 s', () => {
  const { disc, release: thrown } = CASES.B;
  const start = releaseState(thrown);
  const at = (model: 'FULL' | 'RED', method: typeof rungeKutta4, step_ms: number): Vector => {
    const limits = { step_s: step_ms / 1000, until_s: 4, method };
    return model === 'FULL'
      ? flyRigidBody(disc, STILL_AIR, start, limits).end.state.position
      : flyFastSpin(disc, STILL_AIR, start, limits).end.state.position;
  };
  const exact = { FULL: at('FULL', rungeKutta4, 0.5), RED: at('RED', rungeKutta4, 0.5) };
  const error_m = (model: 'FULL' | 'RED', method: typeof rungeKutta4, step_ms: number): number =>
    distance(exact[model], at(model, method, step_ms));

  // printed with one digit, so within a half either way
  it.each([
    ['FULL', 'RK4', 12.5, 7e-9],
    ['FULL', 'RK4', 10, 5e-9],
    ['FULL', 'RK4', 5, 1e-9],
    ['RED', 'RK4', 20, 3e-8],
    ['RED', 'RK4', 10, 2e-9],
    ['RED', 'RK4', 5, 1e-10],
    ['RED', 'Euler', 20, 0.13],
    ['RED', 'Euler', 10, 0.066],
    ['RED', 'Euler', 5, 0.033],
    ['RED', 'Euler', 1, 0.0066],
    ['FULL', 'Euler', 0.1, 7e-4],
  ] as const)('%s %s at %d ms is %d m off', (model, method, step_ms, want) => {
    const got = error_m(model, method === 'RK4' ? rungeKutta4 : euler, step_ms);
    expect(got).toBeGreaterThan(want / 1.5);
    expect(got).toBeLessThan(want * 1.5);
  });

  it('the wobble makes the full model unstable where Ω·h passes 2.83, and with Euler long before', () => {
    // how far an unstable run strays is noise; that it strays by metres is not
    expect(error_m('FULL', rungeKutta4, 20)).toBeGreaterThan(1);
    expect(error_m('FULL', rungeKutta4, 16)).toBeGreaterThan(1);
    expect(error_m('FULL', euler, 1)).toBeGreaterThan(1);
    expect(error_m('FULL', euler, 0.5)).toBeGreaterThan(1);
  });
});
