import { describe, expect, it } from 'vitest';
import { mbtilesRow, metresPerPixel, placeInWorld, tileAt, worldPlace } from '../../core/geometry/web-tiles.ts';

// MBTiles 1.3, "Tiles": tile 11/327/791 is stored with tile_row 1256.
it('the example of the MBTiles specification: 11/327/791 is row 1256', () => {
  expect(mbtilesRow({ z: 11, y: 791 })).toBe(1256);
});

/** [C] in the standards reference, 5.3: x, y and tile_row at zooms 11, 15 and 18, metres a pixel at 18. */
const TABLE = [
  {
    lat: 60.2,
    lon: 24.9,
    tiles: [
      [1165, 592, 1455],
      [18650, 9479, 23288],
      [149203, 75834, 186309],
    ],
    pixel_m: 0.297,
  },
  {
    lat: 45,
    lon: 7,
    tiles: [
      [1063, 736, 1311],
      [17021, 11787, 20980],
      [136169, 94299, 167844],
    ],
    pixel_m: 0.422,
  },
  {
    lat: -33.9,
    lon: 151.2,
    tiles: [
      [1884, 1229, 818],
      [30146, 19667, 13100],
      [241172, 157337, 104806],
    ],
    pixel_m: 0.496,
  },
] as const;

describe.each(TABLE)('$lat, $lon', ({ lat, lon, tiles, pixel_m }) => {
  it.each([0, 1, 2] as const)('zoom %# of 11, 15, 18', k => {
    const z = [11, 15, 18][k]!;
    const tile = tileAt(lon, lat, z);
    expect([tile.x, tile.y, mbtilesRow(tile)]).toEqual(tiles[k]);
  });

  it('metres a pixel at 18, to the three decimals printed', () => {
    expect(Math.abs(metresPerPixel(lat, 18) - pixel_m)).toBeLessThanOrEqual(5e-4);
  });

  it('there and back within a tenth of a millimetre', () => {
    const back = placeInWorld(...worldPlace(lon, lat));
    expect(Math.abs(back[0] - lon)).toBeLessThanOrEqual(1e-9);
    expect(Math.abs(back[1] - lat)).toBeLessThanOrEqual(1e-9);
  });
});

it('beyond the scheme there is no tile', () => {
  expect(() => tileAt(0, 85.06, 3)).toThrow(RangeError);
  // atan(sinh(π)) = 85.0511288°: the published limit of EPSG:3857 web maps.
  expect(tileAt(180, 85.0511, 2)).toEqual({ z: 2, x: 3, y: 0 });
});
