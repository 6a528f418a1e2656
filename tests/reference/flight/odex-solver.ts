import { createRequire } from 'node:module';

/** The part of the npm package `odex` used here. */
type Solver = {
  absoluteTolerance: number;
  relativeTolerance: number;
  denseOutput: boolean;
  solve(
    rate: (t: number, y: number[]) => number[],
    start: number,
    y0: number[],
    end: number,
    /** Return false to stop. `at(i, t)` is component i anywhere in [t0, t1]. */
    onStep: (count: number, t0: number, t1: number, y: number[], at: (i: number, t: number) => number) => boolean,
  ): unknown;
};

// required, not imported: its TypeScript source lies beside its JavaScript and does not pass this project's compiler
const require = createRequire(import.meta.url);
const odex = require('odex') as { Solver: new (dimension: number) => Solver };

/**
 * Solves y' = rate(t, y) until `event` falls through zero.
 * @param event - watched at the solver's own steps; may start at or below zero
 * @returns time and state there, or null if it has not happened by `until`
 * @source Hairer, Nørsett & Wanner, Solving ODEs I, §II.9: the extrapolation code ODEX
 */
export function solveUntil(
  rate: (t: number, y: number[]) => number[],
  y0: readonly number[],
  event: (y: readonly number[]) => number,
  until: number,
  tolerance: number,
): { time: number; state: number[] } | null {
  const solver = new odex.Solver(y0.length);
  solver.absoluteTolerance = tolerance;
  solver.relativeTolerance = tolerance;
  solver.denseOutput = true;
  let before = event(y0);
  let found: { time: number; state: number[] } | null = null;
  solver.solve(rate, 0, [...y0], until, (_count, t0, t1, y, at) => {
    const after = event(y);
    if (before > 0 && after <= 0) {
      const stateAt = (t: number): number[] => y0.map((_, index) => at(index, t));
      let [low, high] = [t0, t1];
      while (high - low > 1e-10) {
        const middle = (low + high) / 2;
        if (event(stateAt(middle)) > 0) low = middle;
        else high = middle;
      }
      found = { time: high, state: stateAt(high) };
      return false;
    }
    before = after;
    return true;
  });
  return found;
}
