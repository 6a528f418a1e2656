import { describe, expect, it } from 'vitest';
import { airDensity } from '../../core/air/density.ts';
import { relativeHumidity } from '../../core/air/relative-humidity.ts';
import { pressureFromQnh_Pa, standardAtmosphere } from '../../core/air/standard-atmosphere.ts';

// [C] computed from the formula as printed in Picard et al. 2008, Metrologia 45, 149–155, outside this code, to five decimals.
describe('CIPM-2007', () => {
  it.each([
    [101325, 20, 0.5, 1.19931],
    [101325, 15, 0, 1.22552],
    [101325, 30, 0.8, 1.15001],
    [101325, 35, 0.6, 1.13138],
    [101325, -5, 0.8, 1.31559],
    [84556, 15, 0.3, 1.0203],
    [84556, 30, 0.2, 0.96823],
  ])('%d Pa, %d °C, humidity %d: %d kg/m³', (pressure_Pa, temperature_C, humidity, want) => {
    expect(Math.abs(airDensity({ pressure_Pa, temperature_C, relativeHumidity: humidity }) - want)).toBeLessThanOrEqual(
      6e-6,
    );
  });

  // [C] by hand: ρ = (p − e)/(287.05·T) + e/(461.5·T), Magnus e; the simple form is good to 0.1 %, and holds far outside CIPM's range.
  it.each([
    [101325, -30, 0.5],
    [70109, 40, 0.3],
    [101325, 45, 0.9],
  ])('agrees with a mixture of ideal gases within 0.15 %% at %d Pa, %d °C, humidity %d', (p, t, h) => {
    const [e, T] = [h * 611.2 * Math.exp((17.62 * t) / (243.12 + t)), t + 273.15];
    const simple = (p - e) / (287.05 * T) + e / (461.5 * T);
    expect(
      Math.abs(airDensity({ pressure_Pa: p, temperature_C: t, relativeHumidity: h }) / simple - 1),
    ).toBeLessThanOrEqual(1.5e-3);
  });
});

// [C] ICAO Doc 7488 formulas; relative densities agree with the published table within 2e-4.
describe('standard atmosphere', () => {
  it.each([
    [0, 288.15, 101325, 1.225, 1.0],
    [250, 286.53, 98358, 1.19587, 0.9762],
    [500, 284.9, 95461, 1.16727, 0.9529],
    [1000, 281.65, 89875, 1.11164, 0.9075],
    [1500, 278.4, 84556, 1.05807, 0.8637],
    [2000, 275.15, 79495, 1.00649, 0.8216],
    [2500, 271.9, 74683, 0.95686, 0.7811],
    [3000, 268.65, 70109, 0.90912, 0.7421],
  ])('%d m', (altitude_m, temperature_K, pressure_Pa, density, relative) => {
    const air = standardAtmosphere(altitude_m);
    expect(Math.abs(air.temperature_C + 273.15 - temperature_K)).toBeLessThanOrEqual(0.006);
    expect(Math.abs(air.pressure_Pa - pressure_Pa)).toBeLessThanOrEqual(0.6);
    expect(Math.abs(air.density_kgpm3 - density)).toBeLessThanOrEqual(6e-6);
    expect(Math.abs(air.density_kgpm3 / standardAtmosphere(0).density_kgpm3 - relative)).toBeLessThanOrEqual(6e-5);
  });
});

// [C] computed outside this code: the hydrostatic equation integrated numerically (20,000 steps) along the standard lapse, started where it meets the QNH.
describe('station pressure from QNH', () => {
  it.each([
    [1013.25, 1500, 84556.0],
    [1030, 1000, 91394.8],
    [985, 250, 95599.9],
    [1020, 0, 102000.0],
  ])('%d hPa at %d m: %d Pa', (qnh_hPa, altitude_m, want) => {
    expect(Math.abs(pressureFromQnh_Pa(qnh_hPa, altitude_m) - want)).toBeLessThanOrEqual(0.2);
  });
});

// [C] Magnus formula with 17.62 and 243.12 °C, by hand.
describe('relative humidity', () => {
  it.each([
    [15.6, -2.2, 29.4],
    [21, 19, 88.4],
    [19.4, 14.4, 72.8],
    [18.9, 15.6, 81.2],
    [30, 20, 55.1],
    [-1.7, -2.2, 96.4],
  ])('%d/%d °C: %d %%', (temperature_C, dewPoint_C, want) => {
    expect(Math.abs(relativeHumidity(temperature_C, dewPoint_C) * 100 - want)).toBeLessThanOrEqual(0.051);
  });
  // both are rounded in reports, so the dew point may stand above the temperature
  it('never passes 1', () => expect(relativeHumidity(10, 12)).toBe(1));
  it('refuses what is no temperature', () => expect(() => relativeHumidity(Number.NaN, 10)).toThrow(/got NaN and 10/));
});

it('bad states are refused by name', () => {
  expect(() => airDensity({ pressure_Pa: 1013.25, temperature_C: 20, relativeHumidity: 0.5 })).toThrow(/pressure_Pa/);
  expect(() => airDensity({ pressure_Pa: 101325, temperature_C: 293, relativeHumidity: 0.5 })).toThrow(/temperature_C/);
  expect(() => airDensity({ pressure_Pa: 101325, temperature_C: 20, relativeHumidity: 50 })).toThrow(
    /relativeHumidity/,
  );
  expect(() => standardAtmosphere(20_000)).toThrow(/altitude_m/);
  expect(() => pressureFromQnh_Pa(101325, 0)).toThrow(/qnh_hPa/);
});
