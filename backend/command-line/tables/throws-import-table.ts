import type { ThrowsImport } from '../../fieldwork/import-report.ts';
import { wrapped } from '../paragraphs.ts';
import { CHOSEN, lengthIn, sideIn, type Units } from '../show-units.ts';
import { table } from '../table.ts';
import { plain, type Terminal } from '../terminal.ts';

type Fit = ThrowsImport['changed'][number]['after'];

/** What a table of throws adds, and what it does to the fit. */
export function throwsImportTable(report: ThrowsImport, units: Units, terminal: Terminal): string {
  const { added, leftOut, changed, columns, written } = report;
  const read = columns.filter(({ meaning }) => meaning !== null).map(({ name, meaning }) => `${name} as ${meaning}`);
  const ignored = columns.filter(({ meaning }) => meaning === null).map(({ name }) => name);
  const { length } = CHOSEN[units];
  const day = (fit: Fit | null) =>
    fit === null ? '–' : `${lengthIn(units, fit.averageDay_m)} ±${lengthIn(units, fit.sd_m)}`;
  const body = table(
    [
      { head: 'disc', flexible: true },
      { head: 'hand' },
      { head: 'new', align: 'right' },
      { head: `average day\nbefore ${length}`, align: 'right' },
      { head: 'after', align: 'right' },
      { head: `ends\nbefore ${length}`, align: 'right' },
      { head: 'after', align: 'right' },
    ],
    changed.map(({ disc, hand, added: count, before, after }) => [
      disc,
      hand === 'backhand' ? 'back' : 'fore',
      String(count),
      day(before),
      day(after),
      before === null ? '–' : sideIn(units, before.finish_m),
      sideIn(units, after.finish_m),
    ]),
    terminal,
  );
  const sessions = added.sessions.map(({ date, throws }) => `${date ?? 'no date'}: ${throws}`).join(', ');
  const count = `${counted(added.throws, 'throw')} in ${counted(added.sessions.length, 'session')}`;
  const lines = [
    `${plain(report.player)}: ${count} ${written === null ? 'would be added' : 'added'} (${sessions}).`,
    `Columns read: ${read.join(', ')}.`,
    ...(ignored.length === 0 ? [] : [`Columns left out: ${ignored.join(', ')}.`]),
    ...(leftOut.bad === 0 ? [] : [`Bad rows left out: ${leftOut.bad}.`]),
    ...(leftOut.known === 0 ? [] : [`Throws the player has already, left out: ${leftOut.known}.`]),
  ];
  return [
    ...lines.map(line => wrapped(line, terminal.columns)),
    '\n',
    ...(changed.length === 0 ? [] : [body, '\n']),
    wrapped(
      written === null ? 'Nothing is written: add --out PLAYER.json to write the player.' : `Written: ${written}`,
      terminal.columns,
    ),
  ].join('');
}

const counted = (count: number, what: string) => `${count} ${what}${count === 1 ? '' : 's'}`;
