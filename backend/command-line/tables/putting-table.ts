import type { PuttingReport } from '../../../core/player/putting-report.ts';
import { formatLength } from '../../../core/units/length.ts';
import { percent } from '../../../core/units/percent.ts';
import { bullets, wrapped } from '../paragraphs.ts';
import { CHOSEN, lengthIn, type Units } from '../show-units.ts';
import { table } from '../table.ts';
import { plain, type Terminal } from '../terminal.ts';

/** Distances of the fitted curve shown under the log. */
const SHOWN_M = [3, 5, 7.5, 10, 12.5, 15, 20] as const;

/** The putting log by distance, by circle, and the fitted curve. */
export function puttingTable(report: PuttingReport, units: Units, terminal: Terminal): string {
  const { length } = CHOSEN[units];
  const { byDistance, circles, curve, line, notes } = report;
  const between = ({ low, high }: { low: number; high: number }) => `${percent(low)}–${percent(high)}`;
  const log = table(
    [
      { head: `from\n${length}`, align: 'right' },
      { head: 'tried', align: 'right' },
      { head: 'made', align: 'right' },
      { head: 'rate', align: 'right' },
      { head: '95 % interval', align: 'right' },
      { head: 'fitted', align: 'right' },
      { head: '95 % interval', align: 'right' },
    ],
    byDistance.map(({ distance_m, attempts, makes, measured, fitted }) => [
      lengthIn(units, distance_m, 1),
      String(attempts),
      String(makes),
      percent(measured.rate),
      between(measured),
      percent(fitted.chance),
      between(fitted),
    ]),
    terminal,
  );
  const rings = circles
    .filter(({ name, attempts }) => name !== 'beyond' || attempts > 0)
    .map(({ name, from_m, to_m, attempts, makes, measured }) => {
      const where =
        to_m === null
          ? `beyond ${formatLength(from_m, CHOSEN[units], 0)}`
          : `${name}, ${from_m === 0 ? 'up to' : `over ${formatLength(from_m, CHOSEN[units], 0)} to`} ${formatLength(to_m, CHOSEN[units], 0)}`;
      return `${where}: ${measured === null ? 'none tried' : `${makes} of ${attempts} made, ${percent(measured.rate)} (${between(measured)})`}`;
    });
  const shown = SHOWN_M.flatMap(d_m => {
    const at = line.find(({ distance_m }) => distance_m === d_m);
    return at === undefined
      ? []
      : [
          `${formatLength(d_m, CHOSEN[units], units === 'metric' && !Number.isInteger(d_m) ? 1 : 0)} ${percent(at.chance)} (${between(at)})`,
        ];
  });
  return [
    `${plain(report.player)}, ${curve.attempts} putts logged\n\n`,
    byDistance.length === 0 ? '' : `${log}\n`,
    bullets(rings, terminal.columns, ''),
    '\n',
    wrapped(`Fitted, calm air: ${shown.join(', ')}.`, terminal.columns),
    notes.length === 0 ? '' : `\n${bullets(notes.map(sentence), terminal.columns, '')}`,
  ].join('');
}

const sentence = (text: string) => `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;
