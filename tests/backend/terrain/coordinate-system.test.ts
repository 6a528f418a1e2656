import { describe, expect, it } from 'vitest';
import { coordinateSystem } from '../../../backend/terrain/coordinate-system.ts';
import { heightDatum } from '../../../backend/terrain/height-datum.ts';
import { taken } from '../taken.ts';

/** [C] computed by PROJ 9.5.1 (EPSG 11.022), WGS 84 degrees to the system, its best transformation without grid files. */
const PROJ: readonly (readonly [code: number, lon: number, lat: number, x: number, y: number, tolerance_m: number])[] =
  [
    [32632, 11.5, 48.1, 686121.756, 5330438.13, 0.01],
    [32719, -70.6, -33.4, 351205.065, 6303223.751, 0.01],
    [25832, 7.0, 51.0, 359666.704, 5651728.683, 0.01],
    [26912, -111.9, 40.7, 423965.994, 4505844.516, 0.01],
    [26918, -74, 40.7, 584482.352, 4505935.869, 0.01],
    [3067, 25.0, 62.0, 395257.32, 6875794.505, 0.01],
    [3006, 15.0, 59.0, 500000.0, 6540052.017, 0.01],
    [2154, 2.35, 48.85, 652301.565, 6861302.726, 0.01],
    [2193, 174.8, -41.3, 1750697.521, 5426376.623, 0.01],
    [3035, 12.0, 50.0, 4464387.479, 2989464.315, 0.01],
    [2180, 20.0, 52.0, 568629.102, 459781.172, 0.01],
    [3301, 25.0, 58.6, 558134.441, 6495995.145, 0.01],
    [5070, -90, 40, 507398.537, 1903000.402, 0.01],
    [6350, -90, 40, 507398.537, 1903000.402, 0.01],
    [3978, -75, 46, 1543234.375, -90958.48, 2],
    [3005, -123, 49.3, 1218319.835, 480588.4, 0.01],
    [3763, -8.6, 41.1, -39222.646, 159088.561, 0.01],
    [3857, 10, 50, 1113194.908, 6446275.841, 0.01],
    [3812, 4.4, 50.8, 652203.089, 665505.846, 0.01],
    [2157, -7, 53, 667124.205, 694832.368, 0.01],
    [3346, 24, 55, 500000.0, 6096010.867, 0.01],
    [3765, 16, 45.5, 460924.884, 5040130.267, 0.01],
    [3794, 14.5, 46, 461272.24, 95697.875, 0.01],
    [3059, 24.1, 56.9, 506091.071, 306258.93, 0.01],
    [7801, 23.3, 42.7, 319772.071, 4731737.925, 0.01],
    [2056, 8.5, 47.3, 2680270.551, 1239333.17, 0.05],
    // PROJ shifts these by another of the registry's transformations than the one written down: metres apart, as both say.
    [28355, 145.0, -37.8, 323920.551, 5814491.019, 3],
    [7855, 147, -42, 500000.0, 5350223.775, 3],
    [3577, 145, -37, 1158851.521, -4103034.671, 3],
    [3338, -150, 61, 215490.151, 1230626.735, 3],
    [2955, -117, 51, 500001.035, 5649824.169, 3],
    [27700, -1.5, 53.0, 433653.297, 344858.883, 5],
    [28992, 5.1, 52.1, 135321.218, 456900.428, 1],
    [31370, 4.4, 50.8, 152202.884, 165505.136, 2],
    [31467, 9.2, 48.8, 3514768.525, 5406965.391, 3],
    [31468, 11.6, 48.1, 4470315.362, 5329181.912, 3],
  ];

describe('coordinate systems against PROJ', () => {
  it.each(PROJ)('EPSG:%d at %d, %d', (code, lon, lat, x, y, tolerance_m) => {
    const { toGrid, toLonLat } = taken(coordinateSystem({ GTModelTypeGeoKey: 1, ProjectedCSTypeGeoKey: code }));
    const at = toGrid(lon, lat);
    expect(Math.hypot(at[0] - x, at[1] - y)).toBeLessThanOrEqual(tolerance_m);
    const back = toLonLat(...at);
    // There and back: 1e-7° is a centimetre.
    expect(Math.abs(back[0] - lon)).toBeLessThanOrEqual(1e-7);
    expect(Math.abs(back[1] - lat)).toBeLessThanOrEqual(1e-7);
  });

  // Parameters of EPSG:2180 spelt out; the position is PROJ's for that code, above.
  it('a transverse Mercator projection spelt out in the file', () => {
    const { toGrid } = taken(
      coordinateSystem({
        GTModelTypeGeoKey: 1,
        GeographicTypeGeoKey: 4258,
        ProjectedCSTypeGeoKey: 32767,
        ProjCoordTransGeoKey: 1,
        ProjNatOriginLatGeoKey: 0,
        ProjNatOriginLongGeoKey: 19,
        ProjScaleAtNatOriginGeoKey: 0.9993,
        ProjFalseEastingGeoKey: 500000,
        ProjFalseNorthingGeoKey: -5300000,
        ProjLinearUnitsGeoKey: 9001,
      }),
    );
    const at = toGrid(20, 52);
    expect(Math.hypot(at[0] - 568629.102, at[1] - 459781.172)).toBeLessThanOrEqual(0.01);
  });

  // Parameters of EPSG:3301 in US survey feet (3937/1200 to the metre); the position is PROJ's for that code.
  it('a Lambert projection spelt out in feet', () => {
    const foot = 1200 / 3937;
    const { toGrid } = taken(
      coordinateSystem({
        GTModelTypeGeoKey: 1,
        GeographicTypeGeoKey: 4258,
        ProjCoordTransGeoKey: 8,
        ProjFalseOriginLatGeoKey: 57.5175539305556,
        ProjFalseOriginLongGeoKey: 24,
        ProjStdParallel1GeoKey: 59.3333333333333,
        ProjStdParallel2GeoKey: 58,
        ProjFalseOriginEastingGeoKey: 500000 / foot,
        ProjFalseOriginNorthingGeoKey: 6375000 / foot,
        ProjLinearUnitsGeoKey: 9003,
      }),
    );
    const at = toGrid(25, 58.6);
    expect(Math.hypot(at[0] * foot - 558134.441, at[1] * foot - 6495995.145)).toBeLessThanOrEqual(0.01);
  });
});

describe('what cannot be placed says so', () => {
  it.each([
    [{}, /does not say which coordinate system/],
    [{ GTModelTypeGeoKey: 3 }, /geocentric/],
    [{ GTModelTypeGeoKey: 1, ProjectedCSTypeGeoKey: 2263 }, /EPSG:2263, which we do not know/],
    [{ GTModelTypeGeoKey: 2, GeographicTypeGeoKey: 4267 }, /EPSG:4267/],
    [{ GTModelTypeGeoKey: 2, GeographicTypeGeoKey: 4326, GeogAngularUnitsGeoKey: 9101 }, /other than degrees/],
    [{ GTModelTypeGeoKey: 1, ProjectedCSTypeGeoKey: 32767 }, /of its own making/],
  ])('%j', (keys, want) => {
    const read = coordinateSystem(keys);
    expect(read.ok ? [] : read.problems.map(({ path, message }) => `${path}: ${message}`)).toEqual([
      expect.stringMatching(want),
    ]);
    expect(read.ok || /UTM/.test(read.problems[0]!.message)).toBe(true);
  });
});

// Units: EPSG registry 9002 (exactly 0.3048 m) and 9003 (1200/3937 m).
describe('heights', () => {
  it.each([
    [{}, undefined, 'heights: the file does not say from where', 1],
    [{ VerticalCSTypeGeoKey: 3855 }, undefined, 'heights: above the geoid EGM2008', 1],
    [{ VerticalCSTypeGeoKey: 5703, VerticalUnitsGeoKey: 9002 }, undefined, 'heights: NAVD88', 0.3048],
    [{ VerticalCSTypeGeoKey: 6360 }, undefined, 'heights: NAVD88', 1200 / 3937],
    [{ VerticalCitationGeoKey: 'Town datum\u0000|' }, 'US survey foot', 'heights: Town datum', 1200 / 3937],
    [{ VerticalCSTypeGeoKey: 1234 }, 'metre', 'heights: EPSG:1234', 1],
    [{}, 'ft', 'heights: the file does not say from where', 0.3048],
  ])('%j, band unit %s', (keys, unit, words, unit_m) => {
    expect(heightDatum(keys, unit)).toEqual({ words, unit_m });
  });
});
