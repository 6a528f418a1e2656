import { type Command, Option } from 'commander';
import type { Day } from '../../../core/air/day.ts';
import type { Course } from '../../../core/course/course.ts';
import { fitPlayer } from '../../../core/player/fit-player.ts';
import type { PlayerFile } from '../../../core/player/player-file.ts';
import type { PlanReport } from '../../../core/strategy/plan-report.ts';
import type { Limits } from '../../../core/strategy/shots.ts';
import type { Result } from '../../../core/units/result.ts';
import { planRound } from '../../planning/plan-round.ts';
import type { Context } from '../context.ts';
import { loadCourse, loadPlayer } from '../load.ts';
import { AIR_OPTION_OF, type AirOptions, addAirOptions, dayOf } from '../options/air-options.ts';
import { holeList } from '../options/hole-list.ts';
import { discClasses } from '../options/limit-options.ts';
import { wholeNumber } from '../options/reading.ts';
import { usageError } from '../options/usage.ts';
import { EXIT, printProblems } from '../problems.ts';
import { during, startProgress } from '../progress.ts';
import { type Units, unitsOption } from '../show-units.ts';
import { holePlan } from '../tables/hole-plan.ts';
import { planTable } from '../tables/plan-table.ts';
import type { Terminal } from '../terminal.ts';

type PlanOptions = AirOptions &
  Readonly<{
    player: string;
    only?: Limits['classes'];
    hand?: 'backhand' | 'forehand';
    holes?: string;
    seed: number;
    detail?: true;
    json?: true;
    units: Units;
  }>;

const OPTION_OF = { ...AIR_OPTION_OF, holes: '--holes', limits: '--only/--hand' };

export function addPlan(program: Command, { terminal, exit }: Context): void {
  const command = program
    .command('plan')
    .description('what to throw on every hole, how sure it is, and what else there is')
    .argument('<course>', 'course file (GeoJSON)')
    .requiredOption('--player <file>', 'player file (JSON): discs, fieldwork, putting');
  addAirOptions(command)
    .addOption(
      new Option(
        '--only <classes>',
        'these discs only: putters,midranges,fairways,controls,distances,drivers',
      ).argParser(discClasses),
    )
    .addOption(new Option('--hand <hand>', 'throw from this hand only').choices(['backhand', 'forehand']))
    .option('--holes <holes>', 'these holes only: 1,3-5 (one alone is shown in detail)')
    .addOption(
      new Option('--seed <number>', 'of the simulated throws; same seed, same plan').argParser(wholeNumber).default(1),
    )
    .option('--detail', 'every hole in detail: next throws, alternatives, reasons')
    .option('--json', 'machine-readable plan')
    .addOption(unitsOption())
    .action(async (file: string, options: PlanOptions, command: Command) => {
      const day = dayOf(options);
      if (!day.ok) return usageError(command, day.problems, OPTION_OF);
      const course = loadCourse(file);
      const player = loadPlayer(options.player);
      if (!course.ok) printProblems(file, course.problems, terminal);
      if (!player.ok) printProblems(options.player, player.problems, terminal);
      if (!course.ok || !player.ok) return exit(EXIT.badInput);
      const holes = options.holes === undefined ? undefined : holeList(options.holes, course.value);
      if (holes?.ok === false) return usageError(command, holes.problems, OPTION_OF);
      const plan = await planned(course.value, player.value, day.value, options, holes?.value, terminal);
      if (plan === null) {
        terminal.err('stopped\n');
        return exit(EXIT.interrupted);
      }
      if (!plan.ok) {
        if (options.only !== undefined || options.hand !== undefined)
          return usageError(command, plan.problems, OPTION_OF);
        printProblems(
          options.player,
          plan.problems.map(problem => ({ ...problem, path: 'discs' })),
          terminal,
        );
        return exit(EXIT.badInput);
      }
      print(plan.value, options, terminal);
      return exit(EXIT.good);
    });
}

/** @returns null when the user interrupted it */
async function planned(
  course: Course,
  file: PlayerFile,
  day: Day,
  { only, hand, seed }: PlanOptions,
  holes: readonly string[] | undefined,
  terminal: Terminal,
): Promise<Result<PlanReport> | null> {
  const player = during(terminal, 'fitting the throws', () => fitPlayer(file));
  const limits: Limits = { ...(only && { classes: only }), ...(hand && { hands: [hand] }) };
  const progress = startProgress(terminal, 'planning', holes?.length ?? course.holes.length);
  const interrupt = new AbortController();
  const stop = () => interrupt.abort();
  process.once('SIGINT', stop);
  try {
    return await planRound(
      { course, player, day, limits, seed, ...(holes && { holes }) },
      { onProgress: ({ done }) => progress.set(done), signal: interrupt.signal },
    );
  } catch (error) {
    if (interrupt.signal.aborted) return null;
    throw error;
  } finally {
    process.removeListener('SIGINT', stop);
    progress.stop();
  }
}

function print(plan: PlanReport, { json, detail, units }: PlanOptions, terminal: Terminal): void {
  if (json) {
    terminal.out(`${JSON.stringify(plan, null, 2)}\n`);
    return;
  }
  terminal.out(planTable(plan, units, terminal));
  if (!detail && plan.holes.length > 1) return;
  for (const hole of plan.holes) terminal.out(`\n${holePlan(hole, units, terminal)}`);
}
