import type { PuttingCurve } from './fitted-player.ts';
import { solveLinear } from './solve-linear.ts';
import { wilsonInterval } from './wilson-interval.ts';

/** Putts tried from one distance. */
export type PuttingRow = Readonly<{ distance_m: number; attempts: number; makes: number }>;

type Shape = Pick<PuttingCurve, 'floor' | 'ceiling' | 'half_m' | 'scale_m'>;

// Assumed priors, no published make rates of disc golf were found: half of the putts from 6 m, on purpose a low guess.
// Each is (middle, standard deviation) of the transformed quantity; the floor and ceiling hardly move without many putts.
const PRIOR: readonly (readonly [middle: number, sd: number])[] = [
  [Math.log(6), 0.5], // ln half_m
  [Math.log(2), 0.4], // ln scale_m
  [0, 1], // ceiling
  [0, 1], // floor
];
const PARAMETERS = PRIOR.length;
const CEILING: readonly [number, number] = [0.985, 0.999];
const FLOOR: readonly [number, number] = [0.0005, 0.006];
const MEASURED_FROM_ATTEMPTS = 30; // fewer than about 30 tries: show the interval, not only the rate

/**
 * Make chance by distance from a putting log: logistic with floor and ceiling, by penalised maximum likelihood.
 * Without rows it is the assumed default and says `predicted`; under 30 attempts `borrowed` (leaning on the prior).
 * @throws {RangeError} for a row with makes > attempts, negative or non-finite numbers
 */
export function fitPutting(rows: readonly PuttingRow[]): PuttingCurve {
  checkRows(rows);
  const attempts = rows.reduce((sum, row) => sum + row.attempts, 0);
  const shape = shapeOfParameters(attempts === 0 ? PRIOR.map(([middle]) => middle) : mostPlausible(rows));
  return {
    ...shape,
    attempts,
    basis: attempts === 0 ? 'predicted' : attempts < MEASURED_FROM_ATTEMPTS ? 'borrowed' : 'measured',
  };
}

function checkRows(rows: readonly PuttingRow[]): void {
  for (const { distance_m, attempts, makes } of rows)
    if (!(distance_m >= 0 && distance_m < Number.POSITIVE_INFINITY && makes >= 0 && makes <= attempts))
      throw new RangeError(
        `putting row must have distance_m ≥ 0 and 0 ≤ makes ≤ attempts, got ${distance_m}, ${makes}, ${attempts}`,
      );
}

/**
 * Chance to hole out from a distance in calm air: the ceiling at the basket, then falling towards the floor, never rising.
 * @throws {RangeError} for a distance that is negative or not a number
 */
export function makeChance(curve: Shape, distance_m: number): number {
  if (!(distance_m >= 0)) throw new RangeError(`distance_m must be 0 or more, got ${distance_m}`);
  // L(d)/L(0), written so that it can't overflow
  const atZero = 1 + Math.exp(-curve.half_m / curve.scale_m);
  const share = atZero / (1 + Math.exp(Math.min(700, (distance_m - curve.half_m) / curve.scale_m)));
  return curve.floor + (curve.ceiling - curve.floor) * share;
}

const HALVING_WIND_MPS = 10;
const HALVING_DISTANCE_M = 10;

/**
 * Share of the calm make chance left in wind: 1 in calm, never rising with wind or distance.
 * Assumed, no source: the loss grows with the square of the wind and with the distance up to 20 m; half is left from 10 m in 10 m/s.
 * @param wind_mps - at the height of the putt
 */
export function windMakeFactor(wind_mps: number, distance_m: number): number {
  if (!(wind_mps >= 0 && distance_m >= 0))
    throw new RangeError(`wind_mps and distance_m must be 0 or more, got ${wind_mps}, ${distance_m}`);
  return 1 / (1 + (wind_mps / HALVING_WIND_MPS) ** 2 * (Math.min(20, distance_m) / HALVING_DISTANCE_M));
}

/** Rate of one row with its 95 % interval. */
export function puttingInterval(row: PuttingRow): { distance_m: number; rate: number; low: number; high: number } {
  return { distance_m: row.distance_m, rate: row.makes / row.attempts, ...wilsonInterval(row.makes, row.attempts) };
}

export function shapeOfParameters(theta: readonly number[]): Shape {
  const within = ([low, high]: readonly [number, number], t: number) => low + (high - low) / (1 + Math.exp(-t));
  return {
    half_m: Math.exp(theta[0]!),
    scale_m: Math.exp(theta[1]!),
    ceiling: within(CEILING, theta[2]!),
    floor: within(FLOOR, theta[3]!),
  };
}

/** Negative log posterior. */
function misfit(rows: readonly PuttingRow[], theta: readonly number[]): number {
  const shape = shapeOfParameters(theta);
  let sum = PRIOR.reduce((s, [middle, sd], i) => s + ((theta[i]! - middle) / sd) ** 2 / 2, 0);
  for (const { distance_m, attempts, makes } of rows) {
    const p = makeChance(shape, distance_m);
    sum -= makes * Math.log(p) + (attempts - makes) * Math.log(1 - p);
  }
  return sum;
}

/** Fisher scoring with Levenberg damping; the prior keeps the information matrix positive definite. */
function mostPlausible(rows: readonly PuttingRow[]): number[] {
  let theta = PRIOR.map(([middle]) => middle);
  let best = misfit(rows, theta);
  let damping = 1e-3;
  for (let round = 0; round < 200 && damping < 1e8; round++) {
    const { gradient, information } = curvature(rows, theta);
    const step = solveLinear(
      information.map((row, i) => row.map((value, j) => (i === j ? value * (1 + damping) : value))),
      gradient,
    );
    const next = theta.map((t, i) => t - step[i]!);
    const reached = misfit(rows, next);
    if (!(reached <= best)) {
      damping *= 10;
      continue;
    }
    const gain = best - reached;
    theta = next;
    best = reached;
    damping = Math.max(1e-9, damping / 10);
    if (gain < 1e-10) break;
  }
  return theta;
}

/** Gradient and expected information of the negative log posterior. */
function curvature(rows: readonly PuttingRow[], theta: readonly number[]) {
  const gradient = PRIOR.map(([middle, sd], i) => (theta[i]! - middle) / sd ** 2);
  const information = PRIOR.map(([, sd], i) => PRIOR.map((_, j) => (i === j ? 1 / sd ** 2 : 0)));
  for (const { distance_m, attempts, makes } of rows) {
    const p = makeChance(shapeOfParameters(theta), distance_m);
    const slope = theta.map((_, i) => {
      const [up, down] = [1e-5, -1e-5].map(step =>
        makeChance(shapeOfParameters(theta.map((t, j) => (i === j ? t + step : t))), distance_m),
      );
      return (up! - down!) / 2e-5;
    });
    const spread = p * (1 - p);
    for (let i = 0; i < PARAMETERS; i++) {
      gradient[i]! -= ((makes - attempts * p) / spread) * slope[i]!;
      for (let j = 0; j < PARAMETERS; j++) information[i]![j]! += (attempts / spread) * slope[i]! * slope[j]!;
    }
  }
  return { gradient, information };
}

/**
 * The most plausible parameters, and the information (inverse of the covariance) about them: what `puttingBand` draws from.
 * @throws {RangeError} for an unsound row, as `fitPutting`
 */
export function puttingPosterior(rows: readonly PuttingRow[]): {
  parameters: readonly number[];
  information: readonly (readonly number[])[];
} {
  checkRows(rows);
  const parameters = rows.length === 0 ? PRIOR.map(([middle]) => middle) : mostPlausible(rows);
  return { parameters, information: curvature(rows, parameters).information };
}
