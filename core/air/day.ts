import type { Result } from '../units/result.ts';
import { airOfDay } from './air-of-day.ts';
import { type DayInput, dayInputSchema } from './day-input.ts';
import { type Metar, parseMetar } from './metar.ts';
import { windOfDay } from './wind-of-day.ts';

/** The air of one round, as every throw of it meets it. */
export type Day = Readonly<{
  density_kgpm3: number;
  wind: Readonly<{
    /** At 10 m over open ground; `windProfile` brings it down to the hole. */
    speed_mps: number;
    /** Where it blows from, clockwise from true north, 0 ≤ from < 360. */
    from_deg: number;
    /** Strongest 3 s of some ten minutes, same place. */
    gust_mps: number;
    /** Standard deviation. */
    directionSpread_deg: number;
  }>;
  /** Only when given or reported. */
  temperature_C?: number;
  /** 0…1; only when given or reported. */
  relativeHumidity?: number;
  /** A report says that there is a thunderstorm at or near the station. */
  thunder: boolean;
  /** Where the wind comes from, for the sheet: "as given", "METAR KMEM 230853Z". */
  source: string;
  /** Everything assumed or converted, in words. */
  notes: readonly string[];
}>;

/**
 * One day's air from what the player typed, a METAR, or both.
 * @param input - `DayInput`, unchecked
 * @returns the day with its assumptions in `notes`, or every problem found, paths as in the input (`wind.gust_mps`)
 */
export function makeDay(input: unknown): Result<Day> {
  const parsed = dayInputSchema.safeParse(input);
  if (!parsed.success) {
    return {
      ok: false,
      problems: parsed.error.issues.map(issue => ({ path: issue.path.join('.') || 'air', message: issue.message })),
    };
  }
  const given = parsed.data;
  const report = given.metar === undefined ? undefined : parseMetar(given.metar, 'metar');
  if (report?.ok === false) return report;
  const metar = report?.value;
  const notes: string[] = [];
  if (metar && metar.missing.length > 0)
    notes.push(`The report of ${metar.station} leaves out: ${metar.missing.join(', ')}.`);
  const wind = windOfDay(given, metar, notes);
  const air = airOfDay(given, metar, notes);
  const problems = [...(wind.ok ? [] : wind.problems), ...(air.ok ? [] : air.problems)];
  if (!wind.ok || !air.ok) return { ok: false, problems };
  return {
    ok: true,
    value: {
      ...air.value,
      wind: wind.value,
      thunder: metar?.thunder ?? false,
      source: sourceOfWind(given, metar),
      notes,
    },
  };
}

function sourceOfWind(given: DayInput, metar: Metar | undefined): string {
  if (given.wind?.speed_mps !== undefined)
    return metar ? `as given, the rest from METAR ${metar.station} ${metar.issued}` : 'as given';
  return metar ? `METAR ${metar.station} ${metar.issued}` : 'no wind given: calm air';
}
