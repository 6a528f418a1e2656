import { WIND_TABLE_CELLS } from '../../../core/air/wind-profile.ts';
import { type DiscModel, discModel } from '../../../core/flight/disc-model.ts';
import { createFlier, LANDING } from '../../../core/flight/flier.ts';
import { releaseOf } from './release.ts';
import { type Arrival, type DiscKind, GLIDER, type Subject } from './subject.ts';
import { vector } from './vector.ts';

const STEP_S = 0.02;
const UNIFORM = new Float64Array(WIND_TABLE_CELLS + 1).fill(1);

const typical = discModel({ speed: 5, glide: 5, turn: -1, fade: 1 });
const MODELS: Readonly<Record<DiscKind, DiscModel>> = {
  typical,
  dragless: { ...typical, dragMin: 0, dragRise: 0 },
  // the production lift is (function of sin α)·cos α: this one has the wanted value at the glide's own α
  glider: {
    ...typical,
    mass_kg: GLIDER.mass_kg,
    diameter_m: GLIDER.diameter_m,
    area_m2: (Math.PI * GLIDER.diameter_m ** 2) / 4,
    inertia_kgm2: GLIDER.axialInertia_kgm2,
    lift0: GLIDER.lift / Math.cos(GLIDER.alpha_rad),
    liftSlope: 0,
    dragMin: GLIDER.drag,
    dragRise: 0,
    turnMoment: 0,
    baseMoment: 0,
    fadeMoment: 0,
    spinDecay: GLIDER.spinDecay,
  },
};

/** The production integrator, set to fly in the same wind at every height over level ground. */
export const productionSubject: Subject = {
  name: 'production integrator',
  // it stops looking once the gap to the ground is under 1e-9 m, which a flat approach stretches
  touchdownTolerance_m: 1e-8,
  // it interpolates velocity and spin linearly within the last step: about (step²/8) × second derivative
  endTolerance: 1e-4,
  simulate: ({ disc, massFactor = 1, start, density_kgpm3, wind }) => {
    const model = MODELS[disc];
    const flier = createFlier();
    flier.setDisc({ ...model, mass_kg: model.mass_kg * massFactor, inertia_kgm2: model.inertia_kgm2 * massFactor });
    flier.setAir(density_kgpm3, wind.x, wind.y, UNIFORM);
    flier.setPlane(0, 0, 0);
    flier.setStep(STEP_S);
    const { speed_mps, azimuth_deg, launch_deg, nose_deg, hyzer_deg, spin_radps, height_m } = releaseOf(start);
    const landed = flier.fly(speed_mps, azimuth_deg, launch_deg, nose_deg, hyzer_deg, spin_radps, height_m);
    const time_s = flier.time_s();
    const count = flier.pathPoints();
    if (!landed) throw new RangeError(`the throw was still in the air after ${time_s} s`);
    const at = (index: number) =>
      vector(flier.path[3 * index]!, flier.path[3 * index + 1]!, flier.path[3 * index + 2]!);
    const landing = (name: keyof typeof LANDING): number => flier.landing[LANDING[name]]!;
    const arrival: Arrival = {
      time_s,
      position: vector(landing('x'), landing('y'), landing('z')),
      velocity: vector(landing('vx'), landing('vy'), landing('vz')),
      normal: vector(landing('nx'), landing('ny'), landing('nz')),
      spin_radps: landing('spin'),
      path: Array.from({ length: count }, (_, index) => ({
        time_s: flier.pathTimes[index]!,
        position: at(index),
      })),
    };
    return arrival;
  },
};
