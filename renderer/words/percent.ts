/** A chance as a whole percentage; never "0 %" or "100 %" for what is only nearly so. */
export function percent(share: number): string {
  if (share > 0 && share < 0.005) return '<1 %';
  if (share < 1 && share > 0.995) return '>99 %';
  return `${Math.round(share * 100)} %`;
}
