import type { HoleMap, LocalPoint } from '../../core/geometry/hole-map.ts';
import type { DiscClass, FittedPlayer } from '../../core/player/fitted-player.ts';
import { type DayLibraries, makeDayLibraries } from '../../core/strategy/day-libraries.ts';
import { planHole } from '../../core/strategy/plan-hole.ts';
import type { HolePlan, ShotReport } from '../../core/strategy/plan-report.ts';
import type { Limits } from '../../core/strategy/shots.ts';
import { aDay } from '../core/strategy/a-day.ts';
import { inventedPlayer } from '../core/strategy/invented-player.ts';
import { area, boxRing } from '../core/strategy/sketched-holes.ts';
import { bareHole } from '../core/strategy/small-world.ts';
import { WHOLE_BAG } from './invented-fieldwork.ts';

/** Slower discs land tighter, as players see (invented numbers, the same as in the invented fieldwork). */
const tighter = (discSpeed: number) => 0.65 + 0.055 * discSpeed;

/** A player known exactly, with the whole bag. */
export const knownPlayer = (arm_mps: number): FittedPlayer =>
  inventedPlayer({ arm_mps, discs: WHOLE_BAG, scatter: tighter });

export const reachOf = (player: FittedPlayer, discId: string): number =>
  player.throws.find(t => t.discId === discId)?.averageDay_m ?? Number.NaN;

type Wind = Readonly<{ speed_mps: number; from_deg: number }>;
const CALM: Wind = { speed_mps: 0, from_deg: 0 };
const DEEPEST_M = 25;

export function librariesFor(player: FittedPlayer, wind = CALM, seed = 1, limits: Limits = {}): DayLibraries {
  return makeDayLibraries(player, aDay(wind.speed_mps, wind.from_deg), limits, DEEPEST_M, seed);
}

/** A hole straight north of the tee, open but for what is given. */
export function planOf(libraries: DayLibraries, length_m: number, parts: Partial<HoleMap> = {}): HolePlan {
  const basket: LocalPoint = [0, length_m];
  return planHole({ map: bareHole({ basket, ...parts }), libraries });
}

/** Branches over the whole width of a hole, from 12 m off the tee to 10 m before the basket. */
export const branchesAt = (clearance_m: number, length_m: number): Partial<HoleMap> => ({
  ceilings: [{ ...area(boxRing(-12, 12, 12, length_m - 10)), clearance_m, top_m: Number.POSITIVE_INFINITY }],
});

/** Expected throws of the best shot of a class. */
export const worthOf = (plan: HolePlan, discClass: DiscClass): number =>
  plan.byClass[discClass]?.expectedThrows ?? Number.POSITIVE_INFINITY;

/** The best shot a plan knows with one disc. */
export function shotWith(plan: HolePlan, discId: string): ShotReport {
  const shot = [plan.choice, ...plan.alternatives].find(s => s.discId === discId);
  if (!shot) throw new Error(`the plan holds no shot with ${discId}`);
  return shot;
}

/** One line of a plan, for messages. */
export function said(plan: HolePlan): string {
  const classes = Object.values(plan.byClass).map(shot => `${shot.discId} ${shot.expectedThrows.toFixed(3)}`);
  return `${plan.length_m.toFixed(0)} m: ${plan.choice.title} (${plan.choice.discId}); ${classes.join(', ')}`;
}

export const mean = (numbers: readonly number[]): number => numbers.reduce((a, b) => a + b, 0) / numbers.length;
