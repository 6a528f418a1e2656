import { Command, CommanderError } from 'commander';
import packageFile from '../../package.json' with { type: 'json' };
import { EXIT } from './problems.ts';
import { plain, type Terminal } from './terminal.ts';
import { addCheck } from './verbs/check.ts';
import { addConvert } from './verbs/convert.ts';
import { addFly } from './verbs/fly.ts';
import { addHoles } from './verbs/holes.ts';
import { addPlan } from './verbs/plan.ts';
import { addPractice } from './verbs/practice.ts';
import { addPutting } from './verbs/putting.ts';
import { addReview } from './verbs/review.ts';
import { addSheet } from './verbs/sheet.ts';
import { addThrows } from './verbs/throws.ts';

/**
 * Runs one command line.
 * @param words - the arguments after the program's name
 * @returns what the process should end with: 0 good, 1 the input is bad, 2 usage, 3 a fault of ours, 130 interrupted
 */
export async function run(words: readonly string[], terminal: Terminal): Promise<number> {
  let code: number = EXIT.good;
  const program = new Command('roundwright')
    .description('Plans disc golf rounds: a course, your own throws and the wind in; a shot for every hole out.')
    .version(packageFile.version)
    .exitOverride()
    .showHelpAfterError('(add --help to see what there is)')
    .configureOutput({
      writeOut: text => terminal.out(text),
      writeErr: text => terminal.err(text),
      getOutHelpWidth: () => terminal.columns,
      getErrHelpWidth: () => terminal.columns,
      getOutHasColors: () => terminal.colours,
      getErrHasColors: () => false,
    });
  const context = {
    terminal,
    exit: (wanted: number) => {
      code = wanted;
    },
  };
  for (const add of [
    addCheck,
    addConvert,
    addHoles,
    addThrows,
    addPutting,
    addPlan,
    addPractice,
    addReview,
    addSheet,
    addFly,
  ])
    add(program, context);
  try {
    await program.parseAsync([...words], { from: 'user' });
  } catch (error) {
    return error instanceof CommanderError ? codeOf(error) : fault(error, terminal);
  }
  return code;
}

function codeOf(error: CommanderError): number {
  const asked = error.code === 'commander.helpDisplayed' || error.code === 'commander.version';
  return asked ? EXIT.good : EXIT.usage;
}

/** Nothing a user can mend: one line, and the stack for whoever looks into it. */
export function fault(error: unknown, terminal: Terminal): number {
  const what = error instanceof Error ? error.message : String(error);
  terminal.err(
    `roundwright failed: ${plain(what)}. Please report it with the files used (ROUNDWRIGHT_DEBUG=1 shows where).\n`,
  );
  if (process.env.ROUNDWRIGHT_DEBUG) terminal.err(`${error instanceof Error ? error.stack : ''}\n`);
  return EXIT.fault;
}
