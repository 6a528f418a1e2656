import type { HoleReport } from '../../../core/geometry/hole-report.ts';
import { compassPoint } from '../../../core/units/compass-point.ts';
import type { HolesReport } from '../../api/describe-course.ts';
import { wrapped } from '../paragraphs.ts';
import { lengthIn, type Units } from '../show-units.ts';
import { table } from '../table.ts';
import { plain, type Terminal } from '../terminal.ts';

/** All holes of a course, a row each. */
export function holesTable(report: HolesReport, units: Units, terminal: Terminal): string {
  const unit = units === 'feet' ? 'ft' : 'm';
  const known = (kind: string) => !report.notMapped.includes(kind);
  const rows = report.holes.map(hole => row(hole, units, known));
  const body = table(
    [
      { head: 'hole', align: 'right' },
      { head: 'par' },
      { head: `length\n${unit}`, align: 'right' },
      { head: `played\n${unit}`, align: 'right' },
      { head: 'toward' },
      { head: `rise\n${unit}`, align: 'right' },
      { head: `bends\nat ${unit}`, flexible: true },
      { head: `low\n${unit}`, align: 'right' },
      { head: `gap\n${unit}`, align: 'right' },
      { head: `out of\nbounds ${unit}`, flexible: true },
      { head: 'mind', flexible: true },
    ],
    rows,
    terminal,
  );
  const said = [
    ...(report.holes.some(hole => hole.parSource === 'derived')
      ? ['* par not on the map: worked out from the length']
      : []),
    ...(rows.some(cells => cells.includes('?')) ? [`? not mapped: may be there all the same`] : []),
    ...(report.notMapped.length > 0 ? [`not mapped: ${report.notMapped.join(', ')}`] : []),
    ...(report.assumptions.length > 0 ? [`${report.assumptions.length} assumptions to confirm: see check`] : []),
    'low: free height under the lowest branch or roof; gap: narrowest place to throw through; --hole 4 tells more',
  ];
  return `${plain(report.course)}\n\n${body}\n${said.map(text => wrapped(text, terminal.columns)).join('')}`;
}

function row(hole: HoleReport, units: Units, known: (kind: string) => boolean): string[] {
  const none = (kind: string) => (known(kind) ? '–' : '?');
  const lowest_m = Math.min(...hole.ceilings.map(ceiling => ceiling.clearance_m));
  const tightest_m = Math.min(...hole.gaps.map(gap => gap.width_m));
  return [
    hole.ref,
    `${hole.par}${hole.parSource === 'derived' ? '*' : ''}`,
    lengthIn(units, hole.length_m),
    lengthIn(units, hole.playLength_m),
    `${hole.bearing_deg.toFixed(0).padStart(3, '0')}° ${compassPoint(hole.bearing_deg)}`,
    hole.rise_m === null ? '?' : signed(lengthIn(units, hole.rise_m)),
    hole.bends
      .map(
        bend =>
          `${Math.abs(bend.angle_deg).toFixed(0)}°${bend.angle_deg > 0 ? 'R' : 'L'} ${lengthIn(units, bend.station_m)}`,
      )
      .join(', ') || '–',
    Number.isFinite(lowest_m) ? lengthIn(units, lowest_m, 1) : none('ceilings'),
    Number.isFinite(tightest_m) ? lengthIn(units, tightest_m, 1) : none('trees'),
    outOfBounds(hole, units) || none('out-of-bounds'),
    [
      ...(hole.pathCrossings.length > 0 ? ['path'] : []),
      ...(hole.pathCrossings.length === 0 && hole.peopleNearby.length > 0 ? ['people'] : []),
      ...(hole.blindSpots.length > 0 ? ['blind'] : []),
      ...(hole.mandos.length > 0 ? ['mando'] : []),
    ].join(', ') || '–',
  ];
}

/** The nearest of each side. */
function outOfBounds(hole: HoleReport, units: Units): string {
  return (['across', 'left', 'right', 'beyond'] as const)
    .flatMap(side => {
      const here = hole.outOfBounds.filter(entry => entry.side === side);
      if (here.length === 0) return [];
      const nearest_m = Math.min(...here.map(entry => entry.closest_m));
      return [side === 'across' ? 'across' : `${side} ${lengthIn(units, nearest_m)}`];
    })
    .join(', ');
}

const signed = (text: string) => (text.startsWith('-') || Number(text) === 0 ? text.replace('-', '−') : `+${text}`);
