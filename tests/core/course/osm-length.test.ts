import { describe, expect, it } from 'vitest';
import { parseOsmLength } from '../../../core/course/osm-length.ts';

const length = (text: string | number): number => {
  const parsed = parseOsmLength(text);
  return parsed.ok ? parsed.length_m : Number.NaN;
};
const message = (text: string | number): string => {
  const parsed = parseOsmLength(text);
  return parsed.ok ? `${parsed.length_m} m` : parsed.message;
};

describe('lengths as OpenStreetMap writes them', () => {
  it.each<[string | number, number, string]>([
    [3.5, 3.5, 'metres by default'],
    ['3.5', 3.5, 'metres by default'],
    [' 3.5 m ', 3.5, 'metres by name'],
    ['12 ft', 3.6576, '12 × 0.3048 by hand'],
    ['12ft', 3.6576, '12 × 0.3048 by hand'],
    ["40'", 12.192, '40 × 0.3048 by hand'],
    ['40′', 12.192, '40 × 0.3048 by hand'],
    ['12\' 6"', 3.81, '12.5 × 0.3048 by hand'],
    ["12'6''", 3.81, '12.5 × 0.3048 by hand'],
    ['12 ft 6 in', 3.81, '12.5 × 0.3048 by hand'],
    ['120 yd', 109.728, '120 × 0.9144 by hand'],
    ['18"', 0.4572, '18 × 0.0254 by hand'],
    ['250 cm', 2.5, 'SI'],
    ['0.2 km', 200, 'SI'],
    ['-3', -3, 'a sign is read; the range is checked later'],
    ['.5', 0.5, 'decimal point first'],
  ])('%s is %d m (%s)', (text, want) => expect(Math.abs(length(text) - want)).toBeLessThanOrEqual(1e-12));
});

describe('says how to write it', () => {
  it.each<[string | number, string]>([
    ['3,5', '"3,5" is not a length: write the decimals after a point: 3.5'],
    ['3,5 m', '"3,5 m" is not a length: write the decimals after a point: 3.5 m'],
    ['8-10', '"8-10" is not a length: give one number, not a range or a list'],
    ['8;10', '"8;10" is not a length: give one number, not a range or a list'],
    ['~8', '"~8" is not a length: give the number alone, without a sign before it'],
    ['8 furlongs', '"8 furlongs" is not a length: "furlongs" is not a unit known here; use m, ft, in, yd, cm or km'],
    [
      '8 constructor',
      '"8 constructor" is not a length: "constructor" is not a unit known here; use m, ft, in, yd, cm or km',
    ],
    ['tall', '"tall" is not a length: write a number in metres, such as 3.5, or with a unit, such as 12 ft or 120 yd'],
    [Number.POSITIVE_INFINITY, '"Infinity" is not a length: it must be a finite number'],
    [Number.NaN, '"NaN" is not a length: it must be a finite number'],
    [`1${'0'.repeat(400)}`, `"1${'0'.repeat(400)}" is not a length: it must be a finite number`],
  ])('%s', (text, want) => expect(message(text)).toBe(want));
});
