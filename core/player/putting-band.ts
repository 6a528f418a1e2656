import { normalSamples, SAMPLE_DIMENSIONS } from '../flight/normal-samples.ts';
import { makeChance, type PuttingRow, puttingPosterior, shapeOfParameters } from './putting-curve.ts';
import { solveLinear } from './solve-linear.ts';

/** Where the make chance plausibly lies at one distance: 95 %, two-sided. */
export type PuttingBand = Readonly<{ distance_m: number; chance: number; low: number; high: number }>;

const DRAWS = 512;
const TAIL = 0.025;

/**
 * The fitted make chance with the interval that the log leaves open, from curves drawn about the most plausible one (normal in
 * the transformed parameters); each drawn curve falls with distance, so the bounds do too. Without a log it is the prior's width.
 * @throws {RangeError} for a negative distance or an unsound row
 */
export function puttingBand(rows: readonly PuttingRow[], distances_m: readonly number[], seed = 1): PuttingBand[] {
  const { parameters, information } = puttingPosterior(rows);
  const root = choleskyOfInverse(information);
  const normals = normalSamples(DRAWS, seed);
  const middle = shapeOfParameters(parameters);
  const shapes = Array.from({ length: DRAWS }, (_, draw) =>
    shapeOfParameters(
      parameters.map((value, i) => {
        let moved = value;
        for (let j = 0; j <= i; j++) moved += root[i]![j]! * normals[draw * SAMPLE_DIMENSIONS + j]!;
        return moved;
      }),
    ),
  );
  return distances_m.map(distance_m => {
    const chance = makeChance(middle, distance_m);
    const chances = shapes.map(shape => makeChance(shape, distance_m)).sort((a, b) => a - b);
    const at = (share: number) => chances[Math.min(DRAWS - 1, Math.floor(share * DRAWS))]!;
    return { distance_m, chance, low: Math.min(chance, at(TAIL)), high: Math.max(chance, at(1 - TAIL)) };
  });
}

/** Lower triangle L with L·Lᵀ the inverse of a positive definite matrix. */
function choleskyOfInverse(matrix: readonly (readonly number[])[]): number[][] {
  const n = matrix.length;
  const inverse = matrix.map((_, column) =>
    solveLinear(
      matrix.map(row => [...row]),
      matrix.map((__, i) => (i === column ? 1 : 0)),
    ),
  );
  const root = matrix.map(() => new Array<number>(n).fill(0));
  for (let i = 0; i < n; i++)
    for (let j = 0; j <= i; j++) {
      let sum = inverse[j]![i]!;
      for (let k = 0; k < j; k++) sum -= root[i]![k]! * root[j]![k]!;
      root[i]![j] = i === j ? Math.sqrt(Math.max(0, sum)) : sum / root[j]![j]!;
    }
  return root;
}
