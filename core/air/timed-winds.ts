import { z } from 'zod';
import { COMPASS_POINTS } from '../units/compass-point.ts';
import type { Problem, Result } from '../units/result.ts';
import { parseSpeed_mps } from '../units/speed.ts';
import { clockText, parseClock_min } from './clock.ts';

/** The wind forecast for one time of the day, as forecasts give it: at 10 m unless the day says otherwise. */
export type TimedWind = Readonly<{
  /** Minutes after midnight, the course's own clock. */
  at_min: number;
  speed_mps: number;
  /** Where it blows from, clockwise from true north. */
  from_deg: number;
  gust_mps?: number;
}>;

const DEGREE = Math.PI / 180;
const ENTRY = /^(\S+)\s+(.+?)\s+from\s+(\S+)(?:\s+gusts?\s+(.+))?$/i;
const HOW =
  'write a time, a speed and where it blows from, such as "09:00 3 from 270" or "10:30 12mph from W gust 20mph"';

const entrySchema = z.strictObject({
  time: z.string('must be a time of the day such as "09:00"'),
  speed_mps: z.number('must be a number of m/s').min(0, 'must not be negative'),
  from_deg: z.number('must be degrees clockwise from north').min(0, 'must lie in 0…360').max(360, 'must lie in 0…360'),
  gust_mps: z.number('must be a number of m/s').min(0, 'must not be negative').optional(),
});

/**
 * Winds over the day from "09:00 3 from 270, 10:30 6 from 250 gust 9", or from a JSON list of
 * `{ time, speed_mps, from_deg, gust_mps? }`.
 * @returns in the order of time; problems with paths `winds.1` (and `winds.1.speed_mps` in JSON), from 0
 */
export function parseTimedWinds(text: string): Result<readonly TimedWind[]> {
  const entries = text.trim().startsWith('[') ? fromJson(text) : fromWords(text);
  if (!entries.ok) return entries;
  const winds = [...entries.value].sort((a, b) => a.at_min - b.at_min);
  if (winds.length === 0) return refused([{ path: 'winds', message: HOW }]);
  const twice = winds.find((wind, i) => i > 0 && wind.at_min === winds[i - 1].at_min);
  if (twice !== undefined)
    return refused([
      { path: 'winds', message: `two winds are given for ${clockText(twice.at_min)}: give one for each time` },
    ]);
  return { ok: true, value: winds };
}

/**
 * The wind at a time: as a vector in between two times, so that a turning wind eases on its way; gusts in proportion. Before the
 * first and after the last time it stays as it is there.
 * @param winds - in the order of time, at least one
 * @throws {RangeError} when there is none
 */
export function windAtTime(winds: readonly TimedWind[], at_min: number): TimedWind {
  const next = winds.findIndex(wind => wind.at_min >= at_min);
  const after = winds.at(next);
  if (after === undefined) throw new RangeError('no wind is given');
  const before = next > 0 ? winds[next - 1] : after;
  if (before === after || next === -1) return { ...after, at_min };
  const t = (at_min - before.at_min) / (after.at_min - before.at_min);
  const between = (a: number, b: number) => a + t * (b - a);
  const [ax, ay] = vector(before);
  const [bx, by] = vector(after);
  const [x, y] = [between(ax, bx), between(ay, by)];
  const speed_mps = Math.hypot(x, y);
  const gust_mps =
    before.gust_mps !== undefined && after.gust_mps !== undefined
      ? Math.max(speed_mps, between(before.gust_mps, after.gust_mps))
      : undefined;
  return {
    at_min,
    speed_mps,
    from_deg: (Math.atan2(x, y) / DEGREE + 360) % 360,
    ...(gust_mps !== undefined && { gust_mps }),
  };
}

const vector = ({ speed_mps, from_deg }: TimedWind): readonly [east: number, north: number] => [
  speed_mps * Math.sin(from_deg * DEGREE),
  speed_mps * Math.cos(from_deg * DEGREE),
];

function fromWords(text: string): Result<TimedWind[]> {
  const winds: TimedWind[] = [];
  const problems: Problem[] = [];
  text
    .split(/[,;\n]/)
    .map(part => part.trim())
    .filter(part => part !== '')
    .forEach((part, i) => {
      const path = `winds.${i}`;
      const [, time, speed, from, gust] = ENTRY.exec(part) ?? [];
      if (time === undefined || speed === undefined || from === undefined) {
        problems.push({ path, message: `"${part}" is not understood: ${HOW}` });
        return;
      }
      const at = parseClock_min(time, path);
      const mean = parseSpeed_mps(speed, path);
      const strongest = gust === undefined ? undefined : parseSpeed_mps(gust, path);
      const from_deg = direction(from);
      for (const read of [at, mean, strongest]) if (read && !read.ok) problems.push(...read.problems);
      if (from_deg === undefined)
        problems.push({ path, message: `"${from}" is no direction: write degrees from north or a compass point` });
      if (!at.ok || !mean.ok || strongest?.ok === false || from_deg === undefined) return;
      if (mean.value < 0) {
        problems.push({ path, message: 'a wind speed must not be negative' });
        return;
      }
      winds.push({
        at_min: at.value,
        speed_mps: mean.value,
        from_deg,
        ...(strongest && { gust_mps: strongest.value }),
      });
    });
  return problems.length > 0 ? refused(problems) : { ok: true, value: winds };
}

function direction(text: string): number | undefined {
  const point = (COMPASS_POINTS as readonly string[]).indexOf(text.toUpperCase());
  if (point >= 0) return point * (360 / COMPASS_POINTS.length);
  const degrees = /^(\d{1,3}(?:\.\d+)?)°?$/.exec(text)?.[1];
  return degrees !== undefined && Number(degrees) <= 360 ? Number(degrees) : undefined;
}

function fromJson(text: string): Result<TimedWind[]> {
  let read: unknown;
  try {
    read = JSON.parse(text);
  } catch {
    return refused([{ path: 'winds', message: 'starts like a JSON list but is none: check brackets and quotes' }]);
  }
  const parsed = z.array(entrySchema).safeParse(read);
  if (!parsed.success)
    return refused(
      parsed.error.issues.map(issue => ({ path: ['winds', ...issue.path].join('.'), message: issue.message })),
    );
  const winds: TimedWind[] = [];
  const problems: Problem[] = [];
  parsed.data.forEach(({ time, ...wind }, i) => {
    const at = parseClock_min(time, `winds.${i}.time`);
    if (!at.ok) problems.push(...at.problems);
    else winds.push({ at_min: at.value, ...wind });
  });
  return problems.length > 0 ? refused(problems) : { ok: true, value: winds };
}

function refused(problems: readonly Problem[]): Result<never> {
  return { ok: false, problems: [...problems] };
}
