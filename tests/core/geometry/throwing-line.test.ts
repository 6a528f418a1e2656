import geodesic from 'geographiclib-geodesic';
import { describe, expect, it } from 'vitest';
import { offsetFromLine, placeOnLine } from '../../../core/geometry/throwing-line.ts';

const { Geodesic } = geodesic;

describe('a rest against a throwing line', () => {
  // [C] distance and azimuth by GeographicLib, split along and across the line; tolerance 1 mm
  it.each([
    { origin: [24.9, 60.2], bearing_deg: 35, distance_m: 92.5, turned_deg: 0 },
    { origin: [24.9, 60.2], bearing_deg: 350, distance_m: 120, turned_deg: 20 },
    { origin: [151.2, -33.9], bearing_deg: 200, distance_m: 75, turned_deg: -35 },
    { origin: [179.9999, 10], bearing_deg: 90, distance_m: 150, turned_deg: 5 },
  ] as const)('$distance_m m at $turned_deg° off $bearing_deg°', ({ origin, bearing_deg, distance_m, turned_deg }) => {
    const there = Geodesic.WGS84.Direct(origin[1], origin[0], bearing_deg + turned_deg, distance_m);
    const rest = [there.lon2!, there.lat2!] as const;
    const offset = offsetFromLine({ origin, bearing_deg }, rest);
    const turned = (turned_deg * Math.PI) / 180;
    expect(Math.abs(offset.distance_m - distance_m * Math.cos(turned))).toBeLessThan(0.001);
    expect(Math.abs(offset.side_m - distance_m * Math.sin(turned))).toBeLessThan(0.001); // right positive
    const back = placeOnLine({ origin, bearing_deg }, offset);
    const miss = Geodesic.WGS84.Inverse(rest[1], rest[0], back[1], back[0]).s12!;
    expect(miss).toBeLessThan(0.001);
  });

  it('refuses a line without a direction', () => {
    expect(() => offsetFromLine({ origin: [0, 0], bearing_deg: Number.NaN }, [0, 0])).toThrow(/bearing_deg.*NaN/);
  });
});
