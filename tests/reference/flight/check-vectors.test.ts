import { describe, it } from 'vitest';
import { CASES, type Case, expectNear, FULL_STEP_S, RED_STEP_S } from './check-cases.ts';
import { flyFastSpin } from './fast-spin-plain.ts';
import { releaseState } from './release.ts';
import { flyRigidBody, spinOf } from './rigid-body.ts';
import { LEVEL_GROUND, STILL_AIR } from './surroundings.ts';
import type { Trajectory } from './trajectory.ts';
import type { Vector } from './vector.ts';

// Every expected number: [C] computed once for invented discs by two independent formulations (world-frame momentum;
// body-frame Euler equations with a quaternion), own derivation. Tolerance: one unit of the last printed digit.

type State = readonly [
  position: readonly number[],
  velocity: readonly number[],
  normal: readonly number[],
  spin: number,
];

const inFlight: readonly (readonly [Case, 'FULL' | 'RED', number, ...State])[] = [
  ['A', 'FULL', 3, [36.84861, 2.98397, 1.20586], [7.80489, 2.80061, -2.08097], [-0.18347, 0.28044, 0.94217], -78.58347],
  ['A', 'RED', 3, [36.88961, 2.96967, 1.18182], [7.83354, 2.79079, -2.08101], [-0.1814, 0.28003, 0.9427], -78.57837],
  [
    'B',
    'FULL',
    1,
    [19.18105, 0.10136, 3.34516],
    [16.83646, 0.03367, 1.44857],
    [-0.13732, -0.03756, 0.98981],
    -96.05313,
  ],
  [
    'B',
    'FULL',
    3,
    [45.79791, -0.19446, 3.9659],
    [10.31691, 0.07665, -0.76727],
    [-0.13825, 0.09402, 0.98592],
    -91.50973,
  ],
  ['B', 'RED', 1, [19.18491, 0.10036, 3.33594], [16.84505, 0.0312, 1.43269], [-0.13615, -0.03812, 0.98995], -96.05262],
  ['B', 'RED', 3, [45.84067, -0.21384, 3.92536], [10.34789, 0.0585, -0.77705], [-0.13602, 0.0925, 0.98638], -91.50286],
  [
    'C',
    'FULL',
    3,
    [52.96232, -2.64089, 6.06768],
    [12.27475, -2.1422, -0.22831],
    [-0.14501, -0.07175, 0.98682],
    -100.06719,
  ],
  [
    'C',
    'RED',
    3,
    [53.00693, -2.66051, 6.01375],
    [12.30671, -2.16296, -0.24854],
    [-0.14291, -0.07382, 0.98698],
    -100.05963,
  ],
  [
    'D',
    'FULL',
    3,
    [58.5178, -1.28658, 8.1392],
    [13.95108, -1.67178, 0.46444],
    [-0.16273, -0.07844, 0.98355],
    -108.28949,
  ],
  [
    'D',
    'RED',
    3,
    [58.56783, -1.31625, 8.07475],
    [13.98679, -1.69958, 0.43848],
    [-0.16048, -0.08095, 0.98371],
    -108.28068,
  ],
];

const asArray = ({ x, y, z }: Vector): number[] => [x, y, z];

describe('release mapping', () => {
  it.each([
    ['A', [-0.138644, 0.087156, 0.9865]],
    ['B', [-0.138644, 0.087156, 0.9865]],
    ['C', [-0.155839, 0.087156, 0.98393]],
    ['D', [-0.17101, 0.173648, 0.969846]],
  ] as const)('case %s starts with normal %j', (name, normal) => {
    expectNear(asArray(releaseState(CASES[name].release).normal), normal, 1e-6);
  });
});

describe('states in flight, still air', () => {
  it.each(inFlight)('case %s, %s model, after %d s', (name, model, time_s, position, velocity, normal, spin) => {
    const { disc, release: thrown } = CASES[name];
    const start = releaseState(thrown);
    const full = flyRigidBody(disc, STILL_AIR, start, { step_s: FULL_STEP_S, until_s: time_s }).end.state;
    const reduced = flyFastSpin(disc, STILL_AIR, start, { step_s: RED_STEP_S, until_s: time_s }).end.state;
    const got = model === 'FULL' ? { ...full, spin_radps: spinOf(disc, full) } : reduced;
    expectNear(asArray(got.position), position, 1e-5);
    expectNear(asArray(got.velocity), velocity, 1e-5);
    expectNear(asArray(got.normal), normal, 1e-5);
    expectNear([got.spin_radps], [spin], 1e-5);
  });
});

const landingNumbers = ({ end, apex_m }: Trajectory<{ position: Vector; velocity: Vector }>): number[] => [
  end.time_s,
  end.state.position.x,
  end.state.position.y,
  apex_m,
];

describe('landings, still air', () => {
  it.each([
    ['A', [3.4883, 40.3475, 4.6059, 2.7292], [0, 4.606], [3.4803, 40.3511, 4.5558, 2.7155]],
    ['B', [4.9915, 61.681, 3.0453, 4.2439], [-0.198, 3.045], [4.9818, 61.7574, 2.9343, 4.213]],
    ['C', [6.2987, 81.9262, -4.7225, 6.093], [-6.268, 0.043], [6.2866, 82.0829, -4.9499, 6.0439]],
    ['D', [7.1462, 96.4375, 2.1026, 8.2462], [-4.165, 2.103], [7.144, 96.8083, 1.7546, 8.1706]],
  ] as const)('case %s: FULL time, x, y, apex %j; y range %j; RED %j', (name, full, sideways, reduced) => {
    const { disc, release: thrown } = CASES[name];
    const start = releaseState(thrown);
    const limits = { until_s: 30, ground: LEVEL_GROUND };
    const rigid = flyRigidBody(disc, STILL_AIR, start, { ...limits, step_s: FULL_STEP_S });
    expectNear(landingNumbers(rigid), full, 1e-4);
    const ys = rigid.samples.map(sample => sample.state.position.y);
    expectNear([Math.min(...ys), Math.max(...ys)], sideways, 1e-3);
    const fast = flyFastSpin(disc, STILL_AIR, start, { ...limits, step_s: RED_STEP_S });
    expectNear(landingNumbers(fast), reduced, 1e-4);
  });

  it('case B thrown forehand ends as far on the other side (RED)', () => {
    const { disc, release: thrown } = CASES.B;
    const forehand = releaseState({ ...thrown, spin_radps: -thrown.spin_radps });
    const landing = flyFastSpin(disc, STILL_AIR, forehand, { step_s: RED_STEP_S, until_s: 30, ground: LEVEL_GROUND });
    expectNear([landing.end.state.position.y], [-2.9343], 1e-4);
  });
});
