import { describe, expect, it } from 'vitest';
import { BLIND_SHOT, dayCautions, LIGHTNING, NEAR_PEOPLE, PEOPLE } from '../../../core/air/cautions.ts';
import { type Day, makeDay } from '../../../core/air/day.ts';
import { heatIndex } from '../../../core/air/heat-index.ts';
import { windChill_C } from '../../../core/air/wind-chill.ts';
import { fahrenheit, fahrenheitToCelsius } from '../../../core/units/temperature.ts';

const day = (input: unknown): Day => {
  const result = makeDay(input);
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value;
};
const kinds = (input: unknown) => dayCautions(day(input)).map(caution => caution.kind);
const text = (input: unknown, kind: string) => dayCautions(day(input)).find(caution => caution.kind === kind)?.text;

describe('heat index', () => {
  // [C] the regression of the US National Weather Service, outside this code; its printed table rounds these to 91, 95, 106, 121, 109, 137
  it.each([
    [86, 0.6, 91.1],
    [90, 0.5, 94.6],
    [90, 0.7, 105.92],
    [96, 0.65, 121.03],
    [100, 0.4, 109.26],
    [104, 0.55, 137.36],
  ])('%d °F, %d: %d °F', (t, humidity, want) =>
    expect(Math.abs(heatIndex(fahrenheit(t), humidity) - want)).toBeLessThanOrEqual(0.006),
  );

  // [C] outside this code, from the equations of the Weather Prediction Center: 70 °F, 50 %: ½[½(70 + 61 + 2.4 + 4.7) + 70] = 69.525;
  // 95 °F, 5 %: regression 90.177 less (8/4)·√(17/17) = 88.177; 84 °F, 90 %: regression 98.043 plus (5/10)·(3/5) = 98.343
  it.each([
    [70, 0.5, 69.525],
    [95, 0.05, 88.177],
    [84, 0.9, 98.343],
  ])('corrected: %d °F, %d: %d °F', (t, humidity, want) =>
    expect(Math.abs(heatIndex(fahrenheit(t), humidity) - want)).toBeLessThanOrEqual(0.002),
  );

  it('refuses a percentage', () => expect(() => heatIndex(fahrenheit(90), 50)).toThrow(/relativeHumidity/));
});

describe('wind chill', () => {
  // [C] 13.12 + 0.6215T − 11.37v^0.16 + 0.3965Tv^0.16, outside this code
  it.each([
    [0, 20, -5.24],
    [-10, 30, -19.52],
    [5, 10, 2.66],
  ])('%d °C, %d km/h: %d °C', (t, kmh, want) =>
    expect(Math.abs(windChill_C(t, kmh / 3.6)! - want)).toBeLessThanOrEqual(0.006),
  );
  it('is not defined in warm or still air', () => {
    expect(windChill_C(11, 10)).toBeUndefined();
    expect(windChill_C(0, 1)).toBeUndefined();
  });
});

describe('cautions of the day', () => {
  it('always speaks of lightning and people', () => {
    expect(dayCautions(day({ temperature_C: 18, relativeHumidity: 0.5 }))).toEqual([LIGHTNING, PEOPLE]);
    expect(LIGHTNING.text).toContain('Defer to local rules and course staff');
  });
  it('says that a report has thunder', () => {
    const input = { metar: 'METAR EGXX 171100Z 25012KT 9999 TSRA 21/11 Q1020' };
    expect(text(input, 'lightning')).toContain('do not start a round');
  });
  // Beaufort scale, WMO-No. 306, code table 1100: force 7 from 13.9 m/s (whole trees move), force 8 from 17.2 m/s (twigs break)
  it.each([
    [{ speed_mps: 13.8, gust_mps: 17.1 }, undefined],
    [{ speed_mps: 13.9, gust_mps: 17.1 }, 'Beaufort 7: whole trees move'],
    [{ speed_mps: 11, gust_mps: 17.2 }, 'Gusts reach Beaufort 8'],
  ])('wind %j', (wind, want) => {
    const got = text({ wind: { from_deg: 0, ...wind } }, 'wind');
    if (want === undefined) expect(got).toBeUndefined();
    else expect(got).toContain(want);
  });
  // Bands of the US National Weather Service: 80–90, 90–103, 103–124, 125 and more °F
  it.each([
    [79, 0.4, undefined],
    [86, 0.5, ': caution;'],
    [90, 0.5, ': extreme caution;'],
    [90, 0.7, ': danger;'],
    [104, 0.55, ': extreme danger;'],
  ])('%d °F, humidity %d', (t, relativeHumidity, want) => {
    const got = text({ temperature_C: fahrenheitToCelsius(fahrenheit(t)), relativeHumidity }, 'heat');
    if (want === undefined) expect(got).toBeUndefined();
    else expect(got).toContain(want);
  });
  it('does not guess the heat index without humidity', () => {
    expect(text({ temperature_C: 30 }, 'heat')).toContain('30 °C, humidity not known');
    expect(kinds({ temperature_C: 20 })).not.toContain('heat');
    expect(kinds({})).toEqual(['lightning', 'people']);
  });
  it.each([
    [{ temperature_C: -10, wind: { speed_mps: 30 / 3.6, from_deg: 0 } }, 'Feels like -20 °C: cover hands'],
    [{ temperature_C: -25, wind: { speed_mps: 10, from_deg: 0 } }, 'bare skin can freeze'],
    [{ temperature_C: 3 }, '3 °C: cold fingers'],
  ])('cold %#', (input, want) => expect(text(input, 'cold')).toContain(want));
  it('every caution names its source', () => {
    const input = { temperature_C: -25, wind: { speed_mps: 15, from_deg: 0 } };
    for (const caution of [...dayCautions(day(input)), BLIND_SHOT, NEAR_PEOPLE])
      expect(caution.source.length).toBeGreaterThan(5);
  });
});
