import type { ReferenceDisc } from './coefficients.ts';
import { heavierBy, NO_AERODYNAMICS, SYNTHETIC_DISCS } from './coefficients.ts';
import { flyFastSpin } from './fast-spin-plain.ts';
import type { ReleaseState } from './release.ts';
import { flyRigidBody, type RigidBodyState, spinOf } from './rigid-body.ts';
import { LEVEL_GROUND, STANDARD_GRAVITY_MPS2 } from './surroundings.ts';
import type { Vector } from './vector.ts';

/**
 * What an identity throws. `typical` may be any disc; `glider` has CL 0.40 and CD 0.12 at `GLIDER_ALPHA_rad` and no
 * pitching moment; `dragless` lifts and turns like the typical one.
 */
export type DiscKind = 'typical' | 'glider' | 'dragless';

export type IdentityThrow = Readonly<{
  disc: DiscKind;
  /** Multiplies mass and inertias. */
  massFactor?: number;
  start: ReleaseState;
  density_kgpm3: number;
  /** The same at every height. */
  wind: Vector;
}>;

/** State at touchdown on level ground, and the step points on the way with their times. */
export type Arrival = Readonly<{
  time_s: number;
  position: Vector;
  velocity: Vector;
  normal: Vector;
  spin_radps: number;
  path: readonly Readonly<{ time_s: number; position: Vector }>[];
}>;

/** A flight model put to the identities. */
export type Subject = Readonly<{
  name: string;
  /** How well it finds the point of touchdown. */
  touchdownTolerance_m: number;
  /** How well it knows velocity and spin there, relative: its interpolation inside the last step. */
  endTolerance: number;
  simulate: (thrown: IdentityThrow) => Arrival;
}>;

// [S] the glider of the steady-glide identity; its spin data are those of the synthetic midrange
export const GLIDER = {
  lift: 0.4,
  drag: 0.12,
  mass_kg: 0.175,
  diameter_m: 0.212,
  axialInertia_kgm2: 0.175 * 0.175 * 0.212 ** 2,
  spinDecay: 0.005,
  alpha_rad: 0.14,
} as const;

const typical = SYNTHETIC_DISCS.M;
const DISCS: Readonly<Record<DiscKind, ReferenceDisc>> = {
  typical,
  dragless: { ...typical, coefficients: { ...typical.coefficients, drag: () => 0 } },
  glider: {
    mass_kg: GLIDER.mass_kg,
    diameter_m: GLIDER.diameter_m,
    axialInertia_kgm2: GLIDER.axialInertia_kgm2,
    transverseInertia_kgm2: 0.51 * GLIDER.axialInertia_kgm2,
    coefficients: {
      ...NO_AERODYNAMICS,
      lift: () => GLIDER.lift,
      drag: () => GLIDER.drag,
      spinDecay: -GLIDER.spinDecay,
      rollDamping: -0.25,
      pitchDamping: -0.25,
    },
  },
};

const surroundingsOf = ({ density_kgpm3, wind }: IdentityThrow) => ({
  density_kgpm3,
  gravity_mps2: STANDARD_GRAVITY_MPS2,
  wind_mps: () => wind,
});

const discOf = ({ disc, massFactor = 1 }: IdentityThrow): ReferenceDisc => heavierBy(DISCS[disc], massFactor);

export const fastSpinSubject: Subject = {
  name: 'plain fast-spin model',
  touchdownTolerance_m: 1e-9,
  endTolerance: 1e-9,
  simulate: thrown => {
    const limits = { step_s: 0.01, until_s: 40, ground: LEVEL_GROUND };
    const { samples, end } = flyFastSpin(discOf(thrown), surroundingsOf(thrown), thrown.start, limits);
    return {
      ...end.state,
      time_s: end.time_s,
      path: samples.map(({ time_s, state }) => ({ time_s, position: state.position })),
    };
  },
};

export const rigidBodySubject: Subject = {
  name: 'full rigid body',
  touchdownTolerance_m: 1e-9,
  endTolerance: 1e-9,
  simulate: thrown => {
    const limits = { step_s: 0.005, until_s: 40, ground: LEVEL_GROUND };
    const disc = discOf(thrown);
    const { samples, end } = flyRigidBody(disc, surroundingsOf(thrown), thrown.start, limits);
    const state: RigidBodyState = end.state;
    return {
      time_s: end.time_s,
      position: state.position,
      velocity: state.velocity,
      normal: state.normal,
      spin_radps: spinOf(disc, state),
      path: samples.map(sample => ({ time_s: sample.time_s, position: sample.state.position })),
    };
  },
};
