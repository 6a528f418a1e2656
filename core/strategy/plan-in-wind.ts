import type { Day } from '../air/day.ts';
import { relativeWind } from '../air/relative-wind.ts';
import { type Attitude, costOf, EVEN } from './attitude.ts';
import type { Candidate } from './choose-shot.ts';
import { drawShot, type ShotDrawing } from './hole-drawing.ts';
import { type PlannedHole, scoring } from './plan-hole.ts';
import type { HolePlan, ShotReport } from './plan-report.ts';
import { type ShotPlace, shotReport } from './shot-report.ts';
import type { InWind } from './wind-flips.ts';

const TEE = { east_m: 0, north_m: 0, ground_m: 0 };
const FIRST_ANSWER =
  'first answer while the wind is changed: the main discs only, later throws valued for the wind before';

/**
 * A hole's plan for another wind than the one it was solved for, good enough to look at while the wind is dragged. Reasons and
 * next throws are left out; `assumptions` says what it is.
 * @param inWind - the choice in that wind
 * @param attitude - what the choice is for: it is made among the best lines of the discs compared
 */
export function planInWind(
  { plan, solved }: Pick<PlannedHole, 'plan' | 'solved'>,
  inWind: InWind,
  day: Day,
  attitude: Attitude = EVEN,
): Readonly<{ plan: HolePlan; drawing: ShotDrawing }> {
  const { thrower } = inWind;
  const scoresOf = scoring(solved);
  const best = leastCost(attitude, inWind, scoresOf);
  const candidates = [best, ...inWind.candidates.filter(candidate => candidate !== best)];
  const table = { ...solved.table, thrower };
  const wind = relativeWind(day, plan.bearing_deg);
  const place: ShotPlace = {
    fromTee: true,
    toBasket_m: plan.length_m,
    toBasket_deg: plan.bearing_deg,
    tailwind: wind.head_mps < -2,
  };
  const report = (candidate: Candidate) => shotReport(table, candidate, best, place);
  const shots = candidates.map(report);
  return {
    plan: {
      ...plan,
      headwind_mps: wind.head_mps,
      windFromRight_mps: wind.right_mps,
      choice: shots[0],
      next: [],
      alternatives: shots.slice(1),
      byClass: firstOfClass(shots),
      scoreDistribution: scoresOf(best).map((chance, i) => ({ throws: i + 1, chance })),
      expectedThrows: best.outcome.expectedThrows,
      reasons: [],
      assumptions: [FIRST_ANSWER, ...plan.assumptions],
    },
    drawing: drawShot(table, best.shot, TEE, best.aim_deg),
  };
}

function leastCost(
  attitude: Attitude,
  { best, candidates }: InWind,
  scoresOf: (candidate: Candidate) => readonly number[],
): Candidate {
  if (attitude.kind === 'even') return best;
  const cost = (candidate: Candidate) => costOf(attitude, scoresOf(candidate), candidate.outcome.expectedThrows);
  return candidates.reduce((least, candidate) => (cost(candidate) < cost(least) ? candidate : least), best);
}

function firstOfClass(shots: readonly ShotReport[]): HolePlan['byClass'] {
  const first: HolePlan['byClass'] = {};
  for (const shot of shots) first[shot.class] ??= shot;
  return first;
}
