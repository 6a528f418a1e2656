import { type DayLibraries, makeDayLibraries } from '../../core/strategy/hole-solver.ts';
import { planHole } from '../../core/strategy/plan-hole.ts';
import type { HolePlan } from '../../core/strategy/plan-report.ts';
import type { PlanTask, RoundSetting } from './plan-task.ts';

/** The last round's only: one set of libraries is tens of megabytes. */
let kept: Readonly<{ roundKey: string; libraries: DayLibraries }> | null = null;

/** Plans one hole in a worker thread. */
export default function planTask({ map, round, roundKey }: PlanTask): HolePlan {
  return planHole({ map, libraries: librariesFor(roundKey, round) });
}

function librariesFor(roundKey: string, { player, day, limits, drop_m, seed }: RoundSetting): DayLibraries {
  if (kept?.roundKey !== roundKey) {
    kept = null; // let the old ones go before the new ones are built
    kept = { roundKey, libraries: makeDayLibraries(player, day, limits, drop_m, seed) };
  }
  return kept.libraries;
}
