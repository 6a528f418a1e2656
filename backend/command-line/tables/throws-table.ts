import type { PuttingCurve } from '../../../core/player/fitted-player.ts';
import { makeChance } from '../../../core/player/putting-curve.ts';
import { specialText } from '../../../core/player/special-text.ts';
import type { ThrowsReport } from '../../../core/player/throws-report.ts';
import { formatLength } from '../../../core/units/length.ts';
import { percent } from '../../../core/units/percent.ts';
import { MPS_PER } from '../../../core/units/speed.ts';
import { bullets, wrapped } from '../paragraphs.ts';
import { CHOSEN, lengthIn, sideIn, type Units } from '../show-units.ts';
import { table } from '../table.ts';
import { plain, type Terminal } from '../terminal.ts';
import { bagTable } from './bag-table.ts';

/** Narrower terminals go without two columns, so that names of discs keep to one line. */
const WIDE_COLUMNS = 100;
/** From here the doubt about the sideways finish has room too. */
const WIDEST_COLUMNS = 112;
const PUTTS_M = [3, 5, 7, 10] as const;

/** The range table of a player, then what to know about it. */
export function throwsTable(report: ThrowsReport, curve: PuttingCurve, units: Units, terminal: Terminal): string {
  const { length, speed } = CHOSEN[units];
  const wide = terminal.columns >= WIDE_COLUMNS;
  const body = table(
    [
      { head: 'disc', flexible: true },
      { head: 'hand' },
      { head: 'n', align: 'right' },
      { head: `average\nday ${length}`, align: 'right' },
      { head: `best\n${length}`, align: 'right' },
      { head: `ends\n${length}`, align: 'right' },
      { head: `spread ${length}\nlong side`, align: 'right' },
      ...(wide
        ? ([
            { head: `release\n${speed === 'mps' ? 'm/s' : speed}`, align: 'right' },
            { head: 'stab-\nility', align: 'right' },
          ] as const)
        : []),
      { head: 'basis' },
    ],
    report.throws.map(t => [
      t.role === 'putting' ? `${t.disc} (putting)` : t.disc,
      t.hand === 'backhand' ? 'back' : 'fore',
      t.n.toFixed(0),
      `${lengthIn(units, t.averageDay_m)} ±${give(units, t.uncertainty.averageDay_m)}`,
      wide ? `${lengthIn(units, t.best_m)} ±${give(units, t.uncertainty.best_m)}` : lengthIn(units, t.best_m),
      terminal.columns >= WIDEST_COLUMNS
        ? `${sideIn(units, t.finish_m)} ±${give(units, t.uncertainty.finish_m)}`
        : sideIn(units, t.finish_m),
      `${lengthIn(units, t.scatter.distance_m)} ${lengthIn(units, t.scatter.side_m).padStart(2)}`,
      ...(wide
        ? [(t.releaseSpeed_mps / MPS_PER[speed]).toFixed(speed === 'mps' ? 1 : 0), signed(t.stabilityOffset)]
        : []),
      t.basis,
    ]),
    terminal,
  );
  const about = [
    'Calm air, level grass, thrown flat at full power. Plan with the average day; best is one throw in twenty; ± holds the truth nine times in ten; n counts the throws used.',
    'Basis: measured by your own throws; borrowed: few throws, leaning on your other discs; predicted: none.',
    ...(wide ? [] : ['Release speed and stability need a wider terminal (100 columns), or --json.']),
  ];
  const notes = [...report.notes.map(sentence), ...gathered(report)];
  return [
    `${plain(report.player)}, ${report.handedness}-handed\n\n`,
    body,
    '\n',
    ...about.map(text => wrapped(text, terminal.columns)),
    wrapped(putting(curve, units), terminal.columns),
    bagTable(report, units, terminal),
    specialList(report, units, terminal),
    notes.length === 0 ? '' : `\nNotes\n${bullets(notes, terminal.columns, '')}`,
  ].join('');
}

/** Rollers and overhead throws: what is fitted, how many more are needed. */
function specialList(report: ThrowsReport, units: Units, { columns }: Terminal): string {
  const lines = report.throws.flatMap(({ disc, hand, specials }) =>
    specials.map(special => `${disc} ${hand}: ${specialText(special, CHOSEN[units])}.`),
  );
  return lines.length === 0 ? '' : `\nRollers and overhead throws\n${bullets(lines, columns, '')}`;
}

const NORMAL_90 = 1.6448536269514722; // Φ⁻¹(0.95)
const give = (units: Units, sd_m: number) => lengthIn(units, NORMAL_90 * sd_m);

function putting(curve: PuttingCurve, units: Units): string {
  const list = PUTTS_M.map(d_m => `${formatLength(d_m, CHOSEN[units], 0)} ${percent(makeChance(curve, d_m))}`).join(
    ', ',
  );
  return `Putts: ${list} (${curve.basis === 'predicted' ? 'assumed, no putts logged' : `${curve.attempts} putts`}).`;
}

/** The same remark on several discs is said once; a remark that names its disc needs no name before it. */
function gathered(report: ThrowsReport): string[] {
  const discs = new Map<string, string[]>();
  for (const { disc, hand, notes, readiness } of report.throws) {
    for (const note of notes) {
      if (note === readiness.text) continue; // stands with the bag, in the units asked for
      const own = note.startsWith(`${disc} `);
      const text = own ? `${disc} ${hand}${note.slice(disc.length)}` : note;
      discs.set(text, [...(discs.get(text) ?? []), ...(own ? [] : [`${disc} ${hand}`])]);
    }
  }
  return [...discs].map(([text, names]) => (names.length === 0 ? `${text}.` : `${names.join(', ')}: ${text}.`));
}

const sentence = (text: string) => `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;

function signed(value: number): string {
  const size = Math.abs(value).toFixed(1);
  if (Number(size) === 0) return size;
  return `${value < 0 ? '−' : '+'}${size}`;
}
