import { describe, expect, it } from 'vitest';
import { localFrame, toLocal } from '../../../core/geometry/local-frame.ts';
import { metresPerPixel, placeInWorld } from '../../../core/geometry/web-tiles.ts';
import { tilesOverHole } from '../../../renderer/base-map/tiles-over-hole.ts';

const box = { west_m: -150, south_m: -120, east_m: 250, north_m: 300 };

describe.each([
  ['at 45° north', [7, 45]],
  ['at 70° north', [20, 70]],
  ['south of the equator', [151.2, -33.9]],
  ['across the antimeridian', [179.9995, -16.8]],
] as const)('%s', (_, origin) => {
  const tiles = tilesOverHole(origin, box, { minZoom: 0, maxZoom: 19 });
  const frame = localFrame(origin[0], origin[1]);

  it('covers the box with few tiles', () => {
    expect(tiles.length).toBeGreaterThan(0);
    expect(tiles.length).toBeLessThanOrEqual(48);
    const norths = tiles.map(({ northWest }) => northWest[1]);
    const wests = tiles.map(({ northWest }) => northWest[0]);
    expect(Math.min(...wests)).toBeLessThanOrEqual(box.west_m);
    expect(Math.max(...tiles.map(({ northEast }) => northEast[0]))).toBeGreaterThanOrEqual(box.east_m);
    expect(Math.max(...norths)).toBeGreaterThanOrEqual(box.north_m);
    expect(Math.min(...tiles.map(({ southWest }) => southWest[1]))).toBeLessThanOrEqual(box.south_m);
  });

  // What the drawing leaves out: the fourth corner against where the frame, held against geodesics elsewhere, puts it.
  it('lies as parallelograms to a pixel, and as large as the published scale says', () => {
    for (const { z, x, y, northWest, northEast, southWest } of tiles) {
      const fourth = toLocal(frame, placeInWorld((x + 1) / 2 ** z, (y + 1) / 2 ** z));
      const drawn = [northEast[0] + southWest[0] - northWest[0], northEast[1] + southWest[1] - northWest[1]];
      const pixel_m = metresPerPixel(origin[1], z);
      expect(Math.hypot(fourth[0] - drawn[0]!, fourth[1] - drawn[1]!)).toBeLessThanOrEqual(pixel_m);
      const width_m = Math.hypot(northEast[0] - northWest[0], northEast[1] - northWest[1]);
      // The scheme's sphere against the ellipsoid: within 0.7 %.
      expect(Math.abs(width_m / (256 * pixel_m) - 1)).toBeLessThanOrEqual(0.007);
    }
  });

  it('names tiles that exist', () => {
    for (const { z, x, y } of tiles) {
      expect(x).toBeGreaterThanOrEqual(0);
      expect(Math.max(x, y)).toBeLessThan(2 ** z);
    }
  });
});

it('beyond the scheme, and above the deepest coarse zoom, there is nothing to draw', () => {
  expect(tilesOverHole([0, 86], box, { minZoom: 0, maxZoom: 19 })).toEqual([]);
  expect(tilesOverHole([7, 45], { ...box, east_m: 90_000 }, { minZoom: 17, maxZoom: 19 })).toEqual([]);
});
