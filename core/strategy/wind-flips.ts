import { windProfile, windRatioAt } from '../air/wind-profile.ts';
import { createFlightBatch } from '../flight/flight-batch.ts';
import { type Candidate, type Choice, isTie, pairedDifference } from './choose-shot.ts';
import type { DayLibraries } from './day-libraries.ts';
import { createExactThrower, type ExactThrower, PLAN_STEP_S } from './exact-thrower.ts';
import { FLIGHT_HEIGHT_M, type SolvedHole } from './hole-solver.ts';
import { everyShot, landingValues } from './landing-value.ts';
import { createMarcher, type Lie } from './march.ts';
import { marchPromising } from './march-promising.ts';
import type { HolePlan } from './plan-report.ts';
import { createShotMarcher } from './shot-marcher.ts';
import { type ShotOutcome, shotOutcome } from './shot-outcome.ts';
import type { ShotSpec } from './shots.ts';
import { expectedOf, resetThrowValue, type ThrowValue } from './throw-value.ts';
import { flyLibrary, type LibraryAir, layOutLibrary, type TrajectoryLibrary } from './trajectory-library.ts';
import { distanceToBasket, valueAt } from './value-field.ts';
import { windBins } from './wind-bins.ts';

const DEGREE = Math.PI / 180;
const DIRECTIONS = 16;
const SPEEDS_MPS = [0, 3, 6, 9, 12] as const;
const RING_MPS = 9;
const AIM_REACH_DEG = 48;
const AIM_STEP_DEG = 4;
const ROWS = 12;
/** Discs × hands compared: those nearest to the choice, and the best of each class. */
const NEAREST = 4;
const TOO_FAR_M = 30;
/** Another disc must be better by this, and by this many standard errors, before the choice is said to flip. */
const LEAST_GAIN = 0.04;
const STANDARD_ERRORS = 1.5;
const TEE: Lie = { east_m: 0, north_m: 0, ground_m: 0 };

export type WindFlip = HolePlan['flips'][number];

/**
 * The choice over a rose of winds: each of the nearest discs aims and throttles anew for every wind, then flies exactly. The value
 * of later lies is that of the day's wind (a wind moves it far less than the tee shot).
 */
export function windFlips(
  solved: SolvedHole,
  libraries: DayLibraries,
  choice: Choice,
): Readonly<{ flips: WindFlip[]; nearest: HolePlan['nearestFlip'] }> {
  const { day } = libraries;
  const inWind = windRose(solved, libraries, choice);
  const flips: WindFlip[] = [];
  for (const speed_mps of SPEEDS_MPS) {
    for (let d = 0; d < (speed_mps === 0 ? 1 : DIRECTIONS); d++) {
      const from_deg = (d * 360) / DIRECTIONS;
      flips.push(flipOf(solved, inWind(speed_mps, from_deg, ROWS).best, speed_mps, from_deg));
    }
  }
  const today = windVector(day.wind.speed_mps, day.wind.from_deg);
  const here = solved.table.player.throws[choice.best.shot.throwIndex];
  let nearest: HolePlan['nearestFlip'] = null;
  for (const flip of flips) {
    if (flip.choice.discId === here.discId && flip.choice.hand === here.hand) continue;
    const there = windVector(flip.wind_mps, flip.windFrom_deg);
    const change_mps = Math.hypot(there[0] - today[0], there[1] - today[1]);
    if (nearest === null || change_mps < nearest.change_mps) nearest = { ...flip, change_mps };
  }
  return { flips, nearest };
}

/** The choice in one wind, and the best of every disc compared, fewest throws first; `thrower` throws in that wind. */
export type InWind = Readonly<{ best: Candidate; candidates: readonly Candidate[]; thrower: ExactThrower }>;

/**
 * Prepares a hole for the question what another wind would choose; each answer then takes some milliseconds.
 * @returns the choice at a wind at 10 m, flown with `rows` samples (at most those of the table)
 */
export function windRose(
  solved: SolvedHole,
  libraries: DayLibraries,
  choice: Choice,
): (speed_mps: number, from_deg: number, rows: number) => InWind {
  const compared = discsToCompare(solved, choice);
  const shots = libraries.shots.filter(shot => compared.includes(shot.throwIndex));
  const middle = middleFlights(libraries, shots);
  return (speed_mps, from_deg, rows) =>
    choiceInWind(solved, libraries, middle, shots, compared, speed_mps, from_deg, rows);
}

function discsToCompare(solved: SolvedHole, choice: Choice): number[] {
  const { throws } = solved.table.player;
  const kept = new Set(choice.candidates.slice(0, NEAREST).map(c => c.shot.throwIndex));
  const classes = new Set([...kept].map(i => throws[i].class));
  for (const { shot } of choice.candidates) {
    if (classes.has(throws[shot.throwIndex].class)) continue;
    classes.add(throws[shot.throwIndex].class);
    kept.add(shot.throwIndex);
  }
  return [...kept];
}

/** The middle of every shot in calm air and in eight winds of one speed. */
function middleFlights({ player, day, drop_m }: DayLibraries, shots: readonly ShotSpec[]): TrajectoryLibrary {
  const air: LibraryAir = {
    player,
    normals: new Float64Array(0),
    density_kgpm3: day.density_kgpm3,
    profile: windProfile('open'),
    drop_m,
  };
  const library = layOutLibrary(shots, air, 0, { speed_mps: RING_MPS, speedSd_mps: 0, directionSd_deg: 0 }, RING_MPS);
  flyLibrary(library, air, createFlightBatch(), 0, shots.length);
  return library;
}

function choiceInWind(
  solved: SolvedHole,
  libraries: DayLibraries,
  middle: TrajectoryLibrary,
  shots: readonly ShotSpec[],
  compared: readonly number[],
  speed_mps: number,
  from_deg: number,
  rows: number,
): InWind {
  const { world, table, exposure } = solved;
  const { field, player } = table;
  const { day, scatter } = libraries;
  const profile = windProfile(exposure);
  const share = windRatioAt(profile, FLIGHT_HEIGHT_M) / windRatioAt(windProfile('open'), FLIGHT_HEIGHT_M);
  const bins = windBins({ ...middle, windSpeed_mps: Float32Array.of(speed_mps) }, from_deg, share);
  const marcher = createMarcher(world);
  const shotMarcher = createShotMarcher(world, bins, marcher, player);
  const gust = day.wind.speed_mps > 0 ? scatter.speedSd_mps / day.wind.speed_mps : 0.15;
  const air = {
    density_kgpm3: day.density_kgpm3,
    profile,
    windFrom_deg: from_deg,
    scatter: {
      speed_mps,
      speedSd_mps: gust * speed_mps,
      directionSd_deg: speed_mps > 0 ? day.wind.directionSpread_deg : 0,
    },
  };
  const thrower = createExactThrower(world, player, air, table.thrower.flier, marcher, PLAN_STEP_S);
  const toBasket = Math.atan2(field.basket[0], field.basket[1]) / DEGREE;
  const steps = Math.round(AIM_REACH_DEG / AIM_STEP_DEG);
  const aims_deg = Array.from({ length: 2 * steps + 1 }, (_, aim) => toBasket + (aim - steps) * AIM_STEP_DEG);
  const farthest = Math.max(distanceToBasket(field, 0, 0), bins.leastReach_m(toBasket)) + TOO_FAR_M;
  const running: ThrowValue = { paths: 0, sum: 0, replay: 0 };
  const bounds = new Float64Array(shots.length * aims_deg.length);
  landingValues(world, bins, field, TEE, everyShot(bins), aims_deg, farthest, bounds);
  const replayValue = valueAt(field, 0, 0);
  const promising = marchPromising({
    shots: shots.length,
    aims: aims_deg.length,
    bounds,
    score: (shot, aim) => {
      resetThrowValue(running);
      shotMarcher.add(shot, 0, 1, TEE, aims_deg[aim], field, running);
      return expectedOf(running);
    },
    most: 0,
    perGroup: 1,
    groupOf: shot => compared.indexOf(shots[shot].throwIndex),
    groups: compared.length,
  });
  const tried: Candidate[] = compared.flatMap(throwIndex => {
    const pair = promising.find(p => shots[p.shot].throwIndex === throwIndex);
    if (!pair) return [];
    const shot = shots[pair.shot];
    const aim_deg = aims_deg[pair.aim];
    const outcome: ShotOutcome = shotOutcome(
      thrower,
      field,
      shot,
      TEE,
      aim_deg,
      table.answerNormals,
      0,
      rows,
      world.dropZone,
      replayValue,
    );
    return [{ shot, aim_deg, outcome }];
  });
  // the day's choice stands first and is given up only for a clear gain
  const judged = { player, windSpeed_mps: speed_mps };
  const best = tried.reduce((a, b) => {
    const { mean, standardError } = pairedDifference(a.outcome, b.outcome);
    const clearly = mean > Math.max(LEAST_GAIN, STANDARD_ERRORS * standardError);
    // a lead that rests on the model where it is weakest is none, as in the plan's own ties
    return clearly && !isTie(judged, b, a) ? b : a;
  });
  const others = tried.filter(c => c !== best).sort((a, b) => a.outcome.expectedThrows - b.outcome.expectedThrows);
  return { best, candidates: [best, ...others], thrower };
}

function flipOf({ table }: SolvedHole, { shot }: Candidate, wind_mps: number, windFrom_deg: number): WindFlip {
  const { disc, discId, class: discClass, hand } = table.player.throws[shot.throwIndex];
  return { windFrom_deg, wind_mps, choice: { disc, discId, class: discClass, hand, shape: shot.shape } };
}

function windVector(speed_mps: number, from_deg: number): readonly [number, number] {
  return [speed_mps * Math.sin(from_deg * DEGREE), speed_mps * Math.cos(from_deg * DEGREE)];
}
