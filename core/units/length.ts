import { plainPrimes, readNumberWithUnit, rounded, type Spelling, spellings } from './number-with-unit.ts';
import { finite } from './quantity.ts';
import type { Result } from './result.ts';
import type { UnitsChoice } from './units-choice.ts';

/** Exact. @source NIST SP 811 (2008), App. B.8: international foot; yard 3 ft, inch 1/12 ft, mile 5280 ft. */
export const METERS_PER_FOOT = 0.3048;
const METERS_PER_INCH = METERS_PER_FOOT / 12;

const LENGTH: Spelling = {
  what: 'length',
  factors: spellings({
    '|m|metre|metres|meter|meters': 1,
    'cm|centimetre|centimetres|centimeter|centimeters': 0.01,
    'mm|millimetre|millimetres|millimeter|millimeters': 0.001,
    'km|kilometre|kilometres|kilometer|kilometers': 1000,
    "ft|foot|feet|'": METERS_PER_FOOT,
    'in|inch|inches|"': METERS_PER_INCH,
    'yd|yds|yard|yards': 3 * METERS_PER_FOOT,
    'mi|mile|miles': 5280 * METERS_PER_FOOT,
  }),
  examples: `write 92, 92 m, 300ft, 300', 12'6" or 100 yd (a plain number is metres)`,
};

/** Feet and inches together, the way OpenStreetMap writes them: 12'6", 12 ft 6 in. */
const FEET_AND_INCHES = /^(\d+)\s*(?:'|ft|feet|foot)\s*(\d+(?:\.\d+)?)\s*(?:"|in|inch|inches)$/i;

/**
 * A length in metres from "92", "92 m", "300ft", "300'", "12'6"", "100 yd"; a plain number is metres.
 * @param path - where the text stands, for the problem
 * @returns metres, sign kept; a problem that lists the accepted forms otherwise
 * @source spellings of feet and inches: OpenStreetMap wiki, Map features/Units
 */
export function parseLength_m(text: string, path = 'length'): Result<number> {
  const both = FEET_AND_INCHES.exec(plainPrimes(text).trim());
  if (both === null) return readNumberWithUnit(text, LENGTH, path);
  const [feet, inches] = [Number(both[1]), Number(both[2])];
  if (inches >= 12)
    return { ok: false, problems: [{ path, message: `"${text}": inches run from 0 to 11.99; ${LENGTH.examples}` }] };
  return { ok: true, value: feet * METERS_PER_FOOT + inches * METERS_PER_INCH };
}

/**
 * "92 m" or "302 ft". Without `digits`: whole feet; metres with one decimal below 20 m, whole above.
 * @throws {RangeError} for a length that is not finite
 */
export function formatLength(length_m: number, units: Pick<UnitsChoice, 'length'>, digits?: number): string {
  finite('length_m', length_m);
  if (units.length === 'ft') return `${rounded(length_m / METERS_PER_FOOT, digits ?? 0)} ft`;
  return `${rounded(length_m, digits ?? (Math.abs(length_m) < 20 ? 1 : 0))} m`;
}
