import { type WindProfile, windRatioAt } from '../../../core/air/wind-profile.ts';
import type { DiscModel } from '../../../core/flight/disc-model.ts';
import { cross, difference, dot, length, scaled, sum, type Vector, vector } from './vector.ts';

export type ProductionAir = Readonly<{
  density_kgpm3: number;
  /** Velocity of the air at 10 m over open ground, where it moves to. */
  wind_mps: Vector;
  profile: WindProfile;
}>;

/**
 * The equations the production integrator claims to solve, written out for a general solver, its two guards included.
 * State: `[x, y, z, vx, vy, vz, nx, ny, nz, spin]`, throw frame.
 * @source own derivation: fast-spin limit with coefficients of the form f(sin α)·cos α
 */
export function productionEquations(disc: DiscModel, air: ProductionAir): (t: number, y: number[]) => number[] {
  const perForce = (air.density_kgpm3 * disc.area_m2) / (2 * disc.mass_kg);
  const perMoment = 0.5 * air.density_kgpm3 * disc.area_m2 * disc.diameter_m;
  return (_t, y) => {
    const velocity = vector(y[3]!, y[4]!, y[5]!);
    const normal = vector(y[6]!, y[7]!, y[8]!);
    const spin = y[9]!;
    const through = difference(velocity, scaled(air.wind_mps, windRatioAt(air.profile, y[2]!)));
    const speed = length(through);
    const sine = -dot(through, normal) / speed;

    const lift = disc.lift0 + disc.liftSlope * sine;
    const rise = disc.dragRise * (sine - disc.sineAtLeastDrag) ** 2;
    const drag = disc.dragMin + rise / (1 + rise / (disc.dragMax - disc.dragMin));
    const force = sum(scaled(normal, speed * lift), scaled(through, lift * sine - drag));
    // standard gravity, exact: 3rd General Conference on Weights and Measures (1901)
    const acceleration = sum(scaled(force, perForce * speed), vector(0, 0, -9.80665));

    const turn = (sine - disc.turnSine) / disc.turnWidth;
    const fade = sine - disc.fadeSine;
    const hinge = (fade + Math.sqrt(fade ** 2 + disc.fadeWidth ** 2)) / 2;
    const moment =
      disc.baseMoment +
      (disc.turnMoment * (1 - turn / Math.sqrt(1 + turn ** 2))) / 2 +
      (disc.fadeMoment * hinge ** 2) / (1 + 6 * hinge ** 2);
    const pitching = perMoment * speed * moment;
    const rolling = (perMoment * disc.diameter_m * disc.spinRoll * spin) / 2;
    const momentum = disc.inertia_kgm2 * spin;
    const damping = disc.damping * perMoment * disc.diameter_m * speed;
    const denominator = momentum ** 2 + damping ** 2 + (3 * disc.inertia_kgm2) ** 2;
    const sideways = cross(through, normal);
    const forwards = sum(through, scaled(normal, sine * speed));
    const tilting = sum(
      scaled(sideways, (momentum * pitching + damping * rolling) / denominator),
      scaled(forwards, (momentum * rolling - damping * pitching) / denominator),
    );
    const rate = length(tilting);
    const capped = rate > 10 ? scaled(tilting, (10 + (rate - 10) / (1 + (rate - 10) / 30)) / rate) : tilting;

    const slowing = (-disc.spinDecay * perMoment * disc.diameter_m * speed * spin) / (2 * disc.inertia_kgm2);
    return [
      ...[velocity.x, velocity.y, velocity.z],
      ...[acceleration.x, acceleration.y, acceleration.z],
      ...[capped.x, capped.y, capped.z],
      slowing,
    ];
  };
}
