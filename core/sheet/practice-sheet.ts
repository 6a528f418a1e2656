import type { HoleMap } from '../geometry/hole-map.ts';
import type { ShotDrawing } from '../strategy/hole-drawing.ts';
import type { HolePlan, PlanReport, ShotReport } from '../strategy/plan-report.ts';
import { percent } from '../units/percent.ts';
import type { UnitsChoice } from '../units/units-choice.ts';
import { topView } from './drawing/top-view.ts';
import { legend } from './legend.ts';
import { escaped, shortened } from './markup.ts';
import { type PageLayout, pageLayout } from './page-layout.ts';
import { chunks } from './pocket-cover.ts';
import { practiceStyle } from './practice-style.ts';
import type { Paper } from './sheet-input.ts';
import { sheetStyle } from './sheet-style.ts';
import { lineCount, linesHeight_mm } from './text-height.ts';
import { aimWords } from './words/aim-words.ts';
import { briefShot, lineWord } from './words/brief-shot.ts';
import { SHORT_RULES } from './words/cautions.ts';
import { far, inUnits } from './words/lengths.ts';
import { plainSource } from './words/plain-source.ts';
import { powerWords } from './words/release-words.ts';
import { dayWindWords } from './words/wind-words.ts';

/** One hole of a practice round, with what is drawn of it. */
type PracticeSheetHole = Readonly<{
  ref: string;
  tee: string;
  length_m: number;
  playLength_m: number;
  bearing_deg: number;
  par: number;
  shot: ShotReport;
  next: HolePlan['next'];
  expectedThrows: number;
  cautions: readonly string[];
  map: HoleMap;
  drawing: ShotDrawing;
}>;

export type PracticeSheetInput = Readonly<{
  course: string;
  player: string;
  limitWords: string;
  air: PlanReport['air'];
  /** In the order of play, at least one. */
  holes: readonly PracticeSheetHole[];
  par: number;
  expectedThrows: number;
  target: Readonly<{ throws: number; chance: number; overPar: number }>;
  drills: readonly Readonly<{ title: string; text: string; why: string }>[];
  cautions: readonly string[];
  paper?: Paper;
  units: UnitsChoice;
}>;

const LONGEST_TITLE = 60;
const LONGEST_DISC = 34;
const ROWS_A_PAGE = 18;
const VIEW_MM = [58, 68] as const;
const VIEWS_A_PAGE = 9;

/**
 * The practice round on paper: target and score boxes, a line a hole, drills, cautions, then the holes from above. One HTML document
 * that needs nothing else; everything from outside is escaped.
 * @throws {RangeError} without holes
 */
export function practiceSheetHtml(input: PracticeSheetInput): string {
  const { course, player, limitWords, holes, paper = 'a4' } = input;
  if (holes.length === 0) throw new RangeError('holes must hold at least one hole, got none');
  const layout = pageLayout('fourAPage', paper);
  const title = escaped(
    `Practice, ${limitWords}: ${shortened(course, LONGEST_TITLE)}, ${shortened(player, LONGEST_TITLE)}`,
  );
  const rows = chunks(holes, ROWS_A_PAGE);
  const todo = `${drillList(input)}${cautionBox(input)}`;
  const isShort = rows.length === 1 && tableHeight_mm(holes) + todoHeight_mm(input, layout) <= roomOf_mm(layout);
  const pages = [
    ...rows.map(
      (some, i) =>
        `${head(input)}${i === 0 ? targetBox(input) : ''}${holeTable(some, input, i === rows.length - 1)}${isShort ? todo : SHORT}`,
    ),
    ...(isShort ? [] : [`${head(input)}${todo}`]),
    ...chunks(holes, VIEWS_A_PAGE).map(some => `${head(input)}${views(some, input)}${SHORT}`),
  ];
  return `<!DOCTYPE html>
<html lang="en" xmlns="http://www.w3.org/1999/xhtml">
<head>
<meta charset="utf-8"/>
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'"/>
<meta name="viewport" content="width=device-width"/>
<title>${title}</title>
<style>${sheetStyle(layout)}${practiceStyle()}</style>
</head>
<body>
${pages.map(page => `<section class="page practice">${page}</section>`).join('\n')}
</body>
</html>
`;
}

/** On every page that has not the cautions in full. */
const SHORT = `<p class="rules"><b>Careful</b> ${escaped(SHORT_RULES)}</p>`;

const HEAD_MM = 20;
const TARGET_MM = 16;
const TABLE_MM = 20;
const ROW_MM = 9.6;
const DRILL_MM = 13;
const DRILL_PT = 9;
const CAUTION_PT = 8.6;
const BOX_MM = 16;

/** What the page has for drills and cautions under the table; rather too much than too little is reckoned for each. */
const roomOf_mm = ({ page }: PageLayout) => page.height_mm - 2 * page.margin_mm;

function tableHeight_mm(holes: readonly PracticeSheetHole[]): number {
  return HEAD_MM + TARGET_MM + TABLE_MM + ROW_MM * holes.length;
}

function todoHeight_mm({ drills, cautions, holes }: PracticeSheetInput, { page }: PageLayout): number {
  const width_mm = page.width_mm - 2 * page.margin_mm - 12;
  const lines = (text: string, size_pt: number) => linesHeight_mm(lineCount(text, size_pt, width_mm), size_pt) + 0.8;
  const ofDrills = drills.map(({ text, why }) => DRILL_MM + lines(text, DRILL_PT) + lines(why, DRILL_PT));
  const texts = [...cautions, ...holes.flatMap(hole => hole.cautions.map(text => `Hole ${hole.ref}: ${text}`))];
  return BOX_MM + [...ofDrills, ...texts.map(text => lines(text, CAUTION_PT))].reduce((sum, height) => sum + height, 0);
}

function head({ course, player, limitWords, air, units }: PracticeSheetInput): string {
  const place = escaped(shortened(course, LONGEST_TITLE));
  const rest = `${shortened(player, LONGEST_TITLE)} · ${dayWindWords(air, units)} · date ____________`;
  return `<div class="head"><h1><bdi>Practice at ${place}</bdi></h1><p><bdi>${escaped(rest)}</bdi></p></div><p class="limit"><bdi>${escaped(capital(shortened(limitWords, 160)))}.</bdi></p>`;
}

function targetBox({ target, expectedThrows, par, holes }: PracticeSheetInput): string {
  const over =
    target.overPar === 0 ? 'par' : `${Math.abs(target.overPar)} ${target.overPar > 0 ? 'over' : 'under'} par ${par}`;
  return `<div class="target"><p class="big"><b>Target</b> ${target.throws}</p><p>${escaped(
    `${over}, ${holes.length} ${holes.length === 1 ? 'hole' : 'holes'}. Reached in ${percent(target.chance)} of simulated rounds; ${expectedThrows.toFixed(1)} throws expected.`,
  )}</p><p class="written">My score <span class="box"></span></p></div>`;
}

const COLUMNS = ['Hole', 'Tee', 'Long', 'Par', 'Throw', 'Aim, reach', 'Then', 'Exp.', 'Score'] as const;

function holeTable(
  holes: readonly PracticeSheetHole[],
  { units, par, target }: PracticeSheetInput,
  isLast: boolean,
): string {
  const rows = holes.map(hole => {
    const cells = [
      `<b>${escaped(shortened(hole.ref, 8))}</b>`,
      escaped(shortened(hole.tee, 16)),
      escaped(far(hole.playLength_m, units)),
      `${hole.par}`,
      `<b>${escaped(shortened(hole.shot.disc, LONGEST_DISC))}</b><br/>${escaped(lineWords(hole.shot))}`,
      escaped(
        `${aimWords(hole.shot.aimFromBasket_deg, hole.length_m, units)}; goes ${far(hole.shot.distance_m, units)}; within ${far(20, units)}: ${percent(hole.shot.within20mChance)}`,
      ),
      escaped(thenWords(hole, units)),
      hole.expectedThrows.toFixed(1),
      '<span class="box"></span>',
    ];
    return `<tr>${cells.map(cell => `<td><bdi>${cell}</bdi></td>`).join('')}</tr>`;
  });
  const foot = isLast
    ? `<tfoot><tr><td colspan="3">Together</td><td>${par}</td><td colspan="4">Target ${target.throws}</td><td><span class="box"></span></td></tr></tfoot>`
    : '';
  return `<table class="round"><thead><tr>${COLUMNS.map(name => `<th scope="col">${name}</th>`).join('')}</tr></thead><tbody>${rows.join('')}</tbody>${foot}</table>`;
}

function lineWords(shot: ShotReport): string {
  return [...(shot.hand === 'forehand' ? ['forehand'] : []), lineWord(shot), powerWords(shot)].join(', ');
}

/** The next throw from the likeliest lie. */
function thenWords({ next }: PracticeSheetHole, units: UnitsChoice): string {
  const likeliest = next.reduce<HolePlan['next'][number] | null>(
    (best, one) => (best === null || one.chance > best.chance ? one : best),
    null,
  );
  if (likeliest === null) return '';
  const to = `${far(likeliest.toBasket_m, units)} to go`;
  return likeliest.shot === undefined ? `${to}: putt` : `${to}: ${briefShot(likeliest.shot)}`;
}

function drillList({ drills, units }: PracticeSheetInput): string {
  if (drills.length === 0) return '';
  const items = drills.map(
    ({ title, text, why }) =>
      `<li><h2><bdi>${escaped(inUnits(title, units))}</bdi></h2><p><bdi>${escaped(inUnits(text, units))}</bdi></p><p class="why"><bdi>${escaped(inUnits(why, units))}</bdi></p><p class="written">Counted <span class="box"></span> of <span class="box"></span> &#160; date ____________</p></li>`,
  );
  return `<h2 class="part">To practise</h2><ol class="drills">${items.join('')}</ol>`;
}

function cautionBox({ cautions, holes, units }: PracticeSheetInput): string {
  const ofHoles = holes.flatMap(({ ref, cautions: own }) => own.map(text => `Hole ${ref}: ${plainSource(text)}`));
  const items = [...cautions, ...ofHoles].map(text => `<li><bdi>${escaped(inUnits(text, units))}</bdi></li>`);
  return `<div class="cautions"><h2>Careful</h2><ul>${items.join('')}</ul></div>`;
}

function views(holes: readonly PracticeSheetHole[], { air, units }: PracticeSheetInput): string {
  const [width_mm, height_mm] = VIEW_MM;
  const items = holes.map(({ ref, tee, par, playLength_m, bearing_deg, shot, map, drawing }) => {
    const view = topView({ plan: { ref, bearing_deg }, map, drawing }, shot, air, units, width_mm, height_mm);
    const words = `<b>${escaped(shortened(ref, 8))}</b> ${escaped(shortened(tee, 16))}, ${escaped(far(playLength_m, units))}, par ${par}`;
    return `<figure><figcaption><bdi>${words}<br/>${escaped(shortened(shot.disc, LONGEST_DISC))}</bdi></figcaption>${view}</figure>`;
  });
  return `<div class="views">${items.join('')}</div>${legend()}`;
}

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);
