const MM_PER_POINT = 25.4 / 72;
const LINE_SPACING = 1.2;

/**
 * Widths in ems, the larger of Arial's and DejaVu Sans Condensed's (own reading of their metrics), so that what is reckoned to
 * fit does fit with either. Characters in none of these lists are as wide as "n" in the alphabets of Europe, full width elsewhere.
 */
const WIDTHS_EM: readonly (readonly [characters: string, width_em: number])[] = [
  ['ijlI', 0.265],
  [' \u00a0.,:;!|/·’', 0.29],
  ['ftr()[]-°', 0.37],
  ['cksvxyz', 0.525],
  ['wABCDEFHKLNPRSTUVXYZ&', 0.725],
  ['mGMOQ%+=<>±', 0.88],
  ['W@—…', 1],
];
const WIDTH_OF = new Map(WIDTHS_EM.flatMap(([characters, width_em]) => Array.from(characters, c => [c, width_em])));
const USUAL_EM = 0.575;
const FULL_EM = 1.05;
/** First character past the alphabets of Europe (Arabic). */
const BEYOND_EUROPE = 0x0600;
const BOLD = 1.13;

/** How wide a text is at most on one line. */
export function textWidth_mm(text: string, size_pt: number, bold = false): number {
  let width_em = 0;
  for (const character of text)
    width_em += WIDTH_OF.get(character) ?? (character.codePointAt(0)! < BEYOND_EUROPE ? USUAL_EM : FULL_EM);
  return width_em * size_pt * MM_PER_POINT * (bold ? BOLD : 1);
}

/**
 * How many lines a text takes, broken at spaces, words longer than a line anywhere; rather one too many than one too few.
 * @param before_mm - of the first line already taken
 * @returns 0 for no text with nothing before it
 */
export function lineCount(text: string, size_pt: number, width_mm: number, bold = false, before_mm = 0): number {
  const space_mm = textWidth_mm(' ', size_pt, bold);
  let lines = before_mm > 0 ? 1 : 0;
  let room_mm = width_mm - before_mm;
  for (const word of text.split(' ').filter(Boolean)) {
    const word_mm = textWidth_mm(word, size_pt, bold);
    if (lines > 0 && word_mm + space_mm <= room_mm) {
      room_mm -= word_mm + space_mm;
      continue;
    }
    const taken = Math.max(1, Math.ceil(word_mm / width_mm));
    lines += taken;
    room_mm = taken * width_mm - word_mm;
  }
  return lines;
}

/** Height of a text of so many lines. */
export function linesHeight_mm(lines: number, size_pt: number): number {
  return lines * size_pt * MM_PER_POINT * LINE_SPACING;
}
