import { describe, expect, it } from 'vitest';
import { holeWinds, playOrder, RoundWindsSchema, windsTrouble } from '../../../core/air/round-winds.ts';

const EARLY = { at_min: 540, speed_mps: 2, from_deg: 270 };
const LATE = { at_min: 560, speed_mps: 8, from_deg: 90 };

describe('winds by tee time', () => {
  it('go round the course from the hole that is thrown off first', () => {
    expect(playOrder(['1', '2', '3', '4'], '3')).toEqual(['3', '4', '1', '2']);
    expect(playOrder(['1', '2'])).toEqual(['1', '2']);
    expect(() => playOrder(['1', '2'], '9')).toThrow('there is no hole 9');
  });

  it('give every hole the wind of its own time, whatever order they are written in', () => {
    const winds = { list: [LATE, EARLY], teeTime_min: 540, hole_min: 10 };
    // by hand: 2 from west to 8 from east in twenty minutes is 3 from east after ten
    expect(holeWinds(winds, ['5', '6', '1']).map(({ ref, at, wind }) => [ref, at, wind.speed_mps])).toEqual([
      ['5', '09:00', 2],
      ['6', '09:10', expect.closeTo(3, 12)],
      ['1', '09:20', 8],
    ]);
  });

  it('name a time given twice and a gust below its wind, each at its own field', () => {
    const list = [EARLY, { ...LATE, gust_mps: 6 }, { ...LATE, at_min: 540 }];
    expect(windsTrouble({ list })).toEqual([
      { path: 'list.1.gust_mps', message: expect.stringMatching(/^at 09:20 the gust \(6\.0 m\/s\) is below/) },
      { path: 'list.2.at_min', message: expect.stringMatching(/two winds are given for 09:00/) },
    ]);
    expect(windsTrouble({ list: [EARLY, LATE] })).toEqual([]);
  });

  it('are refused without a time, out of their ranges, or with what nobody knows', () => {
    const good = { list: [EARLY], teeTime_min: 540, hole_min: 10 };
    const refused = (winds: unknown) =>
      RoundWindsSchema.safeParse(winds).error?.issues.map(({ path }) => path.join('.'));
    expect(refused(good)).toBeUndefined();
    expect(refused({ ...good, list: [] })).toEqual(['list']);
    expect(refused({ ...good, teeTime_min: 1440, hole_min: 0 })).toEqual(['teeTime_min', 'hole_min']);
    expect(refused({ ...good, list: [{ ...EARLY, speed_mps: 41 }] })).toEqual(['list.0.speed_mps']);
    expect(refused({ ...good, list: [{ ...EARLY, wind: 1 }] })).toEqual(['list.0']);
  });
});
