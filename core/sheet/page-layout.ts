import type { Paper, SheetFormat } from './sheet-input.ts';

/** Where things stand on the paper; millimetres and points. */
export type PageLayout = Readonly<{
  page: Readonly<{ width_mm: number; height_mm: number; margin_mm: number }>;
  /** Cards stand in columns and rows between head and foot. */
  card: Readonly<{ width_mm: number; height_mm: number }>;
  columns: number;
  cardsAPage: number;
  gap_mm: number;
  head_mm: number;
  foot_mm: number;
  /** Type, before a crowded card asks for less. */
  type: Readonly<{ disc_pt: number; title_pt: number; body_pt: number; small_pt: number }>;
}>;

// A7 and A4: ISO 216. Letter: 8.5 × 11 in, ANSI Y14.1.
const PAPER_MM = { a4: [210, 297], letter: [215.9, 279.4] } as const;
const POCKET_MM = [74, 105] as const;
const POCKET_MARGIN_MM = 3.5;
/** Most desk printers leave about this white. */
const PANEL_MARGIN_MM = 5;
const PAGE_MARGIN_MM = 8;
const HEAD_MM = 11;
const FOOT_MM = 26;
const GAP_MM = 5;
const SMALL_TYPE = { disc_pt: 14.5, title_pt: 8.8, body_pt: 7.5, small_pt: 6.6 };
const LARGE_TYPE = { disc_pt: 17, title_pt: 11, body_pt: 8.6, small_pt: 7.4 };

/** The page of a format. */
export function pageLayout(format: SheetFormat, paper: Paper): PageLayout {
  const [short_mm, long_mm] = PAPER_MM[paper];
  switch (format) {
    case 'pocket':
      return bare(POCKET_MM, POCKET_MARGIN_MM, 1, 1);
    case 'folded':
      return bare([long_mm, short_mm], PANEL_MARGIN_MM, 4, 2);
    case 'fourAPage':
      return {
        page: { width_mm: short_mm, height_mm: long_mm, margin_mm: PAGE_MARGIN_MM },
        card: {
          width_mm: (short_mm - 2 * PAGE_MARGIN_MM - GAP_MM) / 2,
          height_mm: (long_mm - 2 * PAGE_MARGIN_MM - HEAD_MM - FOOT_MM - 2 * GAP_MM) / 2,
        },
        columns: 2,
        cardsAPage: 4,
        gap_mm: GAP_MM,
        head_mm: HEAD_MM,
        foot_mm: FOOT_MM,
        type: LARGE_TYPE,
      };
    default:
      return format satisfies never;
  }
}

/** A page of panels without head or foot, each with a margin of its own. */
function bare(
  [width_mm, height_mm]: readonly [number, number],
  margin_mm: number,
  columns: number,
  rows: number,
): PageLayout {
  return {
    page: { width_mm, height_mm, margin_mm },
    card: { width_mm: width_mm / columns - 2 * margin_mm, height_mm: height_mm / rows - 2 * margin_mm },
    columns,
    cardsAPage: columns * rows,
    gap_mm: 0,
    head_mm: 0,
    foot_mm: 0,
    type: SMALL_TYPE,
  };
}
