import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { deflateSync, zstdCompressSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { coordinateSystem } from '../../../backend/terrain/coordinate-system.ts';
import { readGround } from '../../../backend/terrain/read-ground.ts';
import { buildHoleMap } from '../../../core/geometry/build-hole-map.ts';
import { describeHole } from '../../../core/geometry/describe-hole.ts';
import { sampleElevation } from '../../../core/geometry/sample-elevation.ts';
import { withGround } from '../../../core/geometry/with-ground.ts';
import { courseOf, holeOf, sketcher, treeAt, woodOf } from '../../core/geometry/sketch.ts';
import { taken } from '../taken.ts';
import { temporaryFolder } from '../temporary-folder.ts';
import { modelBytes, modelFile } from './model-file.ts';
import { packLzw } from './pack-lzw.ts';

// Invented ground: a hole 80 m long running north-east on a plane that rises 5 cm a metre eastwards and falls 2 cm northwards.
const PLACE = { lon_deg: 24.9, lat_deg: 60.2 };
const sketch = sketcher({ ...PLACE, turn_deg: 0, mirrored: false });
const hole = holeOf(sketch, {
  par: 3,
  line: [
    [0, 0],
    [48, 64],
  ],
});
const course = courseOf([hole]);
const plane = (dx: number, dy: number) => 100 + 0.05 * dx - 0.02 * dy;
const UTM = { code: 32635, ...PLACE, pixel: 2, side: 301, height: plane };
const { toGrid } = taken(coordinateSystem({ GTModelTypeGeoKey: 1, ProjectedCSTypeGeoKey: UTM.code }));
const [x0, y0] = toGrid(PLACE.lon_deg, PLACE.lat_deg);

const groundOf = async (terrain: string, surface?: string) =>
  taken(await readGround(course, { terrain, ...(surface !== undefined && { surface }) }));

describe('a model in UTM', () => {
  it('gives the hole its rise, and is named with what it counts from', async () => {
    const ground = await groundOf(modelFile({ ...UTM, verticalCode: 3900, name: 'hill.tif' }));
    expect(ground.terrain).toMatchObject({
      source: 'hill.tif',
      crs: 'EPSG:32635 (WGS 84 / UTM zone 35N)',
      datum: 'heights: N2000',
    });
    // A pixel of 2 m, the scale of the grid apart.
    expect(Math.abs(ground.terrain.resolution_m - 2)).toBeLessThanOrEqual(0.01);
    const surveyed = withGround(course, ground);
    const report = describeHole(buildHoleMap(surveyed, surveyed.holes[0]!));
    const [x, y] = toGrid(hole.basket.position[0], hole.basket.position[1]);
    // The plane is the file's; by hand 0.05 × 48 − 0.02 × 64 = 1.12 m, and the grid is turned by 1.8° here (0.13 m).
    const rise_m = plane(x - x0, y - y0) - plane(0, 0);
    expect(Math.abs(rise_m - 1.12)).toBeLessThanOrEqual(0.15);
    expect(Math.abs(report.rise_m! - rise_m)).toBeLessThanOrEqual(0.002);
    expect(report.assumptions.join()).toContain('elevation model hill.tif (heights: N2000)');
  });

  // The plane in the grid's own coordinates is what the file holds: bilinear reading loses nothing of it (float32: 1e-5 m).
  it('is read exactly at any place', async () => {
    const { terrain } = await groundOf(modelFile(UTM));
    for (const point of [
      [0, 0],
      [48, 64],
      [-70.3, 12.9],
      [101.7, -33.1],
    ] as const) {
      const [lon, lat] = sketch.at(point);
      const [x, y] = toGrid(lon, lat);
      expect(Math.abs(sampleElevation(terrain, lon, lat)! - plane(x - x0, y - y0))).toBeLessThanOrEqual(2e-4);
    }
  });

  it('half a pixel lies between area and point pixels', async () => {
    const area = (await groundOf(modelFile(UTM))).terrain;
    const point = (await groundOf(modelFile({ ...UTM, isPoint: true }))).terrain;
    const at = ({ terrain }: { terrain: typeof area }) => sampleElevation(terrain, ...sketch.at([10, 10]))!;
    expect(Math.abs(at({ terrain: area }) - at({ terrain: point }))).toBeLessThanOrEqual(2e-4);
    // The same numbers read as the other kind move by half a pixel east and north: 1 m × (0.05 + 0.02) = 0.07 m... by hand.
    const bytes = modelBytes(UTM);
    const key = Buffer.from(bytes).indexOf(Buffer.from([1, 4, 0, 0, 1, 0, 1, 0]));
    bytes[key + 6] = 2;
    const path = join(temporaryFolder(), 'relabelled.tif');
    writeFileSync(path, bytes);
    const moved = at({ terrain: (await groundOf(path)).terrain }) - at({ terrain: area });
    expect(Math.abs(moved - 0.07)).toBeLessThanOrEqual(0.002);
  });

  it.each([
    ['Deflate', { compression: 8, pack: deflateSync }],
    ['old Deflate', { compression: 32946, pack: deflateSync }],
    ['Zstandard', { compression: 50000, pack: zstdCompressSync }],
    ['LZW', { compression: 5, pack: packLzw }],
    ['most significant byte first', { bigEndian: true }],
  ])('%s is read the same', async (_, how) => {
    const plain = (await groundOf(modelFile(UTM))).terrain;
    const packed = (await groundOf(modelFile({ ...UTM, ...how }))).terrain;
    expect(packed.height_m).toEqual(plain.height_m);
  });

  // 0.3048 m a foot: NIST SP 811, B.8.
  it('heights in feet become metres', async () => {
    const metres = (await groundOf(modelFile(UTM))).terrain;
    const feet = (await groundOf(modelFile({ ...UTM, verticalUnit: 9002 }))).terrain;
    const [lon, lat] = sketch.at([5, 5]);
    expect(
      Math.abs(sampleElevation(feet, lon, lat)! - 0.3048 * sampleElevation(metres, lon, lat)!),
    ).toBeLessThanOrEqual(1e-4);
  });
});

describe('a model in degrees', () => {
  const degrees = {
    code: 4326,
    ...PLACE,
    pixel: 2e-5,
    side: 601,
    height: (dx: number, dy: number) => 50 + 900 * dx + 400 * dy,
  };

  it('keeps its own pixels', async () => {
    const { terrain } = await groundOf(modelFile(degrees));
    expect(Math.abs(terrain.stepLon_deg - 2e-5)).toBeLessThanOrEqual(1e-12);
    const [lon, lat] = sketch.at([30, 20]);
    const want = 50 + 900 * (lon - PLACE.lon_deg) + 400 * (lat - PLACE.lat_deg);
    expect(Math.abs(sampleElevation(terrain, lon, lat)! - want)).toBeLessThanOrEqual(2e-5);
  });

  it('a gap of pixels without data beside the hole is closed, one under the basket leaves the hole to the map', async () => {
    const gapAt = (east_m: number, north_m: number) => {
      const [lon, lat] = sketch.at([east_m, north_m]);
      const isGap = (dx: number, dy: number) =>
        Math.hypot((dx + PLACE.lon_deg - lon) / 2, dy + PLACE.lat_deg - lat) < 1e-4;
      return modelFile({
        ...degrees,
        noData: '-9999',
        height: (dx, dy) => (isGap(dx, dy) ? -9999 : degrees.height(dx, dy)),
      });
    };
    const beside = withGround(course, await groundOf(gapAt(-40, 20)));
    expect(buildHoleMap(beside, hole).terrain.known).toBe(true);
    expect(buildHoleMap(beside, hole).terrain.height_m.every(Number.isFinite)).toBe(true);
    const under = withGround(course, await groundOf(gapAt(48, 64)));
    expect(buildHoleMap(under, hole).terrain.known).toBe(false);
    expect(buildHoleMap(under, hole).assumptions.join()).toContain('does not cover this hole');
    expect(under.assumptions.map(({ message }) => message).join()).toContain('does not reach hole 1');
  });
});

describe('a surface model beside the terrain', () => {
  // Invented: a tree of 14 m at (10, 30), a wood of 18 m with gaps west of the line, level tops.
  const surface = (dx: number, dy: number) => {
    const inTree = Math.hypot(dx - 10, dy - 30) <= 2.5;
    const inWood = dx > -60 && dx < -20 && dy > 0 && dy < 50;
    return plane(dx, dy) + (inTree ? 14 : inWood ? (Math.floor(dx / 8) % 3 === 0 ? 0.3 : 18) : 0);
  };
  const fine = { ...UTM, pixel: 1, side: 401 };
  const tree = treeAt(sketch, 3, [10, 30], {
    height_m: 8,
    crownDiameter_m: 4.4,
    crownBase_m: 2,
    assumed: ['height_m', 'crownDiameter_m', 'crownBase_m'],
  });
  const measured = treeAt(sketch, 4, [10, 30], { height_m: 9 });
  const stump = treeAt(sketch, 5, [40, 10], { height_m: 8, assumed: ['height_m'] });
  const wood = woodOf(6, sketch.box(-58, 2, -22, 48), { height_m: 12, base_m: 2.5, assumed: ['height_m', 'base_m'] });
  const wooded = courseOf([hole], [tree, measured, stump, wood]);

  it('gives the heights the map lacks, marked, and leaves measured ones and bare ground alone', async () => {
    const ground = await groundOf(modelFile(fine), modelFile({ ...fine, height: surface, name: 'tops.tif' }));
    const { objects, assumptions } = withGround(wooded, ground);
    const heights = objects.map(object => ('height_m' in object ? object.height_m! : Number.NaN));
    expect(Math.abs(heights[0]! - 14)).toBeLessThanOrEqual(0.05);
    expect(heights[1]).toBe(9);
    expect(heights[2]).toBe(8);
    expect(Math.abs(heights[3]! - 18)).toBeLessThanOrEqual(0.05);
    // The assumed crown is 0.55 of the height: course defaults.
    expect(objects[0]).toMatchObject({ assumed: ['crownDiameter_m', 'crownBase_m'] });
    expect(Math.abs((objects[0] as { crownDiameter_m: number }).crownDiameter_m - 0.55 * 14)).toBeLessThanOrEqual(0.05);
    const said = assumptions.filter(({ message }) => message.includes('read from the surface model tops.tif'));
    expect(said.map(({ path }) => path)).toEqual(['features[3]', 'features[6]']);
  });

  it('from another datum is refused', async () => {
    const read = await readGround(course, {
      terrain: modelFile({ ...fine, verticalCode: 3855 }),
      surface: modelFile({ ...fine, verticalCode: 5703 }),
    });
    expect(read).toMatchObject({
      ok: false,
      problems: [{ path: 'surface', message: expect.stringContaining('same survey') }],
    });
  });
});
