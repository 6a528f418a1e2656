import type { LocalPoint } from '../../geometry/hole-map.ts';
import type { ShotDrawing } from '../../strategy/hole-drawing.ts';
import type { PlanReport, ShotReport } from '../../strategy/plan-report.ts';
import type { UnitsChoice } from '../../units/units-choice.ts';
import type { SheetHole } from '../sheet-input.ts';
import { areaWords } from './area-words.ts';
import { compass } from './compass.ts';
import { groundMarks } from './ground-marks.ts';
import { basketMark, mandoMarks, teeMark } from './hole-marks.ts';
import { placeAtOneOf, type Taken } from './label-places.ts';
import { scaleBar } from './scale-bar.ts';
import { ellipsePoints, restPoint, spreadOf } from './spread.ts';
import { arrowhead, circle, drawing, haloed, type Place, path, pathData, word } from './svg.ts';
import { type ViewFrame, viewFrame } from './view-frame.ts';

/** Room for the tee below its middle, and for the word at the aim's end. */
const MARGIN_MM = 3.6;
const DEGREE = Math.PI / 180;
/** The aim line runs on past the landing, towards what the player picks out to aim at. */
const AIM_PAST_SD = 2.6;
const AIM_PAST_M = 6;

/** What a drawing from above takes of a hole. */
export type SeenHole = Pick<SheetHole, 'map' | 'drawing'> &
  Readonly<{ plan: Pick<SheetHole['plan'], 'ref' | 'bearing_deg'> }>;

/** The hole from above with the throw on it, basket up. */
export function topView(
  { plan, map, drawing: flown }: SeenHole,
  shot: ShotReport,
  air: PlanReport['air'],
  units: UnitsChoice,
  width_mm: number,
  height_mm: number,
): string {
  const spread = flown?.spread ?? spreadOf(shot);
  const rings = spread.map(ellipse => ({ ...ellipse, points: ellipsePoints(ellipse) }));
  const aimEnd = aimPoint(shot);
  const seen = [...map.line, aimEnd, ...rings.flatMap(({ points }) => points)];
  const frame = viewFrame(seen, plan.bearing_deg, MARGIN_MM, width_mm, height_mm);
  const taken: Taken = [];
  const inside = [
    groundMarks(map, frame),
    path('play', pathData(map.line.map(frame.place))),
    haloed('aim', pathData([frame.place([0, 0]), frame.place(aimEnd)])),
    arrowhead(frame.place(aimEnd), frame.turned_deg(shot.aimBearing_deg)),
    ...(flown ? [haloed('flight', pathData(flown.path.map(([east, north]) => frame.place([east, north]))))] : []),
    ...rings.map(({ share, points }) => haloed(share > 0.7 ? 'most' : 'half', pathData(points.map(frame.place), true))),
    circle('middle', frame.place(middleOf(flown, shot)), 0.35),
    mandoMarks(map, frame),
    teeMark(frame.place([0, 0])),
    basketMark(frame.place(map.basket)),
    scaleBar(frame, units, taken),
    compass(frame, air, units, taken),
    areaWords(map, frame, taken),
    aimWord(frame.place(aimEnd), frame, taken),
  ].join('');
  return drawing('top', `Hole ${plan.ref} from above, basket up`, width_mm, height_mm, inside);
}

const middleOf = (flown: ShotDrawing | undefined, shot: ShotReport): LocalPoint => {
  return flown?.rest ?? restPoint(shot);
};

function aimPoint({ aimBearing_deg, distance_m, distanceSd_m }: ShotReport): LocalPoint {
  const reach_m = distance_m + distanceSd_m * AIM_PAST_SD + AIM_PAST_M;
  return [reach_m * Math.sin(aimBearing_deg * DEGREE), reach_m * Math.cos(aimBearing_deg * DEGREE)];
}

function aimWord([x, y]: Place, frame: ViewFrame, taken: Taken): string {
  const around: Place[] = [
    [x, y - 0.9],
    [x - 3.4, y + 0.8],
    [x + 3.4, y + 0.8],
    [x, y + 3],
  ];
  const place = placeAtOneOf('aim', around, frame, taken);
  return place === null ? '' : word('aim', place);
}
