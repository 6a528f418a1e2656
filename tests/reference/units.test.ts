import { describe, expect, it } from 'vitest';
import { formatLength, METERS_PER_FOOT, parseLength_m } from '../../core/units/length.ts';
import type { Result } from '../../core/units/result.ts';
import { formatSpeed, MPS_PER, parseSpeed_mps } from '../../core/units/speed.ts';
import {
  celsius,
  celsiusToFahrenheit,
  fahrenheit,
  fahrenheitToCelsius,
  parseTemperature_C,
} from '../../core/units/temperature.ts';

const value = (result: Result<number>): number => {
  if (!result.ok) throw new Error(result.problems.map(problem => problem.message).join());
  return result.value;
};

const NIST = 'NIST SP 811 (2008), App. B.8';

describe('published conversions', () => {
  it.each([
    { name: '1 ft', got: METERS_PER_FOOT, want: 0.3048, tol: 0, source: NIST },
    { name: '1 mph', got: MPS_PER.mph, want: 0.44704, tol: 0, source: NIST },
    { name: '1 km/h', got: MPS_PER.kmh, want: 0.2777778, tol: 5e-8, source: NIST },
    { name: '1 kn', got: MPS_PER.kn, want: 0.5144444, tol: 5e-8, source: NIST },
    {
      name: '1 kn in full',
      got: value(parseSpeed_mps('1kn')),
      want: 1852 / 3600,
      tol: 0,
      source: 'definition of the nautical mile',
    },
    { name: '1 yd', got: value(parseLength_m('1 yd')), want: 0.9144, tol: 1e-15, source: NIST },
    { name: '1 in', got: value(parseLength_m('1in')), want: 0.0254, tol: 1e-15, source: NIST },
    { name: '1 mile', got: value(parseLength_m('1 mi')), want: 1609.344, tol: 1e-9, source: NIST },
    {
      name: '400 ft',
      got: value(parseLength_m('400 ft')),
      want: 121.92,
      tol: 1e-12,
      source: '[C] 400 × 0.3048 by hand',
    },
    { name: '32 °F', got: value(parseTemperature_C('32F')), want: 0, tol: 0, source: `${NIST}: (t − 32)/1.8` },
    {
      name: '212 °F',
      got: fahrenheitToCelsius(fahrenheit(212)),
      want: 100,
      tol: 1e-12,
      source: `${NIST}: (t − 32)/1.8`,
    },
    {
      name: '−40 °C',
      got: celsiusToFahrenheit(celsius(-40)),
      want: -40,
      tol: 1e-12,
      source: '[C] −40 × 1.8 + 32 by hand',
    },
  ])('$name = $want ± $tol ($source)', ({ got, want, tol }) => expect(Math.abs(got - want)).toBeLessThanOrEqual(tol));

  // [C] by hand from 0.3048: 10/0.3048 = 32.81, 20/0.3048 = 65.62, 121.92/0.3048 = 400; 10/0.44704 = 22.37, 10·3.6 = 36, 10/0.514444 = 19.44
  it.each([
    { got: formatLength(10, { length: 'ft' }, 2), want: '32.81 ft' },
    { got: formatLength(20, { length: 'ft' }, 2), want: '65.62 ft' },
    { got: formatLength(121.92, { length: 'ft' }), want: '400 ft' },
    { got: formatSpeed(10, { speed: 'mph' }, 2), want: '22.37 mph' },
    { got: formatSpeed(10, { speed: 'kmh' }), want: '36 km/h' },
    { got: formatSpeed(10, { speed: 'kn' }, 2), want: '19.44 kn' },
  ])('writes $want', ({ got, want }) => expect(got).toBe(want));
});
