import { discModel, ratedArmSpeed_mps, releaseSpeedShare } from '../flight/disc-model.ts';
import { DEGREE_FIVE, SIGMA_POINTS } from '../flight/dispersion.ts';
import type { FlightBatch } from '../flight/flight-batch.ts';
import { calmLaunch_deg, calmMoments, type DiscFit, scatterOf, setCalm, UNKNOWNS } from './disc-fit.ts';
import { discLegality } from './disc-legality.ts';
import type { Basis, FittedThrow } from './fitted-player.ts';
import { restSamples } from './rest-samples.ts';
import { differenceStep, moved } from './solve-disc.ts';
import type { Spread } from './weigh-throws.ts';

/** Weighted throws from which a disc stands on its own. */
const MEASURED_FROM_THROWS = 8;
const BEST_SHARE = 0.95;
/** Below this share of the rated arm speed a fast disc leaves the range its numbers were made for (assumed). */
const UNDER_RATED = 0.88;
const FAST_DISC_SPEED = 9;
/**
 * The normal approximation leaves intervals too narrow (skewed ensembles, weights and a spread that is itself estimated): found on
 * invented players with known truth, whose 90 % intervals then hold about 90 %, less in strong wind (docs/fit.md).
 */
const WIDENING = { distance: 1.1, finish: 1.25, stability: 1.35 } as const;
/** The outlier weights take some of a wide scatter with them; the best distance then is this much of its lead over the mean unsure. */
const BEST_DOUBT = 0.1;

/**
 * Everything the plan needs to know of a disc from one hand, in calm air over level turf, flat at full power.
 * @param covariance - of the unknowns, in the order of `UNKNOWNS`
 * @param spread - of its own throws; null for a disc never thrown
 */
export function fittedThrow(
  flier: FlightBatch,
  fit: DiscFit,
  covariance: readonly (readonly number[])[],
  normals: Float64Array,
  spread: Spread | null,
): FittedThrow {
  const { disc, hand, groups } = fit.record;
  const { unknowns } = fit;
  const launch_deg = calmLaunch_deg(flier, fit, unknowns);
  const moments = calmMoments(flier, fit, unknowns, launch_deg, DEGREE_FIVE);
  const release = { speed_mps: Math.exp(unknowns.logSpeed), launch_deg, hyzer_deg: 0, spinPerSpeed: fit.spinPerSpeed };
  setCalm(flier, fit, unknowns);
  const sample = restSamples(flier, fit.radius_m, release, scatterOf(unknowns), normals);
  const best_m = Math.max(moments.along_m, quantile(sample.along_m, BEST_SHARE));
  const sd = doubt(flier, fit, covariance, launch_deg, (best_m - moments.along_m) / moments.alongSd_m);
  const weights = fit.groups.flatMap(at => at.weights);
  const n = weights.reduce((sum, w) => sum + w, 0);
  const thrown = groups.reduce((sum, group) => sum + group.throws.length, 0);
  return {
    discId: disc.id,
    disc: disc.name,
    class: disc.class,
    discSpeed: disc.speed,
    role: disc.role,
    hand,
    n: Math.round(n * 10) / 10,
    basis: basisOf(n),
    model: discModel({ ...fit.spec, stabilityOffset: unknowns.stability }),
    releaseSpeed_mps: release.speed_mps,
    releaseSpeedSd: Math.sqrt(covariance[0]![0]!),
    stabilityOffset: unknowns.stability,
    stabilityOffsetSd: WIDENING.stability * Math.sqrt(covariance[1]![1]!),
    spinPerSpeed: fit.spinPerSpeed,
    scatter: scatterOf(unknowns),
    launch_deg,
    averageDay_m: moments.along_m,
    averageDaySd_m: WIDENING.distance * sd.along_m,
    best_m,
    bestSd_m: Math.hypot(WIDENING.distance * sd.best_m, BEST_DOUBT * (best_m - moments.along_m)),
    finish_m: -moments.left_m,
    finishSd_m: WIDENING.finish * sd.left_m,
    distanceSd_m: moments.alongSd_m,
    sideSd_m: moments.leftSd_m,
    notes: [
      ...(spread === null ? ['never thrown: predicted from its numbers and your other discs'] : []),
      ...(spread !== null && spread.setAside.length > 0
        ? [`${spread.setAside.length} of ${thrown} throws set aside as outliers: ${spread.setAside.join('; ')}`]
        : []),
      ...(spread !== null && spread.leftThrows < 1
        ? ['sideways finish hardly measured: stability and side spread are borrowed']
        : []),
      ...(fit.record.unused > 0
        ? [`${fit.record.unused} throws not used for the speed (part power, rollers or overhead)`]
        : []),
      ...misfitNotes(fit),
      ...underRatedNotes(disc.speed, release.speed_mps),
      ...discLegality(disc).reasons.map(reason => `not legal for sanctioned play: ${reason}`),
    ],
  };
}

function basisOf(n: number): Basis {
  if (n >= MEASURED_FROM_THROWS) return 'measured';
  return n > 0 ? 'borrowed' : 'predicted';
}

/**
 * Standard deviation of the calm means from that of the unknowns; the launch is the best one, so its change doesn't matter.
 * @param bestSds - standard deviations by which the best lies over the mean: it moves with the scatter too
 */
function doubt(
  flier: FlightBatch,
  fit: DiscFit,
  covariance: readonly (readonly number[])[],
  launch_deg: number,
  bestSds: number,
) {
  const here = calmMoments(flier, fit, fit.unknowns, launch_deg, SIGMA_POINTS);
  const slopes = UNKNOWNS.map(name => {
    const there = calmMoments(flier, fit, moved(fit.unknowns, name), launch_deg, SIGMA_POINTS);
    const step = differenceStep(name);
    const along = (there.along_m - here.along_m) / step;
    return {
      along,
      left: (there.left_m - here.left_m) / step,
      best: along + (bestSds * (there.alongSd_m - here.alongSd_m)) / step,
    };
  });
  const sdOf = (pick: (slope: (typeof slopes)[number]) => number) => {
    let variance = 0;
    for (const [i, a] of slopes.entries())
      for (const [j, b] of slopes.entries()) variance += pick(a) * covariance[i]![j]! * pick(b);
    return Math.sqrt(Math.max(0, variance));
  };
  return { along_m: sdOf(s => s.along), left_m: sdOf(s => s.left), best_m: sdOf(s => s.best) };
}

/** Says so when a session's mean can't be met: wrong wind, wrong disc, or a model that doesn't fit. */
function misfitNotes(fit: DiscFit): string[] {
  return fit.groups.flatMap(at => {
    const { moments, group } = at;
    const off = (moments.along_m - at.along_m) / Math.sqrt(at.alongVariance);
    const count = group.throws.length;
    if (count < 3 || Math.abs(off) < 3.5) return [];
    const from = group.throws[0]!.path.split('.')[0];
    return [
      `the ${count} throws from ${from} average ${at.along_m.toFixed(0)} m where the fit to all sessions gives ${moments.along_m.toFixed(0)} m: check that session's wind and slope`,
    ];
  });
}

function underRatedNotes(discSpeed: number, releaseSpeed_mps: number): string[] {
  const rated = ratedArmSpeed_mps(discSpeed) * releaseSpeedShare(discSpeed);
  if (discSpeed < FAST_DISC_SPEED || releaseSpeed_mps >= UNDER_RATED * rated) return [];
  return [
    `thrown at ${releaseSpeed_mps.toFixed(1)} m/s, its numbers are made for about ${rated.toFixed(0)} m/s: distance and finish away from the measured conditions are uncertain by some 5 % of the distance`,
  ];
}

function quantile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  const at = share * (sorted.length - 1);
  const low = Math.floor(at);
  return sorted[low]! + (at - low) * (sorted[Math.min(low + 1, sorted.length - 1)]! - sorted[low]!);
}
