import { type Command, Option } from 'commander';
import type { Day } from '../../../core/air/day.ts';
import { fitPlayer } from '../../../core/player/fit-player.ts';
import type { PlayerFile } from '../../../core/player/player-file.ts';
import type { PracticeLimit } from '../../../core/practice/practice-limit.ts';
import type { Paper } from '../../../core/sheet/sheet-input.ts';
import type { Result } from '../../../core/units/result.ts';
import { openPlanningDesk } from '../../planning/planning-desk.ts';
import {
  findPractice,
  type PracticeFound,
  type PracticeProgress,
  type PracticeRequest,
} from '../../practice/find-practice.ts';
import { sheetOfPractice } from '../../sheet/sheet-of-practice.ts';
import type { Context } from '../context.ts';
import { courseFolder } from '../course-folder.ts';
import { loadPlayer } from '../load.ts';
import { AIR_OPTION_OF, type AirOptions, addAirOptions, dayOf } from '../options/air-options.ts';
import { countUpTo, LIMIT_HELP, practiceLimit } from '../options/practice-options.ts';
import { wholeNumber } from '../options/reading.ts';
import { usageError } from '../options/usage.ts';
import { EXIT, printProblems } from '../problems.ts';
import { during, startProgress } from '../progress.ts';
import { openSheetFile, SHEET_FILE, type SheetFile } from '../sheet-file.ts';
import { CHOSEN, type Units, unitsOption } from '../show-units.ts';
import { practiceTable } from '../tables/practice-table.ts';
import { plain, type Terminal } from '../terminal.ts';

type PracticeOptions = AirOptions &
  Readonly<{
    player: string;
    courses: string;
    limit: PracticeLimit;
    holes: number;
    rounds: number;
    compare: boolean;
    seed: number;
    out?: string;
    paper: Paper;
    json?: true;
    units: Units;
  }>;

const OPTION_OF: Readonly<Record<string, string>> = {
  ...AIR_OPTION_OF,
  courses: '--courses',
  out: '--out',
  limit: '--limit',
};

export function addPractice(program: Command, context: Context): void {
  const command = program
    .command('practice')
    .description('a practice round with a limit: where it suits, what to throw, a fair target, what to practise')
    .requiredOption('--player <file>', 'player file (JSON): discs, fieldwork, putting')
    .requiredOption('--courses <folder>', 'folder of course files (GeoJSON), or one file')
    .addOption(
      new Option('--limit <words>', LIMIT_HELP).argParser(practiceLimit).default({ classes: ['putter'] }, 'putters'),
    )
    .addOption(new Option('--holes <number>', 'holes of the round, at most').argParser(countUpTo(36)).default(18))
    .addOption(
      new Option('--rounds <number>', 'plan a round on so many courses, the best first')
        .argParser(countUpTo(10))
        .default(1),
    );
  addAirOptions(command)
    .option('--no-compare', 'leave out what the limit costs against the whole bag: quicker')
    .addOption(
      new Option('--seed <number>', 'of the simulated throws; same seed, same answer')
        .argParser(wholeNumber)
        .default(1),
    )
    .option('--out <file>', 'also write the practice sheet, .html or .pdf; a file already there is replaced')
    .addOption(new Option('--paper <paper>', 'of the sheet').choices(['a4', 'letter']).default('a4'))
    .option('--json', 'machine-readable report')
    .addOption(unitsOption())
    .action((options: PracticeOptions, self: Command) => practise(options, self, context));
}

async function practise(options: PracticeOptions, self: Command, { terminal, exit }: Context): Promise<void> {
  const day = dayOf(options);
  if (!day.ok) return usageError(self, day.problems, OPTION_OF);
  if (options.out !== undefined && !SHEET_FILE.test(options.out))
    return usageError(self, [{ path: 'out', message: `"${options.out}" must end in .html or .pdf` }], OPTION_OF);
  const player = loadPlayer(options.player);
  if (!player.ok) {
    printProblems(options.player, player.problems, terminal);
    return exit(EXIT.badInput);
  }
  const folder = courseFolder(options.courses);
  if (!folder.ok) {
    printProblems(options.courses, folder.problems, terminal);
    return exit(EXIT.badInput);
  }
  const { courses, broken } = folder.value;
  for (const { file, problems } of broken) {
    terminal.err(`${file}: left out of the search\n`);
    printProblems(file, problems, terminal);
  }
  if (courses.length === 0) return exit(EXIT.badInput);
  const { out } = options;
  const sheet = out === undefined ? null : await openSheetFile(out);
  if (sheet?.ok === false) {
    printProblems(out!, sheet.problems, terminal);
    return exit(EXIT.badInput);
  }
  try {
    await findAndSay({ player: player.value, courses, day: day.value, sheet: sheet?.value ?? null }, options, self, {
      terminal,
      exit,
    });
  } finally {
    await sheet?.value.close();
  }
}

type Parts = Readonly<{
  player: PlayerFile;
  courses: PracticeRequest['courses'];
  day: Day;
  sheet: SheetFile | null;
}>;

async function findAndSay(
  parts: Parts,
  options: PracticeOptions,
  self: Command,
  { terminal, exit }: Context,
): Promise<void> {
  const { player, courses, day, sheet } = parts;
  const fitted = during(terminal, 'fitting the throws', () => fitPlayer(player));
  const { limit, holes, rounds, compare, seed } = options;
  const request = { courses, file: player, player: fitted, day, limit, holes, rounds, compare, seed };
  const found = await foundOrStopped(request, terminal);
  if (found === null) {
    terminal.err('stopped\n');
    return exit(EXIT.interrupted);
  }
  if (!found.ok) return usageError(self, found.problems, OPTION_OF);
  const { report } = found.value;
  if (sheet !== null && !(await writeSheet(sheet, found.value, options, terminal))) return exit(EXIT.badInput);
  if (options.json) terminal.out(`${JSON.stringify(report, null, 2)}\n`);
  else terminal.out(practiceTable(report, options.units, terminal));
  return exit(EXIT.good);
}

/** @returns false when there was nothing to write or no way to write it: the user has been told */
async function writeSheet(
  sheet: SheetFile,
  { report, played }: PracticeFound,
  { out, units, paper }: PracticeOptions,
  terminal: Terminal,
): Promise<boolean> {
  const [round] = report.rounds;
  if (round === undefined) {
    printProblems(out!, [{ path: 'file', message: `was not written: ${report.text}` }], terminal);
    return false;
  }
  const written = await sheet.write(sheetOfPractice(report, round, played[0]!, { paper, units: CHOSEN[units] }));
  if (!written.ok) printProblems(out!, written.problems, terminal);
  else terminal.err(`${plain(out!)}: the practice sheet, ready to print at 100 %\n`);
  return written.ok;
}

/** @returns null when the user interrupted it */
async function foundOrStopped(request: PracticeRequest, terminal: Terminal): Promise<Result<PracticeFound> | null> {
  const threads = openPlanningDesk();
  const interrupt = new AbortController();
  const stop = () => interrupt.abort();
  process.once('SIGINT', stop);
  const bars = progressBars(terminal);
  try {
    return await findPractice(request, { threads, signal: interrupt.signal, onProgress: bars.show });
  } catch (error) {
    if (interrupt.signal.aborted) return null;
    throw error;
  } finally {
    process.removeListener('SIGINT', stop);
    bars.stop();
    await threads.close();
  }
}

const STAGES: Readonly<Record<PracticeProgress['stage'], string>> = {
  looking: 'looking at lengths',
  playing: 'playing the holes',
  comparing: 'with the whole bag',
};

/** A bar a stage. */
function progressBars(terminal: Terminal) {
  let stage: PracticeProgress['stage'] | null = null;
  let bar = startProgress(terminal, '', 0);
  return {
    show(progress: PracticeProgress): void {
      if (progress.stage !== stage) {
        bar.stop();
        stage = progress.stage;
        bar = startProgress(terminal, STAGES[stage], progress.total);
      }
      bar.set(progress.done);
    },
    stop: () => bar.stop(),
  };
}
