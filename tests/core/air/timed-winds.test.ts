import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { clockText, parseClock_min } from '../../../core/air/clock.ts';
import { parseTimedWinds, type TimedWind, windAtTime } from '../../../core/air/timed-winds.ts';

function taken(text: string): readonly TimedWind[] {
  const read = parseTimedWinds(text);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.value;
}
function problemsOf(text: string) {
  const read = parseTimedWinds(text);
  return read.ok ? [] : read.problems;
}

describe('a time of the day', () => {
  it.each([
    { text: '09:00', want: 540 },
    { text: '9:05', want: 545 },
    { text: '17.30', want: 1050 },
    { text: ' 00:00 ', want: 0 },
    { text: '23:59', want: 1439 },
  ])('$text is $want minutes after midnight (by hand), and is written back', ({ text, want }) => {
    expect(parseClock_min(text, 'time')).toEqual({ ok: true, value: want });
    expect(parseClock_min(clockText(want), 'time')).toEqual({ ok: true, value: want });
  });

  it.each(['24:00', '9', '9:60', 'noon', '', '9:5', '-1:00'])('refuses "%s"', text => {
    expect(parseClock_min(text, 'teeTime')).toMatchObject({ ok: false, problems: [{ path: 'teeTime' }] });
  });

  it('starts again after midnight', () => {
    expect([clockText(1440), clockText(1505), clockText(-10)]).toEqual(['00:00', '01:05', '23:50']);
  });
});

describe('winds by the time of the day', () => {
  it('are read from words, units and compass points as elsewhere, in any order', () => {
    expect(taken('10:30 6 from 250 gust 9, 09:00 3 from 270')).toEqual([
      { at_min: 540, speed_mps: 3, from_deg: 270 },
      { at_min: 630, speed_mps: 6, from_deg: 250, gust_mps: 9 },
    ]);
    // 10 mph = 4.4704 m/s: NIST SP 811 (2008), App. B.8
    expect(taken('9:00 10mph from wsw gusts 10 kn')).toEqual([
      { at_min: 540, speed_mps: expect.closeTo(4.4704, 9), from_deg: 247.5, gust_mps: expect.closeTo(5.1444, 4) },
    ]);
  });

  it('are read from JSON', () => {
    expect(
      taken(
        '[{"time":"09:00","speed_mps":3,"from_deg":270},{"time":"10:30","speed_mps":6,"from_deg":250,"gust_mps":9}]',
      ),
    ).toEqual(taken('09:00 3 from 270, 10:30 6 from 250 gust 9'));
  });

  it.each([
    { text: '', path: 'winds', says: 'write a time' },
    { text: '09:00 strong from 270', path: 'winds.0', says: 'speed' },
    { text: '09:00 3 from 270, 10:00 4', path: 'winds.1', says: 'not understood' },
    { text: '25:00 3 from 270', path: 'winds.0', says: 'no time of the day' },
    { text: '09:00 3 from nowhere', path: 'winds.0', says: 'no direction' },
    { text: '09:00 3 from 361', path: 'winds.0', says: 'no direction' },
    { text: '09:00 -3 from 270', path: 'winds.0', says: 'negative' },
    { text: '09:00 3 from 270, 9:00 4 from 270', path: 'winds', says: 'two winds are given for 09:00' },
    { text: '[', path: 'winds', says: 'JSON' },
    { text: '[{"time":"09:00","speed_mps":-1,"from_deg":0}]', path: 'winds.0.speed_mps', says: 'negative' },
    { text: '[{"time":"9","speed_mps":1,"from_deg":0}]', path: 'winds.0.time', says: 'no time' },
    { text: '[{"time":"09:00","speed_mps":1,"from":0}]', path: 'winds.0.from_deg', says: 'degrees' },
    { text: '[]', path: 'winds', says: 'write a time' },
  ])('$text: $path, $says', ({ text, path, says }) => {
    expect(problemsOf(text)).toContainEqual({ path, message: expect.stringContaining(says) });
  });
});

describe('the wind at a time', () => {
  const DAY = taken('09:00 4 from 270, 10:00 4 from 360 gust 6, 11:00 8 from 360 gust 12');

  it.each([
    { at: '08:00', want: { speed_mps: 4, from_deg: 270 }, why: 'held before the first time' },
    { at: '09:00', want: { speed_mps: 4, from_deg: 270 }, why: 'as given' },
    // halfway between 4 from west and 4 from north: (−2, 2), so √8 from north-west
    { at: '09:30', want: { speed_mps: Math.sqrt(8), from_deg: 315 }, why: 'by hand, in components' },
    { at: '10:30', want: { speed_mps: 6, from_deg: 0, gust_mps: 9 }, why: 'by hand' },
    { at: '12:00', want: { speed_mps: 8, from_deg: 0, gust_mps: 12 }, why: 'held after the last time' },
  ])('$at: $why', ({ at, want }) => {
    const minutes = parseClock_min(at, 'at');
    const wind = windAtTime(DAY, minutes.ok ? minutes.value : Number.NaN);
    expect(wind.speed_mps).toBeCloseTo(want.speed_mps, 12);
    expect(((wind.from_deg - want.from_deg + 540) % 360) - 180).toBeCloseTo(0, 9);
    if (want.gust_mps === undefined) expect(wind.gust_mps).toBeUndefined();
    else expect(wind.gust_mps).toBeCloseTo(want.gust_mps, 12);
  });

  it('is never stronger than the stronger of its neighbours, nor its gust below it', () => {
    const winds = fc.array(
      fc.record({
        at_min: fc.integer({ min: 0, max: 1439 }),
        speed_mps: fc.double({ min: 0, max: 20, noNaN: true }),
        from_deg: fc.double({ min: 0, max: 360, noNaN: true }),
        more: fc.double({ min: 1, max: 2, noNaN: true }),
      }),
      { minLength: 1, maxLength: 5 },
    );
    fc.assert(
      fc.property(winds, fc.integer({ min: 0, max: 1439 }), (given, at_min) => {
        const sorted = given
          .map(({ more, ...wind }) => ({ ...wind, gust_mps: more * wind.speed_mps }))
          .sort((a, b) => a.at_min - b.at_min);
        const wind = windAtTime(sorted, at_min);
        expect(wind.speed_mps).toBeLessThanOrEqual(Math.max(...sorted.map(each => each.speed_mps)) + 1e-9);
        expect(wind.gust_mps).toBeGreaterThanOrEqual(wind.speed_mps - 1e-9);
        expect(wind.from_deg).toBeGreaterThanOrEqual(0);
        expect(wind.from_deg).toBeLessThanOrEqual(360);
      }),
      { seed: 3, numRuns: 300 },
    );
  });

  it('refuses to answer without any', () => {
    expect(() => windAtTime([], 600)).toThrow(RangeError);
  });
});
