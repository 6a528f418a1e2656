import { readFileSync } from 'node:fs';
import { type Command, Option } from 'commander';
import { parseClock_min } from '../../../core/air/clock.ts';
import { parseTimedWinds, type TimedWind } from '../../../core/air/timed-winds.ts';
import type { Problem, Result } from '../../../core/units/result.ts';
import { fileTrouble } from '../../files/file-trouble.ts';
import { ASSUMED_HOLE_MIN, type RoundTimes } from '../../planning/wind-by-hole.ts';
import type { AirOptions } from './air-options.ts';
import { wholeNumber } from './reading.ts';

export type WindOptions = Readonly<{ winds?: string; teeTime?: string; holeMinutes?: number }>;

export const WIND_OPTION_OF: Readonly<Record<string, string>> = {
  winds: '--winds',
  teeTime: '--tee-time',
  holeMinutes: '--hole-minutes',
};

const MOST_HOLE_MIN = 120;

export function addWindOptions(command: Command): Command {
  return command
    .option(
      '--winds <winds>',
      'wind by the time of the day: "09:00 3 from 270, 10:30 6 from 250 gust 9", a JSON list, or a file of either',
    )
    .option(
      '--tee-time <time>',
      'with --winds: when the first hole is thrown off, 09:10 (default: the first time given)',
    )
    .addOption(
      new Option(
        '--hole-minutes <minutes>',
        `with --winds: from one tee to the next (default: ${ASSUMED_HOLE_MIN})`,
      ).argParser(wholeNumber),
    );
}

/** The winds of these options, undefined when none are given; problems carry paths that `WIND_OPTION_OF` knows. */
export function roundTimes({
  winds,
  teeTime,
  holeMinutes,
  ...still
}: WindOptions & Pick<AirOptions, 'wind' | 'windFrom' | 'gust'>): Result<RoundTimes | undefined> {
  const without = (path: string): Problem => ({ path, message: 'is only for a wind that changes: give --winds too' });
  if (winds === undefined) {
    const problems = [
      ...(teeTime === undefined ? [] : [without('teeTime')]),
      ...(holeMinutes === undefined ? [] : [without('holeMinutes')]),
    ];
    return problems.length > 0 ? { ok: false, problems } : { ok: true, value: undefined };
  }
  if ([still.wind, still.windFrom, still.gust].some(value => value !== undefined))
    return {
      ok: false,
      problems: [
        { path: 'winds', message: 'stands in place of --wind, --wind-from and --gust: give one or the other' },
      ],
    };
  const text = written(winds);
  const blows = text.ok ? parseTimedWinds(text.value) : text;
  const starts = teeTime === undefined ? undefined : parseClock_min(teeTime, 'teeTime');
  const problems = [...(blows.ok ? [] : blows.problems), ...(starts?.ok === false ? starts.problems : [])];
  if (holeMinutes !== undefined && !(holeMinutes >= 1 && holeMinutes <= MOST_HOLE_MIN))
    problems.push({ path: 'holeMinutes', message: `must lie in 1…${MOST_HOLE_MIN} minutes` });
  if (!blows.ok || starts?.ok === false || problems.length > 0) return { ok: false, problems: problems.map(named) };
  return {
    ok: true,
    value: {
      winds: blows.value,
      teeTime_min: starts?.value ?? firstOf(blows.value),
      hole_min: holeMinutes ?? ASSUMED_HOLE_MIN,
      assumed: holeMinutes === undefined,
    },
  };
}

const firstOf = (winds: readonly TimedWind[]): number => winds[0]?.at_min ?? 0;

/** Inside a list of winds the option is the list. */
function named({ path, message }: Problem): Problem {
  const [root, ...rest] = path.split('.');
  return root === 'winds' && rest.length > 0
    ? {
        path: 'winds',
        message: `entry ${Number(rest[0]) + 1}${rest.length > 1 ? ` (${rest.slice(1).join('.')})` : ''}: ${message}`,
      }
    : { path, message };
}

function written(winds: string): Result<string> {
  if (/^\s*(?:\[|\d{1,2}[:.]\d\d\s)/.test(winds)) return { ok: true, value: winds };
  try {
    return { ok: true, value: readFileSync(winds, 'utf8') };
  } catch (error) {
    const message = `"${winds}" is no list of winds (write "09:00 3 from 270, 10:30 6 from 250"); as a file: ${fileTrouble(error)}`;
    return { ok: false, problems: [{ path: 'winds', message }] };
  }
}
