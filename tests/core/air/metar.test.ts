import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseMetar } from '../../../core/air/metar.ts';

// Reports invented for these tests; what each group means: ICAO Annex 3, app. 3.
describe('what a report leaves out is named', () => {
  it.each([
    ['METAR EGXX 171100Z ///// //// ///// //////// ///// Q////', ['wind', 'temperature', 'dew point', 'pressure']],
    ['METAR EGXX 171100Z /////KT 9999 12/10 Q1013', ['wind']],
    ['METAR EGXX 171100Z ///08KT 9999 12/10 Q1013', ['wind direction']],
    ['METAR EGXX 171100Z 270//KT 9999 12/10 Q1013', ['wind']],
    ['METAR EGXX 171100Z 27008KT 9999 12/// Q1013', ['dew point']],
    ['METAR EGXX 171100Z 27008KT 9999 M02/ Q1013', ['dew point']],
    ['METAR EGXX 171100Z 27008KT', ['temperature', 'dew point', 'pressure']],
  ])('%s', (text, missing) => {
    const result = parseMetar(text);
    expect(result.ok && result.value.missing).toEqual(missing);
  });

  it('keeps a temperature whose dew point is missing', () => {
    const result = parseMetar('METAR EGXX 171100Z 27008KT 9999 M02/// Q1013');
    expect(result.ok && result.value.temperature_C).toBe(-2);
    expect(result.ok && result.value).not.toHaveProperty('relativeHumidity');
  });
});

describe('only the observation counts', () => {
  it('a wind in the trend or the remarks is not the wind', () => {
    const result = parseMetar('METAR EGXX 171100Z CAVOK 05/M01 Q0987 TEMPO 30020G40KT');
    expect(result.ok && result.value).toMatchObject({
      missing: ['wind'],
      temperature_C: 5,
      dewPoint_C: -1,
      qnh_hPa: 987,
    });
    expect(result.ok && result.value).not.toHaveProperty('wind');
  });
  it('letter case, line breaks and a closing = do not matter', () => {
    const plain = parseMetar('METAR EGXX 171100Z 27008KT 9999 12/10 Q1013');
    expect(parseMetar('  metar egxx 171100z\n 27008kt 9999 12/10 q1013=\n')).toEqual(plain);
  });
  it.each([
    ['+TSRA', true],
    ['TS', true],
    ['VCTS', true],
    ['-TSRA', true],
    ['RA', false],
  ])('weather %s: thunder %s', (weather, thunder) => {
    const result = parseMetar(`METAR EGXX 171100Z 27008KT 9999 ${weather} 12/10 Q1013`);
    expect(result.ok && result.value.thunder).toBe(thunder);
  });
});

describe('what is no METAR is refused with a reason', () => {
  it.each([
    ['', 'not a METAR line'],
    ['hello there', 'not a METAR line'],
    ['27010KT', 'not a METAR line'],
    ['TAF EGXX 121100Z 1212/1318 24010KT 9999 SCT030', 'this is a TAF'],
    ['METAR EGXX 171100Z NIL', 'no observation (NIL)'],
    ['METAR EGXX 171100Z 37010KT 9999', '"37010KT": a direction of 370° is past 360'],
    ['METAR EGXX 171100Z 27020G10KT 9999', 'the gust is below the mean'],
    ['METAR EGXX 171100Z 27010KT 240V400 9999', 'swing 240V400 is past 360'],
  ])('%s', (text, message) => {
    const result = parseMetar(text, 'air.metar');
    expect(result.ok).toBe(false);
    if (result.ok) return;
    expect(result.problems[0]!.path).toBe('air.metar');
    expect(result.problems[0]!.message).toContain(message);
  });

  it('never throws, whatever groups stand in the line', () => {
    const group = fc.oneof(
      fc.constantFrom(
        '27010KT',
        'VRB03KT',
        '////',
        'Q1013',
        'A2992',
        'RMK',
        'T0',
        'SLP',
        'TEMPO',
        '12/10',
        'R26/0500V1000U',
        '-TSRA',
        'FEW',
        '240V300',
      ),
      fc.string({ maxLength: 8 }),
    );
    fc.assert(
      fc.property(fc.array(group, { maxLength: 10 }), groups => {
        const result = parseMetar(`METAR EGXX 171100Z ${groups.join(' ')}`);
        if (result.ok) expect(Number.isNaN(result.value.wind?.speed_mps ?? 0)).toBe(false);
        else expect(result.problems.length).toBeGreaterThan(0);
      }),
      { seed: 22, numRuns: 1000 },
    );
  });
});
