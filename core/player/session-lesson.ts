import { windProfile } from '../air/wind-profile.ts';
import { type RestMoments, restMoments, SIGMA_POINTS } from '../flight/dispersion.ts';
import type { FlightBatch } from '../flight/flight-batch.ts';
import type { FittedThrow } from './fitted-player.ts';
import { shiftedThrow, type ThrowShift } from './shifted-throw.ts';

const FIELD_DENSITY_KGPM3 = 1.2; // dry air at 20 °C and sea level
const STEP: ThrowShift = { logSpeed: 0.01, stability: 0.1 };

/** What some more measured throws of one disc from one hand would teach. */
export type SessionLesson = Readonly<{
  /** Doubt of the throw now and after the session: release speed (share), stability (turn units), distance and finish (metres). */
  before: Doubts;
  after: Doubts;
  /** Change of the calm full-power rest by the unknowns, metres along and left, per unit of ln speed and per turn unit. */
  slopes: Readonly<{ alongBySpeed: number; alongByStability: number; leftBySpeed: number; leftByStability: number }>;
  /** The shift of the fit that two standard normals stand for, before the session is thrown. */
  shiftOf: (first: number, second: number) => ThrowShift;
}>;

type Doubts = Readonly<{ releaseSpeedSd: number; stabilityOffsetSd: number; along_m: number; left_m: number }>;

/**
 * Normal approximation: the throws are flat, at full power, in calm air over level turf, distance and side written down, and
 * scatter as fitted. The unknowns are taken as independent before; the day's own form is left out.
 * @param flier - its disc, air and ground are set here
 * @throws {RangeError} when `throws` is not above 0
 */
export function sessionLesson(t: FittedThrow, throws: number, flier: FlightBatch): SessionLesson {
  if (!(throws > 0)) throw new RangeError(`throws must be above 0, got ${throws}`);
  flier.setStep(0.08);
  flier.setPlane(0, 0, 0);
  flier.setAir(FIELD_DENSITY_KGPM3, 0, 0, windProfile('open'));
  const here = calm(flier, t);
  const bySpeed = calm(flier, shiftedThrow(t, { logSpeed: STEP.logSpeed, stability: 0 }));
  const byStability = calm(flier, shiftedThrow(t, { logSpeed: 0, stability: STEP.stability }));
  const slopes = {
    alongBySpeed: (bySpeed.along_m - here.along_m) / STEP.logSpeed,
    leftBySpeed: (bySpeed.left_m - here.left_m) / STEP.logSpeed,
    alongByStability: (byStability.along_m - here.along_m) / STEP.stability,
    leftByStability: (byStability.left_m - here.left_m) / STEP.stability,
  };
  const [v, s] = [t.releaseSpeedSd ** 2, t.stabilityOffsetSd ** 2];
  const [alongWeight, leftWeight] = [throws / here.alongSd_m ** 2, throws / here.leftSd_m ** 2];
  const { alongBySpeed, alongByStability, leftBySpeed, leftByStability } = slopes;
  // precision after the session, 2 × 2; an unknown without doubt stays without
  const a = 1 / Math.max(v, TINY) + alongWeight * alongBySpeed ** 2 + leftWeight * leftBySpeed ** 2;
  const b = alongWeight * alongBySpeed * alongByStability + leftWeight * leftBySpeed * leftByStability;
  const c = 1 / Math.max(s, TINY) + alongWeight * alongByStability ** 2 + leftWeight * leftByStability ** 2;
  const determinant = a * c - b * b;
  const after = { vv: c / determinant, vs: -b / determinant, ss: a / determinant };
  // what is learnt: the doubt before less the doubt after
  const learnt = { vv: Math.max(0, v - after.vv), vs: -after.vs, ss: Math.max(0, s - after.ss) };
  const speedSd = Math.sqrt(learnt.vv);
  const along = speedSd > 0 ? learnt.vs / speedSd : 0;
  const rest = Math.sqrt(Math.max(0, learnt.ss - along ** 2));
  return {
    before: doubtsOf({ vv: v, vs: 0, ss: s }, slopes),
    after: doubtsOf(after, slopes),
    slopes,
    shiftOf: (first, second) => ({ logSpeed: speedSd * first, stability: along * first + rest * second }),
  };
}

const TINY = 1e-12;

function calm(flier: FlightBatch, t: FittedThrow): RestMoments {
  flier.setDisc(t.model);
  const { releaseSpeed_mps: speed_mps, launch_deg, spinPerSpeed, scatter } = t;
  const release = { speed_mps, launch_deg, hyzer_deg: 0, spinPerSpeed };
  return restMoments(flier, t.model.diameter_m / 2, 'turf', release, scatter, SIGMA_POINTS);
}

function doubtsOf({ vv, vs, ss }: { vv: number; vs: number; ss: number }, slopes: SessionLesson['slopes']): Doubts {
  const sd = (byV: number, byS: number) => Math.sqrt(Math.max(0, byV ** 2 * vv + 2 * byV * byS * vs + byS ** 2 * ss));
  return {
    releaseSpeedSd: Math.sqrt(vv),
    stabilityOffsetSd: Math.sqrt(ss),
    along_m: sd(slopes.alongBySpeed, slopes.alongByStability),
    left_m: sd(slopes.leftBySpeed, slopes.leftByStability),
  };
}
