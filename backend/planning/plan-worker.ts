import { fitPlayer } from '../../core/player/fit-player.ts';
import type { FittedPlayer } from '../../core/player/fitted-player.ts';
import type { PlayerFile } from '../../core/player/player-file.ts';
import { type OwnBest, ownBest, type PracticeHole, practiceHole } from '../../core/practice/practice-hole.ts';
import { reviewHole } from '../../core/review/review-hole.ts';
import { type DayLibraries, librariesOn, makeDayLibraries, windRooms } from '../../core/strategy/day-libraries.ts';
import { evaluateShot } from '../../core/strategy/evaluate-shot.ts';
import { drawShot } from '../../core/strategy/hole-drawing.ts';
import { type PlannedHole, planHole, planHoleInFull } from '../../core/strategy/plan-hole.ts';
import { planInWind } from '../../core/strategy/plan-in-wind.ts';
import type { HolePlan } from '../../core/strategy/plan-report.ts';
import { windFlips, windRose } from '../../core/strategy/wind-flips.ts';
import type {
  OwnBestTask,
  PlanTask,
  PlanWithOptions,
  PracticeTask,
  QuickTask,
  ReviewAnswer,
  ReviewTask,
  RoundSetting,
  ShotAnswer,
  ShotTask,
  WindowAnswer,
  WindowHole,
  WindowTask,
} from './plan-task.ts';
import { windKey } from './plan-task.ts';

/** The last round's only. */
let kept: Readonly<{ libraryKey: string; windKey: string; libraries: DayLibraries }> | null = null;
/** Holes still solved, the last used at the end: a question about one of them need not solve it again. */
const solved = new Map<string, KeptHole>();
type KeptHole = PlannedHole & {
  readonly holeKey: string;
  readonly libraries: DayLibraries;
  readonly withRisks: boolean;
  rose?: ReturnType<typeof windRose>;
};
const KEPT_SOLVED = 12;
const QUICK_ROWS = 64;
const TEE = { east_m: 0, north_m: 0, ground_m: 0 };

/** Plans one hole in a worker thread. */
export default function planTask({ map, round, libraryKey, attitude, flips, bag }: PlanTask): HolePlan {
  return planHole({ map, libraries: librariesFor(libraryKey, round), attitude, flips, bag });
}

/** Plans one hole and keeps the chances of scores of all its shots, to allot a round's target with. */
export function optionsTask({ map, round, libraryKey, flips }: PlanTask): PlanWithOptions {
  const { plan, options } = planHoleInFull({ map, libraries: librariesFor(libraryKey, round), flips, risks: true });
  return { plan, options };
}

/** Plans one hole and says what to draw of it. @returns null when it was told to stop before it began */
export function windowTask(task: WindowTask): WindowAnswer | null {
  const planned = plannedHole(task);
  if (planned === null) return null;
  const { plan, choice, options, solved: hole } = planned;
  const { shot, aim_deg } = choice.best;
  const answer = { plan, drawing: { ref: plan.ref, choice: drawShot(hole.table, shot, TEE, aim_deg) }, options };
  if (!task.flips || isStopped(task)) return answer;
  task.early?.postMessage(answer);
  const { flips, nearest } = windFlips(hole, planned.libraries, choice);
  return { ...answer, plan: { ...plan, flips, nearestFlip: nearest } };
}

/** @returns null when the hole is not among those kept solved */
export function quickTask({ holeKey, day, attitude }: QuickTask): WindowHole | null {
  const kept = [...solved.values()].findLast(hole => hole.holeKey === holeKey);
  if (kept === undefined) return null;
  kept.rose ??= windRose(kept.solved, kept.libraries, kept.choice);
  const { speed_mps, from_deg } = day.wind;
  const { plan, drawing } = planInWind(kept, kept.rose(speed_mps, from_deg, QUICK_ROWS), day, attitude);
  return { plan, drawing: { ref: plan.ref, choice: drawing } };
}

/** @returns null when it was told to stop, or the player has no such disc from that hand */
export function shotTask(task: ShotTask): ShotAnswer | null {
  const planned = plannedHole(task);
  return planned === null ? null : (evaluateShot(planned, task.shot, task.against) ?? null);
}

/** Judges a hole as it was thrown. @returns null when it was told to stop */
export function reviewTask(task: ReviewTask): ReviewAnswer | null {
  const planned = plannedHole(task);
  if (planned === null || isStopped(task)) return null;
  const review = reviewHole(task.map, planned, task.hole);
  const stayed = task.staying === undefined ? undefined : evaluateShot(planned, task.staying);
  return { review, stayingCost: stayed?.shot.regret ?? null };
}

/** Plays a hole of a practice round over and over. @returns null when it was told to stop before it began */
export function practiceTask(task: PracticeTask): PracticeHole | null {
  if (isStopped(task)) return null;
  const { map, round, libraryKey, shapes, plays, rounds } = task;
  return practiceHole({ map, libraries: librariesFor(libraryKey, round), shapes, plays, rounds });
}

/** @returns null when it was told to stop before it began */
export function ownBestTask(task: OwnBestTask): OwnBest | null {
  if (isStopped(task)) return null;
  return ownBest(task.map, librariesFor(task.libraryKey, task.round));
}

export function fitTask(file: PlayerFile): FittedPlayer {
  return fitPlayer(file);
}

const isStopped = ({ stop }: Pick<WindowTask, 'stop'>) => Atomics.load(stop, 0) !== 0;

function plannedHole(task: Omit<WindowTask, 'early'>): KeptHole | null {
  const { map, round, libraryKey, solvedKey, holeKey, attitude, risks = false } = task;
  let planned = solved.get(solvedKey);
  if (planned === undefined || (risks && !planned.withRisks)) {
    if (isStopped(task)) return null;
    const libraries = librariesFor(libraryKey, round);
    if (isStopped(task)) return null;
    planned = {
      ...planHoleInFull({ map, libraries, attitude, risks }),
      holeKey,
      withRisks: risks,
      libraries: { ...libraries, bins: windRooms() },
    };
    // what is asked later of a kept hole seldom needs stored paths: they are made again when it does
    planned.solved.table.bins.release();
  }
  solved.delete(solvedKey);
  solved.set(solvedKey, planned);
  for (const key of solved.keys()) if (solved.size > KEPT_SOLVED) solved.delete(key);
  return planned;
}

function librariesFor(libraryKey: string, round: RoundSetting): DayLibraries {
  const { player, day, limits, drop_m, seed, shared } = round;
  const wind = windKey(round);
  if (kept?.libraryKey !== libraryKey) {
    kept = null; // let the old ones go before the new ones are built
    const libraries = makeDayLibraries(player, day, limits, drop_m, seed, shared?.flown, shared?.bins);
    kept = { libraryKey, windKey: wind, libraries };
  } else if (kept.windKey !== wind) {
    kept = {
      libraryKey,
      windKey: wind,
      libraries: librariesOn(kept.libraries, day, shared?.bins ?? windRooms()),
    };
  }
  // The libraries may be those of a day with the wind from elsewhere.
  return { ...kept.libraries, day };
}
