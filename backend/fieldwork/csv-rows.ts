import type { CsvColumn, CsvField } from '../../core/player/csv-columns.ts';
import type { FieldDisc, FieldSession } from '../../core/player/player-file.ts';
import {
  bearingCell,
  type Cell,
  type DateOrder,
  type DecimalMark,
  dateCell,
  lengthCell,
  powerCell,
  sideCell,
  speedCell,
  textCell,
  wordCell,
} from './csv-cells.ts';
import type { CsvRow } from './csv-table.ts';

/** Something wrong with one row; `column` counts from 0, null for the row as a whole. */
export type RowProblem = Readonly<{ column: number | null; message: string }>;

/** What stands in a row when its column is missing or its cell is empty. */
export type RowDefaults = Readonly<{
  discId?: string | undefined;
  hand?: 'backhand' | 'forehand' | undefined;
  shape?: 'flat' | 'hyzer' | 'anhyzer' | 'roller' | 'overhead' | undefined;
  power?: 'full' | 'part' | number | undefined;
  date?: string | undefined;
}>;

export type RowRules = Readonly<{
  columns: readonly (CsvColumn | null)[];
  discs: readonly Pick<FieldDisc, 'id' | 'name'>[];
  mark: DecimalMark | 'any';
  dates: DateOrder | 'any';
  defaults: RowDefaults;
}>;

/** One throw and the session it says it belongs to; rows with equal `sessionKey` are one session. */
export type ReadRow = Readonly<{
  line: number;
  sessionKey: string;
  session: Omit<FieldSession, 'throws'>;
  thrown: FieldSession['throws'][number];
}>;

/** @returns the throw, or everything wrong with the row */
export function readRow(row: CsvRow, rules: RowRules): ReadRow | readonly RowProblem[] {
  const { columns, mark, dates, defaults } = rules;
  const extra = row.cells.slice(columns.length).some(cell => cell.trim() !== '');
  if (extra || row.cells.length < columns.length)
    return [
      {
        column: null,
        message: `has ${row.cells.length} cells where the first row has ${columns.length}: put cells that hold the separator in quotes, and leave no cell out`,
      },
    ];
  const problems: RowProblem[] = [];
  const at = new Map<CsvField, number>();
  columns.forEach((column, i) => {
    if (column !== null) at.set(column.field, i);
  });
  /** What the cell of a field says; undefined when there is none, it is empty, or it is wrong (which is noted). */
  function read<T>(field: CsvField, how: (text: string, column: CsvColumn) => Cell<T>): T | undefined {
    const i = at.get(field);
    const text = i === undefined ? '' : row.cells[i]!;
    if (i === undefined || text.trim() === '') return undefined;
    const cell = how(text, columns[i]!);
    if ('value' in cell) return cell.value;
    problems.push({ column: i, message: cell.wrong });
    return undefined;
  }
  const length = (field: CsvField) => read(field, (text, { unit }) => lengthCell(text, unit, mark));
  const text = (field: CsvField) => read(field, cell => ({ value: textCell(cell) }));

  const discId = read('disc', cell => discCell(textCell(cell), rules.discs)) ?? defaults.discId;
  const hand = read('hand', cell => wordCell('hand', cell)) ?? defaults.hand ?? 'backhand';
  const shape = read('shape', cell => wordCell('shape', cell)) ?? defaults.shape ?? 'flat';
  const power = read('power', cell => powerCell(cell, mark)) ?? defaults.power ?? 'full';
  const side_m =
    read('side', (cell, { unit }) => sideCell(cell, unit, mark, 'right')) ??
    read('left', (cell, { unit }) => sideCell(cell, unit, mark, 'left'));
  const straight_m = length('straight');
  let distance_m = length('distance');
  if (straight_m !== undefined && distance_m === undefined) {
    if (side_m !== undefined && Math.abs(side_m) >= straight_m)
      problems.push({
        column: at.get('straight')!,
        message: `is ${straight_m} m, no longer than the side of ${side_m} m`,
      });
    else distance_m = alongLine_m(straight_m, side_m);
  }
  const speed_mps = read('wind', (cell, { unit }) => speedCell(cell, unit, mark));
  const from_deg = read('windFrom', cell => bearingCell(cell, mark));
  const height_m = length('windHeight');
  const session = {
    date: read('date', cell => dateCell(cell, dates)) ?? defaults.date,
    wind:
      speed_mps === undefined ? undefined : { speed_mps, from_deg: from_deg ?? Number.NaN, height_m: height_m ?? 10 },
    bearing_deg: read('bearing', cell => bearingCell(cell, mark)),
    rise_m: length('rise'),
    surface: read('surface', cell => wordCell('surface', cell)),
    note: text('note'),
  };
  if (session.wind !== undefined && Number.isNaN(session.wind.from_deg)) {
    if (session.wind.speed_mps === 0) session.wind.from_deg = 0;
    else if (!problems.some(({ column }) => column === at.get('windFrom')))
      problems.push({ column: at.get('wind')!, message: 'needs the direction it blows from: a column windFrom_deg' });
  }
  if (discId === undefined && !problems.some(({ column }) => column === at.get('disc')))
    problems.push({ column: at.get('disc') ?? null, message: 'is no disc named: write its name or id' });
  const measured = [at.get('distance'), at.get('straight')];
  if (distance_m === undefined && !problems.some(({ column }) => column !== null && measured.includes(column)))
    problems.push({ column: measured[0] ?? measured[1] ?? null, message: 'is empty: how far did it come to rest?' });
  if (problems.length > 0 || distance_m === undefined || discId === undefined) return problems;
  return {
    line: row.line,
    sessionKey: JSON.stringify([text('session')?.trim(), session]),
    session,
    thrown: { discId, hand, shape, power, distance_m, side_m },
  };
}

/** Distance along the throwing line of a disc taped straight from where it was thrown. */
function alongLine_m(straight_m: number, side_m: number | undefined): number {
  if (side_m === undefined || side_m === 0) return straight_m;
  return Math.round(Math.sqrt(straight_m ** 2 - side_m ** 2) * 1e4) / 1e4;
}

function discCell(text: string, discs: RowRules['discs']): Cell<string> {
  const exact = discs.find(({ id }) => id === text);
  if (exact !== undefined) return { value: exact.id };
  const plain = (name: string) => name.normalize('NFKC').replace(/\s+/g, ' ').trim().toLowerCase();
  const alike = discs.filter(({ id, name }) => plain(name) === plain(text) || plain(id) === plain(text));
  if (alike.length === 1) return { value: alike[0]!.id };
  const which = `"${text.trim().slice(0, 40)}"`;
  if (alike.length > 1)
    return {
      wrong: `${which} names ${alike.length} discs: write the id, ${alike.map(({ id }) => `"${id}"`).join(' or ')}`,
    };
  const known = discs.slice(0, 8).map(({ name }) => `"${name}"`);
  return {
    wrong: `${which} is no disc of this player: add it first, or write ${known.join(', ')}${discs.length > known.length ? ' …' : ''}`,
  };
}
