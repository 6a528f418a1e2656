import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';

/** Sobol dimensions available. */
export const SAMPLE_DIMENSIONS = 8;

const BITS = 30;
const RNG_WARM_UP = 32;
// Primitive polynomials (degree, inner coefficients) and initial direction numbers, dimensions 2…8.
// Source: Joe & Kuo, "Constructing Sobol sequences with better two-dimensional projections", SIAM J. Sci. Comput. 30 (2008),
// table new-joe-kuo-6; values from memory, checked by the stratification test.
const POLYNOMIALS: readonly (readonly [degree: number, inner: number, initial: readonly number[]])[] = [
  [1, 0, [1]],
  [2, 1, [1, 3]],
  [3, 1, [1, 3, 1]],
  [3, 2, [1, 1, 1]],
  [4, 1, [1, 1, 3, 3]],
  [4, 4, [1, 3, 5, 13]],
  [5, 2, [1, 1, 5, 5, 17]],
];

/**
 * Standard normal points that fill space evenly: a Sobol sequence shifted digitally by the seed, mapped through the inverse normal.
 * @returns `count` rows of SAMPLE_DIMENSIONS numbers, row-major
 * @source Joe & Kuo 2008 (directions); digital shift: L'Ecuyer & Lemieux 2002; same result for the same seed on every machine
 */
export function normalSamples(count: number, seed: number): Float64Array {
  const rng = xoroshiro128plus(seed | 0);
  for (let i = 0; i < RNG_WARM_UP; i++) rng.next(); // small seeds start the generator near zero
  const shift = new Int32Array(SAMPLE_DIMENSIONS);
  for (let d = 0; d < SAMPLE_DIMENSIONS; d++) shift[d] = rng.next() & ((1 << BITS) - 1);
  const directions = directionNumbers();
  const points = new Float64Array(count * SAMPLE_DIMENSIONS);
  const current = new Int32Array(SAMPLE_DIMENSIONS);
  for (let i = 0; i < count; i++) {
    if (i > 0) {
      let zeroBit = 0; // lowest zero bit of i − 1 (Gray code order)
      while (((i - 1) >> zeroBit) & 1) zeroBit++;
      for (let d = 0; d < SAMPLE_DIMENSIONS; d++) current[d] ^= directions[d * BITS + zeroBit];
    }
    for (let d = 0; d < SAMPLE_DIMENSIONS; d++) {
      const uniform = ((current[d] ^ shift[d]) + 0.5) / 2 ** BITS;
      points[i * SAMPLE_DIMENSIONS + d] = inverseNormal(uniform);
    }
  }
  return points;
}

function directionNumbers(): Int32Array {
  const v = new Int32Array(SAMPLE_DIMENSIONS * BITS);
  for (let k = 0; k < BITS; k++) v[k] = 1 << (BITS - 1 - k);
  for (let d = 1; d < SAMPLE_DIMENSIONS; d++) {
    const [degree, inner, initial] = POLYNOMIALS[d - 1];
    const at = d * BITS;
    for (let k = 0; k < BITS; k++) {
      if (k < degree) {
        v[at + k] = initial[k] << (BITS - 1 - k);
        continue;
      }
      let value = v[at + k - degree] ^ (v[at + k - degree] >> degree);
      for (let j = 1; j < degree; j++) if ((inner >> (degree - 1 - j)) & 1) value ^= v[at + k - j];
      v[at + k] = value;
    }
  }
  return v;
}

/**
 * Quantile of the standard normal.
 * @param p - in (0, 1)
 * @source P. J. Acklam's rational approximation (2003), relative error < 1.2e-9; coefficients from memory, checked in tests
 * against published quantiles
 */
export function inverseNormal(p: number): number {
  if (!(p > 0 && p < 1)) throw new RangeError(`probability must lie in (0, 1), got ${p}`);
  const tail = 0.02425;
  if (p < tail) return tailQuantile(Math.sqrt(-2 * Math.log(p)));
  if (p > 1 - tail) return -tailQuantile(Math.sqrt(-2 * Math.log(1 - p)));
  const q = p - 0.5;
  const r = q * q;
  return (
    ((((((-3.969683028665376e1 * r + 2.209460984245205e2) * r - 2.759285104469687e2) * r + 1.38357751867269e2) * r -
      3.066479806614716e1) *
      r +
      2.506628277459239) *
      q) /
    (((((-5.447609879822406e1 * r + 1.615858368580409e2) * r - 1.556989798598866e2) * r + 6.680131188771972e1) * r -
      1.328068155288572e1) *
      r +
      1)
  );
}

function tailQuantile(q: number): number {
  return (
    (((((-7.784894002430293e-3 * q - 3.223964580411365e-1) * q - 2.400758277161838) * q - 2.549732539343734) * q +
      4.374664141464968) *
      q +
      2.938163982698783) /
    ((((7.784695709041462e-3 * q + 3.224671290700398e-1) * q + 2.445134137142996) * q + 3.754408661907416) * q + 1)
  );
}
