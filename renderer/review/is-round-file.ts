/** A round file says what it is in its first property. */
export function isRoundFile(text: string): boolean {
  return /^\s*\{\s*"schema"\s*:\s*"roundwright\/round@/.test(text);
}
