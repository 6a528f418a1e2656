import { escaped } from './markup.ts';
import { lineCount, linesHeight_mm, textWidth_mm } from './text-height.ts';

/** A piece of a card: its markup, and the height it is reckoned to take. */
export type Block = Readonly<{ html: string; height_mm: number }>;

export type TextStyle = Readonly<{
  kind: string;
  size_pt: number;
  width_mm: number;
  bold?: boolean;
  /** Markup element; a paragraph when left out. */
  element?: 'p' | 'h1' | 'h2' | 'li';
  space_mm?: number;
}>;

/** A paragraph, with a label in bold before it if there is one. Text is escaped. */
export function paragraph(text: string, style: TextStyle, label?: string): Block {
  const { kind, size_pt, width_mm, bold = false, element = 'p', space_mm = 0 } = style;
  const labelled = label === undefined ? '' : `<b>${escaped(label)}</b> `;
  const unbroken = keptTogether(text);
  const before_mm = label === undefined ? 0 : textWidth_mm(label, size_pt, true);
  return {
    html: `<${element} class="${kind}" style="font-size:${size_pt.toFixed(2)}pt"><bdi>${labelled}${escaped(unbroken)}</bdi></${element}>`,
    height_mm: linesHeight_mm(lineCount(unbroken, size_pt, width_mm, bold, before_mm), size_pt) + space_mm,
  };
}

const UNIT = /(\d|>99|<1) (?=(?:m|ft|%|°|m\/s|mph|km\/h|kn|throws)(?![\p{L}\p{N}]))/gu;

/** A number and its unit stay on one line. */
function keptTogether(text: string): string {
  return text.replace(UNIT, '$1\u00a0');
}

export function stacked(blocks: readonly Block[]): Block {
  return {
    html: blocks.map(({ html }) => html).join(''),
    height_mm: blocks.reduce((sum, { height_mm }) => sum + height_mm, 0),
  };
}

/** A block with markup round it that adds `extra_mm` of height. */
export function wrapped(block: Block, before: string, after: string, extra_mm = 0): Block {
  return { html: before + block.html + after, height_mm: block.height_mm + extra_mm };
}
