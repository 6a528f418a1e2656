import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatLength, parseLength_m } from '../../../core/units/length.ts';
import { formatSpeed, parseSpeed_mps } from '../../../core/units/speed.ts';
import { formatTemperature } from '../../../core/units/temperature.ts';

describe('numbers are written no finer than they are known', () => {
  it.each([
    [formatLength(91.6, { length: 'm' }), '92 m'],
    [formatLength(4.57, { length: 'm' }), '4.6 m'],
    [formatLength(-0.01, { length: 'm' }), '0.0 m'],
    [formatLength(-0.01, { length: 'ft' }), '0 ft'],
    [formatLength(4.57, { length: 'm' }, 2), '4.57 m'],
    [formatSpeed(5.36, { speed: 'mps' }), '5.4 m/s'],
    [formatSpeed(5.36448, { speed: 'mph' }), '12 mph'],
    [formatTemperature(-0.2, 'C'), '0 °C'],
    [formatTemperature(10, 'F'), '50 °F'],
  ])('%s', (got, want) => expect(got).toBe(want));

  it('refuses what is no number, naming it', () => {
    expect(() => formatLength(Number.NaN, { length: 'm' })).toThrow(/length_m must be a finite number, got NaN/);
    expect(() => formatSpeed(Number.POSITIVE_INFINITY, { speed: 'kn' })).toThrow(RangeError);
    expect(() => formatTemperature(Number.NaN, 'C')).toThrow(RangeError);
  });

  it('what is written is read back, to the digits written', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -500, max: 500, noNaN: true }),
        fc.constantFrom('m', 'ft'),
        fc.constantFrom('mps', 'mph', 'kmh', 'kn'),
        (x, length, speed) => {
          const [readLength, readSpeed] = [
            parseLength_m(formatLength(x, { length }, 6)),
            parseSpeed_mps(formatSpeed(x, { speed }, 6)),
          ];
          expect(readLength.ok && Math.abs(readLength.value - x)).toBeLessThanOrEqual(1e-6);
          expect(readSpeed.ok && Math.abs(readSpeed.value - x)).toBeLessThanOrEqual(1e-6);
        },
      ),
      { seed: 12 },
    );
  });
});
