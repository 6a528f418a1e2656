import { type RestMoments, type Scatter, TYPICAL_SCATTER } from '../flight/dispersion.ts';
import { createFlier, type Flier } from '../flight/flier.ts';
import {
  FEWEST_SPECIAL_THROWS,
  type FittedThrow,
  type SpecialShape,
  type SpecialStatus,
  type SpecialThrow,
} from './fitted-player.ts';
import type { PlayerFile } from './player-file.ts';
import { median, outlierWeight, robustSd } from './robust-weights.ts';
import {
  CALM_TURF,
  FIRST_GUESS,
  type SpecialRelease,
  type SpecialUnknowns,
  specialMoments,
  specialRelease,
  withinLimits,
} from './special-model.ts';
import { type SpecialGroup, type SpecialRecord, specialRecords } from './special-record.ts';

/** Spread of one throw as a share of its distance, along and to the side, before any was measured (assumed), and the throws that counts as. */
const USUAL_SPREAD: Readonly<Record<SpecialShape, Readonly<{ along: number; left: number }>>> = {
  roller: { along: 0.12, left: 0.12 },
  overhead: { along: 0.08, left: 0.07 },
};
const USUAL_COUNTS_AS = 4;
/** A mean of few throws is less sure than its spread says, which is itself estimated (assumed). */
const WIDENING = 1.2;
/** The model must meet the measured mean this well, as a share of the distance, or the throws are no such throws. */
const WORST_MISFIT = 0.15;
const STEP_S = 0.08;
const STEPS: SpecialUnknowns = { far: 0.02, side: 0.01 };
const ROUNDS = 8;
const LONGEST_FAR_STEP = 0.4;
const LEAST_SCATTER = { speed: 0.005, angle_deg: 0.3 };

/** The throws of a player, each with the rollers and overhead throws written down for it; the others are handed on untouched. */
export function withSpecials(file: PlayerFile, throws: readonly FittedThrow[]): readonly FittedThrow[] {
  const records = specialRecords(file);
  if (records.length === 0) return throws;
  const flier = createFlier();
  flier.setStep(STEP_S);
  return throws.map(fitted => {
    const own = records.filter(record => record.discId === fitted.discId && record.hand === fitted.hand);
    return own.length === 0 ? fitted : { ...fitted, specials: own.map(record => statusOf(flier, fitted, record)) };
  });
}

function statusOf(flier: Flier, fitted: FittedThrow, record: SpecialRecord): SpecialStatus {
  const { shape, counted, written } = record;
  const status = { shape, counted, needed: Math.max(0, FEWEST_SPECIAL_THROWS - counted), unusable: written - counted };
  if (status.needed > 0) return { ...status, fit: null, problem: null };
  const { fit, misfit } = fitSpecial(flier, fitted, record);
  return misfit === null ? { ...status, fit, problem: null } : { ...status, fit: null, problem: misfit };
}

/** Weighted means of a group's throws. */
type Mean = Readonly<{ group: SpecialGroup; weight: number; along_m: number; left_m: number }>;

function fitSpecial(flier: Flier, fitted: FittedThrow, { shape, groups }: SpecialRecord) {
  const usual = USUAL_SPREAD[shape];
  const weighed = groups.map(group => weigh(group, usual));
  const spread = {
    along: pooled(groups, weighed, usual.along, 'along_m'),
    left: pooled(groups, weighed, usual.left, 'left_m'),
  };
  const means = groups.map((group, i): Mean => meanOf(group, weighed[i]!));
  const n = means.reduce((sum, { weight }) => sum + weight, 0);
  let unknowns = FIRST_GUESS[shape];
  let scatter = firstScatter(shape, fitted, spread);
  let calm: RestMoments = specialMoments(flier, specialRelease(fitted, shape, unknowns), scatter, CALM_TURF);
  for (let round = 0; round < ROUNDS; round++) {
    unknowns = stepped(flier, fitted, shape, unknowns, scatter, means, spread);
    const release = specialRelease(fitted, shape, unknowns);
    calm = specialMoments(flier, release, scatter, CALM_TURF);
    scatter = matched(shape, scatter, calm, spread);
  }
  const release = specialRelease(fitted, shape, unknowns);
  calm = specialMoments(flier, release, scatter, CALM_TURF);
  const sdOfMean = (share: number) => (WIDENING * share * calm.along_m) / Math.sqrt(n);
  const averageDaySd_m = sdOfMean(spread.along);
  const finishSd_m = sdOfMean(spread.left);
  const fit: SpecialThrow = {
    ...release,
    n: Math.round(10 * n) / 10,
    scatter,
    doubt: doubtOf(flier, release, scatter, calm, averageDaySd_m, finishSd_m),
    averageDay_m: calm.along_m,
    averageDaySd_m,
    finish_m: -calm.left_m,
    finishSd_m,
    distanceSd_m: calm.alongSd_m,
    sideSd_m: calm.leftSd_m,
  };
  return { fit, misfit: misfitOf(flier, release, scatter, means) };
}

/** Slips and hits count less: deviations from the middle throw, against a spread that leans on the usual one while throws are few. */
function weigh({ throws }: SpecialGroup, usual: Readonly<{ along: number; left: number }>): number[] {
  const far_m = median(throws.map(t => t.along_m));
  const ruler = (values: readonly number[], share: number) => {
    const middle = median(values);
    const own = robustSd(values, middle);
    const sd = Math.sqrt(
      (USUAL_COUNTS_AS * (share * far_m) ** 2 + values.length * own ** 2) / (USUAL_COUNTS_AS + values.length),
    );
    return values.map(value => (value - middle) / sd);
  };
  const along = ruler(
    throws.map(t => t.along_m),
    usual.along,
  );
  const left = ruler(
    throws.map(t => t.left_m),
    usual.left,
  );
  return throws.map((_, i) => Math.min(outlierWeight(along[i]!), outlierWeight(left[i]!)));
}

function meanOf(group: SpecialGroup, weights: readonly number[]): Mean {
  const weight = weights.reduce((sum, w) => sum + w, 0);
  const mean = (pick: 'along_m' | 'left_m') =>
    group.throws.reduce((sum, t, i) => sum + weights[i]! * t[pick], 0) / weight;
  return { group, weight, along_m: mean('along_m'), left_m: mean('left_m') };
}

/** Spread of one throw as a share of its distance, all groups together, drawn towards the usual one. */
function pooled(
  groups: readonly SpecialGroup[],
  weights: readonly (readonly number[])[],
  usual: number,
  pick: 'along_m' | 'left_m',
): number {
  let squares = USUAL_COUNTS_AS * usual ** 2;
  let freedom = USUAL_COUNTS_AS;
  groups.forEach((group, g) => {
    const mean = meanOf(group, weights[g]!);
    group.throws.forEach((t, i) => {
      squares += weights[g]![i]! * ((t[pick] - mean[pick]) / mean.along_m) ** 2;
    });
    freedom += Math.max(0, mean.weight - 1);
  });
  return Math.sqrt(squares / freedom);
}

function firstScatter(
  shape: SpecialShape,
  fitted: FittedThrow,
  spread: Readonly<{ along: number; left: number }>,
): Scatter {
  const turn_deg = (spread.left * 180) / Math.PI;
  return {
    // a roll goes with the square of the speed, and so nearly does a throw through the air
    speed: spread.along / 2,
    // aim is only a part of a roller's side spread: the lean makes the rest
    azimuth_deg: shape === 'roller' ? Math.min(fitted.scatter.azimuth_deg, 0.7 * turn_deg) : turn_deg,
    hyzer_deg: shape === 'roller' ? 1 : 0,
    launch_deg: TYPICAL_SCATTER.launch_deg,
    nose_deg: 0,
  };
}

/** Speed and side scatter moved so that the ensemble spreads as the throws did. */
function matched(
  shape: SpecialShape,
  scatter: Scatter,
  calm: RestMoments,
  spread: Readonly<{ along: number; left: number }>,
): Scatter {
  const by = (wanted: number, is: number) => Math.min(2, Math.max(0.5, wanted / Math.max(1e-6, is)));
  const along = by(spread.along * calm.along_m, calm.alongSd_m);
  const left = by(spread.left * calm.along_m, calm.leftSd_m);
  return {
    ...scatter,
    speed: Math.min(0.4, Math.max(LEAST_SCATTER.speed, scatter.speed * along)),
    azimuth_deg:
      shape === 'roller' ? scatter.azimuth_deg : Math.max(LEAST_SCATTER.angle_deg, scatter.azimuth_deg * left),
    hyzer_deg: shape === 'roller' ? Math.min(20, Math.max(LEAST_SCATTER.angle_deg, scatter.hyzer_deg * left)) : 0,
  };
}

/** One Gauss–Newton step on the group means, each weighed by its throws and their spread. */
function stepped(
  flier: Flier,
  fitted: FittedThrow,
  shape: SpecialShape,
  unknowns: SpecialUnknowns,
  scatter: Scatter,
  means: readonly Mean[],
  spread: Readonly<{ along: number; left: number }>,
): SpecialUnknowns {
  const at = (u: SpecialUnknowns, group: SpecialGroup) =>
    specialMoments(flier, specialRelease(fitted, shape, u), scatter, group);
  const steps = { far: STEPS.far, side: shape === 'roller' ? 100 * STEPS.side : STEPS.side };
  let [ff, fs, ss, f, s] = [1e-9, 0, 1e-9, 0, 0];
  for (const { group, weight, along_m, left_m } of means) {
    const here = at(unknowns, group);
    const farther = at({ ...unknowns, far: unknowns.far + steps.far }, group);
    const wider = at({ ...unknowns, side: unknowns.side + steps.side }, group);
    for (const [pick, measured, share] of [
      ['along_m', along_m, spread.along],
      ['left_m', left_m, spread.left],
    ] as const) {
      const precision = weight / (share * along_m) ** 2;
      const byFar = (farther[pick] - here[pick]) / steps.far;
      const bySide = (wider[pick] - here[pick]) / steps.side;
      const off = measured - here[pick];
      ff += precision * byFar * byFar;
      fs += precision * byFar * bySide;
      ss += precision * bySide * bySide;
      f += precision * byFar * off;
      s += precision * bySide * off;
    }
  }
  const determinant = ff * ss - fs * fs;
  if (!(determinant > 0)) return unknowns;
  const far = (ss * f - fs * s) / determinant;
  const longest = LONGEST_FAR_STEP / Math.max(LONGEST_FAR_STEP, Math.abs(far));
  return withinLimits(shape, {
    far: unknowns.far + longest * far,
    side: unknowns.side + (longest * (ff * s - fs * f)) / determinant,
  });
}

/** Doubt of the means as doubt of the release: speed for the distance, aim (overhead) or lean (roller) for the finish. */
function doubtOf(
  flier: Flier,
  release: SpecialRelease,
  scatter: Scatter,
  calm: RestMoments,
  alongSd_m: number,
  leftSd_m: number,
): SpecialThrow['doubt'] {
  const faster = specialMoments(
    flier,
    { ...release, releaseSpeed_mps: 1.01 * release.releaseSpeed_mps },
    scatter,
    CALM_TURF,
  );
  const speed = alongSd_m / Math.max(1, (faster.along_m - calm.along_m) / 0.01);
  if (release.shape === 'overhead')
    return { speed, azimuth_deg: (leftSd_m / calm.along_m) * (180 / Math.PI), hyzer_deg: 0 };
  const leaning = specialMoments(flier, { ...release, hyzer_deg: release.hyzer_deg + 1 }, scatter, CALM_TURF);
  return { speed, azimuth_deg: 0, hyzer_deg: leftSd_m / Math.max(0.5, Math.abs(leaning.left_m - calm.left_m)) };
}

function misfitOf(flier: Flier, release: SpecialRelease, scatter: Scatter, means: readonly Mean[]): string | null {
  for (const { group, along_m, left_m } of means) {
    const model = specialMoments(flier, release, scatter, group);
    const off_m = Math.hypot(model.along_m - along_m, model.left_m - left_m);
    const allowed_m = WORST_MISFIT * along_m + (2 * model.alongSd_m) / Math.sqrt(group.throws.length);
    if (off_m > allowed_m)
      return `they end ${along_m.toFixed(0)} m away and ${Math.abs(left_m).toFixed(0)} m to the ${left_m > 0 ? 'left' : 'right'} on average, where the model of such a throw gives ${model.along_m.toFixed(0)} m and ${Math.abs(model.left_m).toFixed(0)} m; check the distances`;
  }
  return null;
}
