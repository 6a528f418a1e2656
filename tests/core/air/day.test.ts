import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Day, makeDay } from '../../../core/air/day.ts';
import { airDensity } from '../../../core/air/density.ts';
import { windSd_mps } from '../../../core/air/gust.ts';
import { relativeWind } from '../../../core/air/relative-wind.ts';
import { pressureFromQnh_Pa } from '../../../core/air/standard-atmosphere.ts';

const day = (input: unknown): Day => {
  const result = makeDay(input);
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value;
};
const METAR = 'METAR EGXX 171100Z 25012KT 9999 21/11 Q1020';

describe('wind of the day', () => {
  it('is taken as given at 10 m', () => {
    const { wind, source } = day({ wind: { speed_mps: 6, from_deg: 360, gust_mps: 9, directionSpread_deg: 20 } });
    expect(wind).toEqual({ speed_mps: 6, from_deg: 0, gust_mps: 9, directionSpread_deg: 20 });
    expect(source).toBe('as given');
  });

  // [C] 1 + 3/ln(10/0.03) = 1.5165, by hand
  it('gets the usual gust and spread when none is given, and says so', () => {
    const { wind, notes } = day({ wind: { speed_mps: 6, from_deg: 250 } });
    expect(Math.abs(wind.gust_mps - 9.099)).toBeLessThanOrEqual(1e-3);
    expect(wind.directionSpread_deg).toBe(10);
    expect(notes.join()).toContain('No gust given: assumed 9.1 m/s');
    expect(notes.join()).toContain("Spread of the wind's direction assumed: 10°");
  });

  // [C] ln((10 + 0.03)/0.03)/ln((1.5 + 0.03)/0.03) = 1.4781, by hand; 0.1 % for the table between its heights
  it('from head height is brought to 10 m, gust and all', () => {
    const { wind, notes } = day({ wind: { speed_mps: 4, from_deg: 90, gust_mps: 6, height_m: 1.5 } });
    expect(Math.abs(wind.speed_mps / 4 - 1.4781)).toBeLessThanOrEqual(2e-3);
    expect(wind.gust_mps / wind.speed_mps).toBeCloseTo(1.5, 12);
    expect(notes.join()).toContain('Wind measured at 1.5 m over open ground: multiplied by 1.48');
    expect(
      day({ wind: { speed_mps: 2, from_deg: 90, height_m: 1.5, exposure: 'park' } }).wind.speed_mps,
    ).toBeGreaterThan(4);
  });

  it('none given is calm, and says so; calm has no gust', () => {
    const { wind, notes, source } = day({});
    expect(wind).toMatchObject({ speed_mps: 0, gust_mps: 0 });
    expect(notes).toContain('No wind given: planned for calm air.');
    expect(source).toContain('calm');
    expect(day({ wind: { speed_mps: 0 } }).wind).toMatchObject({ speed_mps: 0, gust_mps: 0 });
    expect(windSd_mps(day({}))).toBe(0);
  });
});

describe('a METAR fills in what is not typed', () => {
  it('wind, temperature, humidity and pressure', () => {
    const got = day({ metar: METAR, altitude_m: 300 });
    expect(got.wind).toMatchObject({ from_deg: 250, directionSpread_deg: 10 });
    expect(got.wind.speed_mps).toBeCloseTo((12 * 1852) / 3600, 12);
    expect(got).toMatchObject({ temperature_C: 21, source: 'METAR EGXX 171100Z' });
    // [C] Magnus formula with 17.62, 243.12 °C: 52.8 %
    expect(Math.abs(got.relativeHumidity! - 0.528)).toBeLessThanOrEqual(6e-4);
    expect(got.density_kgpm3).toBeCloseTo(
      airDensity({
        pressure_Pa: pressureFromQnh_Pa(1020, 300),
        temperature_C: 21,
        relativeHumidity: got.relativeHumidity!,
      }),
      12,
    );
  });

  it('what is typed stands above it', () => {
    const got = day({
      metar: 'METAR EGXX 171100Z 25012G25KT 9999 21/11 Q1020',
      wind: { speed_mps: 3 },
      temperature_C: 11,
    });
    expect(got.wind).toMatchObject({ speed_mps: 3, from_deg: 250 });
    expect(got.wind.gust_mps).toBeLessThan(5); // not the report's 25 kt
    expect(got).toMatchObject({
      temperature_C: 11,
      relativeHumidity: 1,
      source: 'as given, the rest from METAR EGXX 171100Z',
    });
  });

  // Own rule: spread = range / 6, never below the assumed 10°; VRB without direction is even round the circle, 360/√12 = 103.9°.
  it.each([
    ['25012KT 220V280', 10],
    ['25012KT 190V310', 20],
    ['35012KT 290V080', 25],
    ['VRB03KT', 103.92],
  ])('%s: direction spread %d°', (group, want) => {
    expect(
      Math.abs(day({ metar: `METAR EGXX 171100Z ${group} 9999 21/11 Q1020` }).wind.directionSpread_deg - want),
    ).toBeLessThanOrEqual(0.01);
  });

  it('names what the report leaves out', () => {
    expect(day({ metar: 'METAR EGXX 171100Z 25012KT 9999' }).notes[0]).toBe(
      'The report of EGXX leaves out: temperature, dew point, pressure.',
    );
  });
});

describe('density of the day', () => {
  it('falls with height, heat and humidity', () => {
    const at = (input: object) => day(input).density_kgpm3;
    expect(at({ altitude_m: 1500 })).toBeLessThan(at({ altitude_m: 0 }));
    expect(at({ temperature_C: 30 })).toBeLessThan(at({ temperature_C: 5 }));
    expect(at({ temperature_C: 30, relativeHumidity: 1 })).toBeLessThan(at({ temperature_C: 30, relativeHumidity: 0 }));
  });
  // [C] CIPM-2007 as printed in Picard et al. 2008, outside this code
  it('is CIPM-2007 for a station pressure', () => {
    expect(
      Math.abs(day({ stationPressure_hPa: 1013.25, temperature_C: 20, relativeHumidity: 0.5 }).density_kgpm3 - 1.19931),
    ).toBeLessThanOrEqual(6e-6);
  });
  it('says what it assumes', () => {
    const { notes } = day({});
    expect(notes.join(' ')).toMatch(/No altitude given.*No temperature given: 15 °C assumed.*No humidity given: 50 %/);
    expect(day({})).not.toHaveProperty('temperature_C');
  });
});

describe('what cannot be gets a problem with its path', () => {
  it.each<[unknown, string, string]>([
    [{ wind: { speed_mps: 6, from_deg: 270, gust_mps: 4 } }, 'wind.gust_mps', 'below the wind'],
    [{ wind: { speed_mps: 41, from_deg: 270 } }, 'wind.speed_mps', 'must lie in 0…40 m/s'],
    [{ wind: { speed_mps: -1, from_deg: 270 } }, 'wind.speed_mps', 'must lie in 0…40 m/s'],
    [{ wind: { speed_mps: 30, from_deg: 270, height_m: 1.5 } }, 'wind.speed_mps', 'limit is 40 m/s'],
    [{ wind: { speed_mps: Number.NaN, from_deg: 270 } }, 'wind.speed_mps', 'must be a number'],
    [{ wind: { speed_mps: 6 } }, 'wind.from_deg', 'where the wind blows from'],
    [{ wind: { speed_mps: 0, gust_mps: 5 } }, 'wind.from_deg', 'where the wind blows from'],
    [{ wind: { speed_mps: 6, from_deg: 400 } }, 'wind.from_deg', 'must lie in 0…360 degrees'],
    [{ wind: { from_deg: 90 } }, 'wind.speed_mps', 'given without a speed'],
    [{ wind: { speed_mps: 6, from_deg: 90, height_m: 0 } }, 'wind.height_m', 'hand-held'],
    [{ wind: { speed_mps: 6, from_deg: 90, exposure: 'hill' } }, 'wind.exposure', 'open, park or wood'],
    [{ wind: { speed_mps: '6', from_deg: 90 } }, 'wind.speed_mps', 'must be a number of m/s'],
    [{ relativeHumidity: 55 }, 'relativeHumidity', '0.55 for 55 %'],
    [{ stationPressure_hPa: 1000, qnh_hPa: 1010 }, 'qnh_hPa', 'not both'],
    [{ altitude_m: 9000 }, 'altitude_m', 'above sea level'],
    [{ metar: 'gibberish' }, 'metar', 'not a METAR line'],
    [{ metar: 'METAR EGXX 171100Z ///// 9999 21/11 Q1020' }, 'wind.speed_mps', 'has no wind'],
    [{ metar: 'METAR EGXX 171100Z ///12KT 9999 21/11 Q1020' }, 'wind.from_deg', 'where the wind blows from'],
    [{ metar: 'METAR EGXX 171100Z 27099KT 9999 21/11 Q1020' }, 'wind.speed_mps', 'limit is 40 m/s'],
    [{ metar: METAR, wind: { height_m: 2 } }, 'wind.height_m', 'METAR wind is at 10 m'],
    [{ metar: 'METAR EGXX 171100Z 25012KT 9999 21/11 Q0120' }, 'metar', 'pressure of 120 hPa'],
    [{ metar: 'METAR EGXX 171100Z 25012KT 9999 71/11 Q1020' }, 'metar', '71 °C is outside'],
    [{ windy: true }, 'air', 'windy'],
    [null, 'air', ''],
  ])('%j', (input, path, message) => {
    const result = makeDay(input);
    expect(result.ok).toBe(false);
    if (result.ok) return;
    expect(result.problems.map(problem => problem.path)).toContain(path);
    expect(result.problems.find(problem => problem.path === path)!.message).toContain(message);
  });

  it('lists every problem at once', () => {
    const result = makeDay({
      wind: { speed_mps: 6, from_deg: 90, gust_mps: 2 },
      stationPressure_hPa: 1000,
      qnh_hPa: 1000,
    });
    expect(!result.ok && result.problems.map(problem => problem.path)).toEqual(['wind.gust_mps', 'qnh_hPa']);
  });
});

it('turning wind and aim together changes nothing, and the parts make up the whole', () => {
  const angle = fc.double({ min: 0, max: 360, noNaN: true });
  fc.assert(
    fc.property(angle, angle, angle, fc.double({ min: 0, max: 40, noNaN: true }), (from_deg, aim, turn, speed_mps) => {
      const one = relativeWind({ wind: { speed_mps, from_deg } }, aim);
      const other = relativeWind({ wind: { speed_mps, from_deg: from_deg + turn } }, aim + turn);
      expect(Math.abs(one.head_mps - other.head_mps) + Math.abs(one.right_mps - other.right_mps)).toBeLessThanOrEqual(
        1e-9,
      );
      expect(Math.abs(Math.hypot(one.head_mps, one.right_mps) - speed_mps)).toBeLessThanOrEqual(1e-9);
    }),
    { seed: 23 },
  );
});
