const LEAST_EXPECTED = 5;
const SHIFTS = 41;

/** A goodness-of-fit test: the statistic, its degrees of freedom, the chance of one as large, and the shift it was found at. */
export type Fit = Readonly<{ statistic: number; freedom: number; chance: number; shift: number }>;

/**
 * Pearson's chi-square test of counts against stated chances, at an allowance: the stated mean may be off by up to `allowance`, so
 * the test is made at the shift within it that fits best. Entries are joined until each is expected five times (Cochran 1954).
 * @param counts, chances - of the same scores in order; the chances sum to 1
 */
export function chiSquareAt(counts: readonly number[], chances: readonly number[], allowance: number): Fit {
  const total = counts.reduce((a, b) => a + b, 0);
  let best: Fit | null = null;
  for (let i = 0; i < SHIFTS; i++) {
    const shift = allowance * ((2 * i) / (SHIFTS - 1) - 1);
    const expected = shifted(chances, shift).map(chance => chance * total);
    const { statistic, freedom } = pearson(counts, expected);
    if (best === null || statistic < best.statistic)
      best = { statistic, freedom, chance: upperTail(statistic, freedom), shift };
  }
  if (best === null) throw new RangeError('no shift was tried');
  return best;
}

/** The distribution with its mean moved: a share of every entry goes one score up (or down). */
function shifted(chances: readonly number[], shift: number): number[] {
  const [whole, share] = [Math.floor(shift), shift - Math.floor(shift)];
  const at = (i: number) => chances[i] ?? 0;
  const moved = chances.map((_, i) => (1 - share) * at(i - whole) + share * at(i - whole - 1));
  // what leaves the table at an end stays in the entry there
  moved[shift > 0 ? moved.length - 1 : 0] += 1 - moved.reduce((a, b) => a + b, 0);
  return moved;
}

function pearson(counts: readonly number[], expected: readonly number[]): { statistic: number; freedom: number } {
  const joined: { count: number; expected: number }[] = [];
  let open = { count: 0, expected: 0 };
  counts.forEach((count, i) => {
    open = { count: open.count + count, expected: open.expected + expected[i] };
    if (open.expected < LEAST_EXPECTED) return;
    joined.push(open);
    open = { count: 0, expected: 0 };
  });
  const last = joined.pop() ?? { count: 0, expected: 0 };
  joined.push({ count: last.count + open.count, expected: last.expected + open.expected });
  const statistic = joined.reduce((sum, cell) => sum + (cell.count - cell.expected) ** 2 / cell.expected, 0);
  return { statistic, freedom: joined.length - 1 };
}

/**
 * Chance of a chi-square variable above `x`.
 * @source Wilson & Hilferty 1931: the cube root of χ²/k is nearly normal with mean 1 − 2/9k and variance 2/9k
 */
export function upperTail(x: number, freedom: number): number {
  if (freedom < 1) return 1;
  const v = 2 / (9 * freedom);
  return 1 - normalBelow((Math.cbrt(x / freedom) - (1 - v)) / Math.sqrt(v));
}

/** @source Abramowitz & Stegun 1964, 7.1.26 (error below 1.5e-7) */
function normalBelow(z: number): number {
  const x = Math.abs(z) / Math.SQRT2;
  const t = 1 / (1 + 0.3275911 * x);
  const poly = t * (0.254829592 + t * (-0.284496736 + t * (1.421413741 + t * (-1.453152027 + t * 1.061405429))));
  const erf = 1 - poly * Math.exp(-x * x);
  return z >= 0 ? (1 + erf) / 2 : (1 - erf) / 2;
}
