const ENTITIES: Readonly<Record<string, string>> = {
  amp: '&',
  lt: '<',
  gt: '>',
  quot: '"',
  apos: "'",
  copy: '©',
  nbsp: ' ',
};

/** One line of plain text from what may be HTML: tags go, their words stay. It is shown as text only. */
export function plainLine(text: string, most: number): string {
  const bare = text
    .toWellFormed()
    .replace(/<[^>]*>/g, ' ')
    .replace(/&(\w+);/g, (whole, name: string) => ENTITIES[name.toLowerCase()] ?? whole)
    .replace(/&#(\d{1,6});/g, (_, code: string) => String.fromCodePoint(Math.min(0x10ffff, Number(code))));
  const line = Array.from(bare)
    .filter(character => !/[\p{Cc}\p{Cf}\p{Cs}]/u.test(character) || /\s/.test(character))
    .join('')
    .replace(/\s+/g, ' ')
    .trim();
  return Array.from(line).slice(0, most).join('');
}
