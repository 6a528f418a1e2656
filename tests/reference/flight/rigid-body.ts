import { airflow } from './airflow.ts';
import type { ReferenceDisc } from './coefficients.ts';
import { fastSpinEquations } from './fast-spin-plain.ts';
import type { ReleaseState } from './release.ts';
import type { Surroundings } from './surroundings.ts';
import { type EquationsOfMotion, type Limits, type Moving, type Trajectory, trajectory } from './trajectory.ts';
import { cross, difference, dot, scaled, sum, unit, type Vector } from './vector.ts';

/** Rigid axisymmetric body; angular momentum in the world frame, kg·m²/s. */
export type RigidBodyState = Moving & Readonly<{ normal: Vector; angularMomentum: Vector }>;

/**
 * Equations of motion of the full rigid body, nutation included.
 * @source own derivation from dL/dt = torque, dn/dt = ω × n, ω = s·n + (L across n)/Ixy
 */
export function rigidBodyEquations(disc: ReferenceDisc, surroundings: Surroundings): EquationsOfMotion<RigidBodyState> {
  const { moment, spinRoll, rollDamping, pitchDamping, spinDecay } = disc.coefficients;
  return {
    rate: ({ position, velocity, normal, angularMomentum }) => {
      const air = airflow(disc, surroundings, position, velocity, normal);
      const spin_radps = spinOf(disc, { normal, angularMomentum });
      const across = difference(angularMomentum, scaled(normal, dot(angularMomentum, normal)));
      const rotation = sum(scaled(normal, spin_radps), scaled(across, 1 / disc.transverseInertia_kgm2));
      const rollRate = dot(rotation, air.forward);
      const noseUpRate = -dot(rotation, air.left);
      const reduced = air.reducedRate_s;
      const roll = reduced * (spinRoll(air.angleOfAttack_rad) * spin_radps + rollDamping * rollRate);
      const pitch = moment(air.angleOfAttack_rad) + pitchDamping * reduced * noseUpRate;
      const spin = reduced * spinDecay * spin_radps;
      const torque = sum(sum(scaled(air.forward, roll), scaled(air.left, -pitch)), scaled(normal, spin));
      return {
        position: velocity,
        velocity: air.acceleration_mps2,
        normal: scaled(cross(angularMomentum, normal), 1 / disc.transverseInertia_kgm2),
        angularMomentum: scaled(torque, air.momentScale_Nm),
      };
    },
    moved: (state, rate, duration_s) => ({
      position: sum(state.position, scaled(rate.position, duration_s)),
      velocity: sum(state.velocity, scaled(rate.velocity, duration_s)),
      normal: sum(state.normal, scaled(rate.normal, duration_s)),
      angularMomentum: sum(state.angularMomentum, scaled(rate.angularMomentum, duration_s)),
    }),
    tidied: state => ({ ...state, normal: unit(state.normal) }),
  };
}

/** Spin about the normal, rad/s. */
export const spinOf = (
  disc: ReferenceDisc,
  { normal, angularMomentum }: Pick<RigidBodyState, 'normal' | 'angularMomentum'>,
): number => dot(angularMomentum, normal) / disc.axialInertia_kgm2;

/** The release that starts without wobble: the disc already precesses as the fast-spin model would have it. */
function smoothStart(disc: ReferenceDisc, surroundings: Surroundings, release: ReleaseState): RigidBodyState {
  const { position, velocity, normal, spin_radps } = release;
  const precession = fastSpinEquations(disc, surroundings).rate(release).normal;
  const angularMomentum = sum(
    scaled(normal, disc.axialInertia_kgm2 * spin_radps),
    scaled(cross(normal, precession), disc.transverseInertia_kgm2),
  );
  return { position, velocity, normal, angularMomentum };
}

/** Flies the rigid body from a release without wobble. Steps above about 10 ms are unstable: the wobble is fast. */
export const flyRigidBody = (
  disc: ReferenceDisc,
  surroundings: Surroundings,
  release: ReleaseState,
  limits: Limits,
): Trajectory<RigidBodyState> =>
  trajectory(rigidBodyEquations(disc, surroundings), smoothStart(disc, surroundings, release), limits);
