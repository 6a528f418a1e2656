import Table from 'cli-table3';
import { createColors } from 'picocolors';
import { plain, type Terminal } from './terminal.ts';

/** `flexible`: gives up width, and wraps, where the terminal is too narrow. */
export type Column = Readonly<{ head: string; align?: 'left' | 'right'; flexible?: boolean }>;

const GAP = '  ';
const LEAST_FLEXIBLE = 10;
const EDGES = [
  ...['top', 'top-mid', 'top-left', 'top-right', 'bottom', 'bottom-mid', 'bottom-left', 'bottom-right'],
  ...['left', 'left-mid', 'mid', 'mid-mid', 'right', 'right-mid'],
];
const NO_LINES = { ...Object.fromEntries(EDGES.map(edge => [edge, ''])), middle: GAP };

/** Rows under a head, no lines, no wider than the terminal as long as its flexible columns can give. */
export function table(columns: readonly Column[], rows: readonly (readonly string[])[], terminal: Terminal): string {
  const colour = createColors(terminal.colours);
  const cells = rows.map(row => row.map(plain));
  const widths = columns.map((column, i) =>
    Math.max(...[...column.head.split('\n'), ...cells.map(row => row[i] ?? '')].map(text => text.length)),
  );
  const drawn = new Table({
    chars: NO_LINES,
    style: { 'padding-left': 0, 'padding-right': 0, head: [], border: [], compact: true },
    head: columns.map(column => colour.bold(column.head)),
    colAligns: columns.map(column => column.align ?? 'left'),
    colWidths: fitted(columns, widths, terminal.columns),
    wordWrap: true,
  });
  drawn.push(...cells.map(row => [...row]));
  return `${drawn
    .toString()
    .split('\n')
    .map(line => line.trimEnd())
    .join('\n')}\n`;
}

/** The widest flexible column gives first. */
function fitted(columns: readonly Column[], natural: readonly number[], available: number): number[] {
  const widths = [...natural];
  let over = widths.reduce((sum, width) => sum + width, 0) + GAP.length * (widths.length - 1) - available;
  while (over > 0) {
    const giving = widths
      .map((width, i) => ({ width, i }))
      .filter(({ width, i }) => columns[i]!.flexible && width > LEAST_FLEXIBLE)
      .sort((a, b) => b.width - a.width)[0];
    if (giving === undefined) break;
    widths[giving.i]!--;
    over--;
  }
  return widths;
}
