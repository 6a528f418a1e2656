import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { LocalPoint } from '../../../core/geometry/hole-map.ts';
import { surfaceThrough } from '../../../core/geometry/surface-through-heights.ts';
import { buildTerrain, groundHeight } from '../../../core/geometry/terrain.ts';

const box = { west_m: -80, south_m: -80, east_m: 80, north_m: 200 };

describe('terrain', () => {
  it('is level and unknown without heights, or with one', () => {
    const bare = buildTerrain(box, []);
    expect(bare.known).toBe(false);
    expect(Math.max(...bare.height_m)).toBe(0);
    expect(buildTerrain(box, [{ at: [0, 0], height_m: 12 }]).known).toBe(false);
  });

  it('is a ramp along the hole when only tee and basket are known (exact on a straight ramp, by hand)', () => {
    const terrain = buildTerrain(box, [
      { at: [0, 0], height_m: 100 },
      { at: [0, 120], height_m: 112 },
    ]);
    expect(terrain.known).toBe(true);
    for (const x of [-40, 0, 3.7, 50])
      for (const y of [0, 30, 61, 120]) expect(groundHeight(terrain, x, y)).toBeCloseTo(y / 10, 4);
  });

  it('levels off within a fifth of the range beyond the known heights (own rule)', () => {
    const terrain = buildTerrain(box, [
      { at: [0, 0], height_m: 100 },
      { at: [0, 120], height_m: 112 },
    ]);
    for (const z of terrain.height_m) {
      expect(z).toBeGreaterThanOrEqual(-2.4001);
      expect(z).toBeLessThanOrEqual(14.4001);
    }
  });

  it('is 0 at the tee and clamps at the edge of the grid', () => {
    const terrain = buildTerrain(box, [
      { at: [10, 10], height_m: 3 },
      { at: [60, 150], height_m: -4 },
      { at: [-50, 90], height_m: 8 },
    ]);
    expect(groundHeight(terrain, 0, 0)).toBeCloseTo(0, 6);
    expect(groundHeight(terrain, 5000, 60)).toBeCloseTo(groundHeight(terrain, 80, 60), 6);
  });

  it('takes a plane back from many heights on it, exact to 1 cm between them (a plane is in the fitted family)', () => {
    const plane = ([x, y]: LocalPoint) => 0.05 * x - 0.08 * y + 300;
    const places: LocalPoint[] = [
      [0, 0],
      [40, 10],
      [-30, 60],
      [20, 120],
      [-50, 150],
      [60, 90],
      [10, 170],
    ];
    const terrain = buildTerrain(
      box,
      places.map(at => ({ at, height_m: plane(at) })),
    );
    for (const at of [
      [5, 50],
      [-20, 100],
      [30, 60],
    ] as LocalPoint[])
      expect(Math.abs(groundHeight(terrain, at[0], at[1]) - (plane(at) - 300))).toBeLessThan(0.01);
  });

  it('passes through its data within 1 mm on the surface, through tee and basket on the grid, and stays in its bounds (property)', () => {
    const place = fc.tuple(fc.integer({ min: -80, max: 80 }), fc.integer({ min: -80, max: 200 }));
    const known = fc.uniqueArray(fc.tuple(place, fc.double({ min: -15, max: 15, noNaN: true })), {
      minLength: 2,
      maxLength: 25,
      selector: ([[x, y]]) => `${Math.round(x / 8)},${Math.round(y / 8)}`,
    });
    fc.assert(
      fc.property(known, drawn => {
        const heights = drawn.map(([at, height_m]) => ({ at: at as LocalPoint, height_m }));
        const apart = heights.filter((h, i) =>
          heights.slice(0, i).every(o => Math.hypot(o.at[0] - h.at[0], o.at[1] - h.at[1]) >= 4),
        );
        const surface = surfaceThrough(apart);
        if (surface === undefined) return;
        for (const { at, height_m } of apart) expect(Math.abs(surface(at) - height_m)).toBeLessThan(0.001);
        const basket = apart[1]!;
        const terrain = buildTerrain(box, apart, [[0, 0], basket.at]);
        const tee_m = surface([0, 0]);
        expect(Math.abs(groundHeight(terrain, basket.at[0], basket.at[1]) - (basket.height_m - tee_m))).toBeLessThan(
          0.01,
        );
        const all = apart.map(h => h.height_m);
        const [low, high] = [Math.min(...all), Math.max(...all)];
        for (const z of [surface([500, 500]), surface([-300, 90]), surface([0, 75])]) {
          expect(z).toBeGreaterThanOrEqual(low - 0.2 * (high - low) - 1e-9);
          expect(z).toBeLessThanOrEqual(high + 0.2 * (high - low) + 1e-9);
        }
      }),
      { seed: 5, numRuns: 60 },
    );
  });

  it('takes the mean of two heights of one place, and thins thousands in good time', () => {
    const surface = surfaceThrough([
      { at: [0, 0], height_m: 2 },
      { at: [0.3, 0], height_m: 4 },
      { at: [100, 0], height_m: 3 },
    ]);
    expect(surface?.([0, 0])).toBeCloseTo(3, 3);
    const many = Array.from({ length: 2000 }, (_, i) => ({
      at: [(i % 50) * 3 - 75, Math.floor(i / 50) * 7 - 80] as LocalPoint,
      height_m: Math.sin(i % 50) + Math.floor(i / 50) / 5,
    }));
    const before = performance.now();
    expect(buildTerrain(box, many).known).toBe(true);
    expect(performance.now() - before).toBeLessThan(4000);
  });
});
