import { SIGMA_POINTS } from '../flight/dispersion.ts';
import type { FlightBatch } from '../flight/flight-batch.ts';
import { calmMoments, type DiscFit } from './disc-fit.ts';
import type { Measured } from './measured-disc.ts';
import { scatterLine, shrunkMultiplier } from './scatter-line.ts';
import { differenceStep, moved } from './solve-disc.ts';
import { solveLinear } from './solve-linear.ts';

const GREATEST_SCATTER = Math.log(4);
const LEAST_SCATTER = Math.log(0.3);
const LONGEST_STEP = 0.7;
const FEWEST_DEGREES = 1;
const SMALLEST_RATIO = 0.05;

/** Multipliers under which the ensemble would spread as the throws do: one Newton step in ln. */
export function learnScatter(flier: FlightBatch, m: Measured): void {
  const { fit, spread, ownScatter } = m;
  const launch_deg = m.calmLaunch_deg;
  const spreads = (unknowns: DiscFit['unknowns']) => {
    const { alongSd_m, leftSd_m } = calmMoments(flier, fit, unknowns, launch_deg, SIGMA_POINTS);
    return [Math.log(alongSd_m), Math.log(leftSd_m)] as const;
  };
  const here = spreads(fit.unknowns);
  const slopes = (['logLongScatter', 'logSideScatter'] as const).map(name => {
    const there = spreads(moved(fit.unknowns, name));
    return [(there[0] - here[0]) / differenceStep(name), (there[1] - here[1]) / differenceStep(name)] as const;
  });
  // the mean of ln s lies 1/(2·degrees) below that of ln σ
  const wanted = [
    Math.log(Math.max(SMALLEST_RATIO, spread.along)) + 0.5 / Math.max(1, spread.alongThrows),
    Math.log(Math.max(SMALLEST_RATIO, spread.left)) + 0.5 / Math.max(1, spread.leftThrows),
  ];
  const useLeft = spread.leftThrows >= FEWEST_DEGREES;
  const useAlong = spread.alongThrows >= FEWEST_DEGREES;
  // least squares with a little ridge: the two multipliers act on both spreads
  const [p, q] = slopes as [readonly [number, number], readonly [number, number]];
  const rows = [0, 1].filter(i => (i === 0 ? useAlong : useLeft));
  const normal = [p, q].map((u, i) =>
    [p, q].map((v, j) => rows.reduce((s, r) => s + u[r]! * v[r]!, i === j ? 0.02 : 0)),
  );
  const step = solveLinear(
    normal,
    [p, q].map(u => rows.reduce((s, r) => s + u[r]! * wanted[r]!, 0)),
  );
  const bounded = (value: number) => Math.max(-LONGEST_STEP, Math.min(LONGEST_STEP, value));
  ownScatter.long = withinScatter(fit.unknowns.logLongScatter + (useAlong ? bounded(step[0]!) : 0));
  ownScatter.side = withinScatter(fit.unknowns.logSideScatter + (useLeft ? bounded(step[1]!) : 0));
}

/** Each disc's own multipliers drawn towards the bag's line. */
export function shrinkScatter(measured: readonly Measured[]) {
  const lineOf = (kind: 'long' | 'side') =>
    scatterLine(
      measured
        .map(({ fit, spread, ownScatter }) => ({
          discSpeed: fit.record.disc.speed,
          forehand: fit.record.hand === 'forehand',
          log: ownScatter[kind],
          throws: kind === 'long' ? spread.alongThrows : spread.leftThrows,
        }))
        .filter(own => own.throws >= FEWEST_DEGREES),
    );
  const line = { long: lineOf('long'), side: lineOf('side') };
  for (const m of measured) {
    const { disc, hand } = m.fit.record;
    const drawn = (kind: 'long' | 'side', throws: number) =>
      shrunkMultiplier(
        line[kind],
        disc.speed,
        hand === 'forehand',
        throws >= FEWEST_DEGREES ? { log: m.ownScatter[kind], throws } : null,
      );
    const long = drawn('long', m.spread.alongThrows);
    const side = drawn('side', m.spread.leftThrows);
    m.fit.unknowns = {
      ...m.fit.unknowns,
      logLongScatter: withinScatter(long.log),
      logSideScatter: withinScatter(side.log),
    };
    m.scatterVariance = { long: long.variance, side: side.variance };
  }
  return line;
}

export function withinScatter(log: number): number {
  return Math.max(LEAST_SCATTER, Math.min(GREATEST_SCATTER, log));
}
