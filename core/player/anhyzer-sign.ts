import { windProfile } from '../air/wind-profile.ts';
import { farthestLaunch_deg, restMoments, SIGMA_POINTS } from '../flight/dispersion.ts';
import type { FlightBatch } from '../flight/flight-batch.ts';
import { formatLength } from '../units/length.ts';
import type { UnitsChoice } from '../units/units-choice.ts';
import { SHAPE_HYZER_DEG } from './disc-fit.ts';
import type { FittedThrow } from './fitted-player.ts';
import type { PlayerFile } from './player-file.ts';
import { needsAnArm, type Readiness } from './readiness.ts';
import { median, outlierWeight } from './robust-weights.ts';
import { shiftedThrow } from './shifted-throw.ts';

/**
 * A disc too fast for an arm acts more stable than it is: it goes its distance only when released on anhyzer. How far a fast disc
 * goes flat and on anhyzer from one hand, at full power.
 */
export type AnhyzerSign = Readonly<{
  /** `measured`: both thrown in the same session; `model`: flown from the fitted throw, calm and level. */
  basis: 'measured' | 'model';
  flat_m: number;
  anhyzer_m: number;
  /** Anhyzer less flat, with one standard deviation of what is unknown of it. */
  gain_m: number;
  gainSd_m: number;
  /** Measured throws on anhyzer; 0 when it rests on the model. */
  throws: number;
  /** True when the disc goes clearly farther on anhyzer. */
  isShown: boolean;
}>;

/** Gain from which anhyzer counts as clearly farther, share of the flat distance (assumed). */
const CLEAR_GAIN = 0.02;
const ONE_SIDED_95 = 1.6448536269514722; // Φ⁻¹(0.95)
const FEWEST_OF_EACH = 2;
const FEWEST_ON_ANHYZER = 4;
const FIELD_DENSITY_KGPM3 = 1.2; // dry air at 20 °C and sea level
/** What the flight model may be off by between two releases of the same disc, share of the distance (assumed). */
const MODEL_DOUBT = 0.01;
const STEP = { logSpeed: 0.01, stability: 0.1 };

/**
 * @param flier - its disc, air and ground are set here
 * @returns null for discs that suit any arm
 */
export function anhyzerSign(file: PlayerFile, t: FittedThrow, flier: FlightBatch): AnhyzerSign | null {
  if (!needsAnArm(t.discSpeed)) return null;
  return measuredSign(file, t) ?? modelSign(t, flier);
}

/** Only throws of one session are compared: its wind and slope then stand on both sides. */
function measuredSign(file: PlayerFile, t: FittedThrow): AnhyzerSign | null {
  let precision = 0;
  let [flat, anhyzer, throws] = [0, 0, 0];
  for (const session of file.sessions) {
    const own = session.throws.filter(x => x.discId === t.discId && x.hand === t.hand && x.power === 'full');
    const a = own.filter(x => x.shape === 'anhyzer').map(x => x.distance_m);
    const f = own.filter(x => x.shape === 'flat').map(x => x.distance_m);
    if (Math.min(a.length, f.length) < FEWEST_OF_EACH) continue;
    const [meanA, meanF] = [steadyMean(a, t.distanceSd_m), steadyMean(f, t.distanceSd_m)];
    const weight = 1 / (t.distanceSd_m ** 2 * (1 / meanA.throws + 1 / meanF.throws));
    precision += weight;
    flat += weight * meanF.mean_m;
    anhyzer += weight * meanA.mean_m;
    throws += a.length;
  }
  if (throws < FEWEST_ON_ANHYZER) return null;
  return signOf('measured', flat / precision, anhyzer / precision, Math.sqrt(1 / precision), throws);
}

/** Mean under the outlier weights about the median. */
function steadyMean(values_m: readonly number[], sd_m: number): { mean_m: number; throws: number } {
  const middle = median(values_m);
  const weights = values_m.map(value => outlierWeight((value - middle) / sd_m));
  const throws = weights.reduce((sum, w) => sum + w, 0);
  return { mean_m: values_m.reduce((sum, value, i) => sum + value * weights[i]!, 0) / throws, throws };
}

function modelSign(t: FittedThrow, flier: FlightBatch): AnhyzerSign {
  const radius_m = t.model.diameter_m / 2;
  flier.setStep(0.08);
  flier.setPlane(0, 0, 0);
  flier.setAir(FIELD_DENSITY_KGPM3, 0, 0, windProfile('open'));
  flier.setDisc(t.model);
  const anhyzer = { speed_mps: t.releaseSpeed_mps, hyzer_deg: SHAPE_HYZER_DEG.anhyzer, spinPerSpeed: t.spinPerSpeed };
  const anhyzerLaunch_deg = farthestLaunch_deg(flier, radius_m, 'turf', anhyzer, t.scatter);
  /** Both launches are the farthest ones, so that a small change of the throw leaves them best. */
  const reaches = ({ model, releaseSpeed_mps: speed_mps, spinPerSpeed, scatter }: FittedThrow) => {
    flier.setDisc(model);
    const reach = (hyzer_deg: number, launch_deg: number) => {
      const release = { speed_mps, hyzer_deg, launch_deg, spinPerSpeed };
      return restMoments(flier, radius_m, 'turf', release, scatter, SIGMA_POINTS).along_m;
    };
    const [flat_m, anhyzer_m] = [reach(0, t.launch_deg), reach(SHAPE_HYZER_DEG.anhyzer, anhyzerLaunch_deg)];
    return { flat_m, anhyzer_m, gain_m: anhyzer_m - flat_m };
  };
  const here = reaches(t);
  const bySpeed = reaches(shiftedThrow(t, { logSpeed: STEP.logSpeed, stability: 0 })).gain_m - here.gain_m;
  const byStability = reaches(shiftedThrow(t, { logSpeed: 0, stability: STEP.stability })).gain_m - here.gain_m;
  const sd_m = Math.hypot(
    (bySpeed / STEP.logSpeed) * t.releaseSpeedSd,
    (byStability / STEP.stability) * t.stabilityOffsetSd,
    MODEL_DOUBT * here.flat_m,
  );
  return signOf('model', here.flat_m, here.anhyzer_m, sd_m, 0);
}

function signOf(
  basis: AnhyzerSign['basis'],
  flat_m: number,
  anhyzer_m: number,
  gainSd_m: number,
  throws: number,
): AnhyzerSign {
  const gain_m = anhyzer_m - flat_m;
  const isShown = gain_m > CLEAR_GAIN * flat_m && gain_m - ONE_SIDED_95 * gainSd_m > 0;
  return { basis, flat_m, anhyzer_m, gain_m, gainSd_m, throws, isShown };
}

/** The sign in a sentence without its full stop. An overstable disc shows it too: only with the verdict it speaks of the arm. */
export function anhyzerText(sign: AnhyzerSign, verdict: Readiness['verdict'], units: UnitsChoice): string {
  const { basis, throws } = sign;
  const length = (length_m: number) => formatLength(length_m, units, 0);
  const more = `${length(Math.abs(sign.gain_m))} ${sign.gain_m < 0 ? 'less' : 'more'}, ± ${length(ONE_SIDED_95 * sign.gainSd_m)}`;
  const numbers = `flat ${length(sign.flat_m)}, released on anhyzer ${length(sign.anhyzer_m)}: ${more}`;
  const source = basis === 'measured' ? `${throws} measured throws on anhyzer` : 'from the flight model';
  const means = !sign.isShown
    ? sign.gain_m < -CLEAR_GAIN * sign.flat_m
      ? 'it goes its distance flat'
      : 'no clear gain on anhyzer'
    : verdict === 'ready'
      ? 'it goes farther on anhyzer: more stable than your arm needs'
      : 'its distance comes only on anhyzer: a sign that it is too fast for now';
  return `${numbers} (${source}): ${means}`;
}
