import type { MeasureNext } from '../../../core/strategy/measure-next.ts';
import { percent } from '../../../core/units/percent.ts';
import { wrapped } from '../paragraphs.ts';
import { CHOSEN, lengthIn, type Units } from '../show-units.ts';
import { table } from '../table.ts';
import { plain, type Terminal } from '../terminal.ts';

const MOST_ROWS = 8;
const MOST_HOLES = 3;

/** Which disc to measure next for a course; what the error cannot tell apart stands as equal. */
export function measureTable(measured: MeasureNext, units: Units, terminal: Terminal): string {
  const { length } = CHOSEN[units];
  const head = `\nWhat to measure next for ${plain(measured.course)} (one session of ${measured.throws} throws)\n`;
  const worthwhile = measured.rows.filter(row => row.isClear);
  if (worthwhile.length === 0)
    return (
      head +
      wrapped(
        'No session would change these plans by more than the sampling error: they hardly depend on what is not known yet.',
        terminal.columns,
      ) +
      wrapped(measured.method, terminal.columns)
    );
  const rows = worthwhile.slice(0, MOST_ROWS);
  const body = table(
    [
      { head: 'disc', flexible: true },
      { head: 'hand' },
      { head: 'throws\nsaved', align: 'right' },
      { head: 'rank' },
      { head: `doubt of\naverage day ${length}`, align: 'right' },
      { head: 'may change', flexible: true },
    ],
    rows.map(row => [
      row.disc,
      row.hand === 'backhand' ? 'back' : 'fore',
      `${row.worth.toFixed(2)} ±${(1.645 * row.standardError).toFixed(2)}`,
      row === rows[0] ? 'first' : row.isAsGoodAsFirst ? 'as good' : 'less',
      `±${lengthIn(units, 1.645 * row.averageDaySd_m.before, 1)} → ±${lengthIn(units, 1.645 * row.averageDaySd_m.after, 1)}`,
      row.holes
        .slice(0, MOST_HOLES)
        .map(({ ref, chance }) => `hole ${ref} (${percent(chance)})`)
        .join(', '),
    ]),
    terminal,
  );
  return [
    head,
    body,
    wrapped(
      `Throws saved over ${measured.holes.length} ${measured.holes.length === 1 ? 'hole' : 'holes'}; ± is 90 %. "as good": the error cannot tell it from the first. ${measured.rows.length - worthwhile.length} more are not clearly worth anything.`,
      terminal.columns,
    ),
    wrapped(measured.method, terminal.columns),
  ].join('');
}
