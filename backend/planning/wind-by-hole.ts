import { clockText } from '../../core/air/clock.ts';
import { type Day, makeDay } from '../../core/air/day.ts';
import type { DayInput } from '../../core/air/day-input.ts';
import { type TimedWind, windAtTime } from '../../core/air/timed-winds.ts';
import type { Problem, Result } from '../../core/units/result.ts';

/** Minutes from one tee to the next; common practice for a group of four, no source. */
export const ASSUMED_HOLE_MIN = 10;

export type RoundTimes = Readonly<{
  winds: readonly TimedWind[];
  /** When the first hole is thrown off, minutes after midnight. */
  teeTime_min: number;
  hole_min: number;
  /** True when nobody said how long a hole takes. */
  assumed: boolean;
}>;

/** A hole's air and the time it is thrown off. */
export type HoleDay = Readonly<{ day: Day; at: string }>;

/**
 * The air of every hole of a round whose wind changes over the day. What is given beside the winds holds all day.
 * @param given - the day as the player typed it; its own wind is not used, but the height it is given at is
 * @param refs - all holes of the course in the order of play, also those not asked for: they take their time
 * @returns by ref; problems have paths `winds`, or as `makeDay` gives them
 */
export function windByHole(
  given: DayInput,
  { winds, teeTime_min, hole_min, assumed }: RoundTimes,
  refs: readonly string[],
): Result<ReadonlyMap<string, HoleDay>> {
  const days = new Map<string, HoleDay>();
  const problems: Problem[] = [];
  refs.forEach((ref, i) => {
    const at_min = teeTime_min + i * hole_min;
    const { speed_mps, from_deg, gust_mps } = windAtTime(winds, at_min);
    const wind = { height_m: given.wind?.height_m, exposure: given.wind?.exposure, speed_mps, from_deg, gust_mps };
    const made = makeDay({ ...given, wind });
    if (!made.ok) {
      problems.push(
        ...made.problems.map(({ path, message }) => ({
          path: path.startsWith('wind') ? 'winds' : path,
          message: path.startsWith('wind') ? `at ${clockText(at_min)}: ${message}` : message,
        })),
      );
      return;
    }
    const day = { ...made.value, source: 'as given, by tee time', notes: notesOf(made.value, i) };
    days.set(ref, { day, at: clockText(at_min) });
  });
  return problems.length > 0 ? { ok: false, problems: firstOfEach(problems) } : { ok: true, value: days };

  /** The first hole speaks for the day. */
  function notesOf(day: Day, i: number): readonly string[] {
    if (i > 0) return day.notes;
    const pace = `${hole_min} minutes a hole${assumed ? ' (assumed)' : ''}`;
    return [
      `Wind by tee time: first hole at ${clockText(teeTime_min)}, ${pace}, in between two times eased from one wind to the other; the air here is that of the first hole.`,
      ...day.notes,
    ];
  }
}

/** The same fault at every hole is told once. */
function firstOfEach(problems: readonly Problem[]): Problem[] {
  const seen = new Set<string>();
  return problems.filter(({ path }) => {
    if (seen.has(path)) return false;
    seen.add(path);
    return true;
  });
}
