import { type Candidate, isTie, type Table } from './choose-shot.ts';
import { fittedSpecial, flownAs, isSpecialShape } from './flown-as.ts';
import type { ShotReport } from './plan-report.ts';
import { shotTitle } from './shot-title.ts';
import { specialNote } from './special-words.ts';

/** Where a reported shot is thrown from. */
export type ShotPlace = Readonly<{ fromTee: boolean; toBasket_m: number; toBasket_deg: number; tailwind: boolean }>;

const FAST_DISC_SPEED = 10;
/** Chances below these are left unsaid. */
const LOST_WORTH_SAYING = 0.01;
const HOLED_WORTH_SAYING = 0.005;

/** One candidate in the words and numbers of the report. */
export function shotReport(table: Table, candidate: Candidate, best: Candidate, place: ShotPlace): ShotReport {
  const { shot, outcome, aim_deg } = candidate;
  const fitted = table.player.throws[shot.throwIndex];
  const tie = candidate !== best && isTie(table, best, candidate);
  const notes: string[] = [];
  if (fitted.basis === 'predicted' && !isSpecialShape(shot.shape))
    notes.push('Never measured from this hand: predicted from your other discs.');
  if (place.tailwind && fitted.discSpeed >= FAST_DISC_SPEED && !isSpecialShape(shot.shape))
    notes.push('Fast drivers downwind are the model’s weak spot: take the distance with care.');
  const special = isSpecialShape(shot.shape) ? fittedSpecial(fitted, shot.shape) : null;
  if (special !== null) notes.push(specialNote(special));
  else if (shot.hyzer_deg !== 0) notes.push('Bent line: its scatter is assumed 30 % wider than your flat throws.');
  return {
    title: shotTitle(shot, fitted.class, fitted.hand, {
      fromTee: place.fromTee,
      toBasket_m: place.toBasket_m,
      distance_m: outcome.distance_m,
      apex_m: outcome.apex_m,
    }),
    disc: fitted.disc,
    discId: fitted.discId,
    class: fitted.class,
    hand: fitted.hand,
    shape: shot.shape,
    height: shot.height,
    hyzer_deg: shot.hyzer_deg,
    launch_deg: shot.launch_deg,
    power: shot.power,
    releaseSpeed_mps: flownAs(fitted, shot.shape).releaseSpeed_mps * shot.power,
    aimBearing_deg: aim_deg,
    aimFromBasket_deg: turn_deg(place.toBasket_deg, aim_deg),
    carry_m: outcome.carry_m,
    distance_m: outcome.distance_m,
    finish_m: outcome.finish_m,
    distanceSd_m: outcome.distanceSd_m,
    sideSd_m: outcome.sideSd_m,
    apex_m: outcome.apex_m,
    cleanChance: unit(outcome.cleanChance),
    penaltyChance: unit(outcome.penaltyChance),
    outOfBoundsChance: unit(outcome.outOfBoundsChance),
    hazardChance: unit(outcome.hazardChance),
    mandoChance: unit(outcome.mandoChance),
    ...(outcome.lostChance >= LOST_WORTH_SAYING && { lostChance: unit(outcome.lostChance) }),
    ...(outcome.holedChance >= HOLED_WORTH_SAYING && { holedChance: unit(outcome.holedChance) }),
    parkedChance: unit(outcome.parkedChance),
    within10mChance: unit(outcome.within10mChance),
    within20mChance: unit(outcome.within20mChance),
    expectedThrows: outcome.expectedThrows,
    standardError: outcome.standardError,
    regret: tie ? 0 : Math.max(0, outcome.expectedThrows - best.outcome.expectedThrows),
    tie,
    basis: special === null ? fitted.basis : 'measured',
    notes,
  };
}

/** Signed turn from one bearing to another, −180…180, right positive. */
function turn_deg(from_deg: number, to_deg: number): number {
  return ((((to_deg - from_deg) % 360) + 540) % 360) - 180;
}

/** Sums of weights can pass 1 by a rounding error. */
function unit(chance: number): number {
  return Math.min(1, Math.max(0, chance));
}
