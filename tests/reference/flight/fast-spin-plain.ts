import { airflow } from './airflow.ts';
import type { ReferenceDisc } from './coefficients.ts';
import type { ReleaseState } from './release.ts';
import type { Surroundings } from './surroundings.ts';
import { type EquationsOfMotion, type Limits, type Trajectory, trajectory } from './trajectory.ts';
import { length, scaled, sum, unit } from './vector.ts';

/** The disc as a fast top: its angular momentum lies along its normal, so it precesses but never wobbles. */
export type FastSpinState = ReleaseState;

/**
 * Equations of motion of the fast-spin reduction, written for reading, not for speed.
 * @source own derivation: Izz·s·dn/dt = torque across n, Izz·ds/dt = torque along n
 */
export function fastSpinEquations(disc: ReferenceDisc, surroundings: Surroundings): EquationsOfMotion<FastSpinState> {
  const { moment, spinRoll, rollDamping, pitchDamping, spinDecay } = disc.coefficients;
  return {
    rate: ({ position, velocity, normal, spin_radps }) => {
      const air = airflow(disc, surroundings, position, velocity, normal);
      const scale = air.momentScale_Nm;
      const rateScale = scale * air.reducedRate_s;
      const momentum = disc.axialInertia_kgm2 * spin_radps;
      const rollPerRate = rateScale * rollDamping;
      const pitchPerRate = rateScale * pitchDamping;
      const rollTorque = rateScale * spinRoll(air.angleOfAttack_rad) * spin_radps;
      const leftTorque = -scale * moment(air.angleOfAttack_rad);
      const determinant = momentum ** 2 + rollPerRate * pitchPerRate;
      const towardsForward = (momentum * rollTorque - rollPerRate * leftTorque) / determinant;
      const towardsLeft = (momentum * leftTorque + pitchPerRate * rollTorque) / determinant;
      return {
        position: velocity,
        velocity: air.acceleration_mps2,
        normal: sum(scaled(air.forward, towardsForward), scaled(air.left, towardsLeft)),
        spin_radps: (rateScale * spinDecay * spin_radps) / disc.axialInertia_kgm2,
      };
    },
    moved: (state, rate, duration_s) => ({
      position: sum(state.position, scaled(rate.position, duration_s)),
      velocity: sum(state.velocity, scaled(rate.velocity, duration_s)),
      normal: sum(state.normal, scaled(rate.normal, duration_s)),
      spin_radps: state.spin_radps + rate.spin_radps * duration_s,
    }),
    tidied: state => ({ ...state, normal: unit(state.normal) }),
  };
}

/**
 * Flies the plain fast-spin model.
 * @throws {RangeError} when the disc does not spin: the reduction has no meaning then
 */
export function flyFastSpin(
  disc: ReferenceDisc,
  surroundings: Surroundings,
  release: ReleaseState,
  limits: Limits,
): Trajectory<FastSpinState> {
  if (release.spin_radps === 0) throw new RangeError('spin_radps must not be 0 in the fast-spin model');
  if (Math.abs(length(release.normal) - 1) > 1e-9) {
    throw new RangeError(`normal must have length 1, got ${length(release.normal)}`);
  }
  return trajectory(fastSpinEquations(disc, surroundings), release, limits);
}
