import { z } from 'zod';
import type { Problem } from '../units/result.ts';
import { clockText } from './clock.ts';
import { STRONGEST_GUST_mps, STRONGEST_WIND_mps } from './day-input.ts';
import { type TimedWind, windAtTime } from './timed-winds.ts';

const DAY_MIN = 24 * 60;
/** A forecast for every half hour of a day. */
const MOST_WINDS = 48;
export const MOST_HOLE_MIN = 120;

const between = (low: number, high: number, unit: string) =>
  z
    .number(`must be a number of ${unit}`)
    .min(low, `must lie in ${low}…${high} ${unit}`)
    .max(high, `must lie in ${low}…${high} ${unit}`);

const TimedWindSchema = z.strictObject({
  at_min: between(0, DAY_MIN - 1, 'minutes after midnight'),
  speed_mps: between(0, STRONGEST_WIND_mps, 'm/s'),
  from_deg: between(0, 360, 'degrees').describe('where it blows from, clockwise from north'),
  gust_mps: between(0, STRONGEST_GUST_mps, 'm/s').optional(),
});

/** The winds of one round: forecasts by the time of the day, and when which hole is thrown off. */
export const RoundWindsSchema = z.strictObject({
  list: z
    .array(TimedWindSchema)
    .min(1, 'is empty: give at least one time with its wind')
    .max(MOST_WINDS, `holds more than ${MOST_WINDS} times`),
  teeTime_min: between(0, DAY_MIN - 1, 'minutes after midnight').describe('when the first hole is thrown off'),
  hole_min: between(1, MOST_HOLE_MIN, 'minutes').describe('from one tee to the next'),
});
export type RoundWinds = z.output<typeof RoundWindsSchema>;

/** A hole's wind as the list gives it, and when it is thrown off there. */
export type HoleWind = Readonly<{ ref: string; at: string; wind: TimedWind }>;

/** In the order of time, as a forecast is read. */
export const byTime = (list: readonly TimedWind[]): TimedWind[] => [...list].sort((a, b) => a.at_min - b.at_min);

/**
 * The holes in the order they are played when the round starts at one of them: a shotgun start goes on round the course.
 * @throws {RangeError} when there is no such hole
 */
export function playOrder(refs: readonly string[], startRef?: string): readonly string[] {
  if (startRef === undefined) return refs;
  const at = refs.indexOf(startRef);
  if (at === -1) throw new RangeError(`there is no hole ${startRef} to start at`);
  return [...refs.slice(at), ...refs.slice(0, at)];
}

/** Every hole's own wind. @param refs - all holes in the order of play */
export function holeWinds({ list, teeTime_min, hole_min }: RoundWinds, refs: readonly string[]): HoleWind[] {
  const winds = byTime(list);
  return refs.map((ref, i) => {
    const at_min = teeTime_min + i * hole_min;
    return { ref, at: clockText(at_min), wind: windAtTime(winds, at_min) };
  });
}

/** What no single field can tell. @returns problems with paths such as `list.1.gust_mps`, empty when it can be used */
export function windsTrouble({ list }: Pick<RoundWinds, 'list'>): Problem[] {
  return list.flatMap((wind, i) => {
    const twice = list.findIndex(other => other.at_min === wind.at_min);
    const problems: Problem[] = [];
    if (twice < i)
      problems.push({
        path: `list.${i}.at_min`,
        message: `two winds are given for ${clockText(wind.at_min)}: give one for each time`,
      });
    if (wind.gust_mps !== undefined && wind.gust_mps < wind.speed_mps)
      problems.push({
        path: `list.${i}.gust_mps`,
        message: `at ${clockText(wind.at_min)} the gust (${wind.gust_mps.toFixed(1)} m/s) is below the wind (${wind.speed_mps.toFixed(1)} m/s): give the strongest few seconds`,
      });
    return problems;
  });
}
