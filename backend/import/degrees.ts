/** Degrees as XML files write them; NaN when the text is no plain number. */
export function degrees(text: string | undefined): number {
  return text !== undefined && /^\s*[+-]?(?:\d{1,3}(?:\.\d*)?|\.\d+)(?:e[+-]?\d{1,3})?\s*$/i.test(text)
    ? Number(text)
    : Number.NaN;
}

export function isDegrees(value: number, most: 90 | 180): boolean {
  return Number.isFinite(value) && Math.abs(value) <= most;
}
