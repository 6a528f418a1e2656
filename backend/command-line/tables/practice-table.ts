import type { CourseFitReport, PracticeReport, PracticeRound } from '../../../core/practice/practice-report.ts';
import { inUnits } from '../../../core/sheet/words/lengths.ts';
import { plainSource } from '../../../core/sheet/words/plain-source.ts';
import { percent } from '../../../core/units/percent.ts';
import { bullets, wrapped } from '../paragraphs.ts';
import { CHOSEN, lengthIn, type Units } from '../show-units.ts';
import { table } from '../table.ts';
import { plain, type Terminal } from '../terminal.ts';

/** Narrower terminals go without a column, so that the line of each throw can be read. */
const WIDE_COLUMNS = 90;

/** The practice rounds found: what suits, what to throw, the target, what to practise, what to be careful about. */
export function practiceTable(report: PracticeReport, units: Units, terminal: Terminal): string {
  const { columns } = terminal;
  const say = (text: string) => inUnits(text, CHOSEN[units]);
  return [
    wrapped(`${report.player}, ${report.limitWords}. Discs: ${report.discs.join(', ')}.`, columns),
    '\n',
    wrapped(say(report.text), columns),
    '\n',
    coursesTable(report.courses, terminal),
    bullets(
      report.courses.map(({ course, text }) => say(`${course}: ${text}`)),
      columns,
    ),
    ...report.rounds.map(round => roundTable(round, units, terminal)),
    '\nAssumed\n',
    bullets(report.notes.map(say), columns),
  ].join('');
}

function coursesTable(courses: readonly CourseFitReport[], terminal: Terminal): string {
  return table(
    [
      { head: 'course', flexible: true },
      { head: 'holes', align: 'right' },
      { head: 'suit', align: 'right' },
      { head: 'estimate', align: 'right' },
    ],
    courses.map(({ course, holes, suits, score }) => [course, `${holes.length}`, `${suits}`, percent(score)]),
    terminal,
  );
}

function roundTable(round: PracticeRound, units: Units, terminal: Terminal): string {
  const { columns } = terminal;
  const wide = columns >= WIDE_COLUMNS;
  const { length } = CHOSEN[units];
  const { target } = round;
  const say = (text: string) => inUnits(text, CHOSEN[units]);
  const sameDay = `${percent(target.chanceSameDay)} when your discs fly the same all round`;
  const beside = target.beside
    .filter(({ throws }) => throws !== target.throws)
    .map(({ throws, chance }) => `${throws}: ${percent(chance)}`)
    .join(', ');
  return [
    `\n${plain(round.course)}: ${round.holes.length} holes, par ${round.par}\n\n`,
    table(
      [
        { head: 'hole' },
        { head: 'tee' },
        { head: `long\n${length}`, align: 'right' },
        { head: 'par', align: 'right' },
        { head: 'disc', flexible: true },
        { head: 'line', flexible: true },
        { head: 'reached', align: 'right' },
        ...(wide ? ([{ head: 'clean', align: 'right' }] as const) : []),
        { head: 'throws', align: 'right' },
        ...(round.ownThrows === null ? [] : ([{ head: 'limit\ncosts', align: 'right' }] as const)),
      ],
      round.holes.map(hole => [
        hole.ref,
        hole.tee,
        lengthIn(units, hole.playLength_m),
        `${hole.par}`,
        hole.shot.disc,
        hole.shot.title,
        percent(hole.reach20Chance),
        ...(wide ? [percent(hole.cleanShare)] : []),
        hole.expectedThrows.toFixed(1),
        ...(round.ownThrows === null ? [] : [hole.limitCosts === null ? '' : signed(hole.limitCosts)]),
      ]),
      terminal,
    ),
    '\n',
    wrapped(
      `Expected ${round.expectedThrows.toFixed(1)}, give or take ${round.sd.toFixed(1)}${round.ownThrows === null ? '' : `; with the whole bag ${round.ownThrows.toFixed(1)}`}.`,
      columns,
    ),
    wrapped(
      `Target ${target.throws}: ${percent(target.chance)} of rounds (±${(100 * target.standardError).toFixed(1)} points of sampling), ${sameDay}. Others: ${beside}.`,
      columns,
    ),
    ...section(
      'Leave out',
      round.skip.map(({ ref, text }) => say(`${ref}: ${text}`)),
      columns,
    ),
    ...section(
      'Practise',
      round.drills.map(({ title, text, why }) => say(`${title}. ${text} ${why}`)),
      columns,
    ),
    ...section(
      'Careful',
      [
        ...round.cautions,
        ...round.holes.flatMap(({ ref, cautions }) => cautions.map(text => `Hole ${ref}: ${plainSource(text)}`)),
      ].map(say),
      columns,
    ),
  ].join('');
}

function section(title: string, items: readonly string[], columns: number): string[] {
  return items.length === 0 ? [] : [`\n${title}\n`, bullets(items, columns)];
}

const signed = (value: number) => `${value < -0.005 ? '−' : '+'}${Math.abs(value).toFixed(2)}`;
