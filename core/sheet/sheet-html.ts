import { foldedPages } from './folded-pages.ts';
import { type CardSetting, holeCard } from './hole-card.ts';
import { legend } from './legend.ts';
import { escaped, shortened } from './markup.ts';
import { type PageLayout, pageLayout } from './page-layout.ts';
import { chunks, pocketCover } from './pocket-cover.ts';
import type { SheetInput } from './sheet-input.ts';
import { sheetStyle } from './sheet-style.ts';
import { lineCount, linesHeight_mm } from './text-height.ts';
import { SHEET_CAUTIONS } from './words/cautions.ts';
import { inUnits } from './words/lengths.ts';
import { carryWords, roundWords } from './words/round-words.ts';
import { roundWindWords } from './words/wind-words.ts';

const LONGEST_TITLE = 60;

/**
 * The sheet as one HTML document that needs nothing else: no network, no scripts, no images, black on white, at true size.
 * Everything from outside is escaped. It is well-formed XML too.
 * @throws {RangeError} without holes
 */
export function sheetHtml(input: SheetInput): string {
  const { plan, holes, format, paper = 'a4', units } = input;
  if (holes.length === 0) throw new RangeError('holes must hold at least one hole, got none');
  const layout = pageLayout(format, paper);
  const setting: CardSetting = { air: plan.air, units, layout, withRules: format !== 'fourAPage' };
  const cards = holes.map(hole => holeCard(hole, setting));
  const pages = pagesOf(input, layout, cards);
  const title = escaped(
    `${shortened(plan.course, LONGEST_TITLE)}: throws for ${shortened(plan.player, LONGEST_TITLE)}`,
  );
  return `<!DOCTYPE html>
<html lang="en" xmlns="http://www.w3.org/1999/xhtml">
<head>
<meta charset="utf-8"/>
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'"/>
<meta name="viewport" content="width=device-width"/>
<title>${title}</title>
<style>${sheetStyle(layout)}</style>
</head>
<body>
${pages.map(page => `<section class="page">${page}</section>`).join('\n')}
</body>
</html>
`;
}

function pagesOf(input: SheetInput, layout: PageLayout, cards: readonly string[]): string[] {
  const { plan, holes, format, units } = input;
  switch (format) {
    case 'pocket':
      return [...pocketCover(plan, holes, units, layout), ...cards];
    case 'folded':
      return foldedPages([...pocketCover(plan, holes, units, layout), ...cards]);
    case 'fourAPage':
      return fourAPage(input, layout, cards);
    default:
      return format satisfies never;
  }
}

/** Four cards between a head that says which round it is and a foot with the cautions and the marks. */
function fourAPage({ plan, holes, units }: SheetInput, layout: PageLayout, cards: readonly string[]): string[] {
  const course = escaped(shortened(plan.course, LONGEST_TITLE));
  const player = escaped(shortened(plan.player, LONGEST_TITLE));
  const wind = roundWindWords(
    plan.air,
    holes.map(hole => hole.plan),
    units,
  );
  const head = `<div class="head" style="height:${layout.head_mm}mm"><h1><bdi>${course}</bdi></h1><p><bdi>${player}</bdi> · ${escaped(wind)} · ${escaped(roundWords(plan))}</p></div>`;
  const assumed = [...plan.air.notes, ...plan.notes].map(text => inUnits(text, units)).join(' ');
  const carry = carryWords(plan).map(text => `Carry: ${text}`);
  const foot = footText([...plan.cautions, ...SHEET_CAUTIONS, ...carry].join(' '), assumed, layout);
  return chunks(cards, layout.cardsAPage).map(
    some => `${head}<div class="cards">${some.join('')}</div><footer>${legend()}${foot}</footer>`,
  );
}

const FOOT_SIZES_PT = [7, 6.6, 6.2, 5.8, 5.4];
const LEGEND_MM = 7.4;

/** Cautions in the largest type the foot has room for; what was assumed goes where it fits beside them. */
function footText(cautions: string, assumed: string, { foot_mm, page }: PageLayout): string {
  const width_mm = page.width_mm - 2 * page.margin_mm;
  const room_mm = foot_mm - LEGEND_MM;
  const fits = (text: string, size_pt: number) =>
    linesHeight_mm(lineCount(text, size_pt, width_mm), size_pt) <= room_mm;
  const both = `${cautions} Assumed: ${assumed}`;
  const size_pt =
    FOOT_SIZES_PT.find(size => size >= 6.2 && fits(both, size)) ??
    FOOT_SIZES_PT.find(size => fits(cautions, size)) ??
    FOOT_SIZES_PT.at(-1)!;
  const extra = assumed !== '' && fits(both, size_pt) ? ` <b>Assumed</b> ${escaped(assumed)}` : '';
  return `<p style="font-size:${size_pt}pt"><b>Careful</b> ${escaped(cautions)}${extra}</p>`;
}
