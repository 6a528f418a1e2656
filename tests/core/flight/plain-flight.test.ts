import { describe, expect, it } from 'vitest';
import { windProfile } from '../../../core/air/wind-profile.ts';
import { discModel } from '../../../core/flight/disc-model.ts';
import { createFlier, LANDING } from '../../../core/flight/flier.ts';
import { createFlightBatch } from '../../../core/flight/flight-batch.ts';
import { plainFlightModel } from '../../../core/flight/plain-flight.ts';

const GRAVITY_MPS2 = 9.80665; // standard gravity, CGPM 1901
const DENSITY_KGPM3 = 1.2;
const DISC = discModel({ speed: 9, glide: 5, turn: -2, fade: 1 });
const HEIGHT_M = 1.2;

function flown(drag: number, push: number, speed_mps: number, launch_deg: number, windX_mps = 0) {
  const flier = createFlier();
  flier.setDisc(plainFlightModel(DISC, drag, push));
  flier.setAir(DENSITY_KGPM3, windX_mps, 0, windProfile('open'));
  flier.setPlane(0, 0, 0);
  flier.setStep(0.02);
  flier.fly(speed_mps, 0, launch_deg, 0, 90, -110, HEIGHT_M);
  return { x: flier.landing[LANDING.x]!, y: flier.landing[LANDING.y]!, apex_m: flier.apex_m(), landing: flier.landing };
}

describe('a plain body in the air', () => {
  // drag-free projectile from a height: textbook mechanics, by hand
  it.each([
    { speed_mps: 25, launch_deg: 40 },
    { speed_mps: 18, launch_deg: 55 },
    { speed_mps: 30, launch_deg: -4 },
  ])('without drag and push is a projectile ($speed_mps m/s, $launch_deg°)', ({ speed_mps, launch_deg }) => {
    const [vx, vz] = [
      speed_mps * Math.cos((launch_deg * Math.PI) / 180),
      speed_mps * Math.sin((launch_deg * Math.PI) / 180),
    ];
    const time_s = (vz + Math.sqrt(vz * vz + 2 * GRAVITY_MPS2 * HEIGHT_M)) / GRAVITY_MPS2;
    const { x, y, apex_m } = flown(0, 0, speed_mps, launch_deg);
    expect(Math.abs(x - vx * time_s)).toBeLessThan(1e-6);
    expect(Math.abs(y)).toBeLessThan(1e-9);
    // the highest step point, 20 ms apart
    const top_m = HEIGHT_M + (vz > 0 ? (vz * vz) / (2 * GRAVITY_MPS2) : 0);
    expect(apex_m).toBeLessThanOrEqual(top_m + 1e-9);
    expect(top_m - apex_m).toBeLessThan(0.002);
  });

  it('the push turns it and does no work: speed² + 2gz is kept', () => {
    const { landing, y } = flown(0, 0.2, 25, 40);
    const square = landing[LANDING.vx]! ** 2 + landing[LANDING.vy]! ** 2 + landing[LANDING.vz]! ** 2;
    expect(Math.abs(square - (25 ** 2 + 2 * GRAVITY_MPS2 * HEIGHT_M))).toBeLessThan(1e-3);
    expect(y).toBeGreaterThan(2);
    expect(Math.abs(flown(0, -0.2, 25, 40).y + y)).toBeLessThan(1e-9);
  });

  it('slows by ½ρAc/m: after x metres on the level, speed e^(−kx)', () => {
    // no lift and hardly any fall: a very fast body over a short way
    const drag = 0.08;
    const perMetre = (DENSITY_KGPM3 * DISC.area_m2 * drag) / (2 * DISC.mass_kg);
    const { landing, x } = flown(drag, 0, 60, 0);
    expect(Math.abs(landing[LANDING.vx]! / 60 - Math.exp(-perMetre * x))).toBeLessThan(0.003);
  });

  it('loses to a headwind, gains from a tailwind', () => {
    const calm = flown(0.06, 0, 28, 40).x;
    expect(flown(0.06, 0, 28, 40, -6).x).toBeLessThan(calm - 3);
    expect(flown(0.06, 0, 28, 40, 6).x).toBeGreaterThan(calm + 3);
  });

  it('flies alike in the batch that plans with it', () => {
    const batch = createFlightBatch();
    batch.setDisc(plainFlightModel(DISC, 0.06, -0.1));
    batch.setAir(DENSITY_KGPM3, 3, -2, windProfile('open'));
    batch.setPlane(0, 0, 0);
    batch.setStep(0.05);
    batch.release(0, 27, 2, 40, 0, 90, -110, HEIGHT_M);
    batch.fly(1);
    const landing = new Float64Array(10);
    batch.landing(0, landing);
    const flier = createFlier();
    flier.setDisc(plainFlightModel(DISC, 0.06, -0.1));
    flier.setAir(DENSITY_KGPM3, 3, -2, windProfile('open'));
    flier.setPlane(0, 0, 0);
    flier.setStep(0.05);
    flier.fly(27, 2, 40, 0, 90, -110, HEIGHT_M);
    expect(Math.abs(landing[LANDING.x]! - flier.landing[LANDING.x]!)).toBeLessThan(0.001);
    expect(Math.abs(landing[LANDING.y]! - flier.landing[LANDING.y]!)).toBeLessThan(0.001);
  });

  it.each([Number.NaN, -0.1, Number.POSITIVE_INFINITY])('refuses a drag of %d', drag => {
    expect(() => plainFlightModel(DISC, drag, 0)).toThrow(RangeError);
  });
});
