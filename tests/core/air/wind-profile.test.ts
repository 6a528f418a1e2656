import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { exposureFromWoodShare } from '../../../core/air/exposure.ts';
import {
  type Exposure,
  WIND_TABLE_CELLS,
  WIND_TABLE_TOP_M,
  windAt10m,
  windProfile,
  windRatioAt,
} from '../../../core/air/wind-profile.ts';

const EXPOSURES: readonly Exposure[] = ['open', 'park', 'wood'];

describe('the table the integrator reads', () => {
  it.each(EXPOSURES)('%s: 97 finite ratios, zero at the ground, never falling', exposure => {
    const profile = windProfile(exposure);
    expect(profile).toBeInstanceOf(Float64Array);
    expect(profile).toHaveLength(WIND_TABLE_CELLS + 1);
    expect(profile[0]).toBe(0);
    for (let i = 1; i < profile.length; i++) expect(profile[i]! - profile[i - 1]!).toBeGreaterThanOrEqual(0);
  });

  it('stands at heights uniform in √z, and is linear in √z between', () => {
    const profile = windProfile('open');
    for (const i of [1, 40, 95]) {
      expect(windRatioAt(profile, WIND_TABLE_TOP_M * (i / WIND_TABLE_CELLS) ** 2)).toBeCloseTo(profile[i]!, 12);
      expect(windRatioAt(profile, WIND_TABLE_TOP_M * ((i + 0.5) / WIND_TABLE_CELLS) ** 2)).toBeCloseTo(
        (profile[i]! + profile[i + 1]!) / 2,
        12,
      );
    }
  });

  it('holds its ends below the ground and above the top', () => {
    const profile = windProfile('open');
    expect(windRatioAt(profile, -3)).toBe(0);
    expect(windRatioAt(profile, 1000)).toBe(profile[WIND_TABLE_CELLS]);
    expect(windRatioAt(profile, Number.POSITIVE_INFINITY)).toBe(profile[WIND_TABLE_CELLS]);
  });

  it('more shelter never means more wind, up to the blending height', () => {
    const [open, park, wood] = EXPOSURES.map(windProfile);
    for (let z_m = 0; z_m <= 59; z_m += 0.25) {
      expect(windRatioAt(open!, z_m)).toBeGreaterThanOrEqual(windRatioAt(park!, z_m));
      expect(windRatioAt(park!, z_m)).toBeGreaterThanOrEqual(windRatioAt(wood!, z_m));
    }
  });
});

describe('a wind measured lower down', () => {
  it('comes back at its height whatever stands around', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 20, noNaN: true }),
        fc.double({ min: 0.5, max: 60, noNaN: true }),
        fc.constantFrom(...EXPOSURES),
        (speed_mps, height_m, exposure) => {
          const back = windAt10m({ speed_mps, height_m, exposure }) * windRatioAt(windProfile(exposure), height_m);
          expect(Math.abs(back - speed_mps)).toBeLessThanOrEqual(1e-9);
        },
      ),
      { seed: 21 },
    );
  });

  it('refuses heights and speeds that make no sense, naming them', () => {
    expect(() => windAt10m({ speed_mps: 5, height_m: 0.1, exposure: 'open' })).toThrow(
      /height_m must lie in 0.5…60, got 0.1/,
    );
    expect(() => windAt10m({ speed_mps: -1, height_m: 2, exposure: 'open' })).toThrow(/speed_mps/);
    expect(() => windProfile('hill' as Exposure)).toThrow(/exposure/);
    expect(() => windRatioAt(windProfile('open'), Number.NaN)).toThrow(/z_m/);
  });
});

// Thresholds of our own.
describe('exposure from what is mapped', () => {
  it.each<[number, number | undefined, Exposure]>([
    [0, undefined, 'open'],
    [0.09, 0, 'open'],
    [0.1, 0, 'park'],
    [0, 5, 'park'],
    [0.49, 0, 'park'],
    [0.5, 0, 'wood'],
    [1, undefined, 'wood'],
    [0, 150, 'wood'],
  ])('wood share %d with %s trees a hectare: %s', (share, trees, want) =>
    expect(exposureFromWoodShare(share, trees)).toBe(want),
  );
  it('refuses shares outside 0…1', () => {
    expect(() => exposureFromWoodShare(1.2)).toThrow(/woodShare/);
    expect(() => exposureFromWoodShare(0.2, -1)).toThrow(/treesPerHectare/);
  });
});
