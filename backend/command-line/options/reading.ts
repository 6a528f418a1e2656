import { InvalidArgumentError } from 'commander';
import { COMPASS_POINTS } from '../../../core/units/compass-point.ts';
import { parseLength_m } from '../../../core/units/length.ts';
import type { Result } from '../../../core/units/result.ts';
import { parseSpeed_mps } from '../../../core/units/speed.ts';
import { parseTemperature_C } from '../../../core/units/temperature.ts';

/** Option values as commander takes them: a refusal becomes its usage error. */
const taking =
  <T>(read: (text: string) => Result<T>) =>
  (text: string): T => {
    const result = read(text);
    if (result.ok) return result.value;
    throw new InvalidArgumentError(result.problems.map(problem => problem.message).join('; '));
  };

export const speed_mps = taking(parseSpeed_mps);
export const length_m = taking(parseLength_m);
export const temperature_C = taking(parseTemperature_C);

const NUMBER = /^[+-]?(?:\d+\.?\d*|\.\d+)$/;

const number = (text: string, unit: RegExp, hint: string): number => {
  const digits = text.trim().replace(/^−/, '-').replace(unit, '');
  if (!NUMBER.test(digits)) throw new InvalidArgumentError(hint);
  return Number(digits);
};

/** An angle: "12", "-3.5", "12°", "12 deg". */
export const angle_deg = (text: string): number => number(text, /\s*(?:°|deg)$/i, 'write degrees, such as 12 or -3.5');

export const mass_g = (text: string): number => number(text, /\s*(?:g|gram|grams)$/i, 'write grams, such as 175');

const WORDS: Readonly<Record<string, string>> = { NORTH: 'N', EAST: 'E', SOUTH: 'S', WEST: 'W' };

/** A true direction: degrees clockwise from north, or a point of the compass ("W", "SSE", "west"). */
export function direction_deg(text: string): number {
  const word = text.trim().toUpperCase();
  const point = COMPASS_POINTS.findIndex(name => name === (WORDS[word] ?? word));
  if (point >= 0) return point * (360 / COMPASS_POINTS.length);
  return number(text, /\s*(?:°|deg)$/i, 'write degrees clockwise from north, or a compass point: 270 or W');
}

export function wholeNumber(text: string): number {
  const value = Number(text);
  if (!/^[+-]?\d+$/.test(text.trim()) || !Number.isSafeInteger(value))
    throw new InvalidArgumentError('write a whole number');
  return value;
}
