import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type DiscModel, type DiscSpec, discModel, ratedArmSpeed_mps } from '../../../core/flight/disc-model.ts';
import { between } from './extreme-flight.ts';
import { BAG, DISC_NAMES, thrown } from './throws.ts';

const spec: fc.Arbitrary<Required<DiscSpec>> = fc.record({
  speed: between(1, 15),
  glide: between(1, 7),
  turn: between(-5, 1),
  fade: between(0, 5),
  mass_kg: between(0.13, 0.2),
  diameter_m: between(0.21, 0.24),
  rimWidth_m: between(0.008, 0.026),
  wear: between(0, 1),
  stabilityOffset: between(-2, 2),
});
const RANGES = {
  speed: [1, 15],
  glide: [1, 7],
  turn: [-5, 1],
  fade: [0, 5],
  wear: [0, 1],
  stabilityOffset: [-2, 2],
} as const;
const NUMBERS = Object.keys(RANGES) as (keyof typeof RANGES)[];
const SEEDED = { seed: 8, numRuns: 400 };

/** Own estimate of what one unit of any number changes a coefficient by at most, with room to spare. */
const STEEPEST: Readonly<Record<keyof DiscModel, number>> = {
  mass_kg: 1e-9,
  diameter_m: 1e-9,
  area_m2: 1e-9,
  inertia_kgm2: 2e-4,
  lift0: 0.05,
  liftSlope: 0.2,
  dragMin: 0.03,
  dragRise: 0.5,
  dragMax: 1e-9,
  sineAtLeastDrag: 0.05,
  turnMoment: 0.01,
  baseMoment: 0.005,
  turnSine: 0.005,
  turnWidth: 1e-9,
  fadeMoment: 8,
  fadeSine: 0.03,
  fadeWidth: 1e-9,
  spinRoll: 1e-9,
  damping: 1e-9,
  spinDecay: 1e-9,
};

describe('the map from trade numbers to coefficients', () => {
  it('has no jump anywhere: walked in 500 steps over its range, no number moves a coefficient by more than its slope allows', () => {
    const property = fc.property(spec, fc.constantFrom(...NUMBERS), (disc, number) => {
      const [from, to] = RANGES[number];
      const step = (to - from) / 500;
      let before = discModel({ ...disc, [number]: from });
      for (let i = 1; i <= 500; i++) {
        const after = discModel({ ...disc, [number]: from + i * step });
        for (const name of Object.keys(STEEPEST) as (keyof DiscModel)[])
          if (!(Math.abs(after[name] - before[name]) <= STEEPEST[name] * step + 1e-15))
            throw new Error(`${name} jumps from ${before[name]} to ${after[name]} at ${number} ${from + i * step}`);
        before = after;
      }
    });
    fc.assert(property, { seed: 8, numRuns: 60 });
  });

  it('moves the landing smoothly: a ten-thousandth of a unit at rated speed is worth less than 4 mm', () => {
    const property = fc.property(spec, fc.constantFrom(...NUMBERS), (disc, number) => {
      const setting = { arm_mps: ratedArmSpeed_mps(disc.speed), launch_deg: 10.5 - 0.33 * disc.speed };
      const before = thrown(disc, setting);
      const after = thrown({ ...disc, [number]: disc[number] + 1e-4 }, setting);
      // own prototype: 99.9 % of throws under 31 m a unit
      expect(Math.hypot(after.along_m - before.along_m, after.left_m - before.left_m)).toBeLessThan(4e-3);
    });
    fc.assert(property, { seed: 9, numRuns: 300 });
  });

  it('keeps what a disc must be: positive lift slope, drag below its cap, an inertia that a disc can have', () => {
    const property = fc.property(spec, disc => {
      const model = discModel(disc);
      expect(model.liftSlope).toBeGreaterThan(0.8);
      expect(model.lift0).toBeGreaterThan(0);
      expect(model.dragMin).toBeGreaterThan(0.042);
      expect(model.dragMin).toBeLessThan(model.dragMax);
      // [C] Izz/(m·d²): at most 1/4 (all at the rim), at least 1/8 (even plate)
      const share = model.inertia_kgm2 / (disc.mass_kg * disc.diameter_m ** 2);
      expect(share).toBeGreaterThan(0.125);
      expect(share).toBeLessThan(0.25);
    });
    fc.assert(property, SEEDED);
  });

  it('is monotone where the trade is: a faster disc has less drag, more glide more lift', () => {
    const rising = (values: readonly number[]) => values.every((value, i) => i === 0 || value > values[i - 1]);
    const speeds = [1, 3, 5, 7, 9, 11, 13, 15].map(speed => discModel({ ...BAG.midrange, speed }));
    expect(rising(speeds.map(model => -model.dragMin))).toBe(true);
    expect(rising(speeds.map(model => -model.liftSlope))).toBe(true);
    expect(rising([1, 2, 3, 4, 5, 6, 7].map(glide => discModel({ ...BAG.midrange, glide }).lift0))).toBe(true);
  });

  it.each(DISC_NAMES)('%s: new and unworn are the same, and 0 of stability is none', name => {
    expect(discModel({ ...BAG[name], wear: 0, stabilityOffset: 0 })).toEqual(discModel(BAG[name]));
  });

  it.each([
    ['speed', Number.NaN],
    ['fade', Number.POSITIVE_INFINITY],
    ['mass_kg', Number.NaN],
    ['wear', Number.NEGATIVE_INFINITY],
  ])('refuses a %s of %d, naming it', (name, value) => {
    expect(() => discModel({ ...BAG.putter, [name]: value })).toThrow(
      new RegExp(`${name} must be finite, got ${value}`),
    );
    expect(() => discModel({ ...BAG.putter, [name]: value })).toThrow(RangeError);
  });
});
