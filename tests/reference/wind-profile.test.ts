import { describe, expect, it } from 'vitest';
import { beaufort } from '../../core/air/beaufort.ts';
import { assumedGust_mps, windSd_mps } from '../../core/air/gust.ts';
import { relativeWind } from '../../core/air/relative-wind.ts';
import { type Exposure, windAt10m, windProfile, windRatioAt } from '../../core/air/wind-profile.ts';

// [C] from the published laws and Davenport–Wieringa roughness classes: ln(z/z0)/ln(10/z0), and for rougher ground
// [ln(60/0.03)/ln(10/0.03)]·[ln(z/z0)/ln(60/z0)]. The open form adds z0 to z, which costs up to 0.8 % at 1 m.
describe('ratios of wind to the open station at 10 m', () => {
  it.each<[Exposure, number, number, number]>([
    ['open', 1, 0.604, 0.006],
    ['open', 1.5, 0.673, 0.005],
    ['open', 2, 0.723, 0.004],
    ['open', 3, 0.793, 0.003],
    ['open', 5, 0.881, 0.002],
    ['open', 10, 1, 0.001],
    ['open', 15, 1.07, 0.001],
    ['open', 20, 1.119, 0.001],
    ['park', 1.5, 0.3, 0.002],
    ['park', 2, 0.379, 0.002],
    ['park', 5, 0.629, 0.002],
    ['park', 10, 0.819, 0.002],
    ['park', 20, 1.008, 0.002],
    ['wood', 20, 0.957, 0.002],
  ])('%s at %d m: %d ± %d', (exposure, z_m, want, tol) => {
    expect(Math.abs(windRatioAt(windProfile(exposure), z_m) - want)).toBeLessThanOrEqual(tol);
  });

  // Published: 0.1 of the wind 20 ft above the canopy under a closed dense stand (NWCG, midflame wind). A fairway is more open than that.
  it('in a wood is sheltered, less than a closed stand would', () => {
    const wood = windProfile('wood');
    const above = windRatioAt(wood, 12 + 20 * 0.3048);
    for (const z_m of [1.2, 2, 4, 6, 8]) {
      expect(windRatioAt(wood, z_m) / above).toBeGreaterThanOrEqual(0.1);
      expect(windRatioAt(wood, z_m)).toBeLessThan(windRatioAt(windProfile('park'), z_m));
    }
  });

  // [C] 5 m/s over 0.673 (log law, 1.5 m); 0.5 % for the +z0 form
  it('turns a head-height wind into the station wind', () => {
    expect(Math.abs(windAt10m({ speed_mps: 5, height_m: 1.5, exposure: 'open' }) - 7.43)).toBeLessThanOrEqual(0.05);
  });
});

// [C] head = V·cos(from − bearing), right = V·sin(from − bearing), by hand; 1 kt = 1852/3600 m/s
describe('wind on a hole', () => {
  it.each([
    [270, 15, 240, 6.683, 3.858],
    [180, 14, 180, 7.202, 0],
    [90, 8, 270, -4.116, 0],
    [360, 10, 90, 0, -5.144],
    [320, 10, 50, 0, -5.144],
    [10, 12, 350, 5.801, 2.111],
  ])('from %d°, %d kt, hole towards %d°', (from_deg, knots, bearing_deg, head, right) => {
    const got = relativeWind({ wind: { speed_mps: (knots * 1852) / 3600, from_deg } }, bearing_deg);
    expect(Math.abs(got.head_mps - head)).toBeLessThanOrEqual(6e-4);
    expect(Math.abs(got.right_mps - right)).toBeLessThanOrEqual(6e-4);
  });
});

// Beaufort scale, WMO-No. 306, code table 1100: first and last speed of each force, m/s.
describe('Beaufort', () => {
  it.each([
    [0, 0, 0.2],
    [1, 0.3, 1.5],
    [2, 1.6, 3.3],
    [3, 3.4, 5.4],
    [4, 5.5, 7.9],
    [5, 8, 10.7],
    [6, 10.8, 13.8],
    [7, 13.9, 17.1],
    [8, 17.2, 20.7],
    [9, 20.8, 24.4],
    [10, 24.5, 28.4],
    [11, 28.5, 32.6],
    [12, 32.7, 60],
  ])('force %d: %d to %d m/s', (force, from, to) => expect([beaufort(from), beaufort(to)]).toEqual([force, force]));
});

describe('gusts', () => {
  // Turbulence intensity 0.172 at 10 m, roughness 0.03 m: EN 1991-1-4:2005, 4.4; [C] 1 + 3 × 0.172 = 1.516 with the assumed peak factor of 3
  it('assumes one and a half times the mean over open ground', () => {
    expect(Math.abs(assumedGust_mps(6, false) / 6 - 1.516)).toBeLessThanOrEqual(1e-3);
  });
  it('a report without a gust had none 10 kt above the mean (ICAO Annex 3, 4.1.5.2)', () => {
    expect(Math.abs(assumedGust_mps(20, true) - (20 + 5.1444))).toBeLessThanOrEqual(1e-3);
  });
  // [C] outside this code: the double integral of exp(−|a−b|·U/68) over 5 s, by the midpoint rule
  it.each([
    [5, 0.942303],
    [10, 0.891103],
    [20, 0.804804],
  ])('in %d m/s a 5 s mean keeps %d of the standard deviation', (speed_mps, want) => {
    const sd = windSd_mps({ wind: { speed_mps, gust_mps: speed_mps + 3 } });
    expect(Math.abs(sd - want)).toBeLessThanOrEqual(2e-6);
  });
});
