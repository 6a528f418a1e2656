import type {
  Group,
  HoleReview,
  ReviewReport,
  Sum,
  ThrowReview,
  WindReview,
} from '../../../core/review/review-report.ts';
import type { Phase } from '../../../core/review/thrown.ts';
import { compassPoint } from '../../../core/units/compass-point.ts';
import { formatSpeed } from '../../../core/units/speed.ts';
import { bullets, wrapped } from '../paragraphs.ts';
import { CHOSEN, lengthIn, type Units } from '../show-units.ts';
import { type Column, table } from '../table.ts';
import { plain, type Terminal } from '../terminal.ts';

/** Said once for all throws, by the sign before the cost. */
const AT_LEAST = 'the choice cost at least this much';

const PHASE: Readonly<Record<Phase, string>> = { tee: 'tee', approach: 'approach', c2: '10-20 m', c1: 'inside 10 m' };

/** What a round won and lost: by hole, disc and distance; every throw with `detail`; then what the wind would have changed. */
export function reviewTable(report: ReviewReport, units: Units, detail: boolean, terminal: Terminal): string {
  const { columns } = terminal;
  const main = report.asItWas ?? report.asPlanned;
  return [
    `${plain(report.course)}, ${plain(report.player)}, ${plain(report.date)}\n`,
    wrapped(
      airLine(
        main,
        units,
        report.asItWas === null ? 'Judged in the wind it was planned for' : 'Judged in the wind that blew',
      ),
      columns,
    ),
    '\n',
    holesTable(main, terminal),
    '\n',
    wrapped(totalLine(main), columns),
    '\n',
    ...groups('disc', main.byDisc, terminal),
    ...groups('hand', main.byHand, terminal),
    ...groups('line', main.byShape, terminal),
    ...groups('from', main.byPhase, terminal),
    ...(detail ? main.holes.flatMap(hole => ['\n', holeDetail(hole, units, terminal)]) : []),
    ...windPart(report, units, terminal),
    '\n',
    bullets(
      [
        'Won: throws better than expected from the same place. Choice: what another throw would have saved; execution: what the throw itself lost against its own average.',
        'Choices that cost less than 0.03 count as none: no better one is known.',
        ...(detail
          ? ['≥: what was not written of the throw was taken at its best, so the choice cost at least so much.']
          : ['Every throw: --detail.']),
        ...report.notes,
      ],
      columns,
      '',
    ),
  ].join('');
}

const SUMS: readonly Column[] = [
  { head: 'won', align: 'right' },
  { head: 'choice\ncost', align: 'right' },
  { head: 'exe-\ncution', align: 'right' },
];

function holesTable({ holes, total }: WindReview, terminal: Terminal): string {
  return table(
    [
      { head: 'hole' },
      { head: 'par', align: 'right' },
      { head: 'score', align: 'right' },
      { head: 'expected', align: 'right' },
      ...SUMS,
      { head: 'the plan asked for', flexible: true },
    ],
    [
      ...holes.map(hole => [
        hole.ref,
        String(hole.par),
        `${hole.score}${hole.penalties > 0 ? ` (${hole.penalties} pen.)` : ''}`,
        hole.startValue.throws.toFixed(2),
        ...sums(hole.sum),
        `${hole.teeChoice.title}: ${hole.teeChoice.disc}`,
      ]),
      ['all', String(total.par), String(total.score), total.startValue.toFixed(2), ...sums(total.sum), ''],
    ],
    terminal,
  );
}

const sums = (sum: Sum) => [
  signed(sum.gain.throws),
  sum.split === 0 ? '?' : cost(sum.choiceCost.throws),
  sum.split === 0 ? '?' : signed(sum.executionCost.throws),
];

function totalLine({ total }: WindReview): string {
  const { gain, choiceCost, executionCost } = total.sum;
  const error = (value: number) => `± ${value.toFixed(2)}`;
  return `${total.score} throws where ${total.startValue.toFixed(1)} were expected: ${signed(gain.throws)} ${error(gain.standardError)}. Choices cost ${choiceCost.throws.toFixed(2)} ${error(choiceCost.standardError)}, execution ${signed(executionCost.throws)} ${error(executionCost.standardError)} (sampling, one sigma).`;
}

function groups(head: string, list: readonly Group[], terminal: Terminal): string[] {
  if (list.length === 0) return [];
  const body = table(
    [{ head, flexible: true }, { head: 'throws', align: 'right' }, ...SUMS],
    list.map(({ name, sum }) => [name, String(sum.throws), ...sums(sum)]),
    terminal,
  );
  return [body, '\n'];
}

function holeDetail(hole: HoleReview, units: Units, terminal: Terminal): string {
  const unit = CHOSEN[units].length;
  const body = table(
    [
      { head: `hole ${hole.ref}` },
      { head: 'from' },
      { head: `to bas-\nket ${unit}`, align: 'right' },
      { head: 'disc', flexible: true },
      { head: 'worth\nbefore', align: 'right' },
      { head: 'after', align: 'right' },
      ...SUMS,
    ],
    hole.throws.map(t => [
      String(t.number),
      PHASE[t.phase],
      lengthIn(units, t.toBasket_m, t.toBasket_m < 20 ? 1 : 0),
      discOf(t),
      t.valueBefore.throws.toFixed(2),
      t.holed ? 'in' : t.valueAfter.throws.toFixed(2),
      signed(t.gain.throws),
      choiceOf(t),
      t.executionCost === null ? '?' : signed(t.executionCost.throws),
    ]),
    terminal,
  );
  return `${body}${bullets(hole.throws.flatMap(remarks), terminal.columns)}`;
}

/** "≥" where only part of the throw is known and the rest was taken at its best. */
function choiceOf({ choiceCost, known }: ThrowReview): string {
  if (choiceCost === null) return '?';
  const isBound = known === 'line' || known === 'disc';
  return `${isBound && choiceCost.throws > 0 ? '≥ ' : ''}${cost(choiceCost.throws)}`;
}

function discOf(t: ThrowReview): string {
  const line = [t.shape, t.hand === 'forehand' ? 'forehand' : null].filter(part => part !== null).join(', ');
  const penalties = t.penalties.map(({ kind }) => kind).join(', ');
  return [t.disc ?? 'not written', line, penalties].filter(part => part !== '').join('; ');
}

function remarks(t: ThrowReview): string[] {
  const better =
    t.choiceCost === null || t.choiceCost.throws === 0
      ? []
      : [
          `better: ${t.best === null ? 'the putt' : `${t.best.title} with ${t.best.disc}`}, ${cost(t.choiceCost.throws)} less`,
        ];
  const notes = t.notes.filter(note => !note.endsWith(AT_LEAST));
  return [...better, ...notes].map(text => `throw ${t.number}: ${text}`);
}

function windPart({ asPlanned, asItWas, windHoles }: ReviewReport, units: Units, terminal: Terminal): string[] {
  if (asItWas === null) return [];
  const changed = windHoles.filter(hole => hole.isOtherDisc || (hole.stayingCost ?? 0) > 0);
  const [planned, real] = [asPlanned.total, asItWas.total];
  return [
    '\n',
    wrapped(airLine(asPlanned, units, 'What the wind changed. It was planned for'), terminal.columns),
    wrapped(
      `Expected in the planned wind ${planned.startValue.toFixed(1)}, in the one that blew ${real.startValue.toFixed(1)}. Choices cost ${planned.sum.choiceCost.throws.toFixed(2)} by the planned wind, ${real.sum.choiceCost.throws.toFixed(2)} by the one that blew.`,
      terminal.columns,
    ),
    changed.length === 0
      ? wrapped('The plan would have asked for the same tee shots.', terminal.columns)
      : table(
          [
            { head: 'hole' },
            { head: 'planned', flexible: true },
            { head: 'in the wind that blew', flexible: true },
            { head: 'staying\ncosts', align: 'right' },
          ],
          changed.map(hole => [
            hole.ref,
            `${hole.planned.title}: ${hole.planned.disc}`,
            `${hole.real.title}: ${hole.real.disc}`,
            hole.stayingCost === null ? '?' : cost(hole.stayingCost),
          ]),
          terminal,
        ),
  ];
}

function airLine({ air }: WindReview, units: Units, what: string): string {
  const speed = (speed_mps: number) => formatSpeed(speed_mps, CHOSEN[units]);
  const wind =
    air.windSpeed_mps === 0
      ? 'calm'
      : `${speed(air.windSpeed_mps)} from ${air.windFrom_deg.toFixed(0)}° (${compassPoint(air.windFrom_deg)}), gusts ${speed(air.gust_mps)}`;
  return `${what}: ${wind}; ${air.source}.`;
}

function signed(value: number): string {
  const size = Math.abs(value).toFixed(2);
  if (Number(size) === 0) return '0';
  return `${value < 0 ? '−' : '+'}${size}`;
}

const cost = (value: number) => (value === 0 ? '–' : value.toFixed(2));
