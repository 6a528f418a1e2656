import type { HoleReport } from '../../../core/geometry/hole-report.ts';
import { compassPoint } from '../../../core/units/compass-point.ts';
import { formatLength } from '../../../core/units/length.ts';
import { wrapped } from '../paragraphs.ts';
import { CHOSEN, type Units } from '../show-units.ts';
import { plain, type Terminal } from '../terminal.ts';

/** Everything the map says of one hole, by station from the tee. */
export function holeDetails(hole: HoleReport, units: Units, terminal: Terminal): string {
  const long = (length_m: number) => formatLength(length_m, CHOSEN[units]);
  const fine = (length_m: number) => formatLength(length_m, CHOSEN[units], 1);
  const stretch = (from_m: number, to_m: number) =>
    to_m - from_m < 0.5 ? `at ${long(from_m)}` : `${long(from_m)} to ${long(to_m)}`;
  const angle = (angle_deg: number) => `${angle_deg.toFixed(angle_deg < 10 ? 1 : 0)}°`;
  const list = (kind: string, items: readonly string[]) => {
    if (items.length > 0) return items;
    return [hole.notMapped.includes(kind) ? 'not mapped (may be there all the same)' : 'none on the map'];
  };
  const sections: (readonly [string, readonly string[]])[] = [
    [
      'bends',
      hole.bends.map(
        bend =>
          `${angle(Math.abs(bend.angle_deg))} ${bend.angle_deg > 0 ? 'right' : 'left'} at ${long(bend.station_m)}`,
      ),
    ],
    [
      'overhead',
      list(
        'ceilings',
        hole.ceilings.map(c => `${stretch(c.from_m, c.to_m)}: ${fine(c.clearance_m)} free, ${c.source}`),
      ),
    ],
    [
      'gaps',
      list(
        'trees',
        hole.gaps.map(gap => {
          const height = gap.high_m === null ? '' : `, from ${fine(gap.low_m)} up to ${fine(gap.high_m)}`;
          const seen =
            gap.windowHeight_deg === null
              ? angle(gap.windowWidth_deg)
              : `${angle(gap.windowWidth_deg)} by ${angle(gap.windowHeight_deg)}`;
          return `${stretch(gap.from_m, gap.to_m)}: ${fine(gap.width_m)} wide${height}, ${seen} seen from the tee, ${gap.source}`;
        }),
      ),
    ],
    ['to throw over', hole.barriers.map(b => `${stretch(b.from_m, b.to_m)}: ${fine(b.height_m)} high, ${b.source}`)],
    [
      'out-of-bounds',
      list(
        'out-of-bounds',
        hole.outOfBounds.map(entry =>
          entry.side === 'across'
            ? `across, ${stretch(entry.from_m, entry.to_m)}: ${entry.what}`
            : `${entry.side}, ${stretch(entry.from_m, entry.to_m)}: closest ${fine(entry.closest_m)} at ${long(entry.station_m)}, ${entry.what}`,
        ),
      ),
    ],
    [
      'mandos',
      list(
        'mandos',
        hole.mandos.map(m => `pass ${m.side} at ${long(m.station_m)}, ${[m.source, ...m.assumed].join('; ')}`),
      ),
    ],
    [
      'people',
      list('paths', [
        ...hole.pathCrossings.map(c => `cross at ${long(c.station_m)}: ${c.what}`),
        ...hole.peopleNearby.map(p => `${long(p.distance_m)} ${p.side} at ${long(p.station_m)}: ${p.what}`),
      ]),
    ],
    [
      'not in sight',
      hole.blindSpots.map(
        b => `the ${b.target} at ${long(b.station_m)}: ${b.blockedBy} in the way at ${long(b.blockedAt_m)}`,
      ),
    ],
    ['assumed', hole.assumptions],
  ];
  const widest = Math.max(...sections.map(([title]) => title.length)) + 4;
  const head = `hole ${plain(hole.ref)}${hole.name === undefined ? '' : ` "${plain(hole.name)}"`}, par ${hole.par}${hole.parSource === 'derived' ? ' (worked out from the length)' : ''}`;
  const numbers = [
    `${fine(hole.length_m)} straight`,
    `${fine(hole.playLength_m)} as played`,
    `toward ${hole.bearing_deg.toFixed(0).padStart(3, '0')}° (${compassPoint(hole.bearing_deg)})`,
    hole.rise_m === null ? 'rise not mapped' : rise(hole.rise_m, fine),
    ...(hole.narrowest === null
      ? []
      : [`tightest ${fine(hole.narrowest.width_m)} at ${long(hole.narrowest.station_m)}`]),
  ];
  const body = sections.flatMap(([title, items]) =>
    items.map((item, i) =>
      wrapped(item, terminal.columns, `  ${i === 0 ? title : ''}`.padEnd(widest), ' '.repeat(widest)),
    ),
  );
  return `${head}\n${wrapped(numbers.join(', '), terminal.columns, '  ')}${body.join('')}`;
}

function rise(rise_m: number, fine: (length_m: number) => string): string {
  if (Math.abs(rise_m) < 0.05) return 'level';
  return `${fine(Math.abs(rise_m))} ${rise_m > 0 ? 'up' : 'down'}`;
}
