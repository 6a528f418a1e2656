import type { Command } from 'commander';
import type { Day } from '../../core/air/day.ts';
import type { Course } from '../../core/course/course.ts';
import { fitPlayer } from '../../core/player/fit-player.ts';
import type { FittedPlayer } from '../../core/player/fitted-player.ts';
import type { PlayerFile } from '../../core/player/player-file.ts';
import type { PlanReport } from '../../core/strategy/plan-report.ts';
import type { Limits } from '../../core/strategy/shots.ts';
import type { Result } from '../../core/units/result.ts';
import { type PlanRequest, planRound } from '../planning/plan-round.ts';
import { windByHole } from '../planning/wind-by-hole.ts';
import type { Context } from './context.ts';
import { asPlayed, loadPlayer } from './load.ts';
import { loadCourseWithGround } from './load-with-ground.ts';
import { dayInputOf, dayOf } from './options/air-options.ts';
import { holeList } from './options/hole-list.ts';
import { PLANNING_OPTION_OF, type PlanningOptions } from './options/planning-options.ts';
import { usageError } from './options/usage.ts';
import { roundTimes } from './options/wind-options.ts';
import { EXIT, printProblems } from './problems.ts';
import { during, startProgress } from './progress.ts';
import type { Terminal } from './terminal.ts';

/** Other winds are looked at when asked for, and where a hole is shown in detail. */
type WindRose = Readonly<{ flips?: true; detail?: true }>;

export type PlannedRound = Readonly<{ course: Course; player: FittedPlayer; day: Day; plan: PlanReport }>;

/**
 * Reads the files a verb names and plans the round.
 * @returns null when that could not be done: the user has been told, and the process's end is set
 */
export async function planFromFiles(
  file: string,
  options: PlanningOptions & WindRose,
  command: Command,
  { terminal, exit }: Context,
): Promise<PlannedRound | null> {
  const day = dayOf(options);
  if (!day.ok) return usageError(command, day.problems, PLANNING_OPTION_OF);
  const times = roundTimes(options);
  if (!times.ok) return usageError(command, times.problems, PLANNING_OPTION_OF);
  const mapped = await loadCourseWithGround(file, options);
  const course = mapped.ok ? asPlayed(mapped.value, options.layout) : mapped;
  if (mapped.ok && !course.ok) return usageError(command, course.problems, PLANNING_OPTION_OF);
  const player = loadPlayer(options.player);
  if (!course.ok) printProblems(file, course.problems, terminal);
  if (!player.ok) printProblems(options.player, player.problems, terminal);
  if (!course.ok || !player.ok) {
    exit(EXIT.badInput);
    return null;
  }
  const holes = options.holes === undefined ? undefined : holeList(options.holes, course.value);
  if (holes?.ok === false) return usageError(command, holes.problems, PLANNING_OPTION_OF);
  const refs = course.value.holes.map(hole => hole.ref);
  const byHole = times.value && windByHole(dayInputOf(options), times.value, refs);
  if (byHole?.ok === false) return usageError(command, byHole.problems, PLANNING_OPTION_OF);
  const air = { day: byHole?.value.get(refs[0] ?? '')?.day ?? day.value, dayByHole: byHole?.value };
  const made = await planned(course.value, player.value, air, options, holes?.value, terminal);
  if (made === null) {
    terminal.err('stopped\n');
    exit(EXIT.interrupted);
    return null;
  }
  const { fitted, plan } = made;
  if (plan.ok) return { course: course.value, player: fitted, day: air.day, plan: plan.value };
  const isUsage = options.only !== undefined || options.hand !== undefined;
  if (isUsage || plan.problems.some(({ path }) => path === 'target' || path === 'bag'))
    return usageError(command, plan.problems, PLANNING_OPTION_OF);
  printProblems(
    options.player,
    plan.problems.map(problem => ({ ...problem, path: 'discs' })),
    terminal,
  );
  exit(EXIT.badInput);
  return null;
}

/** @returns null when the user interrupted it */
async function planned(
  course: Course,
  file: PlayerFile,
  { day, dayByHole }: Pick<PlanRequest, 'day' | 'dayByHole'>,
  { only, hand, seed, attitude, target, bag, flips, detail }: PlanningOptions & WindRose,
  holes: readonly string[] | undefined,
  terminal: Terminal,
): Promise<Readonly<{ fitted: FittedPlayer; plan: Result<PlanReport> }> | null> {
  const player = during(terminal, 'fitting the throws', () => fitPlayer(file));
  const limits: Limits = { ...(only && { classes: only }), ...(hand && { hands: [hand] }) };
  const progress = startProgress(terminal, 'planning', holes?.length ?? course.holes.length);
  const interrupt = new AbortController();
  const stop = () => interrupt.abort();
  process.once('SIGINT', stop);
  try {
    const plan = await planRound(
      {
        course,
        player,
        day,
        limits,
        seed,
        attitude,
        flips: flips || detail || holes?.length === 1,
        ...(target !== undefined && { target }),
        ...(bag !== undefined && { bag }),
        ...(holes && { holes }),
        ...(dayByHole && { dayByHole }),
      },
      { onProgress: ({ done }) => progress.set(done), signal: interrupt.signal },
    );
    return { fitted: player, plan };
  } catch (error) {
    if (interrupt.signal.aborted) return null;
    throw error;
  } finally {
    process.removeListener('SIGINT', stop);
    progress.stop();
  }
}
