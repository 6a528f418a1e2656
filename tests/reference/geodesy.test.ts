import geographiclib from 'geographiclib-geodesic';
import { describe, expect, it } from 'vitest';
import { bearing_deg } from '../../core/geometry/bearing.ts';
import { distance_m, lineLength_m } from '../../core/geometry/line-length.ts';
import { localFrame, radiiOfCurvature, toLocal, toLonLat } from '../../core/geometry/local-frame.ts';

const { Geodesic } = geographiclib.Geodesic;
const wgs84 = geographiclib.Geodesic.WGS84;

function within(got: number, want: number, tolerance: number): void {
  expect(Math.abs(got - want), `${got} against ${want}`).toBeLessThanOrEqual(tolerance);
}

describe('the reference library gives the published lines', () => {
  const grs80 = new Geodesic(6378137, 1 / 298.257222101);
  const published = [
    {
      name: 'Flinders Peak–Buninyong (GRS 80)',
      ellipsoid: grs80,
      line: [-37.95103341666667, 144.42486788888888, -37.65282113888889, 143.92649552777777],
      want_m: 54972.271,
      tol_m: 0.0005,
      azimuth_deg: 306 + 52 / 60 + 5.37 / 3600,
      tol_deg: 0.006 / 3600,
      final_deg: 127 + 10 / 60 + 25.07 / 3600 + 180,
      source: 'Geoscience Australia, Vincenty page',
    },
    {
      name: "Land's End–John o' Groats",
      ellipsoid: wgs84,
      line: [50.06632, -5.71475, 58.64402, -3.07009],
      want_m: 969954.166,
      tol_m: 0.0005,
      azimuth_deg: 9.1419,
      tol_deg: 0.00005,
      final_deg: 11.2972,
      source: 'public test suites quoting the Geoscience Australia Vincenty page',
    },
    {
      name: 'near-antipodal',
      ellipsoid: wgs84,
      line: [0, 0, 0.5, 179.5],
      want_m: 19936288.579,
      tol_m: 0.0005,
      source: 'public test suites quoting the Geoscience Australia Vincenty page',
    },
    {
      name: 'where Vincenty fails',
      ellipsoid: wgs84,
      line: [0, 0, 0.5, 179.7],
      want_m: 19944127.421,
      tol_m: 0.0005,
      source: '[C] GeographicLib; that Vincenty fails: public test suites',
    },
    {
      name: 'test case 1',
      ellipsoid: wgs84,
      line: [35.60777, -139.44815, -11.17491, -69.95921],
      want_m: 8935244.56048183,
      tol_m: 1e-8,
      azimuth_deg: 111.09874842956033,
      final_deg: 129.28927088970877,
      tol_deg: 1e-12,
      source: 'geographiclib-js, geodesictest.js',
    },
    {
      name: 'test case 2',
      ellipsoid: wgs84,
      line: [55.52454, 106.05087, 77.03196, 197.18234],
      want_m: 4105086.171392441,
      tol_m: 1e-8,
      azimuth_deg: 22.0200598809828,
      final_deg: 109.11204111067151,
      tol_deg: 1e-12,
      source: 'geographiclib-js, geodesictest.js',
    },
    {
      name: 'tiny',
      ellipsoid: wgs84,
      line: [36.493349428792, 0, 36.49334942879201, 0.0000008],
      want_m: 0.072,
      tol_m: 0.0005,
      source: 'geographiclib-js, geodesictest.js',
    },
  ];
  it.each(published)(
    '$name: $want_m m ± $tol_m ($source)',
    ({ ellipsoid, line, want_m, tol_m, azimuth_deg, final_deg, tol_deg }) => {
      const got = ellipsoid.Inverse(line[0]!, line[1]!, line[2]!, line[3]!);
      within(got.s12!, want_m, tol_m);
      if (azimuth_deg === undefined) return;
      within((got.azi1! + 360) % 360, azimuth_deg, tol_deg);
      within((got.azi2! + 360) % 360, final_deg, tol_deg);
    },
  );
});

// [C] computed with GeographicLib for these tees and baskets; lengths to 0.1 mm, azimuths to 0.0001°.
const holes = [
  ['H1', [0, 0], [0, 0.0009044], 100.0034, 0],
  ['H2', [-78.5, 0], [-78.4991017, 0], 99.9983, 90],
  ['H3 (antimeridian)', [179.9995, 0], [-179.9987034, 0], 199.9966, 90],
  ['H4', [-97, 30], [-96.9991206, 30.0007655], 120.0012, 44.9971],
  ['H5', [151.2, -33.9], [151.1993119, -33.9005737], 90.0001, 225.0039],
  ['H6', [7, 45], [7, 45.0008998], 99.9964, 0],
  ['H7', [7, 45], [7.0012683, 45], 100.0014, 89.9996],
  ['H8', [7, 45], [7.002242, 44.9984093], 250.0007, 134.9992],
  ['H9', [24.9, 60.2], [24.9, 60.2013463], 149.9989, 0],
  ['H10', [24.9, 60.2], [24.9027045, 60.2], 149.9993, 89.9988],
  ['H11', [24.9, 60.2], [24.8953155, 60.2013462], 299.9963, 299.9997],
  ['H12', [18.95, 69.65], [18.9503354, 69.6506621], 75.0014, 9.9985],
  ['H13', [174.8, -41.3], [174.8, -41.3005402], 59.9945, 180],
] as const;

describe('hole-sized lines in the local frame', () => {
  it.each(holes)(
    '%s: length ± 0.06 mm, azimuth ± 0.00006° ([C] GeographicLib)',
    (_, tee, basket, want_m, azimuth_deg) => {
      const local = toLocal(localFrame(tee[0], tee[1]), basket);
      within(distance_m([0, 0], local), want_m, 0.00006);
      within(((bearing_deg([0, 0], local) - azimuth_deg + 540) % 360) - 180, 0, 0.00006);
    },
  );

  it('any line between two points within 1 km of the tee keeps its length to 0.1 mm (against geographiclib-geodesic)', () => {
    let worst_m = 0;
    for (const lat of [-75, -60, -45, -30, 0, 15, 30, 45, 60, 70, 75])
      for (const lon of [-179.999, 0, 24.9, 179.998])
        for (let k = 0; k < 24; k++) {
          const frame = localFrame(lon, lat);
          const a: [number, number] = [700 * Math.sin(k * 2.1), 700 * Math.cos(k * 2.1)];
          const b: [number, number] = [(1000 * k * Math.sin(k * 1.3)) / 24, (1000 * k * Math.cos(k * 1.3)) / 24];
          const [p, q] = [toLonLat(frame, a), toLonLat(frame, b)];
          const geodesic_m = wgs84.Inverse(p[1], p[0], q[1], q[0]).s12!;
          worst_m = Math.max(worst_m, Math.abs(distance_m(a, b) - geodesic_m));
        }
    expect(worst_m).toBeLessThan(0.0001);
  });

  it('takes a dogleg drawn in degrees: legs 110.0061 + 79.9988 m, straight 169.1038 m at 42.8011° ([C] GeographicLib)', () => {
    const frame = localFrame(24.9, 60.2);
    const line = (
      [
        [24.9, 60.2],
        [24.9006784, 60.2009278],
        [24.9020717, 60.2011136],
      ] as const
    ).map(p => toLocal(frame, p));
    within(distance_m(line[0]!, line[1]!), 110.0061, 0.00006);
    within(distance_m(line[1]!, line[2]!), 79.9988, 0.00006);
    within(lineLength_m(line), 190.0049, 0.0001);
    within(distance_m(line[0]!, line[2]!), 169.1038, 0.00006);
    within(bearing_deg(line[0]!, line[2]!), 42.8011, 0.00006);
  });
});

describe('radii of curvature and metres per degree', () => {
  it.each([
    [0, 6335439.327, 6378137.0, 110574.276, 111319.491],
    [30, 6351377.104, 6383480.918, 110852.442, 96486.28],
    [45, 6367381.816, 6388838.29, 111131.777, 78846.835],
    [60, 6383453.857, 6394209.174, 111412.287, 55800.002],
  ])(
    'at %d°: M %d, N %d m; a degree is %d m north, %d m east, ± 1 mm ([C] from the WGS 84 constants)',
    (lat, m, n, north, east) => {
      const { meridian_m, primeVertical_m } = radiiOfCurvature((lat * Math.PI) / 180);
      within(meridian_m, m, 0.00051);
      within(primeVertical_m, n, 0.00051);
      within((meridian_m * Math.PI) / 180, north, 0.00051);
      within((primeVertical_m * Math.cos((lat * Math.PI) / 180) * Math.PI) / 180, east, 0.00051);
    },
  );

  it('both radii are 6399593.626 m at the pole ([C] from the WGS 84 constants)', () => {
    const { meridian_m, primeVertical_m } = radiiOfCurvature(Math.PI / 2);
    within(meridian_m, 6399593.626, 0.00051);
    within(primeVertical_m, 6399593.626, 0.00051);
  });
});
