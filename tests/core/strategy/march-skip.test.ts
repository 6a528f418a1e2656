import fc from 'fast-check';
import { expect, it } from 'vitest';
import { blockTable } from '../../../core/geometry/block-table.ts';
import type { ObstacleRaster } from '../../../core/geometry/obstacle-raster.ts';
import { createMarcher } from '../../../core/strategy/march.ts';
import { type End, march, polyline, rasterOf, worldOf } from './small-world.ts';

type Patch = Readonly<{
  x: number;
  y: number;
  size: number;
  what: 'low' | 'high' | 'out' | 'hazard' | 'hill';
  a: number;
}>;

const patch: fc.Arbitrary<Patch> = fc.record({
  x: fc.integer({ min: -35, max: 35 }),
  y: fc.integer({ min: -10, max: 110 }),
  size: fc.integer({ min: 1, max: 14 }),
  what: fc.constantFrom('low', 'high', 'out', 'hazard', 'hill'),
  a: fc.double({ min: 0.05, max: 1, noNaN: true }),
});
const path = fc.record({
  apex: fc.double({ min: 1.5, max: 14, noNaN: true }),
  reach: fc.double({ min: 15, max: 100, noNaN: true }),
  bend: fc.double({ min: -25, max: 25, noNaN: true }),
  piece: fc.double({ min: 0.6, max: 5, noNaN: true }),
});

function paint(patches: readonly Patch[]): ObstacleRaster {
  const raster = rasterOf(() => ({}), 40, 120);
  const { columns, rows, x0_m, y0_m } = raster;
  for (const { x, y, size, what, a } of patches) {
    for (let row = Math.max(0, y - y0_m); row < Math.min(rows, y - y0_m + size); row++) {
      for (let column = Math.max(0, x - x0_m); column < Math.min(columns, x - x0_m + size); column++) {
        const k = row * columns + column;
        if (what === 'low') {
          raster.lowTop_m[k] = 8 * a;
          raster.lowDensity[k] = a;
        } else if (what === 'high') {
          raster.highBase_m[k] = 4 * a;
          raster.highTop_m[k] = 4 * a + 6;
          raster.highDensity[k] = a;
        } else if (what === 'hill') raster.ground_m[k] = 4 * a;
        else raster.zone[k] |= what === 'out' ? 1 : 2;
      }
    }
  }
  return { ...raster, ...blockTable(raster, raster.blockCells) };
}

/** Two parabola-like legs, up to the apex and down. */
function pathOf({ apex, reach, bend, piece }: { apex: number; reach: number; bend: number; piece: number }) {
  const corners = Array.from({ length: 15 }, (_, i) => {
    const t = i / 12;
    return [reach * t, bend * t * t, 1.2 * (1 - t) + 4 * (apex - 0.6) * t * (1 - t)] as const;
  });
  return polyline(corners, piece);
}

const near = (a: number, b: number) => (Number.isNaN(a) && Number.isNaN(b)) || Math.abs(a - b) < 1e-9;

it.each(['search', 'exact'] as const)(
  'skips clear air by the block table without changing anything: same ends with the table shut off (%s)',
  mode => {
    fc.assert(
      fc.property(
        fc.array(patch, { minLength: 1, maxLength: 14 }),
        path,
        fc.integer({ min: 0, max: 359 }),
        fc.integer({ min: -10, max: 60 }),
        (patches, shape, aim_deg, north) => {
          const raster = paint(patches);
          const shut = { ...raster, blockTop_m: raster.blockTop_m.map(() => Number.POSITIVE_INFINITY) };
          const flown = pathOf(shape);
          // answers end at the touchdown, on the tee's level here
          const numbers = mode === 'exact' ? flown.slice(0, 3 * touchdown(flown)) : flown;
          const thrown = { mode, aim_deg, from: [0, north] as const, skid: [4, 1.5] as const };
          const fast = march(createMarcher(worldOf(raster)), numbers, thrown);
          const plain = march(createMarcher(worldOf(shut)), numbers, thrown);
          expect(fast.ends.length).toBe(plain.ends.length);
          expect(near(fast.clear, plain.clear)).toBe(true);
          fast.ends.forEach((end, i) => {
            for (const key of Object.keys(end) as (keyof End)[])
              if (!near(end[key], plain.ends[i][key]))
                throw new Error(`end ${i} ${key}: ${end[key]} against ${plain.ends[i][key]}`);
          });
        },
      ),
      { seed: 21, numRuns: 1500 },
    );
  },
);

it.each(['search', 'exact'] as const)(
  'knows where it was last in bounds when water begins at any place within a block (%s)',
  mode => {
    for (let offset = 0; offset < 10; offset++) {
      const raster = paint([{ x: -40, y: 40 + offset, size: 90, what: 'out', a: 1 }]);
      const shut = { ...raster, blockTop_m: raster.blockTop_m.map(() => Number.POSITIVE_INFINITY) };
      const flown = pathOf({ apex: 12, reach: 70, bend: 0, piece: 3 });
      const numbers = mode === 'exact' ? flown.slice(0, 3 * touchdown(flown)) : flown;
      const thrown = { mode, aim_deg: 0, from: [0, 0] as const, skid: [4, 0] as const };
      const fast = march(createMarcher(worldOf(raster)), numbers, thrown);
      const plain = march(createMarcher(worldOf(shut)), numbers, thrown);
      expect(fast.ends).toHaveLength(1);
      expect(plain.ends).toHaveLength(1);
      expect(fast.ends[0]!.y).toBeCloseTo(plain.ends[0]!.y, 9);
      // by hand: on land, within one step of the flight (3 m) of the shore; relief may stand 1 m in
      expect(fast.ends[0]!.y).toBeLessThanOrEqual(40 + offset);
      expect(fast.ends[0]!.y).toBeGreaterThan(40 + offset - 4);
    }
  },
);

/** Points until the path comes down to height 0. */
function touchdown(numbers: Float64Array): number {
  let i = 1;
  while (3 * i + 2 < numbers.length && numbers[3 * i + 2] > 0) i++;
  return Math.min(i, numbers.length / 3);
}
