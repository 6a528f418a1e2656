import { splitSide } from '../../core/player/side-words.ts';
import { METERS_PER_FOOT, parseLength_m } from '../../core/units/length.ts';
import type { Result } from '../../core/units/result.ts';
import { MPS_PER, parseSpeed_mps } from '../../core/units/speed.ts';
import type { UnitsChoice } from '../../core/units/units-choice.ts';

/** Converted lengths keep a tenth of a millimetre: 300 ft is 91.44 m, not 91.44000000000001. */
const tidy = (value: number) => Math.round(value * 1e4) / 1e4 + 0;

/** A comma between figures is a decimal mark here: nobody throws thousands. */
const withPoint = (text: string) =>
  text
    .trim()
    .replace(/^−/, '-')
    .replace(/^([+-]?\d*),(\d+)/, '$1.$2');

/** Metres; a plain number is in the unit the player reads. */
export function readLength(text: string, units: Pick<UnitsChoice, 'length'>, path = 'length'): Result<number> {
  const plain = withPoint(text);
  const factor = units.length === 'ft' ? METERS_PER_FOOT : 1;
  if (/^[+-]?(\d+\.?\d*|\.\d+)$/.test(plain)) return { ok: true, value: tidy(Number(plain) * factor) };
  const read = parseLength_m(plain, path);
  return read.ok ? { ok: true, value: tidy(read.value) } : read;
}

/** Metres, right positive, by sign or by word: "-3", "3 l", "left 3"; null for nothing written. */
export function readSide(text: string, units: Pick<UnitsChoice, 'length'>, path = 'side'): Result<number | null> {
  if (text.trim() === '') return { ok: true, value: null };
  const { amount, direction } = splitSide(text);
  const read = readLength(amount, units, path);
  if (!read.ok || direction === null) return read;
  if (read.value < 0)
    return { ok: false, problems: [{ path, message: 'has a sign and a word: leave one of them out' }] };
  return { ok: true, value: (direction === 'left' ? -read.value : read.value) + 0 };
}

/** Metres per second; a plain number is in the unit the player reads. */
export function readSpeed(text: string, units: Pick<UnitsChoice, 'speed'>, path = 'wind'): Result<number> {
  const plain = withPoint(text);
  if (/^(\d+\.?\d*|\.\d+)$/.test(plain)) return { ok: true, value: tidy(Number(plain) * MPS_PER[units.speed]) };
  const read = parseSpeed_mps(plain, path);
  return read.ok ? { ok: true, value: tidy(read.value) } : read;
}

/** A length for a field that a plain number is typed into again. */
export function bareLength(length_m: number | undefined, units: Pick<UnitsChoice, 'length'>): string {
  if (length_m === undefined) return '';
  const value = units.length === 'ft' ? length_m / METERS_PER_FOOT : length_m;
  return String(Math.round(value * 100) / 100 + 0);
}

export function bareSpeed(speed_mps: number | undefined, units: Pick<UnitsChoice, 'speed'>): string {
  return speed_mps === undefined ? '' : String(Math.round((speed_mps / MPS_PER[units.speed]) * 100) / 100);
}
