import type { ShotReport } from '../../strategy/plan-report.ts';
import { METERS_PER_FOOT } from '../../units/length.ts';
import type { UnitsChoice } from '../../units/units-choice.ts';
import type { SheetHole } from '../sheet-input.ts';
import { fine } from '../words/lengths.ts';
import { type Hatch, hatch } from './hatch.ts';
import { type SectionStation, type SideSection, sideSection, tightPlace } from './side-section.ts';
import { drawing, haloed, number, type Place, path, pathData, word } from './svg.ts';

const AXIS_MM = 2.9;
const EDGE_MM = 1.2;
const HEADROOM_M = 2.5;
const LEAST_HEIGHT_M = 5;
/** Heights may be stretched so many times; a round number, said on the drawing. */
const STRETCHES = [6, 5, 4, 3, 2, 1.5, 1];

/** The throw from the side: ground, what stands and hangs along it, the flight, the tightest place. */
export function sideView(
  { plan, map, drawing: flown }: SheetHole,
  shot: ShotReport,
  units: UnitsChoice,
  width_mm: number,
  height_mm: number,
): string {
  const section = sideSection(map, shot, flown);
  const view = sideFrame(section, shot, width_mm, height_mm);
  const inside = [
    ...runs(section, ({ low }) => low?.solid ?? null).map(run => lowBand(run, view)),
    ...runs(section, ({ high }) => (high === null ? null : true)).map(run => highBand(run, view)),
    path('ground', groundData(section, view)),
    flown === undefined ? '' : haloed('flight', flightData(section, view)),
    flown === undefined ? topLine(shot, view, units) : tightMark(section, view, units),
    axis(section, view, units),
    basket(plan.length_m, shot, view, section),
  ].join('');
  const stretched = view.stretch === 1 ? '' : word(`heights ×${view.stretch}`, [width_mm - 0.6, 2.2], 'end');
  return drawing('side', `Hole ${plan.ref}: the throw from the side`, width_mm, height_mm, inside + stretched);
}

type SideFrame = Readonly<{
  width_mm: number;
  height_mm: number;
  mmPerMetre: number;
  stretch: number;
  place(along_m: number, up_m: number): Place;
  top_m: number;
}>;

function sideFrame({ stations }: SideSection, shot: ShotReport, width_mm: number, height_mm: number): SideFrame {
  const grounds = stations.map(({ ground_m }) => ground_m);
  const low_m = Math.min(...grounds);
  const flights = stations.map(({ ground_m, flight_m }) => flight_m ?? ground_m);
  const wanted_m = Math.max(LEAST_HEIGHT_M + grounds[0]!, ...flights, shot.apex_m + grounds[0]!) + HEADROOM_M - low_m;
  const room_mm = height_mm - AXIS_MM - 0.4;
  // a steep or short hole does not fill the width: heights are never squeezed
  const mmPerMetre = Math.min((width_mm - 2 * EDGE_MM) / stations.at(-1)!.along_m, room_mm / wanted_m);
  const stretch = STRETCHES.find(times => wanted_m * mmPerMetre * times <= room_mm + 1e-9) ?? 1;
  return {
    width_mm,
    height_mm,
    mmPerMetre,
    stretch,
    place: (along_m, up_m) => [
      EDGE_MM + along_m * mmPerMetre,
      height_mm - AXIS_MM - (up_m - low_m) * mmPerMetre * stretch,
    ],
    top_m: low_m + room_mm / (mmPerMetre * stretch) + 1,
  };
}

/** Maximal runs of stations for which `kind` gives one value that is not null. */
function runs({ stations }: SideSection, kind: (station: SectionStation) => boolean | null): SectionStation[][] {
  const found: SectionStation[][] = [];
  let last: boolean | null = null;
  for (const station of stations) {
    const now = kind(station);
    if (now !== null && now === last) found.at(-1)!.push(station);
    else if (now !== null) found.push([station]);
    last = now;
  }
  return found;
}

const HALF_M = 0.5;
const BASKET_M = 1.4;
const WIDEST_BASKET_DEG = 30;

/** Ring of a band over a run: the upper edge there, the lower edge back, half a step wider at both ends. */
function bandRing(
  run: readonly SectionStation[],
  view: SideFrame,
  edges: (station: SectionStation) => readonly [low_m: number, high_m: number],
): Place[] {
  const ends = [
    { ...run[0]!, along_m: run[0]!.along_m - HALF_M },
    ...run,
    { ...run.at(-1)!, along_m: run.at(-1)!.along_m + HALF_M },
  ];
  const edge = (which: 0 | 1) =>
    ends.map(station => view.place(station.along_m, Math.min(edges(station)[which], view.top_m)));
  return [...edge(1), ...edge(0).reverse()];
}

function lowBand(run: readonly SectionStation[], view: SideFrame): string {
  const ring = bandRing(run, view, ({ ground_m, low }) => [ground_m, low!.top_m]);
  const kind = run[0]!.low!.solid ? 'solid' : 'stems';
  return banded(kind, ring, view) + (kind === 'solid' ? path('thin', pathData(ring, true)) : '');
}

function highBand(run: readonly SectionStation[], view: SideFrame): string {
  const ring = bandRing(run, view, ({ high }) => [high!.base_m, high!.top_m]);
  return banded('wood', ring, view) + path('edge', pathData(ring, true));
}

function banded(kind: Hatch, ring: readonly Place[], { width_mm, height_mm }: SideFrame): string {
  return path(`hatch ${kind}`, hatch(kind, [ring], width_mm, height_mm));
}

function groundData({ stations }: SideSection, view: SideFrame): string {
  return pathData(stations.map(({ along_m, ground_m }) => view.place(along_m, ground_m)));
}

function flightData({ stations }: SideSection, view: SideFrame): string {
  return pathData(
    stations.flatMap(({ along_m, flight_m }) => (flight_m === null ? [] : [view.place(along_m, flight_m)])),
  );
}

/** Without a simulated flight: only how high it gets. */
function topLine(shot: ShotReport, view: SideFrame, units: UnitsChoice): string {
  const [x0, y] = view.place(0, shot.apex_m);
  const [x1] = view.place(shot.distance_m, shot.apex_m);
  return `${haloed('top', `M${number(x0)} ${number(y)}H${number(x1)}`)}${word(`top ${fine(shot.apex_m, units)}`, [(x0 + x1) / 2, y - 0.6])}`;
}

function tightMark(section: SideSection, view: SideFrame, units: UnitsChoice): string {
  const tight = tightPlace(section);
  if (tight === null) return '';
  const [x, low] = view.place(tight.along_m, tight.flight_m);
  const [, high] = view.place(tight.along_m, Math.min(tight.base_m, view.top_m));
  const margin_m = tight.base_m - tight.flight_m;
  const text = margin_m > 0 ? `${fine(margin_m, units)} to spare` : 'into it';
  const anchor = x > view.width_mm * 0.7 ? 'end' : 'start';
  return `${haloed('tight', `M${number(x)} ${number(low)}V${number(high)}`)}${word(text, [x + (anchor === 'end' ? -0.7 : 0.7), Math.max(2.4, high - 0.5)], anchor)}`;
}

const TICKS = [5, 10, 20, 25, 50, 100, 200];
const LEAST_TICK_MM = 9;

function axis({ stations }: SideSection, view: SideFrame, units: UnitsChoice): string {
  const metresPer = units.length === 'ft' ? METERS_PER_FOOT : 1;
  const end_m = stations.at(-1)!.along_m;
  const every = TICKS.find(tick => tick * metresPer * view.mmPerMetre >= LEAST_TICK_MM) ?? TICKS.at(-1)!;
  const base = view.height_mm - AXIS_MM + 0.3;
  const marks: string[] = [];
  for (let value = 0; value * metresPer <= end_m; value += every) {
    const [x] = view.place(value * metresPer, 0);
    marks.push(path('tick', `M${number(x)} ${number(base)}v0.6`));
    const anchor = value === 0 ? 'start' : x > view.width_mm - 3 ? 'end' : 'middle';
    marks.push(word(value === 0 ? `0 ${units.length}` : `${value}`, [x, view.height_mm - 0.3], anchor));
  }
  return marks.join('');
}

/** The basket, where the throw passes it within reach of the eye. */
function basket(length_m: number, shot: ShotReport, view: SideFrame, { stations }: SideSection): string {
  const along_m = length_m * Math.cos((shot.aimFromBasket_deg * Math.PI) / 180);
  const station = stations.find(item => item.along_m >= along_m);
  if (station === undefined || Math.abs(shot.aimFromBasket_deg) > WIDEST_BASKET_DEG) return '';
  const [x, foot] = view.place(along_m, station.ground_m);
  const [, head] = view.place(along_m, station.ground_m + BASKET_M);
  const tray_mm = Math.max(0.8, (foot - head) * 0.4);
  return `${haloed('pole', `M${number(x)} ${number(foot)}V${number(head)}`)}<rect class="tee" x="${number(x - 0.9)}" y="${number(head)}" width="1.8" height="${number(tray_mm)}"/>`;
}
