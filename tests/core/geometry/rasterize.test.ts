import { describe, expect, it } from 'vitest';
import type { CourseObject } from '../../../core/course/course.ts';
import { buildHoleMap } from '../../../core/geometry/build-hole-map.ts';
import type { LocalPoint } from '../../../core/geometry/hole-map.ts';
import {
  type ObstacleRaster,
  SURFACES,
  ZONE_HAZARD,
  ZONE_OUT_OF_BOUNDS,
} from '../../../core/geometry/obstacle-raster.ts';
import { rasterize } from '../../../core/geometry/rasterize.ts';
import { asDrawn, courseOf, holeOf, onMap, sketcher, treeAt, woodOf } from './sketch.ts';

// Invented sketches; wants by hand from the densities stated in rasterize.ts (assumptions, no source).
const sketch = sketcher();
const hole = holeOf(sketch, {
  line: [
    [0, 0],
    [0, 100],
  ],
});
const rasterOf = (...objects: CourseObject[]): ObstacleRaster =>
  rasterize(buildHoleMap(courseOf([hole], objects), hole));
const cellAt = (raster: ObstacleRaster, x: number, y: number): number =>
  Math.floor(y - raster.y0_m) * raster.columns + Math.floor(x - raster.x0_m);
const ceiling = (geometry: object, numbers: object = {}): CourseObject =>
  ({
    ...onMap(9),
    kind: 'ceiling',
    geometry,
    clearance_m: 3,
    top_m: Number.POSITIVE_INFINITY,
    width_m: 1,
    ...numbers,
  }) as CourseObject;
const total = (layer: ArrayLike<number>): number => Array.from(layer).reduce((sum, v) => sum + v, 0);

describe('the raster', () => {
  it('covers the line of play and 60 m round it, empty when nothing stands there', () => {
    const raster = rasterOf();
    expect(raster.x0_m).toBeLessThanOrEqual(-60);
    expect(raster.y0_m).toBeLessThanOrEqual(-60);
    expect(raster.x0_m + raster.columns).toBeGreaterThanOrEqual(60);
    expect(raster.y0_m + raster.rows).toBeGreaterThanOrEqual(160);
    expect(total(raster.lowTop_m) + total(raster.highTop_m) + total(raster.zone) + total(raster.ground_m)).toBe(0);
    expect(new Set(raster.surface)).toEqual(new Set([SURFACES.indexOf('turf')]));
  });

  it('spreads a trunk over four cells: effective width 2(r + 0.105) m in all, up to the crown', () => {
    const raster = rasterOf(treeAt(sketch, 1, [10.3, 20.8], { crownDiameter_m: 4 }));
    expect(Math.abs(total(raster.lowDensity) - 2 * (0.2 + 0.105))).toBeLessThan(1e-5);
    expect(raster.lowDensity.filter(d => d > 0)).toHaveLength(4);
    expect(raster.lowTop_m[cellAt(raster, 10.3, 20.8)]).toBe(3);
    // Crown: cells whose centre lies within 2 m; their number is the circle's area, give or take its edge.
    const crown = raster.highTop_m.filter(top => top === 12).length;
    expect(Math.abs(crown - Math.PI * 4)).toBeLessThanOrEqual(3);
    const k = cellAt(raster, 10.3, 20.8);
    expect(raster.highBase_m[k]).toBe(3);
    expect(raster.highDensity[k]).toBeCloseTo(0.4, 6);
  });

  it('a wood has stems under crowns: a share d on 10 m is −ln(1 − d)/10 hits per metre', () => {
    const raster = rasterOf(woodOf(2, sketch.box(10, 10, 30, 30)));
    const k = cellAt(raster, 20.5, 20.5);
    expect(raster.lowTop_m[k]).toBe(2.5);
    expect(1 - Math.exp(-10 * raster.lowDensity[k]!)).toBeCloseTo(0.7, 5);
    expect([raster.highBase_m[k], raster.highTop_m[k]]).toEqual([2.5, 15]);
    expect(raster.highDensity[k]).toBeCloseTo(0.35, 6);
    expect(raster.surface[k]).toBe(SURFACES.indexOf('longGrass'));
    expect(raster.lowTop_m[cellAt(raster, 9.5, 20.5)]).toBe(0);
  });

  it('a thin wall and a one metre branch stay whole however they lie', () => {
    for (const turn_deg of [0, 17, 45, 90]) {
      const turned = sketcher({ ...asDrawn, turn_deg });
      const turnedHole = holeOf(turned, {
        line: [
          [0, 0],
          [0, 100],
        ],
      });
      const wall: CourseObject = {
        ...onMap(3),
        kind: 'cover',
        form: 'wall',
        geometry: turned.line([-15, 40], [15, 40]),
        width_m: 0.3,
        height_m: 2,
        base_m: 0,
        density: 1,
      };
      const raster = rasterize(
        buildHoleMap(courseOf([turnedHole], [wall, ceiling(turned.line([-15, 70], [15, 70]))]), turnedHole),
      );
      const [sin, cos] = [Math.sin((turn_deg * Math.PI) / 180), Math.cos((turn_deg * Math.PI) / 180)];
      for (let x = -14; x <= 14; x += 0.1) {
        const at = (y: number) => cellAt(raster, x * cos + y * sin, y * cos - x * sin);
        expect(raster.lowTop_m[at(40)]).toBe(2);
        expect(raster.lowDensity[at(40)]).toBe(3);
        expect(raster.highBase_m[at(70)]).toBe(3);
        expect(raster.highTop_m[at(70)]).toBe(60);
      }
    }
  });

  it('a ceiling in a wood keeps the lower underside, whichever is mapped first', () => {
    const wood = woodOf(2, sketch.box(-10, 10, 10, 50), { base_m: 5 });
    const branch = ceiling(sketch.box(-2, 20, 2, 24), { top_m: 6 });
    for (const raster of [rasterOf(wood, branch), rasterOf(branch, wood)]) {
      const k = cellAt(raster, 0.5, 22.5);
      expect([raster.highBase_m[k], raster.highTop_m[k], raster.highDensity[k]]).toEqual([3, 15, 2]);
    }
  });

  it('and keeps the wood’s underside where that is the lower', () => {
    const raster = rasterOf(
      woodOf(2, sketch.box(-10, 10, 10, 50)),
      ceiling(sketch.box(-2, 20, 2, 24), { clearance_m: 4 }),
    );
    expect(raster.highBase_m[cellAt(raster, 0.5, 22.5)]).toBe(2.5);
  });

  it('a gap’s window has no leak between its posts, however it lies', () => {
    for (const turn_deg of [0, 17, 45, 71]) {
      const turned = sketcher({ ...asDrawn, turn_deg });
      const turnedHole = holeOf(turned, {
        line: [
          [0, 0],
          [0, 100],
        ],
      });
      const posts = [turned.at([-3, 40.3]), turned.at([3, 40.3])] as const;
      const gap: CourseObject = { ...onMap(6), kind: 'gap', posts, low_m: 1, high_m: 4 };
      const raster = rasterize(buildHoleMap(courseOf([turnedHole], [gap]), turnedHole));
      const [sin, cos] = [Math.sin((turn_deg * Math.PI) / 180), Math.cos((turn_deg * Math.PI) / 180)];
      for (let x = -2.9; x < 3; x += 0.05) {
        const k = cellAt(raster, x * cos + 40.3 * sin, 40.3 * cos - x * sin);
        expect(raster.lowTop_m[k]).toBeGreaterThanOrEqual(1);
        expect(raster.highBase_m[k]).toBe(4);
      }
    }
  });

  it('bushes under a ceiling leave the air between free', () => {
    const scrub = woodOf(2, sketch.box(-5, 20, 5, 30), { form: 'scrub', base_m: 0, height_m: 1.2, density: 0.95 });
    const raster = rasterOf(scrub, ceiling(sketch.box(-5, 20, 5, 30)));
    const k = cellAt(raster, 0.5, 25.5);
    expect(raster.lowTop_m[k]).toBeCloseTo(1.2, 6);
    expect(raster.highBase_m[k]).toBe(3);
  });

  it('a gap has posts, and is shut under and over its window', () => {
    const posts = [sketch.at([-2, 40]), sketch.at([2, 40])] as const;
    const raster = rasterOf({ ...onMap(6), kind: 'gap', posts, low_m: 1, high_m: 4 });
    const middle = cellAt(raster, 0.2, 40);
    expect([raster.lowTop_m[middle], raster.lowDensity[middle]]).toEqual([1, 2]);
    expect([raster.highBase_m[middle], raster.highTop_m[middle]]).toEqual([4, 60]);
    expect(raster.lowTop_m[cellAt(raster, -2, 40)]).toBe(4);
    const open = rasterOf({ ...onMap(6), kind: 'gap', posts, low_m: 0, high_m: Number.POSITIVE_INFINITY });
    expect(open.lowTop_m[cellAt(open, 0.2, 40)]).toBe(0);
    expect(open.lowTop_m[cellAt(open, -2, 40)]).toBe(6);
    expect(Math.abs(total(open.lowDensity) - 4 * (0.3 + 0.105))).toBeLessThan(1e-5);
  });

  it('marks zones by cell centre', () => {
    const raster = rasterOf(
      { ...onMap(3), kind: 'outOfBounds', geometry: sketch.box(10.2, 20.2, 20.2, 30.2), reason: 'water' },
      { ...onMap(4), kind: 'hazard', geometry: sketch.box(15.2, 20.2, 25.2, 30.2) },
    );
    expect(raster.zone.filter(z => (z & ZONE_OUT_OF_BOUNDS) !== 0)).toHaveLength(100);
    expect(raster.zone.filter(z => (z & ZONE_HAZARD) !== 0)).toHaveLength(100);
    expect(raster.zone.filter(z => z === 3)).toHaveLength(50);
  });

  it('an island leaves in bounds itself, its own fairway and the tee only, though the lake has no hole', () => {
    const raster = rasterOf(
      { ...onMap(3), kind: 'island', geometry: sketch.box(-10, 90, 10, 110) },
      { ...onMap(4), kind: 'fairway', geometry: sketch.box(-5, 0, 5, 40), ref: '1' },
      { ...onMap(5), kind: 'outOfBounds', geometry: sketch.box(-50, 50, 50, 150), reason: 'water' },
    );
    const isOut = (x: number, y: number) => raster.zone[cellAt(raster, x, y)] !== 0;
    expect([isOut(0.5, 100.5), isOut(0.5, 20.5), isOut(0.5, 0.5)]).toEqual([false, false, false]);
    expect([isOut(0.5, 70.5), isOut(20.5, 100.5), isOut(20.5, 10.5), isOut(0.5, -10.5)]).toEqual([
      true,
      true,
      true,
      true,
    ]);
  });

  it('is turf on the own fairway and long grass off it', () => {
    const raster = rasterOf({
      ...onMap(4),
      kind: 'fairway',
      geometry: sketch.box(-5, 0, 5, 100),
      surface: 'gravel',
      ref: '1',
    });
    expect(raster.surface[cellAt(raster, 0.5, 50.5)]).toBe(SURFACES.indexOf('hardpan'));
    expect(raster.surface[cellAt(raster, 9.5, 50.5)]).toBe(SURFACES.indexOf('longGrass'));
  });

  it('the block table holds the highest thing of each block, and knows blocks out of bounds (against a plain search)', () => {
    const sloping = holeOf(sketch, {
      line: [
        [0, 0],
        [0, 100],
      ],
      teeHeight_m: 0,
      basketHeight_m: 9,
    });
    const raster = rasterize(
      buildHoleMap(
        courseOf(
          [sloping],
          [
            treeAt(sketch, 1, [13, 44]),
            woodOf(2, sketch.box(-40, 60, -20, 90)),
            { ...onMap(3), kind: 'hazard', geometry: sketch.box(30, 100, 40, 110) },
            { ...onMap(4), kind: 'outOfBounds', geometry: sketch.box(-39, 10, -13, 33), reason: 'water' },
          ],
        ),
        sloping,
      ),
    );
    const size = raster.blockCells;
    const seen = new Set<string>();
    for (let row = 0; row < raster.blockRows; row++)
      for (let column = 0; column < raster.blockColumns; column++) {
        let top = Number.NEGATIVE_INFINITY;
        const zones = new Set<number>();
        for (let r = row * size; r < Math.min(raster.rows, (row + 1) * size); r++)
          for (let c = column * size; c < Math.min(raster.columns, (column + 1) * size); c++) {
            const k = r * raster.columns + c;
            zones.add(raster.zone[k]! & ZONE_OUT_OF_BOUNDS);
            top = Math.max(top, raster.ground_m[k]! + Math.max(raster.lowTop_m[k]!, raster.highTop_m[k]!));
          }
        if (zones.size > 1) top = Number.POSITIVE_INFINITY;
        const block = row * raster.blockColumns + column;
        seen.add([...zones].join());
        expect(raster.blockOut[block]).toBe(zones.size === 1 && zones.has(ZONE_OUT_OF_BOUNDS) ? 1 : 0);
        expect(raster.blockTop_m[block]).toBeCloseTo(top, 4);
      }
    // blocks in bounds, out of bounds and partly both
    expect(seen.size).toBeGreaterThanOrEqual(3);
  });

  it('takes under 150 ms for a 300 m hole with 20 woods, 200 trees and heights (30 ms meant; slack for a busy machine)', () => {
    const long = holeOf(sketch, {
      line: [
        [0, 0],
        [100, 150],
        [200, 300],
      ],
      teeHeight_m: 0,
      basketHeight_m: 12,
    });
    const around = (k: number): LocalPoint => [((k * 37) % 260) - 30, ((k * 53) % 320) - 10];
    const objects = [
      ...Array.from({ length: 200 }, (_, k) => treeAt(sketch, k, around(k))),
      ...Array.from({ length: 20 }, (_, k) => {
        const [x, y] = around(k * 3);
        return woodOf(300 + k, sketch.box(x, y, x + 30, y + 20));
      }),
    ];
    const map = buildHoleMap(courseOf([long], objects), long);
    rasterize(map);
    const times = Array.from({ length: 5 }, () => {
      const before = performance.now();
      rasterize(map);
      return performance.now() - before;
    });
    expect(Math.min(...times)).toBeLessThan(150);
  });
});
