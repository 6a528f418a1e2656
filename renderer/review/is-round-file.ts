/** A round file says what it is in its first property. */
export function isRoundFile(text: string): boolean {
  return /^\s*\{\s*"schema"\s*:\s*"roundwright\/round@/.test(text);
}

/** A table of a round has a column for the hole; one of fieldwork has none. */
export function isRoundTable(text: string): boolean {
  const [head = ''] = text.split(/\r?\n/, 1);
  return /(^|[\s,;\t"\uFEFF])hole($|[\s,;\t"])/i.test(head);
}
