import { createFlightBatch } from '../flight/flight-batch.ts';
import { normalSamples } from '../flight/normal-samples.ts';
import type { Hand } from '../flight/release.ts';
import type { BagPrior } from './bag-prior.ts';
import { startFit } from './disc-fit.ts';
import { bagOf, priorOf } from './disc-prior.ts';
import { fieldRecords } from './fieldwork.ts';
import { fileNotes } from './file-notes.ts';
import { withSpecials } from './fit-special.ts';
import type { FittedPlayer, FittedThrow } from './fitted-player.ts';
import { fittedThrow } from './fitted-throw.ts';
import { learnScatter, shrinkScatter, withinScatter } from './learn-scatter.ts';
import { type RoundEffort, refresh, startMeasured } from './measured-disc.ts';
import type { PlayerFile } from './player-file.ts';
import { fitPutting } from './putting-curve.ts';
import { readiness } from './readiness.ts';
import { scatterLine, shrunkMultiplier } from './scatter-line.ts';
import { covarianceOf, solveDisc } from './solve-disc.ts';
import { bagSpread, weighThrows } from './weigh-throws.ts';

/** Rounds of means, bag and scatter in turn; the scatter learned last is followed by one more look at the means. */
const EFFORT: readonly RoundEffort[] = [
  { chooseLaunch: true, refineMoments: false, findRuler: false },
  { chooseLaunch: true, refineMoments: true, findRuler: true },
  { chooseLaunch: false, refineMoments: false, findRuler: false },
  { chooseLaunch: false, refineMoments: true, findRuler: false },
];
/** Landing errors of some millimetres: far below what throws can tell. */
const SEARCH_STEP_S = 0.12;
const ANSWER_STEP_S = 0.08;
/** Flights of the seeded sample behind the outlier ruler and the best distance. */
const SAMPLE_FLIGHTS = 256;

/**
 * Fieldwork to fitted throws: for every disc and hand the release speed, stability and scatter under which the mean of the
 * scattered ensemble, flown in each session's wind, is where the throws came to rest. Discs with few throws borrow from the
 * player's others (empirical Bayes); outliers are down-weighted and named.
 * @param options.seed - of the sample behind the best distance; same seed, same result
 * @throws {RangeError} when no throw of the file can be used (a parsed file always has one)
 */
export function fitPlayer(file: PlayerFile, options: Readonly<{ seed?: number }> = {}): FittedPlayer {
  const flier = createFlightBatch();
  flier.setStep(SEARCH_STEP_S);
  const normals = normalSamples(SAMPLE_FLIGHTS, options.seed ?? 1);
  const records = fieldRecords(file);
  const fits = records.map(record => startFit(record, file.handedness));
  const measured = fits.filter(fit => fit.groups.length > 0).map(fit => startMeasured(flier, fit));
  if (measured.length === 0) throw new RangeError('the player file must hold at least one usable throw, got none');

  const hands: readonly Hand[] = [...new Set(measured.map(m => m.fit.record.hand))];
  let bags = new Map<Hand, BagPrior>();
  let line = { long: scatterLine([]), side: scatterLine([]) };
  for (let round = 0; round < EFFORT.length; round++) {
    for (const m of measured) refresh(flier, m, EFFORT[round]!, normals);
    const bag = bagSpread(measured.map(m => m.fit));
    for (const m of measured) {
      m.spread = weighThrows(m.fit, m.ruler, bag);
      m.prior = priorOf(bags.get(m.fit.record.hand), m.fit);
      const keep = round === 2 || m.solved === null ? m.solved : null;
      m.solved = solveDisc(flier, m.fit, m.prior, round === 0 ? 12 : 2, keep?.slopes ?? null);
    }
    if (round === EFFORT.length - 1) break;
    bags = new Map(hands.map(hand => [hand, bagOf(measured.filter(m => m.fit.record.hand === hand))]));
    for (const m of measured) learnScatter(flier, m);
    line = shrinkScatter(measured);
  }

  flier.setStep(ANSWER_STEP_S);
  const byFit = new Map(measured.map(m => [m.fit, m]));
  const throws = fits.map((fit): FittedThrow => {
    const known = byFit.get(fit);
    if (known !== undefined)
      return fittedThrow(
        flier,
        fit,
        covarianceOf(flier, fit, known.prior, known.scatterVariance),
        normals,
        known.spread,
      );
    const prior = priorOf(bags.get(fit.record.hand), fit);
    const { speed } = fit.record.disc;
    const forehand = fit.record.hand === 'forehand';
    const long = shrunkMultiplier(line.long, speed, forehand, null);
    const side = shrunkMultiplier(line.side, speed, forehand, null);
    fit.unknowns = {
      logSpeed: prior.logSpeed,
      stability: prior.stability,
      logLongScatter: withinScatter(long.log),
      logSideScatter: withinScatter(side.log),
    };
    const variances = [prior.logSpeedVariance, prior.stabilityVariance, long.variance, side.variance];
    return fittedThrow(
      flier,
      fit,
      variances.map((v, i) => variances.map((_, j) => (i === j ? v : 0))),
      normals,
      null,
    );
  });
  return {
    name: file.name,
    handedness: file.handedness,
    throws: withSpecials(file, throws).map(t => {
      const { verdict, text } = readiness(throws, t);
      return verdict === 'ready' ? t : { ...t, notes: [...t.notes, text] };
    }),
    putting: fitPutting(file.putting ?? []),
    notes: fileNotes(file),
  };
}
