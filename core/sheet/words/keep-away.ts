import type { HoleReport } from '../../geometry/hole-report.ts';
import type { ShotReport } from '../../strategy/plan-report.ts';
import { percent } from '../../units/percent.ts';
import type { UnitsChoice } from '../../units/units-choice.ts';
import { shortened } from '../markup.ts';
import { far, fine, stretch } from './lengths.ts';
import { plainSource } from './plain-source.ts';

const LONGEST_NAME = 40;
/** Out-of-bounds further off the line than this is left to the drawing. */
const NEAR_OUT_M = 30;
/** A thing this far past where the throw ends is the next throw's. */
const BEYOND_M = 10;
/** What hangs this far above the flight is not in its way. */
const SPARE_M = 4;
const MOST_GAPS = 2;
/** Wider to the eye, nobody minds a gap; nearer, everybody sees it. */
const TIGHT_DEG = 12;
const FIRST_GAP_M = 5;
const WORTH_SAYING = 0.005;

/** Order of what is named: rules first, then what costs throws, then what stands in the way, then the rest. */
type Thing = Readonly<{ rank: number; station_m: number; text: string }>;

/** What to stay away from with this throw, worst first; distances run along the line of play from the tee. */
export function keepAway(report: HoleReport, shot: ShotReport, units: UnitsChoice): string[] {
  const reach_m = shot.distance_m + BEYOND_M;
  const things: Thing[] = [
    ...(shot.hazardChance >= WORTH_SAYING
      ? [{ rank: 1, station_m: 0, text: `Hazard ground: ${percent(shot.hazardChance)} end in it, one throw more.` }]
      : []),
    ...(shot.lostChance === undefined
      ? []
      : [
          {
            rank: 1,
            station_m: 0,
            text: `Rough: ${percent(shot.lostChance)} are not found there, two throws more.`,
          },
        ]),
    ...report.mandos.map(mando => ({ rank: 0, station_m: mando.station_m, text: mandoWords(mando, units) })),
    ...report.outOfBounds
      .filter(({ closest_m }) => closest_m <= NEAR_OUT_M)
      .map(out => ({
        rank: shot.outOfBoundsChance >= WORTH_SAYING ? 1 : 3,
        station_m: out.station_m,
        text: outWords(out, units),
      })),
    ...report.ceilings
      .filter(({ from_m, clearance_m }) => from_m <= reach_m && clearance_m <= shot.apex_m + SPARE_M)
      .map(ceiling => ({
        rank: 2,
        station_m: ceiling.from_m,
        text: `Overhead ${stretch(ceiling.from_m, ceiling.to_m, units)}: ${fine(ceiling.clearance_m, units)} free.`,
      })),
    ...report.barriers
      .filter(({ from_m }) => from_m <= reach_m)
      .map(barrier => ({
        rank: 2,
        station_m: barrier.from_m,
        text: `In the way ${stretch(barrier.from_m, barrier.to_m, units)}: ${named(barrier.source, 'solid')}, ${fine(barrier.height_m, units)} high.`,
      })),
    ...[...report.gaps]
      .filter(gap => gap.station_m <= reach_m && gap.station_m >= FIRST_GAP_M)
      .filter(gap => gap.windowWidth_deg <= TIGHT_DEG || gap.high_m !== null)
      .sort((a, b) => a.windowWidth_deg - b.windowWidth_deg)
      .slice(0, MOST_GAPS)
      .map(gap => ({ rank: 2, station_m: gap.station_m, text: gapWords(gap, units) })),
  ];
  return things.sort((a, b) => a.rank - b.rank || a.station_m - b.station_m).map(({ text }) => text);
}

function mandoWords({ station_m, side, low_m, high_m }: HoleReport['mandos'][number], units: UnitsChoice): string {
  const at = `Mando at ${far(station_m, units)}`;
  switch (side) {
    case 'left':
    case 'right':
      return `${at}: pass on its ${side.toUpperCase()}.`;
    case 'above':
      return `${at}: pass OVER it${high_m === null ? '' : `, higher than ${fine(high_m, units)}`}.`;
    case 'below':
      return `${at}: pass UNDER it, lower than ${fine(low_m, units)}.`;
    default:
      return side satisfies never;
  }
}

function outWords(out: HoleReport['outOfBounds'][number], units: UnitsChoice): string {
  const what = named(out.what, 'out-of-bounds');
  switch (out.side) {
    case 'across':
      return `Across ${stretch(out.from_m, out.to_m, units)}: ${what}.`;
    case 'beyond':
      return `Behind the basket, ${far(out.closest_m, units)} past: ${what}.`;
    case 'left':
    case 'right':
      return `${out.side === 'left' ? 'Left' : 'Right'}: ${what}, ${far(out.closest_m, units)} off at ${far(out.station_m, units)}.`;
    default:
      return out.side satisfies never;
  }
}

function gapWords({ station_m, width_m, low_m, high_m }: HoleReport['gaps'][number], units: UnitsChoice): string {
  const window =
    high_m === null
      ? ''
      : `, ${low_m > 0 ? `${fine(low_m, units)} to ` : 'under '}${fine(high_m, units)} above the ground`;
  return `Tight at ${far(station_m, units)}: ${fine(width_m, units)} between${window}.`;
}

/** Name or kind without its place in the file; `otherwise` when nothing is left of it. */
function named(source: string, otherwise: string): string {
  return shortened(plainSource(source), LONGEST_NAME) || otherwise;
}
