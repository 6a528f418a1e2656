import { SIGMA_POINTS } from '../flight/dispersion.ts';
import type { FlightBatch } from '../flight/flight-batch.ts';
import { type DiscFit, groupMoments, UNKNOWNS, type Unknowns } from './disc-fit.ts';
import { invert } from './solve-linear.ts';

/** Normal priors of the unknowns of one disc. */
export type DiscPrior = Readonly<{
  logSpeed: number;
  logSpeedVariance: number;
  stability: number;
  stabilityVariance: number;
}>;

const LONGEST_LOG_SPEED_STEP = 0.2;
const LONGEST_STABILITY_STEP = 1.5;
// a step this small moves the mean by millimetres
const SMALL_LOG_SPEED = 2e-4;
const SMALL_STABILITY = 0.01;
const STEP: Unknowns = { logSpeed: 0.01, stability: 0.1, logLongScatter: 0.1, logSideScatter: 0.1 };

/** Slopes of every group mean (along and left of each group in turn) by ln speed and by stability. */
export type Slopes = Readonly<{ byLogSpeed: readonly number[]; byStability: readonly number[] }>;

export type Solved = Readonly<{
  /** The last step was negligible. */
  settled: boolean;
  slopes: Slopes;
  /** Posterior variances with the scatter held. */
  logSpeedVariance: number;
  stabilityVariance: number;
}>;

/**
 * Most plausible release speed and stability under the prior, scatter held: damped Gauss–Newton on the ensemble means of the
 * groups. Sets `fit.unknowns`.
 * @param known - slopes from an earlier solve nearby, kept for all steps; null finds them anew at each step
 */
export function solveDisc(
  flier: FlightBatch,
  fit: DiscFit,
  prior: DiscPrior,
  steps: number,
  known: Slopes | null,
): Solved {
  let here = predictions(flier, fit, fit.unknowns);
  let misfit = misfitOf(fit, fit.unknowns, here, prior);
  let slopes = known ?? slopesAt(flier, fit, here);
  let settled = false;
  for (let step = 0; step < steps && !settled; step++) {
    if (known === null && step > 0) slopes = slopesAt(flier, fit, here);
    const { logSpeed, stability } = fit.unknowns;
    const { a, b, c } = information(fit, prior, slopes);
    let gv = (logSpeed - prior.logSpeed) / prior.logSpeedVariance;
    let gs = (stability - prior.stability) / prior.stabilityVariance;
    eachMean(fit, (i, target, variance) => {
      gv += (slopes.byLogSpeed[i]! * (here[i]! - target)) / variance;
      gs += (slopes.byStability[i]! * (here[i]! - target)) / variance;
    });
    const determinant = a * c - b * b;
    let stepV = -(c * gv - b * gs) / determinant;
    let stepS = -(a * gs - b * gv) / determinant;
    settled = Math.abs(stepV) < SMALL_LOG_SPEED && Math.abs(stepS) < SMALL_STABILITY;
    if (settled) break;
    const shorten = Math.min(1, LONGEST_LOG_SPEED_STEP / Math.abs(stepV), LONGEST_STABILITY_STEP / Math.abs(stepS));
    stepV *= shorten;
    stepS *= shorten;
    let accepted = false;
    for (let halving = 0; halving < 5 && !accepted; halving++) {
      const trial = { ...fit.unknowns, logSpeed: logSpeed + stepV, stability: stability + stepS };
      const there = predictions(flier, fit, trial);
      const reached = misfitOf(fit, trial, there, prior);
      if (reached < misfit) {
        fit.unknowns = trial;
        here = there;
        misfit = reached;
        accepted = true;
      } else {
        stepV /= 2;
        stepS /= 2;
      }
    }
    if (!accepted) break;
    settled = Math.abs(stepV) < SMALL_LOG_SPEED && Math.abs(stepS) < SMALL_STABILITY;
  }
  const { a, b, c } = information(fit, prior, slopes);
  const determinant = a * c - b * b;
  return { settled, slopes, logSpeedVariance: c / determinant, stabilityVariance: a / determinant };
}

function slopesAt(flier: FlightBatch, fit: DiscFit, here: readonly number[]): Slopes {
  const by = (name: 'logSpeed' | 'stability') =>
    predictions(flier, fit, moved(fit.unknowns, name)).map((there, i) => (there - here[i]!) / STEP[name]);
  return { byLogSpeed: by('logSpeed'), byStability: by('stability') };
}

/** Information matrix [[a, b], [b, c]] of (ln speed, stability), prior included. */
function information(fit: DiscFit, prior: DiscPrior, { byLogSpeed, byStability }: Slopes) {
  let [a, b, c] = [1 / prior.logSpeedVariance, 0, 1 / prior.stabilityVariance];
  eachMean(fit, (i, _, variance) => {
    a += byLogSpeed[i]! ** 2 / variance;
    b += (byLogSpeed[i]! * byStability[i]!) / variance;
    c += byStability[i]! ** 2 / variance;
  });
  return { a, b, c };
}

/** Visits every measured mean: `i` counts along and left of each group in turn. */
function eachMean(fit: DiscFit, visit: (i: number, target: number, variance: number) => void): void {
  fit.groups.forEach((at, g) => {
    visit(2 * g, at.along_m, at.alongVariance);
    if (at.left_m !== null) visit(2 * g + 1, at.left_m, at.leftVariance);
  });
}

/**
 * Posterior covariance of all four unknowns, in the order of `UNKNOWNS`. The means of the groups also depend on the scatter,
 * so its doubt becomes part of the doubt about the release speed.
 */
export function covarianceOf(
  flier: FlightBatch,
  fit: DiscFit,
  prior: DiscPrior,
  scatterVariance: Readonly<{ long: number; side: number }>,
): number[][] {
  const priors = [prior.logSpeedVariance, prior.stabilityVariance, scatterVariance.long, scatterVariance.side];
  const precision = priors.map((variance, i) => priors.map((_, j) => (i === j ? 1 / variance : 0)));
  const here = predictions(flier, fit, fit.unknowns);
  const there = UNKNOWNS.map(name => predictions(flier, fit, moved(fit.unknowns, name)));
  eachMean(fit, (at, _, variance) => {
    const slopes = UNKNOWNS.map((name, k) => (there[k]![at]! - here[at]!) / STEP[name]);
    for (let i = 0; i < slopes.length; i++)
      for (let j = 0; j < slopes.length; j++) precision[i]![j]! += (slopes[i]! * slopes[j]!) / variance;
  });
  return invert(precision);
}

/** The unknowns with one of them moved by its difference step. */
export function moved(unknowns: Unknowns, name: keyof Unknowns): Unknowns {
  return { ...unknowns, [name]: unknowns[name] + STEP[name] };
}

export function differenceStep(name: keyof Unknowns): number {
  return STEP[name];
}

/** Ensemble means, along and left of each group in turn: cheap rule plus the correction of the last refresh. */
function predictions(flier: FlightBatch, fit: DiscFit, unknowns: Unknowns): number[] {
  return fit.groups.flatMap(at => {
    const { along_m, left_m } = groupMoments(flier, fit, at, unknowns, SIGMA_POINTS);
    return [along_m + at.correction.along_m, left_m + at.correction.left_m];
  });
}

function misfitOf(fit: DiscFit, unknowns: Unknowns, predicted: readonly number[], prior: DiscPrior): number {
  let sum =
    (unknowns.logSpeed - prior.logSpeed) ** 2 / prior.logSpeedVariance +
    (unknowns.stability - prior.stability) ** 2 / prior.stabilityVariance;
  eachMean(fit, (i, target, variance) => {
    sum += (predicted[i]! - target) ** 2 / variance;
  });
  return sum;
}
