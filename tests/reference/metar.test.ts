import { describe, expect, it } from 'vitest';
import { type Metar, parseMetar } from '../../core/air/metar.ts';

const KNOT = 1852 / 3600;
const read = (text: string): Metar => {
  const result = parseMetar(text);
  if (!result.ok) throw new Error(result.problems.map(problem => problem.message).join());
  return result.value;
};
const near = (got: number | undefined, want: number, tol: number) =>
  expect(Math.abs((got ?? Number.NaN) - want)).toBeLessThanOrEqual(tol);

// Groups as printed in public training texts on METAR (US Navy aerographer's manual, FAA Aeronautical Information Manual); values [C] by hand.
describe('wind groups', () => {
  it.each([
    { group: '13008KT', from: 130, speed: 4.116, gust: undefined },
    { group: '08032G45KT', from: 80, speed: 16.462, gust: 23.15 },
    { group: '210103G130KT', from: 210, speed: 103 * KNOT, gust: 130 * KNOT },
    { group: '27025G40KT', from: 270, speed: 25 * KNOT, gust: 40 * KNOT },
    { group: '27006G12MPS', from: 270, speed: 6, gust: 12 },
    { group: '27036KMH', from: 270, speed: 10, gust: undefined },
    { group: '36010KT', from: 0, speed: 10 * KNOT, gust: undefined },
  ])('$group', ({ group, from, speed, gust }) => {
    const { wind } = read(`METAR EGXX 171100Z ${group} 9999 12/10 Q1013`);
    expect(wind).toMatchObject({ from_deg: from, variable: false, atLeast: false });
    near(wind!.speed_mps, speed, 6e-4);
    if (gust === undefined) expect(wind).not.toHaveProperty('gust_mps');
    else near(wind!.gust_mps, gust, 6e-4);
  });

  it('32012G22KT 280V350: the direction swings', () => {
    const { wind } = read('METAR EGXX 171100Z 32012G22KT 280V350 9999 12/10 Q1013');
    expect(wind).toMatchObject({ from_deg: 320, swing_deg: [280, 350] });
    near(wind!.speed_mps, 12 * KNOT, 1e-9);
    near(wind!.gust_mps, 22 * KNOT, 1e-9);
  });

  it('VRB04KT: no direction', () => {
    const { wind } = read('METAR EGXX 171100Z VRB04KT 9999 12/10 Q1013');
    expect(wind).toMatchObject({ variable: true });
    expect(wind).not.toHaveProperty('from_deg');
    near(wind!.speed_mps, 2.058, 6e-4);
  });

  it('00000KT: calm', () => {
    const { wind, missing } = read('METAR EGXX 171100Z 00000KT 9999 12/10 Q1013');
    expect(wind).toEqual({ speed_mps: 0, variable: false, atLeast: false });
    expect(missing).toEqual([]);
  });

  // ICAO Annex 3, app. 3: P99KT is 100 kt or more, P49MPS 50 m/s or more
  it.each([
    ['270P99KT', 100 * KNOT],
    ['270P49MPS', 50],
  ])('%s: that or more', (group, want) => {
    const { wind } = read(`METAR EGXX 171100Z ${group} 9999 12/10 Q1013`);
    expect(wind?.atLeast).toBe(true);
    near(wind!.speed_mps, want, 1e-9);
  });
});

// Reports as printed in public training texts (FAA Aeronautical Information Manual and decoding guides), shortened where they were; values [C] by hand.
describe('whole reports', () => {
  it('KMEM: tenths of degrees, altimeter in inches', () => {
    const metar = read('KMEM 230853Z AUTO 18014G18KT 10SM CLR 16/M02 A3008 RMK AO2 SLP117 T01561022');
    expect(metar).toMatchObject({
      station: 'KMEM',
      issued: '230853Z',
      temperature_C: 15.6,
      dewPoint_C: -2.2,
      missing: [],
      thunder: false,
    });
    expect(metar.wind).toMatchObject({ from_deg: 180 });
    near(metar.wind!.speed_mps, 14 * KNOT, 1e-9);
    near(metar.wind!.gust_mps, 18 * KNOT, 1e-9);
    near(metar.qnh_hPa, 1018.63, 0.006);
    near(metar.seaLevelPressure_hPa, 1011.7, 1e-9);
    near(metar.relativeHumidity, 0.294, 6e-4);
  });
  it('KBIL: below zero', () => {
    const metar = read('KBIL 162256Z 29017G27KT 10SM M02/M02 A2961 RMK AO2 SLP205 T10171022');
    expect(metar).toMatchObject({ temperature_C: -1.7, dewPoint_C: -2.2 });
    expect(metar.wind).toMatchObject({ from_deg: 290 });
    near(metar.qnh_hPa, 1002.71, 0.006);
    near(metar.seaLevelPressure_hPa, 1020.5, 1e-9);
    near(metar.relativeHumidity, 0.964, 6e-4);
  });
  it('KABQ: swinging', () => {
    const metar = read('KABQ 100156Z 32010KT 280V340 10SM 19/14 A2999 RMK AO2 SLP085 T01940144');
    expect(metar).toMatchObject({
      temperature_C: 19.4,
      dewPoint_C: 14.4,
      wind: { from_deg: 320, swing_deg: [280, 340] },
    });
    near(metar.qnh_hPa, 1015.58, 0.006);
    near(metar.seaLevelPressure_hPa, 1008.5, 1e-9);
  });
  it('KLAX: a corrected report', () => {
    const metar = read('KLAX 161550Z COR 11004KT 10SM 19/16 A2993 RMK AO2 T01890156');
    expect(metar).toMatchObject({ station: 'KLAX', temperature_C: 18.9, dewPoint_C: 15.6, wind: { from_deg: 110 } });
  });
  it('SVVA: calm, hectopascals, no remarks', () => {
    const metar = read('SVVA 171100Z 00000KT 9999 FEW016 BKN250 21/19 Q1013 NOSIG');
    expect(metar).toMatchObject({ temperature_C: 21, dewPoint_C: 19, qnh_hPa: 1013, wind: { speed_mps: 0 } });
    near(metar.relativeHumidity, 0.884, 6e-4);
  });
  it('A2992 is 1013.21 hPa', () => near(read('EGXX 171100Z 00000KT 9999 21/19 A2992').qnh_hPa, 1013.21, 0.006));
});
