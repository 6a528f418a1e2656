import { parseClock_min } from '../../core/air/clock.ts';
import { byTime, windsTrouble } from '../../core/air/round-winds.ts';
import { parseTimedWinds, type TimedWind } from '../../core/air/timed-winds.ts';
import type { Problem, Result } from '../../core/units/result.ts';
import type { UnitsChoice } from '../../core/units/units-choice.ts';
import { parseBearing } from './parse-bearing.ts';
import { readGust, readWind } from './read-wind.ts';

const HOW = 'write a line for each time: time, wind, where it blows from and, if known, gusts, such as "09:00 3 W 6"';
const MOST_LINES = 48;
const TIME = /^\s*\d{1,2}[:.h]\d{2}/i;

/**
 * Winds pasted from a forecast: a line for each time with the columns time, wind, from, gusts, apart by tabs, semicolons, bars or
 * blanks; lines before the first time are taken for the head. "09:00 3 from 270, 10:30 6 from W gust 9" is read too.
 * @param units - plain numbers are in its unit of speed
 * @returns in the order of time; problems have paths such as `line 2`
 */
export function parseForecast(text: string, units: Pick<UnitsChoice, 'speed'>): Result<readonly TimedWind[]> {
  if (/\sfrom\s/i.test(text) && /^\s*\d/.test(text)) return parseTimedWinds(text);
  const lines = text.split(/\r?\n/).map((line, i) => ({ line: line.trim(), path: `line ${i + 1}` }));
  const first = lines.findIndex(({ line }) => TIME.test(line));
  if (first === -1) return refused([{ path: 'forecast', message: `holds no line that begins with a time: ${HOW}` }]);
  const rows = lines.slice(first).filter(({ line }) => line !== '');
  if (rows.length > MOST_LINES)
    return refused([{ path: 'forecast', message: `holds more than ${MOST_LINES} times: paste those of the round` }]);
  const read = rows.map(({ line, path }) => readLine(line, path, units));
  const problems = read.flatMap(row => (row.ok ? [] : row.problems));
  if (problems.length > 0) return refused(problems);
  const winds = read.flatMap(row => (row.ok ? [row.value] : []));
  const trouble = windsTrouble({ list: winds }).map(({ path, message }) => ({
    path: rows[Number(path.split('.')[1])]!.path,
    message,
  }));
  return trouble.length > 0 ? refused(trouble) : { ok: true, value: byTime(winds) };
}

function readLine(line: string, path: string, units: Pick<UnitsChoice, 'speed'>): Result<TimedWind> {
  const [time, wind, from, gust = '', ...more] = cellsOf(line);
  if (time === undefined || wind === undefined || from === undefined || more.length > 0)
    return refused([{ path, message: `"${line.slice(0, 60)}" is not understood: ${HOW}` }]);
  const at = parseClock_min(time.replace(/^(\d{1,2})h(\d{2})$/i, '$1:$2'), path);
  const speed = readWind(wind, units, path);
  const bearing = parseBearing(from);
  const strongest = readGust(gust, units, path);
  const problems: Problem[] = [at, speed, strongest].flatMap(part => (part.ok ? [] : part.problems));
  if (!bearing.ok) problems.push({ path, message: `"${from}": ${bearing.problems[0]!.message}` });
  if (!at.ok || !speed.ok || !bearing.ok || !strongest.ok) return refused(problems);
  return {
    ok: true,
    value: {
      at_min: at.value,
      speed_mps: speed.value,
      from_deg: bearing.value,
      ...(strongest.value !== null && { gust_mps: strongest.value }),
    },
  };
}

/** The columns of a line; a blank before a unit parts none. */
function cellsOf(line: string): readonly string[] {
  const joined = line.replace(/(\d)\s+(m\/s|mps|km\/h|kmh|kph|mph|kn|kts?|knots?|°)(?=[\s;|]|$)/gi, '$1$2');
  return joined.split(/[\t;|]/.test(joined) ? /\s*[\t;|]\s*/ : /\s+/);
}

function refused(problems: readonly Problem[]): Result<never> {
  return { ok: false, problems: [...problems] };
}
