/**
 * Round numbers (1, 2 or 5 times a power of ten units apart) between two bounds, about `count` of them.
 * @param unit - size of the unit the numbers are round in
 */
export function niceSteps(from: number, to: number, count: number, unit = 1): number[] {
  const rough = (to - from) / unit / Math.max(1, count);
  if (!(rough > 0)) return [];
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = ([1, 2, 5, 10].map(m => m * power).find(s => s >= rough) ?? 10 * power) * unit;
  const first = Math.ceil(from / step);
  return Array.from({ length: Math.max(0, Math.floor(to / step) - first + 1) }, (_, i) => (first + i) * step);
}
