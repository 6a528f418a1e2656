/** A share written as 0…1 or as a percentage; undefined when it is neither. */
export function parseShare(text: string): number | undefined {
  const match = /^(\d*\.?\d+|\d+\.)\s*(%?)$/.exec(text);
  const share = match === null ? Number.NaN : Number(match[1]) / (match[2] === '%' ? 100 : 1);
  return share >= 0 && share <= 1 ? share : undefined;
}
