import fc from 'fast-check';
import geodesic from 'geographiclib-geodesic';
import { describe, expect, it } from 'vitest';
import type { LonLat } from '../../../core/course/course.ts';
import {
  groundDistance_m,
  groundOffset_m,
  lineLength_m,
  wrapLongitude_deg,
} from '../../../core/course/ground-distance.ts';

describe('hole-sized lines, ellipsoidal length [C] computed by GeographicLib', () => {
  it.each<[string, LonLat, LonLat, number]>([
    ['equator, north', [0, 0], [0, 0.0009044], 100.0034],
    ['equator, east', [-78.5, 0], [-78.4991017, 0], 99.9983],
    ['across the antimeridian', [179.9995, 0], [-179.9987034, 0], 199.9966],
    ['30° north-east', [-97, 30], [-96.9991206, 30.0007655], 120.0012],
    ['34° south-west', [151.2, -33.9], [151.1993119, -33.9005737], 90.0001],
    ['45° north', [7, 45], [7, 45.0008998], 99.9964],
    ['45° east', [7, 45], [7.0012683, 45], 100.0014],
    ['45° south-east', [7, 45], [7.002242, 44.9984093], 250.0007],
    ['60° north', [24.9, 60.2], [24.9, 60.2013463], 149.9989],
    ['60° east', [24.9, 60.2], [24.9027045, 60.2], 149.9993],
    ['60° north-west', [24.9, 60.2], [24.8953155, 60.2013462], 299.9963],
    ['70°', [18.95, 69.65], [18.9503354, 69.6506621], 75.0014],
    ['41° south', [174.8, -41.3], [174.8, -41.3005402], 59.9945],
  ])('%s', (_, tee, basket, want_m) => {
    // The table is rounded to 0.1 mm.
    expect(Math.abs(groundDistance_m(tee, basket) - want_m)).toBeLessThanOrEqual(0.0001);
  });
});

it('agrees with GeographicLib within 0.02 mm up to 1 km between 75° south and north', () => {
  const wgs84 = geodesic.Geodesic.WGS84;
  fc.assert(
    fc.property(
      fc.double({ min: -75, max: 75, noNaN: true }),
      fc.double({ min: -180, max: 180, noNaN: true }),
      fc.double({ min: 0, max: 360, noNaN: true }),
      fc.double({ min: 1, max: 1000, noNaN: true }),
      (lat, lon, azimuth, length) => {
        const end = wgs84.Direct(lat, lon, azimuth, length);
        expect(Math.abs(groundDistance_m([lon, lat], [end.lon2!, end.lat2!]) - length)).toBeLessThanOrEqual(2e-5);
      },
    ),
    { seed: 1 },
  );
});

it('measures east and north with their signs', () => {
  const [east, north] = groundOffset_m([7, 45], [6.9987317, 45.0008998]);
  // [C] the 100.0014 m and 99.9964 m of the lines at 45° above; the east part shrinks by 0.0016 % over 50 m of latitude.
  expect(Math.abs(east + 100.0014)).toBeLessThanOrEqual(0.002);
  expect(Math.abs(north - 99.9964)).toBeLessThanOrEqual(0.0002);
});

it('adds up the legs of a bent line', () => {
  // [C] computed by GeographicLib: legs 110.0061 + 79.9988 m.
  const bent: LonLat[] = [
    [24.9, 60.2],
    [24.9006784, 60.2009278],
    [24.9020717, 60.2011136],
  ];
  expect(Math.abs(lineLength_m(bent) - 190.0049)).toBeLessThanOrEqual(0.0002);
});

it.each([
  [359, -1],
  [-359, 1],
  [10, 10],
  [-540.5, 179.5],
])('wraps a difference of %d° to %d°', (difference, want) => {
  expect(wrapLongitude_deg(difference)).toBeCloseTo(want, 12);
});
