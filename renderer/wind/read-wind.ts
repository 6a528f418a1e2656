import { STRONGEST_GUST_mps, STRONGEST_WIND_mps } from '../../core/air/day-input.ts';
import type { Result } from '../../core/units/result.ts';
import { formatSpeed } from '../../core/units/speed.ts';
import type { UnitsChoice } from '../../core/units/units-choice.ts';
import { readSpeed } from '../words/read-quantity.ts';

type Speeds = Pick<UnitsChoice, 'speed'>;

/** A wind that can blow over a course, in m/s; a plain number is in the unit the player reads. */
export const readWind = (text: string, units: Speeds, path = 'wind'): Result<number> =>
  withMost(STRONGEST_WIND_mps, units, path, readSpeed(text, units, path));

/** The same for gusts; null for none given. */
export const readGust = (text: string, units: Speeds, path = 'gusts'): Result<number | null> =>
  /^\s*(not given|none|-|–|—)?\s*$/i.test(text)
    ? { ok: true, value: null }
    : withMost(STRONGEST_GUST_mps, units, path, readSpeed(text, units, path));

function withMost(most_mps: number, units: Speeds, path: string, read: Result<number>): Result<number> {
  return read.ok && (read.value < 0 || read.value > most_mps)
    ? { ok: false, problems: [{ path, message: `must lie between 0 and ${formatSpeed(most_mps, units, 0)}` }] }
    : read;
}
