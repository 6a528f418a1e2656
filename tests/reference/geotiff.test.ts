import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { writeArrayBuffer } from 'geotiff';
import { describe, expect, it } from 'vitest';
import { openElevationFile } from '../../backend/terrain/open-elevation-file.ts';
import { taken } from '../backend/taken.ts';
import { temporaryFolder } from '../backend/temporary-folder.ts';
import { geoKeys, tiffBytes } from '../backend/terrain/tiff-bytes.ts';

/*
 * A published listing of a 6001 × 6001 elevation model (standards reference, 5.4, [F 74]): tie point (0,0,0) →
 * (−80.0004164, 10.0004168), scale 0.000833333333, PixelIsArea; its lower right corner is printed as (−74.9995831, 4.9995834).
 */
const TIE = [-80.0004164, 10.0004168] as const;
const SCALE = 0.000833333333;
const SIDE = 6001;
/** Half a unit of the seventh decimal for the tie point and for the corner, and 6001 times that of the printed scale. */
const PRINTED_deg = 5e-8 + 5e-8 + 6001 * 5e-13;

/** The whole size by hand: 24 × 24 tiles of 256, all left out but the one that holds pixel (3000, 3000). */
function handBuilt(rasterType: 1 | 2): Uint8Array {
  const tiles = 24;
  const tile = new Uint8Array(256 * 256 * 2);
  const at = ((3000 % 256) * 256 + (3000 % 256)) * 2;
  new DataView(tile.buffer).setInt16(at, 1234, true);
  const blocks = Array.from({ length: tiles * tiles }, (_, k) => (k === 11 * tiles + 11 ? tile : null));
  return tiffBytes({
    entries: [
      { tag: 256, type: 3, values: [SIDE] },
      { tag: 257, type: 3, values: [SIDE] },
      { tag: 258, type: 3, values: [16] },
      { tag: 259, type: 3, values: [1] },
      { tag: 262, type: 3, values: [1] },
      { tag: 277, type: 3, values: [1] },
      { tag: 322, type: 3, values: [256] },
      { tag: 323, type: 3, values: [256] },
      { tag: 339, type: 3, values: [2] },
      { tag: 33550, type: 12, values: [SCALE, SCALE, 0] },
      { tag: 33922, type: 12, values: [0, 0, 0, TIE[0], TIE[1], 0] },
      geoKeys([
        [1024, 2],
        [1025, rasterType],
        [2048, 4326],
      ]),
    ],
    blocks,
    offsetsTag: 324,
    countsTag: 325,
  });
}

/** The same place and pixels through the library's writer, of the first pixels only. */
function written(rasterType: 1 | 2): Uint8Array {
  return new Uint8Array(
    writeArrayBuffer(
      Int16Array.from({ length: 12 }, (_, k) => k),
      {
        width: 4,
        height: 3,
        ModelPixelScale: [SCALE, SCALE, 0],
        ModelTiepoint: [0, 0, 0, TIE[0], TIE[1], 0],
        GeographicTypeGeoKey: 4326,
        GTModelTypeGeoKey: 2,
        GTRasterTypeGeoKey: rasterType,
      } as unknown as Parameters<typeof writeArrayBuffer>[1],
    ),
  );
}

async function opened(bytes: Uint8Array) {
  const path = join(temporaryFolder(), 'model.tif');
  writeFileSync(path, bytes);
  return taken(await openElevationFile(path));
}

describe.each([
  ['built by hand', handBuilt],
  ['written by the geotiff library', written],
])('the published listing, %s', (_, make) => {
  it.each([
    { what: 'centre of pixel (0, 0)', pixel: [0, 0], want: [-79.9999997, 10.0000001], source: '[C] in the reference' },
    { what: 'upper left corner', pixel: [-0.5, -0.5], want: TIE, source: 'published listing' },
    {
      what: 'lower right corner',
      pixel: [SIDE - 0.5, SIDE - 0.5],
      want: [-74.9995831, 4.9995834],
      source: 'published listing',
    },
  ])('$what lies at $want ($source)', async ({ pixel, want }) => {
    const file = await opened(make(1));
    const [lon, lat] = file.grid.at(pixel[0]!, pixel[1]!);
    expect(Math.abs(lon - want[0]!)).toBeLessThanOrEqual(PRINTED_deg);
    expect(Math.abs(lat - want[1]!)).toBeLessThanOrEqual(PRINTED_deg);
    const back = file.grid.pixelOf(lon, lat);
    expect(Math.abs(back[0] - pixel[0]!)).toBeLessThanOrEqual(1e-6);
    expect(Math.abs(back[1] - pixel[1]!)).toBeLessThanOrEqual(1e-6);
    await file.close();
  });

  // [C] in the reference.
  it('(−77.5, 7.5) lies in pixel (3000, 3000)', async () => {
    const file = await opened(make(1));
    expect(file.grid.pixelOf(-77.5, 7.5).map(Math.round)).toEqual([3000, 3000]);
    await file.close();
  });

  // OGC 19-008r4: in a point raster the tie point is the centre of the pixel, so everything lies half a pixel further north-west.
  it('as PixelIsPoint the tie point is the centre of pixel (0, 0)', async () => {
    const file = await opened(make(2));
    expect(file.grid.at(0, 0)).toEqual([...TIE]);
    await file.close();
  });
});

it('the height of pixel (3000, 3000) is read where it was put, sparse tiles round it are 0', async () => {
  const file = await opened(handBuilt(1));
  expect([file.width, file.height]).toEqual([SIDE, SIDE]);
  const window = taken(await file.read({ left: 2999, top: 2999, right: 3002, bottom: 3002 }));
  expect([...window]).toEqual([0, 0, 0, 0, 1234, 0, 0, 0, 0]);
  await file.close();
});
