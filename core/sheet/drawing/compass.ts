import type { PlanReport } from '../../strategy/plan-report.ts';
import { formatSpeed } from '../../units/speed.ts';
import type { UnitsChoice } from '../../units/units-choice.ts';
import { placeAtOneOf, type Taken } from './label-places.ts';
import { arrowhead, circle, haloed, number, type Place, word } from './svg.ts';
import type { ViewFrame } from './view-frame.ts';

const DEGREE = Math.PI / 180;
const ARROW_MM = 2.4;
const CORNER_MM = 3.3;
/** White under both, so that no hatching runs through them. */
const PLATE_MM = 2.9;

/** The wind as an arrow that flies with it, at the upper left; north as a tick at the upper right. */
export function compass(frame: ViewFrame, air: PlanReport['air'], units: UnitsChoice, taken: Taken): string {
  const right: Place = [frame.width_mm - CORNER_MM, CORNER_MM];
  const north = frame.turned_deg(0);
  const tip = onCircle(right, north, ARROW_MM * 0.55);
  const tail = onCircle(right, north + 180, ARROW_MM * 0.55);
  const [letter] = [onCircle(right, north, ARROW_MM * 0.55 + 1.1)];
  taken.push([right[0], right[1] + 0.7, 2.6]);
  const northTick =
    circle('plate', right, PLATE_MM) + haloed('north', line(tail, tip)) + word('N', [letter[0], letter[1] + 0.75]);
  if (air.windSpeed_mps === 0) return northTick;
  const left: Place = [CORNER_MM, CORNER_MM];
  const to = frame.turned_deg(air.windFrom_deg + 180);
  taken.push([left[0], left[1] + 0.7, 2.6]);
  const text = formatSpeed(air.windSpeed_mps, units, 0);
  const place = placeAtOneOf(text, [[0.6 + text.length * 0.575, CORNER_MM + ARROW_MM + 2.3]], frame, taken);
  return [
    northTick,
    circle('plate', left, PLATE_MM),
    haloed('wind', line(onCircle(left, to + 180, ARROW_MM), onCircle(left, to, ARROW_MM - 1))),
    arrowhead(onCircle(left, to, ARROW_MM), to),
    place === null ? '' : word(text, place),
  ].join('');
}

function onCircle([x, y]: Place, clockwise_deg: number, radius_mm: number): Place {
  return [x + radius_mm * Math.sin(clockwise_deg * DEGREE), y - radius_mm * Math.cos(clockwise_deg * DEGREE)];
}

const line = ([ax, ay]: Place, [bx, by]: Place): string => `M${number(ax)} ${number(ay)}L${number(bx)} ${number(by)}`;
