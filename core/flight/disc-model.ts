/** Trade flight numbers with the body they are moulded on. Numbers may be fractional; the map below is continuous in all of them. */
export type DiscSpec = Readonly<{
  /** Trade numbers: speed 1…15, glide 1…7, turn +1…−5, fade 0…5. */
  speed: number;
  glide: number;
  turn: number;
  fade: number;
  mass_kg?: number;
  diameter_m?: number;
  rimWidth_m?: number;
  /** 0 new … 1 beaten in. Wear makes a disc less stable: turn and fade fall (common practice; the size is assumed). */
  wear?: number;
  /** Measured stability of this player's throw of it, in turn units, positive more stable (0: as the numbers say). */
  stabilityOffset?: number;
}>;

/** Coefficients of one disc, ready for the integrator. s is the sine of the angle of attack; moments are nose-up positive. */
export type DiscModel = Readonly<{
  mass_kg: number;
  diameter_m: number;
  area_m2: number;
  /** Moment of inertia about the spin axis. */
  inertia_kgm2: number;
  lift0: number;
  /** Per unit of s. */
  liftSlope: number;
  dragMin: number;
  dragRise: number;
  /** Drag saturates here (a disc broadside on). */
  dragMax: number;
  /** s of least drag. */
  sineAtLeastDrag: number;
  /** Moment plateau that makes a fast disc turn; dies as s rises past `turnSine`. */
  turnMoment: number;
  baseMoment: number;
  turnSine: number;
  turnWidth: number;
  /** Convex moment hinge that makes a slow disc fade. */
  fadeMoment: number;
  fadeSine: number;
  fadeWidth: number;
  /** Roll moment from spin: unknown in practice, absorbed by the measured stability offset. */
  spinRoll: number;
  /** Roll and pitch damping. */
  damping: number;
  spinDecay: number;
}>;

const DEFAULT_MASS_KG = 0.173;
const DEFAULT_DIAMETER_M = 0.212;
const WEAR_TURN_UNITS = 1; // assumed: a fully beaten-in disc turns one unit more
const WEAR_FADE_SHARE = 0.3; // assumed: and loses about a third of its fade
const MOMENT_PER_TURN_UNIT = 0.0018;

/**
 * Flight numbers to aerodynamic coefficients: a physics form whose constants were fitted to facts of the trade, not to
 * measured flights. A plausible prior that the player's own throws must correct.
 * @throws {RangeError} naming the number that is not finite
 * @source own prototype fit; lift slope and induced drag sit at the circular-wing magnitudes (AR = 4/π)
 */
export function discModel(spec: DiscSpec): DiscModel {
  for (const [name, value] of Object.entries(spec)) {
    if (typeof value === 'number' && !Number.isFinite(value))
      throw new RangeError(`disc ${name} must be finite, got ${value}`);
  }
  const wear = spec.wear ?? 0;
  const { speed, glide } = spec;
  const turn = spec.turn - WEAR_TURN_UNITS * wear;
  const fade = Math.max(0, spec.fade) * (1 - WEAR_FADE_SHARE * wear);
  const mass_kg = spec.mass_kg ?? DEFAULT_MASS_KG;
  const diameter_m = spec.diameter_m ?? DEFAULT_DIAMETER_M;
  const rim_m = spec.rimWidth_m ?? 0.008 + 0.00105 * speed;
  // arm speed at which the trade numbers are meant to hold, relative to a 23 m/s arm
  const ratedSpeed = ratedArmSpeed_mps(speed) / 23;
  const liftSlope = 0.8 + softPositive(1.66 - 0.079 * (speed - 7), 0.3);
  const lift0 = 0.005 + softPositive(0.061 - 0.0036 * (speed - 7) + 0.014 * (glide - 4), 0.02);
  const induced = 0.25 * Math.exp(-0.045 * (glide - 4));
  return {
    mass_kg,
    diameter_m,
    area_m2: (Math.PI * diameter_m ** 2) / 4,
    inertia_kgm2: axialInertia_kgm2(mass_kg, diameter_m, rim_m),
    lift0,
    liftSlope,
    dragMin: 0.042 + 0.079 * Math.exp(-speed / 4.7),
    dragRise: induced * liftSlope ** 2,
    dragMax: 1.1,
    sineAtLeastDrag: -lift0 / liftSlope,
    turnMoment: MOMENT_PER_TURN_UNIT * turn * ratedSpeed ** -1.9,
    baseMoment: MOMENT_PER_TURN_UNIT * (spec.stabilityOffset ?? 0) * ratedSpeed ** -1.9,
    turnSine: 0.047 - 0.0029 * (speed - 7),
    turnWidth: 0.02,
    fadeMoment: (0.085 + fade ** 1.15) * ratedSpeed ** 1.4,
    fadeSine: 0.117 - 0.0017 * (speed - 7) - 0.012 * (fade - 1.5),
    fadeWidth: 0.03,
    spinRoll: 0,
    damping: 0.25,
    spinDecay: 0.002,
  };
}

/** Arm speed at which a disc of this speed number flies as its numbers say. */
export function ratedArmSpeed_mps(speed: number): number {
  return 15 + 1.02 * speed;
}

/** Same throw, slower disc, a little less release speed (assumed: 6 % between a putter and the fastest driver). */
export function releaseSpeedShare(speed: number): number {
  return 1 - 0.006 * (13 - speed);
}

/** Plate and rim ring sharing the mass. */
function axialInertia_kgm2(mass_kg: number, diameter_m: number, rim_m: number): number {
  const radius = diameter_m / 2;
  const plateRadius = Math.max(radius - rim_m, 0.3 * radius);
  const rimShare = Math.min(0.85, 0.4 + 15 * rim_m);
  return mass_kg * ((rimShare * (radius ** 2 + plateRadius ** 2)) / 2 + ((1 - rimShare) * plateRadius ** 2) / 2);
}

/** max(0, x) with a corner rounded over `width`. */
function softPositive(x: number, width: number): number {
  return 0.5 * (x + Math.sqrt(x * x + width * width));
}
