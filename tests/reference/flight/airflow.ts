import type { ReferenceDisc } from './coefficients.ts';
import type { Surroundings } from './surroundings.ts';
import { cross, difference, dot, length, scaled, sum, unit, type Vector, vector } from './vector.ts';

/**
 * The air as the disc meets it, in the axes that both reference models share. Own derivation.
 * `forward` lies in the disc plane along the airspeed, `left` = normal × forward.
 */
export type Airflow = Readonly<{
  forward: Vector;
  left: Vector;
  angleOfAttack_rad: number;
  /** ½ρV²A·d: multiplies the moment coefficients. */
  momentScale_Nm: number;
  /** d/(2V): turns a rate into the reduced rate of the rate coefficients; 0 without airspeed. */
  reducedRate_s: number;
  acceleration_mps2: Vector;
}>;

export function airflow(
  disc: ReferenceDisc,
  surroundings: Surroundings,
  position: Vector,
  velocity: Vector,
  normal: Vector,
): Airflow {
  const airVelocity = difference(velocity, surroundings.wind_mps(position.z));
  const airspeed = length(airVelocity);
  const direction = unit(airVelocity);
  const throughDisc = dot(airVelocity, normal);
  const inDiscPlane = difference(airVelocity, scaled(normal, throughDisc));
  const forward = unit(inDiscPlane);
  const angleOfAttack_rad = Math.atan2(-throughDisc, length(inDiscPlane));
  const liftDirection = unit(difference(normal, scaled(direction, dot(normal, direction))));
  const area_m2 = (Math.PI * disc.diameter_m ** 2) / 4;
  const forceScale_N = 0.5 * surroundings.density_kgpm3 * airspeed ** 2 * area_m2;
  const { lift, drag } = disc.coefficients;
  const force = difference(
    scaled(liftDirection, forceScale_N * lift(angleOfAttack_rad)),
    scaled(direction, forceScale_N * drag(angleOfAttack_rad)),
  );
  return {
    forward,
    left: cross(normal, forward),
    angleOfAttack_rad,
    momentScale_Nm: forceScale_N * disc.diameter_m,
    reducedRate_s: airspeed === 0 ? 0 : disc.diameter_m / (2 * airspeed),
    acceleration_mps2: sum(vector(0, 0, -surroundings.gravity_mps2), scaled(force, 1 / disc.mass_kg)),
  };
}
