import { toWords } from '../../../core/course/import/apply-roles.ts';
import type { ImportReport } from '../../import/import-report.ts';
import { wrapped } from '../paragraphs.ts';
import { table } from '../table.ts';
import { plain, type Terminal } from '../terminal.ts';

/** What was read, what each place was taken for, what was left out and what is assumed. */
export function importTable(report: ImportReport, terminal: Terminal): string {
  const { columns } = terminal;
  const list = (lines: readonly string[]) => lines.map(line => wrapped(plain(line), columns, '  - ')).join('');
  const read = report.read.map(({ what, count }) => `${what}: ${count}`).join(', ');
  const parts = [wrapped(`${plain(report.file)}: ${report.kindWords ?? 'not known'}; ${read}`, columns, '')];
  if (report.items.length > 0) parts.push('\n', itemTable(report, terminal));
  if (report.courses.length > 0)
    parts.push(
      '\nseveral courses are in the file; choose one with --course:\n',
      list(report.courses.map(({ id, name, holes }) => `${name === '' ? id : name} (${id}): ${holes} holes`)),
    );
  if (report.leftOut.length > 0)
    parts.push('\nleft out:\n', list(report.leftOut.map(({ what, count, why }) => `${what} (${count}): ${why}`)));
  if (report.assumptions.length > 0)
    parts.push(
      '\nassumed, please confirm:\n',
      list(report.assumptions.map(({ path, message }) => `${path}: ${message}`)),
    );
  return parts.join('');
}

function itemTable({ items }: ImportReport, terminal: Terminal): string {
  return table(
    [
      { head: 'in the file', flexible: true },
      { head: 'taken as', flexible: true },
      { head: 'sure' },
      { head: 'why', flexible: true },
    ],
    items.map(({ name, folder, shape, proposal, chosen }) => {
      const isProposed = chosen.role === proposal.role && chosen.ref === proposal.ref;
      return [
        `${name === '' ? `(${shape} without a name)` : name}${folder === undefined ? '' : ` [${folder}]`}`,
        toWords(chosen),
        isProposed ? (proposal.sure ? 'yes' : 'no') : 'yours',
        isProposed ? proposal.why : 'as you said',
      ];
    }),
    terminal,
  );
}
