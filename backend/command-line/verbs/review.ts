import { type Command, Option } from 'commander';
import { type Day, makeDay } from '../../../core/air/day.ts';
import type { Course } from '../../../core/course/course.ts';
import { buildHoleMap } from '../../../core/geometry/build-hole-map.ts';
import type { HoleMap } from '../../../core/geometry/hole-map.ts';
import { fitPlayer } from '../../../core/player/fit-player.ts';
import type { FittedPlayer } from '../../../core/player/fitted-player.ts';
import type { PlayerFile } from '../../../core/player/player-file.ts';
import { checkRound } from '../../../core/review/check-round.ts';
import type { ReviewReport } from '../../../core/review/review-report.ts';
import { isFinished, parseRoundText, type RoundFile } from '../../../core/review/round-file.ts';
import type { Problem, Result } from '../../../core/units/result.ts';
import { readTextFile } from '../../files/read-text-file.ts';
import { openPlanningDesk } from '../../planning/planning-desk.ts';
import { refuseReview, reviewRound, reviewSteps } from '../../planning/review-round.ts';
import { readRoundCsv } from '../../rounds/read-round-csv.ts';
import type { Context } from '../context.ts';
import { asPlayed, loadPlayer } from '../load.ts';
import { loadCourseWithGround } from '../load-with-ground.ts';
import { AIR_OPTION_OF, type AirOptions, addAirOptions, dayOf } from '../options/air-options.ts';
import { addGroundOptions, type GroundOptions } from '../options/ground-options.ts';
import { wholeNumber } from '../options/reading.ts';
import { usageError } from '../options/usage.ts';
import { EXIT, printProblems } from '../problems.ts';
import { during, startProgress } from '../progress.ts';
import { type Units, unitsOption } from '../show-units.ts';
import { reviewTable } from '../tables/review-table.ts';
import type { Terminal } from '../terminal.ts';

type ReviewOptions = AirOptions &
  GroundOptions &
  Readonly<{ course: string; player: string; seed: number; detail?: true; json?: true; units: Units }>;

export function addReview(program: Command, { terminal, exit }: Context): void {
  const command = program
    .command('review')
    .description('what the throws of a round won and lost: by choice, by execution, by disc and distance')
    .argument('<round>', 'round file (JSON, or CSV with one row a throw)')
    .requiredOption('--course <file>', 'course file (GeoJSON) the round was played on')
    .requiredOption('--player <file>', 'player file (JSON): discs, fieldwork, putting');
  addGroundOptions(addAirOptions(command))
    .addHelpText('after', '\nThe wind options say what the wind really was; without them the round file does.')
    .addOption(
      new Option('--seed <number>', 'of the simulated throws; same seed, same review')
        .argParser(wholeNumber)
        .default(1),
    )
    .option('--detail', 'every throw, also what would have been better')
    .option('--json', 'machine-readable review')
    .addOption(unitsOption())
    .action(async (file: string, options: ReviewOptions, self: Command) => {
      const blow = dayOf(options);
      if (!blow.ok) return usageError(self, blow.problems, AIR_OPTION_OF);
      const isBlowGiven = Object.keys(AIR_OPTION_OF).some(
        path => self.getOptionValueSource(optionName(path)) === 'cli',
      );
      const read = await readAll(file, options, terminal);
      if (read === null) return exit(EXIT.badInput);
      const days = daysOf(read.round, isBlowGiven ? blow.value : null);
      if (!days.ok) {
        printProblems(file, days.problems, terminal);
        return exit(EXIT.badInput);
      }
      const player = during(terminal, 'fitting the throws', () => fitPlayer(read.file));
      const refused = refuseReview(player, read.round);
      if (refused.length > 0) {
        printProblems(file, refused, terminal);
        return exit(EXIT.badInput);
      }
      const report = await reviewed(read, player, days.value, options.seed, terminal);
      if (report === null) {
        terminal.err('stopped\n');
        return exit(EXIT.interrupted);
      }
      if (options.json) terminal.out(`${JSON.stringify(report, null, 2)}\n`);
      else terminal.out(reviewTable(report, options.units, options.detail === true, terminal));
      return exit(EXIT.good);
    });
}

/** `--wind-from` as commander keeps it: `windFrom`. */
function optionName(path: string): string {
  return AIR_OPTION_OF[path]!.replace(/^--/, '').replace(/-(\w)/g, (_, letter: string) => letter.toUpperCase());
}

type Read = Readonly<{ round: RoundFile; course: Course; maps: readonly HoleMap[]; file: PlayerFile }>;

/** @returns null when something is wrong with the files: the user has been told */
async function readAll(file: string, options: ReviewOptions, terminal: Terminal): Promise<Read | null> {
  const mapped = await loadCourseWithGround(options.course, options);
  const player = loadPlayer(options.player);
  if (!mapped.ok) printProblems(options.course, mapped.problems, terminal);
  if (!player.ok) printProblems(options.player, player.problems, terminal);
  const round = loadRound(file, player.ok ? player.value.discs : []);
  if (!round.ok) printProblems(file, round.problems, terminal);
  if (!mapped.ok || !player.ok || !round.ok) return null;
  const course = asPlayed(mapped.value, round.value.layout);
  if (!course.ok) {
    printProblems(file, course.problems, terminal);
    return null;
  }
  const maps = course.value.holes.map(hole => buildHoleMap(course.value, hole));
  const problems: Problem[] = checkRound(round.value, maps, player.value);
  if (!round.value.holes.some(isFinished))
    problems.push({ path: 'holes', message: 'none is holed out: write the throws of a hole until "holed": true' });
  if (problems.length === 0) return { round: round.value, course: course.value, maps, file: player.value };
  printProblems(file, problems, terminal);
  return null;
}

function loadRound(file: string, discs: PlayerFile['discs']): Result<RoundFile> {
  const text = readTextFile(file);
  if (!text.ok) return text;
  return /\.csv$/i.test(file) ? readRoundCsv(text.value, discs) : parseRoundText(text.value);
}

type Days = Readonly<{ day: Day; realDay: Day | null }>;

/** @param blow - what the options say the wind was; null when they say nothing */
function daysOf(round: RoundFile, blow: Day | null): Result<Days> {
  const day = makeDay(round.day ?? {});
  if (!day.ok) return under('day', day.problems);
  if (blow !== null) return { ok: true, value: { day: day.value, realDay: blow } };
  if (round.realDay === undefined) return { ok: true, value: { day: day.value, realDay: null } };
  const realDay = makeDay(round.realDay);
  return realDay.ok
    ? { ok: true, value: { day: day.value, realDay: realDay.value } }
    : under('realDay', realDay.problems);
}

function under(start: string, problems: readonly Problem[]): Result<never> {
  return { ok: false, problems: problems.map(({ path, message }) => ({ path: `${start}.${path}`, message })) };
}

/** @returns null when the user interrupted it */
async function reviewed(
  { round, course, maps }: Read,
  player: FittedPlayer,
  days: Days,
  seed: number,
  terminal: Terminal,
): Promise<ReviewReport | null> {
  const progress = startProgress(terminal, 'reviewing', reviewSteps(round, days.realDay !== null));
  const desk = openPlanningDesk();
  const interrupt = new AbortController();
  const stop = () => interrupt.abort();
  process.once('SIGINT', stop);
  try {
    return await reviewRound(
      desk,
      { course: course.name, maps, player, round, ...days, seed },
      { signal: interrupt.signal, onProgress: done => progress.set(done) },
    );
  } catch (error) {
    if (interrupt.signal.aborted) return null;
    throw error;
  } finally {
    process.removeListener('SIGINT', stop);
    progress.stop();
    await desk.close();
  }
}
