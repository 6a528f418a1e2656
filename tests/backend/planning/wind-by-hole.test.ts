import { describe, expect, it } from 'vitest';
import { planRound } from '../../../backend/planning/plan-round.ts';
import { windByHole } from '../../../backend/planning/wind-by-hole.ts';
import { makeDay } from '../../../core/air/day.ts';
import { parseTimedWinds, type TimedWind } from '../../../core/air/timed-winds.ts';
import { parseCourse } from '../../../core/course/parse-course.ts';
import { fitPlayer } from '../../../core/player/fit-player.ts';
import { parsePlayer } from '../../../core/player/player-file.ts';
import type { Result } from '../../../core/units/result.ts';
import { tinyCourse, tinyPlayer } from '../tiny-round.ts';

const taken = <T>(result: Result<T>): T => {
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value;
};
const TURNING = taken(parseTimedWinds('09:00 2 from 270, 09:20 8 from 90'));
const times = (winds: readonly TimedWind[], hole_min = 20) => ({ winds, teeTime_min: 540, hole_min, assumed: false });

describe('windByHole', () => {
  it('gives every hole the wind of its own time, in the order of play, the rest of the day as given', () => {
    const days = taken(windByHole({ temperature_C: 10 }, times(TURNING, 10), ['1', '7A', '2']));
    // by hand: 2 from west to 8 from east in twenty minutes is 3 from east after ten
    expect([...days].map(([ref, { at, day }]) => [ref, at, day.wind.speed_mps, day.wind.from_deg])).toEqual([
      ['1', '09:00', 2, 270],
      ['7A', '09:10', expect.closeTo(3, 12), expect.closeTo(90, 9)],
      ['2', '09:20', 8, expect.closeTo(90, 9)],
    ]);
    for (const { day } of days.values()) expect(day.temperature_C).toBe(10);
    expect(days.get('1')?.day.notes[0]).toMatch(/first hole at 09:00, 10 minutes a hole/);
  });

  it('brings a wind measured near the ground up to 10 m, as for a single wind', () => {
    const wind = { speed_mps: 2, from_deg: 270, height_m: 2 };
    const own = taken(windByHole({ wind: { height_m: 2 } }, times(TURNING), ['1'])).get('1');
    expect(own?.day.wind).toEqual(taken(makeDay({ wind })).wind);
  });

  it('names a gust below the wind and the time, once', () => {
    const gusty = [{ at_min: 540, speed_mps: 5, from_deg: 0, gust_mps: 3 }];
    expect(windByHole({}, times(gusty), ['1', '2'])).toMatchObject({
      ok: false,
      problems: [{ path: 'winds', message: expect.stringMatching(/^at 09:00: the gust/) }],
    });
  });
});

describe('planRound with a wind of its own for each hole', () => {
  const course = taken(parseCourse(tinyCourse(), 'tiny'));
  const player = fitPlayer(taken(parsePlayer(tinyPlayer())));
  const limits = { classes: ['putter'], hands: ['backhand'] } as const;
  const refs = course.holes.map(hole => hole.ref);

  it('plans each as if that wind blew all day, and says it', async () => {
    const dayByHole = taken(windByHole({}, times(TURNING), refs));
    const first = dayByHole.get('1')!.day;
    const later = dayByHole.get('2')!.day;
    const mixed = taken(await planRound({ course, player, day: first, dayByHole, limits, seed: 7 }, { threads: 1 }));
    const steady = taken(
      await planRound({ course, player, day: later, limits, seed: 7, holes: ['2'] }, { threads: 1 }),
    );
    expect(mixed.holes[1]).toEqual({
      ...steady.holes[0],
      wind: { at: '09:20', speed_mps: 8, from_deg: later.wind.from_deg, gust_mps: later.wind.gust_mps },
    });
    expect(mixed.holes[0]?.wind).toMatchObject({ at: '09:00', speed_mps: 2, from_deg: 270 });
    expect(mixed.air.windSpeed_mps).toBe(2);
  });
});
