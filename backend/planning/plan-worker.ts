import { fitPlayer } from '../../core/player/fit-player.ts';
import type { FittedPlayer } from '../../core/player/fitted-player.ts';
import type { PlayerFile } from '../../core/player/player-file.ts';
import { evaluateShot } from '../../core/strategy/evaluate-shot.ts';
import { drawShot } from '../../core/strategy/hole-drawing.ts';
import { type DayLibraries, makeDayLibraries } from '../../core/strategy/hole-solver.ts';
import { type PlannedHole, planHole, planHoleInFull } from '../../core/strategy/plan-hole.ts';
import type { HolePlan } from '../../core/strategy/plan-report.ts';
import type {
  PlanTask,
  PlanWithOptions,
  RoundSetting,
  ShotAnswer,
  ShotTask,
  WindowHole,
  WindowTask,
} from './plan-task.ts';

/** The last round's only: one set of libraries is tens of megabytes. */
let kept: Readonly<{ libraryKey: string; libraries: DayLibraries }> | null = null;
/** Holes still solved, the last used at the end: a question about one of them need not solve it again. */
const solved = new Map<string, PlannedHole>();
const KEPT_SOLVED = 3;
const TEE = { east_m: 0, north_m: 0, ground_m: 0 };

/** Plans one hole in a worker thread. */
export default function planTask({ map, round, libraryKey, attitude, flips, bag }: PlanTask): HolePlan {
  return planHole({ map, libraries: librariesFor(libraryKey, round), attitude, flips, bag });
}

/** Plans one hole and keeps the chances of scores of all its shots, to allot a round's target with. */
export function optionsTask({ map, round, libraryKey, flips }: PlanTask): PlanWithOptions {
  const { plan, options } = planHoleInFull({ map, libraries: librariesFor(libraryKey, round), flips });
  return { plan, options };
}

/** Plans one hole and says what to draw of it. @returns null when it was told to stop before it began */
export function windowTask(task: WindowTask): WindowHole | null {
  const planned = plannedHole(task);
  if (planned === null) return null;
  const { plan, choice, solved } = planned;
  const { shot, aim_deg } = choice.best;
  return { plan, drawing: { ref: plan.ref, choice: drawShot(solved.table, shot, TEE, aim_deg) } };
}

/** @returns null when it was told to stop, or the player has no such disc from that hand */
export function shotTask(task: ShotTask): ShotAnswer | null {
  const planned = plannedHole(task);
  return planned === null ? null : (evaluateShot(planned, task.shot, task.against) ?? null);
}

export function fitTask(file: PlayerFile): FittedPlayer {
  return fitPlayer(file);
}

function plannedHole({ map, round, libraryKey, solvedKey, stop }: WindowTask): PlannedHole | null {
  const stopped = () => Atomics.load(stop, 0) !== 0;
  let planned = solved.get(solvedKey);
  if (planned === undefined) {
    if (stopped()) return null;
    const libraries = librariesFor(libraryKey, round);
    if (stopped()) return null;
    planned = planHoleInFull({ map, libraries });
  }
  solved.delete(solvedKey);
  solved.set(solvedKey, planned);
  for (const key of solved.keys()) if (solved.size > KEPT_SOLVED) solved.delete(key);
  return planned;
}

function librariesFor(libraryKey: string, { player, day, limits, drop_m, seed }: RoundSetting): DayLibraries {
  if (kept?.libraryKey !== libraryKey) {
    kept = null; // let the old ones go before the new ones are built
    kept = { libraryKey, libraries: makeDayLibraries(player, day, limits, drop_m, seed) };
  }
  // The libraries may be those of a day with the wind from elsewhere.
  return { ...kept.libraries, day };
}
