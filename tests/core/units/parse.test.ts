import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseLength_m } from '../../../core/units/length.ts';
import { parseSpeed_mps } from '../../../core/units/speed.ts';
import { parseTemperature_C } from '../../../core/units/temperature.ts';

// Wanted values: [C] the number times the exact factors of NIST SP 811 (2008), App. B.8, by hand.
describe('lengths in every accepted spelling', () => {
  it.each([
    ['92', 92],
    ['92 m', 92],
    ['92m', 92],
    [' 92 metres ', 92],
    ['300ft', 91.44],
    ['300 FT', 91.44],
    ["300'", 91.44],
    ['300′', 91.44],
    ['300 feet', 91.44],
    [`12'6"`, 3.81],
    [`12' 6"`, 3.81],
    ['12 ft 6 in', 3.81],
    ['12’6”', 3.81],
    ["12'6''", 3.81],
    ['100 yd', 91.44],
    ['80 cm', 0.8],
    ['0.1 km', 100],
    ['.5', 0.5],
    ['5.', 5],
    ['+3', 3],
    ['-3', -3],
    ['−3 m', -3],
    ['1e2', 100],
  ] as const)('%s is %d m', (text, want) => {
    const got = parseLength_m(text);
    expect(got.ok).toBe(true);
    expect(got.ok && got.value).toBeCloseTo(want, 10);
  });
});

describe('speeds in every accepted spelling', () => {
  it.each([
    ['6', 6],
    ['6 m/s', 6],
    ['6mps', 6],
    ['12mph', 5.36448],
    ['12 mph', 5.36448],
    ['20kmh', 5.555555555556],
    ['20 km/h', 5.555555555556],
    ['10kn', 5.144444444444],
    ['10 kt', 5.144444444444],
    ['10 knots', 5.144444444444],
    ['0', 0],
    ['60 MPH', 26.8224],
  ] as const)('%s is %d m/s', (text, want) => {
    const got = parseSpeed_mps(text);
    expect(got.ok && got.value).toBeCloseTo(want, 10);
  });
});

describe('temperatures in every accepted spelling', () => {
  it.each([
    ['18', 18],
    ['18C', 18],
    ['18 °C', 18],
    ['-5 °C', -5],
    ['50F', 10],
    ['50 °F', 10],
    ['14f', -10],
  ] as const)('%s is %d °C', (text, want) => {
    const got = parseTemperature_C(text);
    expect(got.ok && got.value).toBeCloseTo(want, 10);
  });
});

describe('what cannot be read says how to write it', () => {
  it.each([
    [
      parseLength_m('far', 'features[3].properties.height'),
      'features[3].properties.height',
      '"far" is not a length',
      "300'",
    ],
    [parseLength_m('12 parsec'), 'length', '"parsec" is not a unit of length', '100 yd'],
    [parseLength_m(''), 'length', 'length is empty', 'plain number is metres'],
    [parseLength_m('1,5 m'), 'length', 'decimal mark as a point', '92 m'],
    [parseLength_m(`12'13"`), 'length', 'inches run from 0', '300ft'],
    [parseLength_m('1e999'), 'length', 'too large', '300ft'],
    [parseSpeed_mps('fast', 'wind'), 'wind', '"fast" is not a speed', '12mph'],
    [parseSpeed_mps('12 ft'), 'speed', '"ft" is not a unit of speed', '10kn'],
    [parseSpeed_mps('NaN'), 'speed', '"NaN" is not a speed', 'metres per second'],
    [parseTemperature_C('warm'), 'temperature', '"warm" is not a temperature', '65F'],
    [parseTemperature_C('20 K'), 'temperature', 'not a unit of temperature', '18 °C'],
    [parseTemperature_C('-300'), 'temperature', 'absolute zero', '65F'],
    [parseTemperature_C('-500F'), 'temperature', 'absolute zero', '65F'],
  ] as const)('problem %#', (result, path, message, hint) => {
    expect(result.ok).toBe(false);
    if (result.ok) return;
    expect(result.problems).toHaveLength(1);
    expect(result.problems[0]!.path).toBe(path);
    expect(result.problems[0]!.message).toContain(message);
    expect(result.problems[0]!.message).toContain(hint);
  });

  it('any text at all gives a finite number or one problem', () => {
    fc.assert(
      fc.property(fc.string(), text => {
        for (const parse of [parseLength_m, parseSpeed_mps, parseTemperature_C]) {
          const got = parse(text);
          expect(got.ok ? Number.isFinite(got.value) : got.problems.length === 1).toBe(true);
        }
      }),
      { seed: 11, numRuns: 500 },
    );
  });
});
