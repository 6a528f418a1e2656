import { solveLinear } from '../player/solve-linear.ts';

/** Keeps the normal equations solvable where results hardly differ. */
const RIDGE = 1e-6;

/**
 * A full quadratic through noisy values at points of a plane, by least squares: what they would be without the noise.
 * @param points - pairs, about standard normal
 * @param values - one a point
 * @returns the quadratic at the points
 * @throws {RangeError} for fewer than 7 points
 * @source regression on the sufficient results, as in Strong, Oakley, Brennan & Breeze, Medical Decision Making 35 (2015), from memory
 */
export function smoothOverResults(points: readonly (readonly [number, number])[], values: readonly number[]): number[] {
  if (points.length < 7) throw new RangeError(`points must be 7 or more, got ${points.length}`);
  const terms = points.map(([a, b]) => [1, a, b, a * a - 1, a * b, b * b - 1]);
  const size = terms[0]!.length;
  const matrix = Array.from({ length: size }, (_, i) =>
    Array.from({ length: size }, (_, j) => terms.reduce((sum, t) => sum + t[i]! * t[j]!, i === j ? RIDGE : 0)),
  );
  const right = Array.from({ length: size }, (_, i) => terms.reduce((sum, t, p) => sum + t[i]! * values[p]!, 0));
  const coefficients = solveLinear(matrix, right);
  return terms.map(t => t.reduce((sum, term, i) => sum + term * coefficients[i]!, 0));
}
