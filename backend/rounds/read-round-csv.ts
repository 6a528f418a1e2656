import type { FieldDisc } from '../../core/player/player-file.ts';
import { parseRound, ROUND_SCHEMA, type RoundFile } from '../../core/review/round-file.ts';
import type { Problem, Result } from '../../core/units/result.ts';
import { type CsvRow, csvTable } from '../fieldwork/csv-table.ts';
import { type RoundColumn, roundColumn } from './round-columns.ts';

/** A cell of one row, by column; empty cells are left out. */
type Row = Readonly<{ line: number; cells: ReadonlyMap<RoundColumn, string>; units: ReadonlyMap<RoundColumn, number> }>;

/** The same for all rows of a round: written once, on any row, or alike on all. */
const ROUND_WIDE = [
  'date',
  'course',
  'player',
  'layout',
  'wind_mps',
  'wind_from_deg',
  'gust_mps',
  'real_wind_mps',
  'real_wind_from_deg',
  'real_gust_mps',
] as const satisfies readonly RoundColumn[];

const YES = /^(yes|y|true|1|x)$/i;
const NO = /^(no|n|false|0)$/i;

/**
 * A round from a table, one row a throw in the order they were thrown. Discs may be written by id or by name.
 * @param discs - the player's, to know names by
 * @returns the round, or every problem with its row and column; never half a round
 */
export function readRoundCsv(text: string, discs: readonly Pick<FieldDisc, 'id' | 'name'>[]): Result<RoundFile> {
  const table = csvTable(text);
  if (!table.ok) return table;
  const [head, ...body] = table.value.rows;
  const columns = (head?.cells ?? []).map(roundColumn);
  const problems: Problem[] = headProblems(head, columns);
  if (problems.length > 0) return { ok: false, problems };
  const rows = body.map(row => rowOf(row, columns, problems));
  if (rows.length === 0)
    problems.push({ path: 'file', message: 'holds no throws: one row a throw under the first row' });
  const wide = roundWide(rows, problems);
  const holes: { ref: string; throws: object[] }[] = [];
  const lines: number[][] = [];
  for (const row of rows) {
    const ref = row.cells.get('hole');
    if (ref === undefined) {
      problems.push({ path: at(row, 'hole'), message: 'is empty: write the hole' });
      continue;
    }
    const index = holes.findIndex(hole => hole.ref === ref);
    if (index !== -1 && index < holes.length - 1) {
      problems.push({
        path: at(row, 'hole'),
        message: `comes back to hole ${ref} after hole ${holes.at(-1)!.ref}: keep the throws of a hole together`,
      });
      continue;
    }
    if (index === -1) {
      holes.push({ ref, throws: [] });
      lines.push([]);
    }
    const { throws } = holes.at(-1)!;
    const number = numberIn(row, 'throw', problems);
    if (number !== undefined && number !== throws.length + 1)
      problems.push({
        path: at(row, 'throw'),
        message: `is ${number}, but this is throw ${throws.length + 1} of hole ${ref}: a row is missing or twice there`,
      });
    throws.push(throwOf(row, discs, problems));
    lines.at(-1)!.push(row.line);
  }
  if (problems.length > 0) return { ok: false, problems };
  const round = parseRound({ schema: ROUND_SCHEMA, ...wide, holes });
  return round.ok
    ? round
    : { ok: false, problems: round.problems.map(problem => ({ ...problem, path: byRow(problem.path, lines) })) };
}

function headProblems(head: CsvRow | undefined, columns: readonly ReturnType<typeof roundColumn>[]): Problem[] {
  const problems: Problem[] = [];
  columns.forEach((column, i) => {
    const name = head!.cells[i]!.trim();
    if (column === null && name !== '')
      problems.push({
        path: `first row, column ${i + 1}`,
        message: `"${name.slice(0, 40)}" is no column of a round: take it out`,
      });
    const first = columns.findIndex(own => own?.column === column?.column);
    if (column !== null && first !== i)
      problems.push({ path: `first row, column ${i + 1}`, message: `"${name}" says the same as column ${first + 1}` });
  });
  if (!columns.some(column => column?.column === 'hole'))
    problems.push({ path: 'first row', message: 'has no column "hole": the first row names the columns' });
  return problems;
}

function rowOf(row: CsvRow, columns: readonly ReturnType<typeof roundColumn>[], problems: Problem[]): Row {
  const cells = new Map<RoundColumn, string>();
  const units = new Map<RoundColumn, number>();
  if (row.cells.slice(columns.length).some(cell => cell.trim() !== ''))
    problems.push({
      path: `row ${row.line}`,
      message: `has ${row.cells.length} cells, the first row ${columns.length}: put cells that hold the separator in quotes`,
    });
  columns.forEach((column, i) => {
    const text = row.cells[i]?.trim() ?? '';
    if (column === null || text === '') return;
    cells.set(column.column, text);
    units.set(column.column, column.unit_m);
  });
  return { line: row.line, cells, units };
}

const at = (row: Row, column: RoundColumn) => `row ${row.line}, ${column}`;

function numberIn(row: Row, column: RoundColumn, problems: Problem[]): number | undefined {
  const text = row.cells.get(column);
  if (text === undefined) return undefined;
  const value = Number(text.replace('−', '-').replace(/^(-?\d+),(\d+)$/, '$1.$2'));
  if (Number.isFinite(value)) return value * (row.units.get(column) ?? 1);
  problems.push({ path: at(row, column), message: `"${text.slice(0, 40)}" is no number` });
  return undefined;
}

function truthIn(row: Row, column: RoundColumn, problems: Problem[]): boolean | undefined {
  const text = row.cells.get(column);
  if (text === undefined) return undefined;
  if (YES.test(text)) return true;
  if (NO.test(text)) return false;
  problems.push({ path: at(row, column), message: `"${text.slice(0, 40)}" is not known: write yes or no` });
  return undefined;
}

function roundWide(rows: readonly Row[], problems: Problem[]): object {
  const found = new Map<RoundColumn, Row>();
  for (const column of ROUND_WIDE) {
    const first = rows.find(row => row.cells.has(column));
    if (first === undefined) continue;
    found.set(column, first);
    const other = rows.find(row => row.cells.has(column) && row.cells.get(column) !== first.cells.get(column));
    if (other !== undefined)
      problems.push({
        path: at(other, column),
        message: `is "${other.cells.get(column)}", but "${first.cells.get(column)}" on row ${first.line}: it is the same for the whole round`,
      });
  }
  const text = (column: RoundColumn) => found.get(column)?.cells.get(column);
  const number = (column: RoundColumn) => {
    const row = found.get(column);
    return row === undefined ? undefined : numberIn(row, column, problems);
  };
  const wind = (speed: RoundColumn, from: RoundColumn, gust: RoundColumn) => {
    const [speed_mps, from_deg, gust_mps] = [number(speed), number(from), number(gust)];
    const given = filled({ speed_mps, from_deg, gust_mps });
    return Object.keys(given).length === 0 ? undefined : { wind: given };
  };
  return filled({
    date: text('date'),
    course: text('course'),
    player: text('player'),
    layout: text('layout'),
    day: wind('wind_mps', 'wind_from_deg', 'gust_mps'),
    realDay: wind('real_wind_mps', 'real_wind_from_deg', 'real_gust_mps'),
  });
}

function throwOf(row: Row, discs: readonly Pick<FieldDisc, 'id' | 'name'>[], problems: Problem[]): object {
  const lower = (column: RoundColumn) => row.cells.get(column)?.toLowerCase();
  const number = (column: RoundColumn) => numberIn(row, column, problems);
  const truth = (column: RoundColumn) => truthIn(row, column, problems);
  const penalties = row.cells.get('penalties');
  return filled({
    discId: discIn(row, discs, problems),
    hand: lower('hand'),
    shape: lower('shape'),
    height: lower('height'),
    power: number('power'),
    aimBearing_deg: number('aim_deg'),
    hyzer_deg: number('hyzer_deg'),
    launch_deg: number('launch_deg'),
    rest: placeIn(row, 'rest', problems),
    lie: placeIn(row, 'lie', problems),
    hit: truth('hit'),
    penalties: penalties === undefined ? undefined : penaltiesIn(penalties),
    holed: truth('holed'),
  });
}

function discIn(row: Row, discs: readonly Pick<FieldDisc, 'id' | 'name'>[], problems: Problem[]): string | undefined {
  const text = row.cells.get('disc');
  if (text === undefined || discs.some(({ id }) => id === text)) return text;
  const alike = discs.filter(({ id, name }) => [id, name].some(own => own.toLowerCase() === text.toLowerCase()));
  if (alike.length === 1) return alike[0]!.id;
  problems.push({
    path: at(row, 'disc'),
    message:
      alike.length > 1
        ? `"${text}" names ${alike.length} discs: write the id`
        : `"${text.slice(0, 40)}" is no disc of the player: ${discs.map(({ name }) => name).join(', ')}`,
  });
  return undefined;
}

function placeIn(row: Row, what: 'rest' | 'lie', problems: Problem[]): object | undefined {
  const number = (part: string) => numberIn(row, `${what}_${part}` as RoundColumn, problems);
  const [east_m, north_m, lon, lat] = [number('east_m'), number('north_m'), number('lon'), number('lat')];
  const [toBasket_m, side_m] = [number('to_basket_m'), number('side_m')];
  const isBeyond = truthIn(row, `${what}_beyond`, problems);
  const ways = [east_m ?? north_m, lon ?? lat, toBasket_m ?? side_m ?? isBeyond].filter(way => way !== undefined);
  if (ways.length > 1) {
    problems.push({ path: `row ${row.line}`, message: `says in more than one way where the ${what} was: keep one` });
    return undefined;
  }
  if (east_m !== undefined || north_m !== undefined) return filled({ east_m, north_m });
  if (lon !== undefined || lat !== undefined) return { lonLat: [lon, lat] };
  return ways.length === 0 ? undefined : filled({ toBasket_m, side_m, isBeyond });
}

/** "out-of-bounds + lost 2", the number its throws when not 1; unknown words are told by the check of the whole round. */
function penaltiesIn(text: string): object[] {
  return text
    .split(/[+;|]/)
    .map(part => part.trim().toLowerCase())
    .filter(part => part !== '')
    .map(part => {
      const [, words, throws] = /^(.*?)(?:\s+(\d))?$/.exec(part)!;
      return filled({ kind: words!.replace(/\s+/g, '-'), throws: throws === undefined ? undefined : Number(throws) });
    });
}

function filled(parts: Record<string, unknown>): Record<string, unknown> {
  return Object.fromEntries(Object.entries(parts).filter(([, value]) => value !== undefined));
}

/** `holes[1].throws[2].rest` as the row it came from. */
function byRow(path: string, lines: readonly (readonly number[])[]): string {
  const found = /^holes\[(\d+)\](?:\.throws\[(\d+)\])?\.?(.*)$/.exec(path);
  if (found === null) return path;
  const rows = lines[Number(found[1])] ?? [];
  const line = found[2] === undefined ? rows[0] : rows[Number(found[2])];
  return line === undefined ? path : `row ${line}${found[3] ? `, ${found[3]}` : ''}`;
}
