import {
  type CsvColumn,
  headerOfColumn,
  LENGTH_M,
  type LengthUnit,
  SPEED_MPS,
  type SpeedUnit,
} from '../../core/player/csv-columns.ts';
import type { FieldSession, PlayerFile } from '../../core/player/player-file.ts';
import { rounded } from '../../core/units/number-with-unit.ts';
import { guardedText } from './csv-cells.ts';

export type CsvUnits = Readonly<{ length: 'm' | 'ft'; speed: SpeedUnit }>;
type FieldThrow = FieldSession['throws'][number];

/** Enough for a converted length to come back within a tenth of a millimetre. */
const CONVERTED_DIGITS = 4;

/**
 * All measured throws as a table whose header names the units; `planCsvImport` reads it back to the same sessions (in SI
 * exactly, in other units to a tenth of a millimetre). Sessions without throws have no row.
 * @source RFC 4180 (quoting, line ends)
 */
export function throwsCsv(file: PlayerFile, units: CsvUnits = { length: 'm', speed: 'mps' }): string {
  const columns: readonly Readonly<{
    column: CsvColumn;
    cell: (session: FieldSession, t: FieldThrow, number: number) => string;
  }>[] = [
    { column: { field: 'session', unit: null }, cell: (_, __, number) => String(number) },
    { column: { field: 'date', unit: null }, cell: ({ date }) => guardedText(date ?? '') },
    { column: { field: 'disc', unit: null }, cell: (_, { discId }) => guardedText(discId) },
    { column: { field: 'hand', unit: null }, cell: (_, { hand }) => hand },
    { column: { field: 'shape', unit: null }, cell: (_, { shape }) => shape },
    { column: { field: 'power', unit: null }, cell: (_, { power }) => String(power) },
    { column: { field: 'distance', unit: units.length }, cell: (_, t) => lengthIn(units.length, t.distance_m) },
    { column: { field: 'side', unit: units.length }, cell: (_, t) => lengthIn(units.length, t.side_m) },
    { column: { field: 'wind', unit: units.speed }, cell: ({ wind }) => speedIn(units.speed, wind?.speed_mps) },
    { column: { field: 'windFrom', unit: 'deg' }, cell: ({ wind }) => exact(wind?.from_deg) },
    { column: { field: 'windHeight', unit: units.length }, cell: ({ wind }) => lengthIn(units.length, wind?.height_m) },
    { column: { field: 'bearing', unit: 'deg' }, cell: ({ bearing_deg }) => exact(bearing_deg) },
    { column: { field: 'rise', unit: units.length }, cell: ({ rise_m }) => lengthIn(units.length, rise_m) },
    { column: { field: 'surface', unit: null }, cell: ({ surface }) => surface ?? '' },
    { column: { field: 'note', unit: null }, cell: ({ note }) => guardedText(note ?? '') },
  ];
  const rows = file.sessions.flatMap((session, s) =>
    session.throws.map(t => columns.map(({ cell }) => cell(session, t, s + 1))),
  );
  const lines = [columns.map(({ column }) => headerOfColumn(column)), ...rows];
  return lines.map(cells => `${cells.map(quoted).join(',')}\r\n`).join('');
}

/** As many figures as it takes to come back the same. */
const exact = (value: number | undefined) => (value === undefined ? '' : String(value));

function lengthIn(unit: LengthUnit, value_m: number | undefined): string {
  if (value_m === undefined) return '';
  return unit === 'm' ? exact(value_m) : shortened(value_m / LENGTH_M[unit]);
}

function speedIn(unit: SpeedUnit, value_mps: number | undefined): string {
  if (value_mps === undefined) return '';
  return unit === 'mps' ? exact(value_mps) : shortened(value_mps / SPEED_MPS[unit]);
}

const shortened = (value: number) => rounded(value, CONVERTED_DIGITS).replace(/\.?0+$/, '');

function quoted(cell: string): string {
  return /[",;\t\r\n]|^\s|\s$/.test(cell) ? `"${cell.replace(/"/g, '""')}"` : cell;
}
