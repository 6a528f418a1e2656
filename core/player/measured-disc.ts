import { DEGREE_FIVE, SIGMA_POINTS } from '../flight/dispersion.ts';
import type { FlightBatch } from '../flight/flight-batch.ts';
import {
  calmLaunch_deg,
  calmMoments,
  chooseLaunch,
  corrected,
  correctionOf,
  type DiscFit,
  groupMoments,
  scatterOf,
  setCalm,
} from './disc-fit.ts';
import { priorOf } from './disc-prior.ts';
import { restSamples } from './rest-samples.ts';
import { median } from './robust-weights.ts';
import type { DiscPrior, Solved } from './solve-disc.ts';
import { PLAIN_RULER, type Ruler, rulerOf, type Spread } from './weigh-throws.ts';

/** A disc with throws, and what the rounds learn of it. */
export type Measured = {
  readonly fit: DiscFit;
  spread: Spread;
  ruler: Ruler;
  calmLaunch_deg: number;
  ownScatter: { long: number; side: number };
  scatterVariance: { long: number; side: number };
  prior: DiscPrior;
  solved: Solved | null;
};

/** A first release speed from the middle distance by a power law, refined on the calm ensemble. */
export function startMeasured(flier: FlightBatch, fit: DiscFit): Measured {
  const shareOfReach = 1.6; // distance grows about as this power of the release speed
  const reaches = fit.groups.flatMap(({ group }) => group.throws.map(t => t.along_m / group.power ** shareOfReach));
  const wanted_m = Math.max(5, median(reaches));
  let launch_deg = 10;
  for (let pass = 0; pass < 3; pass++) {
    if (pass === 1) launch_deg = calmLaunch_deg(flier, fit, fit.unknowns);
    const { along_m } = calmMoments(flier, fit, fit.unknowns, launch_deg, SIGMA_POINTS);
    const step = Math.log(wanted_m / Math.max(1, along_m)) / shareOfReach;
    fit.unknowns = { ...fit.unknowns, logSpeed: fit.unknowns.logSpeed + Math.max(-0.5, Math.min(0.5, step)) };
  }
  for (const at of fit.groups) at.launch_deg = launch_deg;
  return {
    fit,
    spread: { along: 1, alongThrows: 0, left: 1, leftThrows: 0, setAside: [] },
    ruler: PLAIN_RULER,
    calmLaunch_deg: launch_deg,
    ownScatter: { long: 0, side: 0 },
    scatterVariance: { long: 0.25, side: 0.25 },
    prior: priorOf(undefined, fit),
    solved: null,
  };
}

/** What a round of the fit spends flights on. */
export type RoundEffort = Readonly<{ chooseLaunch: boolean; refineMoments: boolean; findRuler: boolean }>;

/** Launches, moments and the outlier ruler at the unknowns as they stand. */
export function refresh(flier: FlightBatch, m: Measured, effort: RoundEffort, normals: Float64Array): void {
  const { fit } = m;
  for (const at of fit.groups) {
    if (effort.chooseLaunch) at.launch_deg = chooseLaunch(flier, fit, at, SIGMA_POINTS);
    const cheap = groupMoments(flier, fit, at, fit.unknowns, SIGMA_POINTS);
    // what degree 5 adds changes little from round to round
    if (effort.refineMoments)
      at.correction = correctionOf(cheap, groupMoments(flier, fit, at, fit.unknowns, DEGREE_FIVE));
    at.moments = corrected(cheap, at.correction);
  }
  if (!effort.findRuler) return;
  setCalm(flier, fit, fit.unknowns);
  const release = {
    speed_mps: Math.exp(fit.unknowns.logSpeed),
    launch_deg: m.calmLaunch_deg,
    hyzer_deg: 0,
    spinPerSpeed: fit.spinPerSpeed,
  };
  const few = normals;
  const sample = restSamples(flier, fit.radius_m, release, scatterOf(fit.unknowns), few);
  m.ruler = rulerOf(sample.along_m, sample.left_m);
}
