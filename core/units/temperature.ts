import { readNumberWithUnit, rounded, type Spelling, spellings } from './number-with-unit.ts';
import { finite, type Quantity } from './quantity.ts';
import type { Problem, Result } from './result.ts';

export type Celsius = Quantity<'°C'>;
export type Fahrenheit = Quantity<'°F'>;
export const celsius = (value: number): Celsius => finite('temperature (°C)', value) as Celsius;
export const fahrenheit = (value: number): Fahrenheit => finite('temperature (°F)', value) as Fahrenheit;

/** @source NIST SP 811 (2008), App. B.8: t/°C = (t/°F − 32)/1.8, exact */
export const celsiusToFahrenheit = (value: Celsius): Fahrenheit => fahrenheit(value * 1.8 + 32);
export const fahrenheitToCelsius = (value: Fahrenheit): Celsius => celsius((value - 32) / 1.8);

const ABSOLUTE_ZERO_C = -273.15;

const examples = 'write 18, 18 C, 18 °C or 65F (a plain number is degrees Celsius)';
// Two scales with an offset between them cannot share one map of factors, so each is tried on its own.
const CELSIUS_ONLY: Spelling = {
  what: 'temperature',
  factors: spellings({ '|c|°c|ºc|deg c|degc|celsius': 1 }),
  examples,
};
const FAHRENHEIT_ONLY: Spelling = {
  what: 'temperature',
  factors: spellings({ 'f|°f|ºf|deg f|degf|fahrenheit': 1 }),
  examples,
};

/**
 * A temperature in degrees Celsius from "18", "18 °C", "65F"; a plain number is degrees Celsius.
 * @param path - where the text stands, for the problem
 * @returns degrees Celsius, at or above absolute zero; a problem that lists the accepted forms otherwise
 */
export function parseTemperature_C(text: string, path = 'temperature'): Result<number> {
  const inFahrenheit = readNumberWithUnit(text, FAHRENHEIT_ONLY, path);
  const read = inFahrenheit.ok ? inFahrenheit : readNumberWithUnit(text, CELSIUS_ONLY, path);
  if (!read.ok) return read;
  const value = inFahrenheit.ok ? fahrenheitToCelsius(fahrenheit(read.value)) : read.value;
  const tooCold: Problem = { path, message: `"${text}" is below absolute zero; ${examples}` };
  return value < ABSOLUTE_ZERO_C ? { ok: false, problems: [tooCold] } : { ok: true, value };
}

/**
 * "18 °C" or "64 °F", whole degrees.
 * @throws {RangeError} for a temperature that is not finite
 */
export function formatTemperature(temperature_C: number, scale: 'C' | 'F'): string {
  const value = celsius(temperature_C);
  return scale === 'C' ? `${rounded(value, 0)} °C` : `${rounded(celsiusToFahrenheit(value), 0)} °F`;
}
