import type { PlanReport } from '../strategy/plan-report.ts';
import type { UnitsChoice } from '../units/units-choice.ts';
import { type Block, paragraph, stacked } from './block.ts';
import { legend } from './legend.ts';
import { escaped, shortened } from './markup.ts';
import type { PageLayout } from './page-layout.ts';
import type { SheetHole } from './sheet-input.ts';
import { linesHeight_mm } from './text-height.ts';
import { shortAim } from './words/aim-words.ts';
import { SHEET_CAUTIONS } from './words/cautions.ts';
import { far, inUnits } from './words/lengths.ts';
import { carryWords, roundWords } from './words/round-words.ts';
import { roundWindWords } from './words/wind-words.ts';

const LONGEST_TITLE = 60;
const LONGEST_DISC = 32;
const LONGEST_ASSUMED = 900;
const HOLES_A_PAGE = 18;

type Plan = Omit<PlanReport, 'holes'>;

/** The pages before the holes: the round and its cautions, the holes at a glance, the marks and what was assumed. */
export function pocketCover(plan: Plan, holes: readonly SheetHole[], units: UnitsChoice, layout: PageLayout): string[] {
  return [
    firstPage(plan, holes, units, layout),
    ...chunks(holes, HOLES_A_PAGE).map((some, i) => listPage(some, units, i === 0 ? carryWords(plan) : [], layout)),
    marksPage(plan, units, layout),
  ];
}

/** Of the frame round the cautions, and the gaps of a page. */
const FRAME_MM = 3;
const GAPS_MM = 5;
const SIZES_PT = [7.2, 6.8, 6.4, 6, 5.6, 5.2];
const HEADING_PT = 8.4;

/** Paragraphs in the largest type in which they fit the room, or the smallest there is. */
function fitted(texts: readonly string[], width_mm: number, room_mm: number, label?: string): Block {
  const made = SIZES_PT.map(size_pt =>
    stacked(texts.map(text => paragraph(text, { kind: 'line', size_pt, width_mm }, label))),
  );
  return made.find(({ height_mm }) => height_mm <= room_mm) ?? made.at(-1)!;
}

function firstPage(plan: Plan, holes: readonly SheetHole[], units: UnitsChoice, { card }: PageLayout): string {
  const { width_mm, height_mm } = card;
  const wind = roundWindWords(
    plan.air,
    holes.map(hole => hole.plan),
    units,
  );
  const source = shortened(plan.air.source, LONGEST_TITLE);
  const head = stacked([
    paragraph(shortened(plan.course, LONGEST_TITLE), {
      kind: 'name',
      size_pt: 13,
      width_mm,
      bold: true,
      element: 'h1',
    }),
    paragraph(`${shortened(plan.player, LONGEST_TITLE)}: ${roundWords(plan)}.`, {
      kind: 'line',
      size_pt: 7.6,
      width_mm,
    }),
    paragraph(
      `${wind} (${source}). In other wind, plan again.`,
      { kind: 'line', size_pt: 7.6, width_mm },
      'Planned for',
    ),
  ]);
  const room_mm = height_mm - head.height_mm - linesHeight_mm(1, HEADING_PT) - GAPS_MM;
  const cautions = fitted([...plan.cautions, ...SHEET_CAUTIONS], width_mm - FRAME_MM, room_mm);
  return `<div class="cover">${head.html}<div class="cautions"><h2 style="font-size:${HEADING_PT}pt">Before you throw</h2>${cautions.html}</div></div>`;
}

const FOLDING =
  'fold the page along its length and twice across; cut the two middle panels apart along the long fold; push the ends together.';
/** Of the marks and what stands round them. */
const MARKS_MM = 36;

function marksPage(plan: Plan, units: UnitsChoice, { card, cardsAPage }: PageLayout): string {
  const assumed = [...plan.air.notes, ...plan.notes].map(text => inUnits(text, units)).join(' ');
  const folding = cardsAPage === 1 ? [] : [FOLDING];
  const words = stacked([
    fitted(folding, card.width_mm, card.height_mm, 'To fold'),
    fitted(
      assumed === '' ? [] : [shortened(assumed, LONGEST_ASSUMED)],
      card.width_mm,
      card.height_mm - MARKS_MM - folding.length * 10,
      'Assumed',
    ),
  ]);
  return `<div class="cover"><h2 style="font-size:${HEADING_PT}pt">Marks</h2>${legend()}${words.html}</div>`;
}

const ROW_MM = 3.9;

function listPage(
  holes: readonly SheetHole[],
  units: UnitsChoice,
  carry: readonly string[],
  { card }: PageLayout,
): string {
  const rows = holes.map(({ plan, pinned }) => {
    const shot = pinned ?? plan.choice;
    const cells = [
      shortened(plan.ref, 6),
      `${plan.par}`,
      far(plan.playLength_m, units),
      shortened(shot.disc, LONGEST_DISC),
      shortAim(shot.aimFromBasket_deg),
    ];
    return `<tr>${cells.map(cell => `<td><bdi>${escaped(cell)}</bdi></td>`).join('')}</tr>`;
  });
  return `<div class="cover"><table class="list"><colgroup><col style="width:10%"/><col style="width:8%"/><col style="width:13%"/><col/><col style="width:17%"/></colgroup><thead><tr><th>No.</th><th>Par</th><th>Long</th><th>Disc</th><th>Aim</th></tr></thead><tbody>${rows.join('')}</tbody></table>${fitted(carry, card.width_mm, card.height_mm - (holes.length + 1) * ROW_MM - GAPS_MM, 'Carry').html}</div>`;
}

export function chunks<T>(items: readonly T[], size: number): T[][] {
  return Array.from({ length: Math.ceil(items.length / size) }, (_, i) => items.slice(i * size, (i + 1) * size));
}
