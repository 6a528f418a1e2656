import type { PlanReport } from '../strategy/plan-report.ts';
import type { UnitsChoice } from '../units/units-choice.ts';
import { paragraph } from './block.ts';
import { legend } from './legend.ts';
import { escaped, shortened } from './markup.ts';
import type { PageLayout } from './page-layout.ts';
import type { SheetHole } from './sheet-input.ts';
import { lineCount, linesHeight_mm } from './text-height.ts';
import { shortAim } from './words/aim-words.ts';
import { SHEET_CAUTIONS } from './words/cautions.ts';
import { far, inUnits } from './words/lengths.ts';
import { carryWords, roundWords } from './words/round-words.ts';
import { dayWindWords } from './words/wind-words.ts';

const LONGEST_TITLE = 60;
const LONGEST_DISC = 32;
const LONGEST_ASSUMED = 900;
const HOLES_A_PAGE = 18;

type Plan = Omit<PlanReport, 'holes'>;

/** The pages before the holes: the round and its cautions, the holes at a glance, the marks and what was assumed. */
export function pocketCover(plan: Plan, holes: readonly SheetHole[], units: UnitsChoice, layout: PageLayout): string[] {
  return [
    firstPage(plan, units, layout),
    ...chunks(holes, HOLES_A_PAGE).map((some, i) => listPage(some, units, i === 0 ? carryWords(plan) : [])),
    marksPage(plan, units, layout),
  ];
}

const line = (text: string, size_pt: number, label?: string): string =>
  paragraph(text, { kind: 'line', size_pt, width_mm: 1 }, label).html;

function firstPage(plan: Plan, units: UnitsChoice, { card }: PageLayout): string {
  const cautions = [...plan.cautions, ...SHEET_CAUTIONS];
  const room_mm = card.height_mm - ABOVE_CAUTIONS_MM;
  const fits = (size: number) => cautionsHeight_mm(cautions, size, card.width_mm - FRAME_MM) <= room_mm;
  const size_pt = CAUTION_SIZES_PT.find(fits) ?? CAUTION_SIZES_PT.at(-1)!;
  return `<div class="cover"><h1 style="font-size:13pt"><bdi>${escaped(shortened(plan.course, LONGEST_TITLE))}</bdi></h1>
${line(`${shortened(plan.player, LONGEST_TITLE)}: ${roundWords(plan)}.`, 7.6)}
${line(`${dayWindWords(plan.air, units)} (${shortened(plan.air.source, LONGEST_TITLE)}). In other wind, plan again.`, 7.6, 'Planned for')}
<div class="cautions"><h2 style="font-size:8.4pt">Before you throw</h2>${cautions.map(text => line(text, size_pt)).join('')}</div></div>`;
}

const CAUTION_SIZES_PT = [7.2, 6.8, 6.4, 6, 5.6, 5.2];
/** Of the first page, for what stands over the cautions; of their frame. */
const ABOVE_CAUTIONS_MM = 33;
const FRAME_MM = 3;

function cautionsHeight_mm(cautions: readonly string[], size_pt: number, width_mm: number): number {
  return cautions.reduce((sum, text) => sum + linesHeight_mm(lineCount(text, size_pt, width_mm), size_pt), 0);
}

const FOLDING =
  'fold the page along its length and twice across; cut the two middle panels apart along the long fold; push the ends together.';

function marksPage(plan: Plan, units: UnitsChoice, { cardsAPage }: PageLayout): string {
  const assumed = [...plan.air.notes, ...plan.notes].map(text => inUnits(text, units));
  return `<div class="cover"><h2 style="font-size:8.4pt">Marks</h2>${legend()}${cardsAPage > 1 ? line(FOLDING, 6.2, 'To fold') : ''}
${assumed.length === 0 ? '' : line(shortened(assumed.join(' '), LONGEST_ASSUMED), 6, 'Assumed')}</div>`;
}

function listPage(holes: readonly SheetHole[], units: UnitsChoice, carry: readonly string[]): string {
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
  return `<div class="cover"><table class="list"><colgroup><col style="width:10%"/><col style="width:8%"/><col style="width:13%"/><col/><col style="width:17%"/></colgroup><thead><tr><th>No.</th><th>Par</th><th>Long</th><th>Disc</th><th>Aim</th></tr></thead><tbody>${rows.join('')}</tbody></table>${carry.map(text => line(text, 6.2, 'Carry')).join('')}</div>`;
}

export function chunks<T>(items: readonly T[], size: number): T[][] {
  return Array.from({ length: Math.ceil(items.length / size) }, (_, i) => items.slice(i * size, (i + 1) * size));
}
