import type { Day } from '../air/day.ts';
import { relativeWind } from '../air/relative-wind.ts';
import type { Candidate } from './choose-shot.ts';
import { drawShot, type ShotDrawing } from './hole-drawing.ts';
import { type PlannedHole, scoring } from './plan-hole.ts';
import type { HolePlan, ShotReport } from './plan-report.ts';
import { type ShotPlace, shotReport } from './shot-report.ts';
import type { InWind } from './wind-flips.ts';

const TEE = { east_m: 0, north_m: 0, ground_m: 0 };
const FIRST_ANSWER =
  'first answer while the wind is changed: the main discs only, fewest expected throws, later throws valued for the wind before';

/**
 * A hole's plan for another wind than the one it was solved for, good enough to look at while the wind is dragged. Reasons and
 * next throws are left out; `assumptions` says what it is.
 * @param inWind - the choice in that wind
 */
export function planInWind(
  { plan, solved }: Pick<PlannedHole, 'plan' | 'solved'>,
  inWind: InWind,
  day: Day,
): Readonly<{ plan: HolePlan; drawing: ShotDrawing }> {
  const { best, candidates, thrower } = inWind;
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
      scoreDistribution: scoring(solved)(best).map((chance, i) => ({ throws: i + 1, chance })),
      expectedThrows: best.outcome.expectedThrows,
      reasons: [],
      assumptions: [FIRST_ANSWER, ...plan.assumptions],
    },
    drawing: drawShot(table, best.shot, TEE, best.aim_deg),
  };
}

function firstOfClass(shots: readonly ShotReport[]): HolePlan['byClass'] {
  const first: HolePlan['byClass'] = {};
  for (const shot of shots) first[shot.class] ??= shot;
  return first;
}
