import {
  CSV_FIELDS,
  type CsvColumn,
  type CsvField,
  columnOfHeader,
  headerOfColumn,
  unitsOf,
} from '../../core/player/csv-columns.ts';
import { type FieldSession, type PlayerFile, parsePlayer } from '../../core/player/player-file.ts';
import type { Problem, Result } from '../../core/units/result.ts';
import { type DateOrder, type DecimalMark, dateOrderOf, decimalMarkOf } from './csv-cells.ts';
import { type ReadRow, type RowDefaults, type RowProblem, readRow } from './csv-rows.ts';
import { type CsvRow, csvTable, type Delimiter } from './csv-table.ts';

/** What the player says about a table that its headers leave open; found from the text where left out. */
export type CsvOptions = Readonly<{
  delimiter?: Delimiter | undefined;
  hasHeader?: boolean | undefined;
  /** One per column: a header as an export writes it, such as `distance_ft`; null leaves the column out. */
  columns?: readonly (string | null)[] | undefined;
  decimal?: DecimalMark | undefined;
  dates?: DateOrder | undefined;
  defaults?: RowDefaults | undefined;
}>;

type PlannedRow = Readonly<{ line: number; cells: readonly string[]; problems: readonly RowProblem[] }>;
type PlannedColumn = Readonly<{ name: string; meaning: CsvColumn | null }>;

/** What an import would do; nothing has changed yet. */
export type CsvPlan = Readonly<{
  delimiter: Delimiter;
  hasHeader: boolean;
  decimal: DecimalMark | 'any';
  dates: DateOrder | 'any';
  columns: readonly PlannedColumn[];
  /** Of the table as a whole: while there are any, no row is read. */
  problems: readonly Problem[];
  rows: readonly PlannedRow[];
  /** The good rows as sessions, those the player has already left out. */
  sessions: readonly FieldSession[];
  /** Throws in good rows whose whole session the player has already. */
  known: number;
}>;

/**
 * Reads a table of throws for one player. Good rows become sessions: rows alike in session, date and conditions are one.
 * @returns the plan, bad rows marked; or problems when the text is no table at all
 */
export function planCsvImport(file: PlayerFile, text: string, options: CsvOptions = {}): Result<CsvPlan> {
  const table = csvTable(text, options.delimiter);
  if (!table.ok) return table;
  const { delimiter, rows } = table.value;
  const hasHeader = options.hasHeader ?? looksLikeHeader(rows[0]!);
  const body = hasHeader ? rows.slice(1) : rows;
  const width = hasHeader ? rows[0]!.cells.length : Math.max(...rows.map(({ cells }) => cells.length));
  const names = Array.from({ length: width }, (_, i) => (hasHeader ? rows[0]!.cells[i]!.trim() : `column ${i + 1}`));
  const meanings = names.map((name, i) =>
    options.columns === undefined ? columnOfHeader(name) : wanted(options.columns[i]),
  );
  const columns = names.map((name, i): PlannedColumn => ({ name, meaning: meanings[i]! }));
  const cellsOf = (accept: (field: CsvField) => boolean) =>
    body.flatMap(({ cells }) =>
      cells.filter((_, i) => meanings[i] !== null && meanings[i] !== undefined && accept(meanings[i].field)),
    );
  const decimal = options.decimal ?? decimalMarkOf(cellsOf(field => unitsOf(field).length > 0 || field === 'power'));
  const dates = options.dates ?? dateOrderOf(cellsOf(field => field === 'date'));
  const problems = columnProblems(columns, options, body);
  const plan = { delimiter, hasHeader, decimal, dates, columns, problems };
  if (problems.length > 0)
    return {
      ok: true,
      value: { ...plan, rows: body.map(row => ({ ...row, problems: [] })), sessions: [], known: 0 },
    };
  const rules = { columns: meanings, discs: file.discs, mark: decimal, dates, defaults: options.defaults ?? {} };
  const bad = new Map<CsvRow, readonly RowProblem[]>();
  const good = new Map<CsvRow, ReadRow>();
  for (const row of body) {
    const read = readRow(row, rules);
    if ('thrown' in read) good.set(row, read);
    else bad.set(row, read);
  }
  const sessions = soundSessions(file, good, bad, meanings);
  const old = new Set(file.sessions.map(canonical));
  const fresh = sessions.filter(session => !old.has(canonical(session)));
  return {
    ok: true,
    value: {
      ...plan,
      rows: body.map(row => ({ ...row, problems: bad.get(row) ?? [] })),
      sessions: fresh,
      known: throwsIn(sessions) - throwsIn(fresh),
    },
  };
}

export const throwsIn = (sessions: readonly FieldSession[]): number =>
  sessions.reduce((sum, { throws }) => sum + throws.length, 0);

/** The player with the plan's sessions after their own. @returns the checked file, or what is still wrong */
export function withSessions(file: PlayerFile, sessions: readonly FieldSession[]): Result<PlayerFile> {
  return parsePlayer({ ...file, sessions: [...file.sessions, ...sessions] });
}

/** Numbers at the top of a table are throws already; a header that is known is one whatever else it holds. */
function looksLikeHeader({ cells }: CsvRow): boolean {
  if (cells.some(cell => columnOfHeader(cell) !== null)) return true;
  return !cells.some(cell => /^\s*[+-]?\d+([.,]\d+)?\s*(m|ft)?\s*$/i.test(cell));
}

function wanted(header: string | null | undefined): CsvColumn | null {
  return header === null || header === undefined ? null : columnOfHeader(header);
}

function columnProblems(columns: readonly PlannedColumn[], options: CsvOptions, body: readonly CsvRow[]): Problem[] {
  const problems: Problem[] = [];
  (options.columns ?? []).forEach((header, i) => {
    if (header !== null && columnOfHeader(header) === null)
      problems.push({
        path: `columns[${i}]`,
        message: `"${header.slice(0, 40)}" is no meaning of a column: write one like distance_ft, side_m, disc or date`,
      });
  });
  if (options.columns !== undefined && options.columns.length > columns.length)
    problems.push({
      path: 'columns',
      message: `name ${options.columns.length} columns, the table has ${columns.length}`,
    });
  const first = new Map<CsvField, string>();
  columns.forEach(({ name, meaning }, i) => {
    if (meaning === null) return;
    const { field, unit } = meaning;
    const earlier = first.get(field);
    if (earlier !== undefined)
      problems.push({
        path: name,
        message: `holds the ${CSV_FIELDS[field].words}, as "${earlier}" does: leave one of them out`,
      });
    first.set(field, name);
    const units = unitsOf(field);
    const bare = body.some(({ cells }) => /^[\s+\-−]*[\d.,]+\s*(l|r|left|right)?\s*$/i.test(cells[i] ?? ''));
    if (units.length > 0 && unit === null && bare)
      problems.push({
        path: name,
        message: `has no unit: is the ${CSV_FIELDS[field].words} in ${units.join(', ')}? Name the column ${headerOfColumn({ field, unit: units[0]! })}, for example`,
      });
  });
  const has = (field: CsvField) => first.has(field);
  if (!has('distance') && !has('straight'))
    problems.push({
      path: 'columns',
      message: 'name no distance: one column must hold it, such as distance_m or distance_ft',
    });
  if (has('distance') && has('straight'))
    problems.push({
      path: first.get('straight')!,
      message: `leave it or "${first.get('distance')}" out: only one distance can count`,
    });
  if (has('side') && has('left'))
    problems.push({
      path: first.get('left')!,
      message: `leave it or "${first.get('side')}" out: only one side can count`,
    });
  if (!has('disc') && options.defaults?.discId === undefined)
    problems.push({ path: 'columns', message: 'name no disc: add a column "disc", or say which disc all rows are of' });
  if (problems.length === 0 && body.length === 0)
    problems.push({ path: 'file', message: 'holds no throws: the first row names the columns, then one row a throw' });
  return problems;
}

/** Groups the good rows and checks them as the player file would, moving rows it refuses to the bad ones. */
function soundSessions(
  file: PlayerFile,
  good: Map<CsvRow, ReadRow>,
  bad: Map<CsvRow, readonly RowProblem[]>,
  meanings: readonly (CsvColumn | null)[],
): FieldSession[] {
  const columnOf = (...fields: string[]) => {
    const i = meanings.findIndex(meaning => meaning !== null && fields.includes(meaning.field));
    return i < 0 ? null : i;
  };
  // each pass takes rows away, so it ends
  for (;;) {
    const groups = new Map<string, { rows: CsvRow[]; session: FieldSession }>();
    for (const [row, { sessionKey, session, thrown }] of good) {
      const group = groups.get(sessionKey) ?? { rows: [], session: { ...session, throws: [] } };
      groups.set(sessionKey, group);
      group.rows.push(row);
      group.session.throws.push(thrown);
    }
    const all = [...groups.values()];
    const checked = parsePlayer({ ...file, sessions: [...all.map(({ session }) => session), ...file.sessions] });
    if (checked.ok) return checked.value.sessions.slice(0, all.length);
    const found = new Map<CsvRow, RowProblem[]>();
    for (const { path, message } of checked.problems) {
      const [, s, i, property] = /^sessions\[(\d+)\](?:\.throws\[(\d+)\])?\.?(.*)$/.exec(path) ?? [];
      const group = s === undefined ? undefined : all[Number(s)];
      if (group === undefined) throw new RangeError(`the player file itself is not sound: ${path} ${message}`);
      const column = property === undefined ? null : columnOf(...(COLUMNS_OF[property] ?? []));
      const isInFeet = column !== null && meanings[column]!.unit !== 'm';
      // the hint of the player file, where a number in metres was wanted
      const said = isInFeet ? message.replace(/; if this is in feet.*$/, '') : message;
      for (const row of i === undefined ? group.rows : [group.rows[Number(i)]!])
        found.set(row, [
          ...(found.get(row) ?? []),
          { column, message: column === null && property ? `${property} ${said}` : said },
        ]);
    }
    for (const [row, problems] of found) {
      good.delete(row);
      bad.set(row, problems);
    }
  }
}

/** Which column a property of the player file came from. */
const COLUMNS_OF: Readonly<Record<string, readonly CsvField[]>> = {
  date: ['date'],
  'wind.speed_mps': ['wind'],
  'wind.from_deg': ['windFrom'],
  'wind.height_m': ['windHeight'],
  bearing_deg: ['bearing'],
  rise_m: ['rise'],
  surface: ['surface'],
  note: ['note'],
  discId: ['disc'],
  hand: ['hand'],
  shape: ['shape'],
  power: ['power'],
  distance_m: ['distance', 'straight'],
  side_m: ['side', 'left'],
};

/** The same text for the same session: key order and properties left out do not count, nor does the session's note being empty. */
function canonical({ date, wind, bearing_deg, rise_m, surface, note, throws }: FieldSession): string {
  return JSON.stringify([
    date,
    wind && [wind.speed_mps, wind.from_deg, wind.height_m],
    bearing_deg,
    rise_m,
    surface,
    note || undefined,
    throws.map(({ discId, hand, shape, power, distance_m, side_m }) => [
      discId,
      hand,
      shape,
      power,
      distance_m,
      side_m,
    ]),
  ]);
}
