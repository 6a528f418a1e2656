import { describe, expect, it } from 'vitest';
import { FIRST_SETTINGS } from '../../backend/api/handlers/settings.ts';
import { isRoundTable } from '../../renderer/review/is-round-file.ts';
import { startOf, wantedPlan } from '../../renderer/state/wanted-plan.ts';
import { parseForecast } from '../../renderer/wind/parse-forecast.ts';
import { roundDay } from '../../renderer/wind/round-day.ts';

const MPS = { speed: 'mps' } as const;

describe('a pasted forecast', () => {
  it.each([
    { name: 'tabs under a head', text: 'Time\tWind\tFrom\tGusts\n09:00\t3\tW\t6\n12:00\t5 m/s\t225°\t' },
    { name: 'blanks, in any order', text: '12:00 5 SW\n\n09:00 3 270 6\n' },
    { name: 'semicolons and decimal commas', text: '09:00;3,0;W;6,0\n12:00;5;SW;-' },
    { name: 'bars', text: 'time | wind\n09:00 | 3 | W | 6\n12:00 | 5 | SW' },
    { name: 'hours with an h, units apart', text: '9h00 3 m/s W 6 m/s\n12.00 18 km/h 225 °' },
    { name: 'sentences', text: '09:00 3 from 270 gust 6, 12:00 5 from SW' },
  ])('is read: $name', ({ text }) => {
    expect(parseForecast(text, MPS)).toEqual({
      ok: true,
      value: [
        { at_min: 540, speed_mps: 3, from_deg: 270, gust_mps: 6 },
        { at_min: 720, speed_mps: 5, from_deg: 225 },
      ],
    });
  });

  it('takes plain numbers in the unit that is read', () => {
    // 10 mph = 4.4704 m/s, NIST SP 811 B.8
    expect(parseForecast('09:00 10 W', { speed: 'mph' })).toMatchObject({ value: [{ speed_mps: 4.4704 }] });
  });

  it.each([
    { text: '', path: 'forecast', message: /no line that begins with a time/ },
    { text: '09:00 3', path: 'line 1', message: /is not understood: write a line/ },
    { text: 'head\n09:00 3 W 6\n25:00 3 W', path: 'line 3', message: /no time of the day/ },
    { text: '09:00 3 nowhere', path: 'line 1', message: /"nowhere": write degrees/ },
    { text: '09:00 50 W', path: 'line 1', message: /must lie between 0 and 40 m\/s/ },
    { text: '09:00 5 W 3', path: 'line 1', message: /the gust .* is below the wind/ },
    { text: '09:00 5 W\n09:00 6 W', path: 'line 2', message: /two winds are given for 09:00/ },
    { text: '09:00 5 W 6 7', path: 'line 1', message: /is not understood/ },
  ])('is refused where it cannot be: $text', ({ text, path, message }) => {
    expect(parseForecast(text, MPS)).toMatchObject({
      ok: false,
      problems: [{ path, message: expect.stringMatching(message) }],
    });
  });
});

describe('what is asked of the planner', () => {
  const ids = { courseId: crypto.randomUUID(), playerId: crypto.randomUUID() };
  const winds = { list: [{ at_min: 540, speed_mps: 3, from_deg: 270 }], teeTime_min: 540, hole_min: 10 };
  const settings = { ...FIRST_SETTINGS, ...ids, winds, isByTeeTime: true };

  it('has the winds only while the round is planned by tee time', () => {
    expect(wantedPlan(settings, ['1', '2'])?.winds).toEqual(winds);
    expect(wantedPlan({ ...settings, isByTeeTime: false }, ['1', '2'])).not.toHaveProperty('winds');
  });

  it('starts at the chosen hole where the course as played has it', () => {
    const chosen = { ...settings, startRefs: { [ids.courseId]: '2' } };
    expect(wantedPlan(chosen, ['1', '2'])?.startRef).toBe('2');
    expect(wantedPlan(chosen, ['2', '1'])).not.toHaveProperty('startRef');
    expect(wantedPlan(chosen, ['1', '3'])).not.toHaveProperty('startRef');
    expect([startOf(chosen, ['1', '3']), startOf(settings, ['5']), startOf(settings, [])]).toEqual([
      '1',
      '5',
      undefined,
    ]);
  });

  it('keeps of a round by tee time the wind in its middle, for a file that holds one', () => {
    const list = [
      { at_min: 540, speed_mps: 2, from_deg: 90, gust_mps: 3 },
      { at_min: 560, speed_mps: 8, from_deg: 90, gust_mps: 9 },
    ];
    const day = { temperature_C: 12, wind: { speed_mps: 1, from_deg: 0, gust_mps: 30, height_m: 1.5 } };
    const asked = { ...settings, day, winds: { ...winds, list } };
    // by hand: the second of three holes, ten minutes on, is half way between the two winds
    const middle = roundDay(asked, ['1', '2', '3']);
    expect(middle.temperature_C).toBe(12);
    expect(middle.wind?.height_m).toBe(1.5);
    expect(middle.wind?.speed_mps).toBeCloseTo(5, 9);
    expect(middle.wind?.gust_mps).toBeCloseTo(6, 9);
    expect(roundDay({ ...asked, isByTeeTime: false }, ['1', '2', '3'])).toBe(day);
  });
});

describe('a table dropped on the window', () => {
  it.each([
    ['date,hole,throw,disc', true],
    ['"Hole";"throw"', true],
    ['\uFEFFhole\tdisc', true],
    ['disc,distance_m,side_m', false],
    ['disc,whole_m', false],
  ])('%s: a round %s', (head, isRound) => expect(isRoundTable(`${head}\n1,2,hole`)).toBe(isRound));
});
