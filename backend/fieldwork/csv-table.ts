import { CsvError, parse } from 'csv-parse/sync';
import type { Result } from '../../core/units/result.ts';

const DELIMITERS = [',', ';', '\t'] as const;
export type Delimiter = (typeof DELIMITERS)[number];

/** One row as the file has it; `line` is where it begins, counted from 1. */
export type CsvRow = Readonly<{ line: number; cells: readonly string[] }>;
export type CsvTable = Readonly<{ delimiter: Delimiter; rows: readonly CsvRow[] }>;

const MOST_ROWS = 20_000;
const MOST_COLUMNS = 100;
/** Enough rows to tell the delimiter by. */
const LOOKED_AT = 40;

/**
 * The cells of a comma, semicolon or tab separated text; byte order mark, any line ends, quoted cells with delimiters, quotes
 * and line ends in them (which become plain newlines). Empty lines are left out.
 * @param wanted - the delimiter, found from the text when left out
 * @returns the rows, or one problem: broken quotes by line, nothing in it, too much in it
 * @source RFC 4180 (quoting)
 */
export function csvTable(text: string, wanted?: Delimiter): Result<CsvTable> {
  const clean = text.replace(/^\ufeff/, '').replace(/\r\n?/g, '\n');
  const delimiter = wanted ?? likelyDelimiter(clean);
  let records: { record: string[]; info: { lines: number } }[];
  try {
    records = parse(clean, {
      delimiter,
      record_delimiter: '\n',
      relax_column_count: true,
      skip_empty_lines: true,
      info: true,
      to: MOST_ROWS + 2,
    }) as unknown as typeof records;
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    return refused(...inWords(error));
  }
  if (records.length > MOST_ROWS + 1)
    return refused('file', `holds more than ${MOST_ROWS} rows: split it into smaller files`);
  const widest = Math.max(...records.map(({ record }) => record.length));
  if (widest > MOST_COLUMNS) return refused('file', `has ${widest} columns, more than the ${MOST_COLUMNS} taken`);
  const rows = records.map(({ record, info }): CsvRow => ({ line: firstLine(record, info.lines), cells: record }));
  const filled = rows.filter(({ cells }) => cells.some(cell => cell.trim() !== ''));
  if (filled.length === 0)
    return refused('file', 'holds no rows: the first row names the columns, then one row a throw');
  return { ok: true, value: { delimiter, rows: filled } };
}

/** The parser counts the line a record ends on; line ends inside its quoted cells lie before. */
function firstLine(record: readonly string[], lastLine: number): number {
  return lastLine - record.reduce((sum, cell) => sum + (cell.match(/\n/g)?.length ?? 0), 0);
}

/**
 * The delimiter that cuts the most rows into as many cells as the first has: a decimal comma cuts some rows more often than
 * others. A text that none cuts has one column.
 */
export function likelyDelimiter(text: string): Delimiter {
  const rows = countsByRow(text);
  let best: { delimiter: Delimiter; score: number } = { delimiter: ',', score: 0 };
  for (const delimiter of DELIMITERS) {
    const counts = rows.map(row => row[delimiter]);
    const first = counts[0] ?? 0;
    if (first === 0) continue;
    const alike = counts.filter(count => count === first).length / counts.length;
    const score = alike * 100 + Math.min(first, 50) / 50;
    if (score > best.score) best = { delimiter, score };
  }
  return best.delimiter;
}

/** How often each delimiter stands outside quotes, for the first rows that hold anything. */
function countsByRow(text: string): Record<Delimiter, number>[] {
  const rows: Record<Delimiter, number>[] = [];
  let row: Record<Delimiter, number> = { ',': 0, ';': 0, '\t': 0 };
  let isQuoted = false;
  let isEmpty = true;
  const end = () => {
    if (!isEmpty) rows.push(row);
    row = { ',': 0, ';': 0, '\t': 0 };
    isEmpty = true;
  };
  for (const character of text) {
    if (character === '"') isQuoted = !isQuoted;
    if (!isQuoted && character === '\n') {
      end();
      if (rows.length >= LOOKED_AT) return rows;
      continue;
    }
    isEmpty = false;
    if (!isQuoted && (character === ',' || character === ';' || character === '\t')) row[character]++;
  }
  end();
  return rows;
}

function inWords(error: CsvError): [path: string, message: string] {
  const line = typeof error.lines === 'number' ? `line ${error.lines}` : 'file';
  switch (error.code) {
    case 'CSV_QUOTE_NOT_CLOSED':
      return [line, 'a quote (") is opened here or before and never closed: close it, or double it ("") inside a cell'];
    case 'INVALID_OPENING_QUOTE':
      return [
        line,
        'a quote (") stands inside a cell that does not begin with one: put the whole cell in quotes and double it ("")',
      ];
    case 'CSV_INVALID_CLOSING_QUOTE':
      return [line, 'something follows a closing quote ("): double quotes ("") that belong to the cell'];
    default:
      return [line, `cannot be read as a table (${error.code})`];
  }
}

function refused(path: string, message: string): Result<never> {
  return { ok: false, problems: [{ path, message }] };
}
