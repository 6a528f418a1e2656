/** "41 %"; what is neither never nor always is not rounded to it. */
export function percent(chance: number): string {
  const rounded = Math.round(100 * chance);
  if (rounded === 0 && chance > 0) return '<1 %';
  if (rounded === 100 && chance < 1) return '>99 %';
  return `${rounded} %`;
}
