import { type CsvUnit, LENGTH_M, type LengthUnit, SPEED_MPS, type SpeedUnit } from '../../core/player/csv-columns.ts';
import { splitSide } from '../../core/player/side-words.ts';
import { COMPASS_POINTS } from '../../core/units/compass-point.ts';
import { parseLength_m } from '../../core/units/length.ts';
import { parseSpeed_mps } from '../../core/units/speed.ts';

export type DecimalMark = 'point' | 'comma';
export type DateOrder = 'ymd' | 'dmy' | 'mdy';

/** What a cell says, or what is wrong with it, as the second half of a sentence about the cell. */
export type Cell<T> = Readonly<{ value: T }> | Readonly<{ wrong: string }>;

/** Converted lengths keep a tenth of a millimetre: far below any tape, and the same again after an export. */
const CONVERTED_DIGITS = 1e4;

const shown = (text: string) => `"${text.length > 30 ? `${text.slice(0, 27)}...` : text}"`;

/** Spaces of all kinds out, typographic minus to the plain one. */
const tidy = (text: string) => text.normalize('NFKC').replace(/\s+/g, ' ').trim().replace(/−/g, '-');

/** `any`: nothing in the file tells. */
export function decimalMarkOf(cells: Iterable<string>): DecimalMark | 'any' {
  let points = 0;
  let commas = 0;
  let unclear = 0;
  for (const cell of cells) {
    const text = tidy(cell);
    if (/\d\.\d/.test(text)) points++;
    // three figures after a comma may be thousands
    if (/(^|\D)0?,\d|\d,(\d{1,2}|\d{4,})(\D|$)|(^|\D)0,\d/.test(text)) commas++;
    else if (/\d,\d{3}(\D|$)/.test(text)) unclear++;
  }
  if (points > 0) return 'point';
  return commas > 0 ? 'comma' : unclear > 0 ? 'any' : 'point';
}

// spreadsheets write 1E+02 for 100
const NUMBER = /^([+-]?)((?:\d+(?:[.,]\d*)?|[.,]\d+)(?:e[+-]?\d{1,3}(?![\d.,]))?)\s*(.*)$/i;

/** A number with what follows it. */
function leadingNumber(text: string, mark: DecimalMark | 'any'): Cell<{ number: number; rest: string }> {
  const match = NUMBER.exec(tidy(text));
  if (match === null) return { wrong: `${shown(text)} is not a number` };
  const digits = match[2]!;
  if (digits.includes(',') && mark !== 'comma')
    return {
      wrong:
        mark === 'any'
          ? `${shown(text)} may mean thousands or decimals: say which mark the file's decimals have`
          : `${shown(text)} has a comma where the file's decimals have a point: write a point`,
    };
  if (digits.includes('.') && mark === 'comma')
    return { wrong: `${shown(text)} has a point where the file's decimals have a comma: write a comma` };
  const number = Number(`${match[1]}${digits.replace(',', '.')}`);
  if (!Number.isFinite(number)) return { wrong: `${shown(text)} is too large` };
  return { value: { number, rest: match[3]! } };
}

const converted = (value: number) => Math.round(value * CONVERTED_DIGITS) / CONVERTED_DIGITS + 0;

/** Metres; a unit in the cell itself counts before the column's. */
export function lengthCell(text: string, unit: CsvUnit | null, mark: DecimalMark | 'any'): Cell<number> {
  const read = leadingNumber(text, mark);
  if ('wrong' in read) return read;
  const { number, rest } = read.value;
  if (rest === '') {
    if (unit === null)
      return { wrong: `${shown(text)} has no unit: name it in the header, such as distance_ft or distance_m` };
    const length_m = number * LENGTH_M[unit as LengthUnit];
    return { value: unit === 'm' ? number + 0 : converted(length_m) };
  }
  const parsed = parseLength_m(`${number}${rest}`);
  if (parsed.ok) return { value: converted(parsed.value) };
  return { wrong: parsed.problems[0]!.message };
}

/** Metres per second; a unit in the cell itself counts before the column's. */
export function speedCell(text: string, unit: CsvUnit | null, mark: DecimalMark | 'any'): Cell<number> {
  const read = leadingNumber(text, mark);
  if ('wrong' in read) return read;
  const { number, rest } = read.value;
  if (rest === '') {
    if (unit === null)
      return { wrong: `${shown(text)} has no unit: name it in the header, such as wind_mps or wind_mph` };
    return { value: unit === 'mps' ? number + 0 : converted(number * SPEED_MPS[unit as SpeedUnit]) };
  }
  const parsed = parseSpeed_mps(`${number}${rest}`);
  if (parsed.ok) return { value: converted(parsed.value) };
  return { wrong: parsed.problems[0]!.message };
}

/** Degrees clockwise from true north, or a point of the compass. */
export function bearingCell(text: string, mark: DecimalMark | 'any'): Cell<number> {
  const point = (COMPASS_POINTS as readonly string[]).indexOf(tidy(text).toUpperCase());
  if (point >= 0) return { value: point * (360 / COMPASS_POINTS.length) };
  const read = leadingNumber(text, mark);
  if ('wrong' in read || !/^(°|deg|degrees)?$/i.test(read.value.rest))
    return {
      wrong: `${shown(text)} is not a direction: write degrees clockwise from north, or a compass point like WSW`,
    };
  return { value: read.value.number + 0 };
}

/** Metres, right positive: a sign, or the word: "3 L", "left 3", "2.5 ft right". */
export function sideCell(
  text: string,
  unit: CsvUnit | null,
  mark: DecimalMark | 'any',
  positive: 'right' | 'left',
): Cell<number> {
  const { amount, direction } = splitSide(tidy(text));
  const read = lengthCell(amount, unit, mark);
  if ('wrong' in read) return read;
  if (direction === null) return { value: (positive === 'right' ? read.value : -read.value) + 0 };
  if (read.value < 0) return { wrong: `${shown(text)} has a sign and a word: leave one of them out` };
  return { value: (direction === 'left' ? -read.value : read.value) + 0 };
}

const SEPARATED = /^(\d{1,4})[-/.](\d{1,2})[-/.](\d{1,4})(?:[T ]\d{1,2}:\d{2}.*)?$/;

/** Which comes first in dates like 3/4/2026: told by a number over 12, or not at all. */
export function dateOrderOf(cells: Iterable<string>): DateOrder | 'any' {
  let order: DateOrder | 'any' = 'any';
  for (const cell of cells) {
    const match = SEPARATED.exec(tidy(cell));
    if (match === null || match[1]!.length === 4) continue;
    if (Number(match[1]) > 12) return 'dmy';
    if (Number(match[2]) > 12) order = 'mdy';
  }
  return order;
}

/** A date as 2026-05-30; words that are no figures are kept as they stand. */
export function dateCell(text: string, order: DateOrder | 'any'): Cell<string> {
  const plain = tidy(text);
  const match = SEPARATED.exec(plain);
  if (match === null) {
    if (/\p{L}/u.test(plain)) return { value: text.trim() };
    return { wrong: `${shown(text)} is not a date: write it like 2026-05-30` };
  }
  const [, a, b, c] = match.map(Number) as [number, number, number, number];
  const dotted = plain.includes('.');
  const used = match[1]!.length === 4 ? 'ymd' : order === 'any' && dotted ? 'dmy' : order;
  if (used === 'any')
    return { wrong: `${shown(text)} may be day or month first: say which, or write it like 2026-05-30` };
  const [year, month, day] = used === 'ymd' ? [a, b, c] : used === 'dmy' ? [c, b, a] : [c, a, b];
  const full = year < 100 ? 2000 + year : year;
  const date = new Date(Date.UTC(full, month - 1, day));
  if (full < 1900 || full > 2200 || date.getUTCMonth() !== month - 1 || date.getUTCDate() !== day)
    return { wrong: `${shown(text)} is no day of the calendar: write it like 2026-05-30` };
  return { value: date.toISOString().slice(0, 10) };
}

/** "full", "part", 0.8 or 80 %. */
export function powerCell(text: string, mark: DecimalMark | 'any'): Cell<'full' | 'part' | number> {
  const plain = tidy(text).toLowerCase();
  if (plain === 'full' || plain === 'part') return { value: plain };
  const read = leadingNumber(plain, mark);
  if (!('wrong' in read)) {
    if (read.value.rest === '%') return { value: read.value.number / 100 };
    if (read.value.rest === '') return { value: read.value.number };
  }
  return { wrong: `${shown(text)} is not a power: write full, part, a share like 0.8, or 80 %` };
}

const WORDS = {
  hand: { backhand: 'backhand back bh b', forehand: 'forehand fore fh f' },
  shape: {
    flat: 'flat straight f',
    hyzer: 'hyzer h',
    anhyzer: 'anhyzer anny a',
    roller: 'roller r',
    overhead: 'overhead o',
  },
  surface: { longGrass: 'longgrass long', turf: 'turf grass mown', hardpan: 'hardpan hard' },
} as const;
type WordKind = keyof typeof WORDS;

/** One of the words a column may hold, or a usual short form of it. */
export function wordCell<K extends WordKind>(kind: K, text: string): Cell<keyof (typeof WORDS)[K] & string> {
  const plain = tidy(text)
    .toLowerCase()
    .replace(/[\s_-]/g, '');
  const found = Object.entries(WORDS[kind]).find(([, forms]) => forms.split(' ').includes(plain));
  if (found !== undefined) return { value: found[0] as keyof (typeof WORDS)[K] & string };
  return { wrong: `${shown(text)} is not known: write ${Object.keys(WORDS[kind]).join(', ')}` };
}

/** Text as it was before an export guarded it against being taken for a formula. */
export const textCell = (text: string): string => text.replace(/^'(?='*[=+\-@\t])/, '');
/** Spreadsheets run cells that begin like this as formulas; a quote mark before stops them. */
export const guardedText = (text: string): string => (/^'*[=+\-@\t]/.test(text) ? `'${text}` : text);
