/** Where an offset lies in a text, as an editor counts: `line 12, column 5`. */
export function lineAndColumn(text: string, offset: number): string {
  const before = text.slice(0, offset);
  const lineStart = before.lastIndexOf('\n') + 1;
  return `line ${before.split('\n').length}, column ${offset - lineStart + 1}`;
}
