import type { PlanReport } from '../strategy/plan-report.ts';
import { specialCautions } from '../strategy/special-words.ts';
import type { UnitsChoice } from '../units/units-choice.ts';
import { type Block, paragraph, stacked, type TextStyle, wrapped } from './block.ts';
import { CROWDINGS, type Crowding } from './crowding.ts';
import { sideView } from './drawing/side-view.ts';
import { topView } from './drawing/top-view.ts';
import { escaped, shortened } from './markup.ts';
import type { PageLayout } from './page-layout.ts';
import type { SheetHole } from './sheet-input.ts';
import { lineCount, linesHeight_mm, textWidth_mm } from './text-height.ts';
import { aimWords } from './words/aim-words.ts';
import { holeCautionWords, SHORT_RULES } from './words/cautions.ts';
import { insteadWords } from './words/instead-words.ts';
import { keepAway } from './words/keep-away.ts';
import { far, fine } from './words/lengths.ts';
import { nextWords } from './words/next-words.ts';
import { oddsWords } from './words/odds-words.ts';
import { heightWords, reachWords, throwWords } from './words/release-words.ts';
import { airOfHole, flipWords, holeWindWords } from './words/wind-words.ts';

const LONGEST_DISC = 56;
const LONGEST_NAME = 34;
const LONGEST_REF = 8;
const LONGEST_NOTE = 160;
const MAP_SHARE = 0.4;
const COLUMN_GAP_MM = 2;
const SECTION_GAP_MM = 1;
/** A disc's name over more lines than this is set smaller. */
const DISC_LINES = 2;
const LEAST_MAP_MM = 26;
const LARGEST_MAP_RATIO = 1.9;
const TALLEST_SIDE_MM = 20;

export type CardSetting = Readonly<{
  air: PlanReport['air'];
  units: UnitsChoice;
  layout: PageLayout;
  /** The few rules for every hole stand on the card itself where no page foot has them in full. */
  withRules: boolean;
}>;

/** One hole as a card of the layout's size: what to throw in the largest type, then how, how sure, what to stay away from, what next, what else. */
export function holeCard(hole: SheetHole, setting: CardSetting): string {
  const height_mm = setting.layout.card.height_mm;
  const parts = CROWDINGS.map(crowding => () => cardParts(hole, setting, crowding));
  let card = parts[0]!();
  for (const make of parts) {
    card = make();
    if (card.height_mm <= height_mm) break;
  }
  return card.html(Math.max(0, height_mm - card.height_mm));
}

type Card = Readonly<{ height_mm: number; html(spare_mm: number): string }>;

function cardParts(hole: SheetHole, setting: CardSetting, crowding: Crowding): Card {
  const { plan, report, pinned, note } = hole;
  const { units, layout, air, withRules } = setting;
  const shot = pinned ?? plan.choice;
  const { width_mm } = layout.card;
  const size = (pt: number) => pt * crowding.scale;
  const [body_pt, small_pt] = [size(layout.type.body_pt), size(layout.type.small_pt)];
  const text = (kind: string, size_pt: number, more: Partial<TextStyle> = {}): TextStyle => ({
    kind,
    size_pt,
    width_mm,
    ...more,
  });

  const head = headBlock(hole, setting, crowding);
  const disc = shortened(shot.disc, LONGEST_DISC);
  const fits = lineCount(disc, size(layout.type.disc_pt), width_mm, true) <= DISC_LINES;
  const disc_pt = size(layout.type.disc_pt) * (fits ? 1 : 0.72);
  const what = stacked([
    paragraph(disc, text('disc', disc_pt, { bold: true, element: 'h2' })),
    paragraph(
      `${capital(shot.title)}${pinned === undefined ? '' : ' (your own choice)'}`,
      text('title', size(layout.type.title_pt), { bold: true, space_mm: 0.6 }),
    ),
  ]);

  const map_mm = width_mm * MAP_SHARE;
  const column = { width_mm: width_mm - map_mm - COLUMN_GAP_MM, space_mm: 0.3 };
  const rows: readonly (readonly [string, string])[] = [
    ['Throw', throwWords(shot)],
    ['Height', heightWords(shot, units)],
    ['Aim', aimWords(shot.aimFromBasket_deg, plan.length_m, units)],
    ['Goes', reachWords(shot, plan.length_m, units)],
  ];
  const how = stacked([
    ...rows.map(([label, words]) =>
      paragraph(words, text(label === 'Aim' ? 'row aim' : 'row', body_pt, { ...column, bold: label === 'Aim' }), label),
    ),
    ...oddsWords(plan, shot, units).map((words, i) =>
      paragraph(words, text('sure', small_pt, column), i === 0 ? 'How sure' : undefined),
    ),
  ]);
  const middle_mm = Math.max(LEAST_MAP_MM, how.height_mm);

  const away = listed(keepAway(report, shot, units), crowding.keepAway, 'more: see the drawing');
  const next = listed(pinned === undefined ? nextWords(plan, units) : [], crowding.next, 'more');
  const instead = insteadWords(plan, pinned, units, crowding.why).slice(0, crowding.instead);
  const section = (label: string, lines: readonly string[]): Block[] =>
    lines.length === 0
      ? []
      : [paragraph(lines.join(' '), text('section', small_pt, { space_mm: SECTION_GAP_MM }), label)];
  const below = stacked([
    ...section('Stay away', away),
    ...section('Then', next),
    ...section('Or', instead),
    ...section('Other wind', crowding.otherWind && pinned === undefined ? flipWords(plan, units) : []),
    ...section('Your note', note?.trim() ? [shortened(note, LONGEST_NOTE)] : []),
  ]);
  const warned = cautionBlock(
    // a throw of the player's own choosing has its caution too
    holeCautionWords(report, { cautions: [...new Set([...specialCautions([shot.shape]), ...plan.cautions])] }, units),
    withRules ? [SHORT_RULES] : [],
    small_pt,
    width_mm,
  );

  const gaps_mm = 2 * SECTION_GAP_MM + (crowding.side_mm > 0 ? SECTION_GAP_MM : 0);
  const height_mm =
    head.height_mm +
    what.height_mm +
    middle_mm +
    crowding.side_mm +
    below.height_mm +
    crowding.notes_mm +
    warned.height_mm +
    gaps_mm;
  return {
    height_mm,
    html(spare_mm) {
      const side_mm = crowding.side_mm === 0 ? 0 : Math.min(TALLEST_SIDE_MM, crowding.side_mm + spare_mm * 0.3);
      const top_mm = Math.min(Math.max(middle_mm, map_mm * LARGEST_MAP_RATIO), middle_mm + spare_mm * 0.35);
      const top = topView(hole, shot, airOfHole(air, plan), units, map_mm, top_mm);
      const side = side_mm === 0 ? '' : sideView(hole, shot, units, width_mm, side_mm);
      return `<article class="card">${head.html}${what.html}<div class="middle">${top}<div class="how">${how.html}</div></div>${side}${below.html}<div class="notes" aria-label="Room for notes"></div>${warned.html}</article>`;
    },
  };
}

function headBlock({ plan, map }: SheetHole, { units, layout }: CardSetting, { scale }: Crowding): Block {
  const { width_mm } = layout.card;
  const ref = shortened(plan.ref, LONGEST_REF);
  const number_pt = layout.type.disc_pt * scale * (Array.from(ref).length > 3 ? 0.7 : 1);
  const small_pt = layout.type.small_pt * scale;
  const facts = [
    `par ${plan.par}${plan.parSource === 'derived' ? ' (from the length)' : ''}`,
    far(plan.playLength_m, units),
    ...(plan.rise_m === null || Math.abs(plan.rise_m) < 0.5
      ? []
      : [`${fine(Math.abs(plan.rise_m), units)} ${plan.rise_m > 0 ? 'up' : 'down'}`]),
    holeWindWords(plan, units),
  ].join(' · ');
  // beside the number in its frame
  const room_mm = width_mm - Math.max(9, textWidth_mm(ref, number_pt, true) + 3) - 2;
  const name = map.name === undefined ? '' : shortened(map.name, LONGEST_NAME);
  const lines = stacked([
    ...(name === '' ? [] : [paragraph(name, { kind: 'name', size_pt: small_pt, width_mm: room_mm, bold: true })]),
    paragraph(facts, { kind: 'facts', size_pt: small_pt, width_mm: room_mm }),
  ]);
  const least_mm = linesHeight_mm(1, number_pt) + 0.6;
  return {
    html: `<header><span class="ref" style="font-size:${number_pt.toFixed(2)}pt"><span class="unseen">Hole </span><bdi>${escaped(ref)}</bdi></span><div>${lines.html}</div></header>`,
    height_mm: Math.max(least_mm, lines.height_mm) + 1.4,
  };
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** The first so many, and how many are left out. */
function listed(lines: readonly string[], most: number, others: string): string[] {
  const more = lines.length - most;
  return more <= 0 ? [...lines] : [...lines.slice(0, most), `(+${more} ${others})`];
}

function cautionBlock(own: readonly string[], rules: readonly string[], size_pt: number, width_mm: number): Block {
  const inner_mm = width_mm - 2.4;
  const lines = [
    ...own.map(text => paragraph(text, { kind: 'caution own', size_pt, width_mm: inner_mm, bold: true })),
    ...rules.map(text => paragraph(text, { kind: 'caution', size_pt: size_pt * 0.94, width_mm: inner_mm })),
  ];
  if (lines.length === 0) return { html: '', height_mm: 0 };
  return wrapped(stacked(lines), '<aside class="cautions">', '</aside>', 1.6);
}
