import { type Vector, ZERO } from './vector.ts';

/** Air, gravity and ground of a reference flight. */
export type Surroundings = Readonly<{
  density_kgpm3: number;
  gravity_mps2: number;
  /** Velocity of the air at a height above the tee, where it moves to. */
  wind_mps: (height_m: number) => Vector;
}>;

/** A plane: height above the tee's ground at x, y is `height_m + slopeX·x + slopeY·y`. */
export type GroundPlane = Readonly<{ height_m: number; slopeX: number; slopeY: number }>;

/** Standard gravity, exact. Source: 3rd General Conference on Weights and Measures (1901). */
export const STANDARD_GRAVITY_MPS2 = 9.80665;

/** Calm sea-level air of the check vectors; density: U.S. Standard Atmosphere 1976, sea level. */
export const STILL_AIR: Surroundings = {
  density_kgpm3: 1.225,
  gravity_mps2: STANDARD_GRAVITY_MPS2,
  wind_mps: () => ZERO,
};

export const LEVEL_GROUND: GroundPlane = { height_m: 0, slopeX: 0, slopeY: 0 };

export const heightAboveGround = (ground: GroundPlane, position: Vector): number =>
  position.z - (ground.height_m + ground.slopeX * position.x + ground.slopeY * position.y);
