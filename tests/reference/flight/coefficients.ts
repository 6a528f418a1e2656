import type { DiscModel } from '../../../core/flight/disc-model.ts';

/**
 * What the air does to a disc, as functions of the angle of attack in radians (positive when the air strikes the
 * underside). Reference area: planform πd²/4; reference length: d. The rate coefficients multiply rate × d/(2V).
 */
export type Coefficients = Readonly<{
  lift: (alpha_rad: number) => number;
  drag: (alpha_rad: number) => number;
  /** Pitching moment, nose up positive. */
  moment: (alpha_rad: number) => number;
  /** Roll moment per unit of spin rate. */
  spinRoll: (alpha_rad: number) => number;
  /** Roll moment per unit of roll rate; negative damps. */
  rollDamping: number;
  /** Pitch moment per unit of pitch rate; negative damps. */
  pitchDamping: number;
  /** Spin moment per unit of spin rate; negative slows the spin. */
  spinDecay: number;
}>;

/** A disc of the reference models: an axisymmetric rigid body and its coefficients. */
export type ReferenceDisc = Readonly<{
  mass_kg: number;
  diameter_m: number;
  /** About the spin axis. */
  axialInertia_kgm2: number;
  /** About any diameter. */
  transverseInertia_kgm2: number;
  coefficients: Coefficients;
}>;

/** Coefficients that do nothing at all: the disc flies as if in vacuum. */
export const NO_AERODYNAMICS: Coefficients = {
  lift: () => 0,
  drag: () => 0,
  moment: () => 0,
  spinRoll: () => 0,
  rollDamping: 0,
  pitchDamping: 0,
  spinDecay: 0,
};

type LinearDisc = Readonly<{
  mass_kg: number;
  diameter_m: number;
  /** axial inertia / (mass × diameter²) */
  inertiaRatio: number;
  lift: readonly [atZero: number, slope: number];
  drag: readonly [least: number, curvature: number];
  moment: readonly [atZero: number, slope: number];
}>;

/** CL and CM linear in the angle of attack, CD quadratic about the angle of zero lift. */
function linearDisc({ mass_kg, diameter_m, inertiaRatio, lift, drag, moment }: LinearDisc): ReferenceDisc {
  const zeroLift_rad = -lift[0] / lift[1];
  const axialInertia_kgm2 = inertiaRatio * mass_kg * diameter_m ** 2;
  return {
    mass_kg,
    diameter_m,
    axialInertia_kgm2,
    transverseInertia_kgm2: 0.51 * axialInertia_kgm2,
    coefficients: {
      lift: alpha_rad => lift[0] + lift[1] * alpha_rad,
      drag: alpha_rad => drag[0] + drag[1] * (alpha_rad - zeroLift_rad) ** 2,
      moment: alpha_rad => moment[0] + moment[1] * alpha_rad,
      spinRoll: () => 0,
      rollDamping: -0.25,
      pitchDamping: -0.25,
      spinDecay: -0.005,
    },
  };
}

/** Four invented discs with round numbers, to check code against code: they say nothing about real discs. */
export const SYNTHETIC_DISCS = {
  P: linearDisc({
    mass_kg: 0.175,
    diameter_m: 0.212,
    inertiaRatio: 0.18,
    lift: [0.15, 2.4],
    drag: [0.08, 2.4],
    moment: [-0.012, 0.2],
  }),
  M: linearDisc({
    mass_kg: 0.178,
    diameter_m: 0.217,
    inertiaRatio: 0.175,
    lift: [0.12, 2.4],
    drag: [0.07, 2.4],
    moment: [-0.016, 0.24],
  }),
  F: linearDisc({
    mass_kg: 0.175,
    diameter_m: 0.212,
    inertiaRatio: 0.175,
    lift: [0.1, 2.4],
    drag: [0.06, 2.4],
    moment: [-0.018, 0.26],
  }),
  X: linearDisc({
    mass_kg: 0.175,
    diameter_m: 0.211,
    inertiaRatio: 0.17,
    lift: [0.08, 2.4],
    drag: [0.05, 2.4],
    moment: [-0.02, 0.3],
  }),
} as const;

/** The same disc with mass and both inertias multiplied by `factor`. */
export const heavierBy = (disc: ReferenceDisc, factor: number): ReferenceDisc => ({
  ...disc,
  mass_kg: disc.mass_kg * factor,
  axialInertia_kgm2: disc.axialInertia_kgm2 * factor,
  transverseInertia_kgm2: disc.transverseInertia_kgm2 * factor,
});

/**
 * The production disc in the form of the reference models. The production model writes every coefficient as
 * (function of sin α)·cos α; its damping multiplies rate × d/V where ours multiplies rate × d/(2V), hence the two.
 * Its guards (precession cap, spin floor) have no counterpart here.
 * @param transverseShare - inertia about a diameter over inertia about the spin axis; 0.5 is a thin plate
 */
export function fromDiscModel(model: DiscModel, transverseShare = 0.52): ReferenceDisc {
  const inCosine = (ofSine: (sine: number) => number) => (alpha_rad: number) =>
    ofSine(Math.sin(alpha_rad)) * Math.cos(alpha_rad);
  const dragAt = (sine: number): number => {
    const rise = model.dragRise * (sine - model.sineAtLeastDrag) ** 2;
    return model.dragMin + rise / (1 + rise / (model.dragMax - model.dragMin));
  };
  const momentAt = (sine: number): number => {
    const pastTurn = (sine - model.turnSine) / model.turnWidth;
    const turn = 0.5 * (1 - pastTurn / Math.hypot(1, pastTurn));
    const pastFade = sine - model.fadeSine;
    const hinge = 0.5 * (pastFade + Math.hypot(pastFade, model.fadeWidth));
    return model.baseMoment + model.turnMoment * turn + (model.fadeMoment * hinge ** 2) / (1 + 6 * hinge ** 2);
  };
  return {
    mass_kg: model.mass_kg,
    diameter_m: model.diameter_m,
    axialInertia_kgm2: model.inertia_kgm2,
    transverseInertia_kgm2: transverseShare * model.inertia_kgm2,
    coefficients: {
      lift: inCosine(sine => model.lift0 + model.liftSlope * sine),
      drag: alpha_rad => dragAt(Math.sin(alpha_rad)),
      moment: inCosine(momentAt),
      spinRoll: inCosine(() => model.spinRoll),
      rollDamping: -2 * model.damping,
      pitchDamping: -2 * model.damping,
      spinDecay: -model.spinDecay,
    },
  };
}
