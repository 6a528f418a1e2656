import { type Command, Option } from 'commander';
import type { Paper, SheetFormat } from '../../../core/sheet/sheet-input.ts';
import type { UnitsChoice } from '../../../core/units/units-choice.ts';
import { sheetOfPlan } from '../../sheet/sheet-of-plan.ts';
import type { Context } from '../context.ts';
import { addPlanningOptions, type PlanningOptions } from '../options/planning-options.ts';
import { usageError } from '../options/usage.ts';
import { planFromFiles } from '../plan-from-files.ts';
import { EXIT, printProblems } from '../problems.ts';
import { openSheetFile, SHEET_FILE } from '../sheet-file.ts';
import { CHOSEN, type Units, unitsOption } from '../show-units.ts';
import { plain } from '../terminal.ts';

const FORMATS: Readonly<Record<'pocket' | 'folded' | 'four', SheetFormat>> = {
  pocket: 'pocket',
  folded: 'folded',
  four: 'fourAPage',
};

type SheetOptions = PlanningOptions &
  Readonly<{
    out: string;
    format: keyof typeof FORMATS;
    paper: Paper;
    units: Units;
    windUnits?: UnitsChoice['speed'];
  }>;

export function addSheet(program: Command, context: Context): void {
  const command = program
    .command('sheet')
    .description('the plan as a sheet to print: for the pocket, to fold, or four holes on a page');
  addPlanningOptions(command)
    .requiredOption('--out <file>', 'what to write, .html or .pdf; a file already there is replaced')
    .addOption(
      new Option(
        '--format <format>',
        'pocket: one hole on each page of 74 × 105 mm; folded: the same as booklets of eight from one page; four: four holes on each page',
      )
        .choices(Object.keys(FORMATS))
        .default('pocket'),
    )
    .addOption(new Option('--paper <paper>', 'for folded and four').choices(['a4', 'letter']).default('a4'))
    .addOption(unitsOption())
    .addOption(
      new Option('--wind-units <units>', 'of the wind, when not those of --units').choices(['mps', 'kmh', 'mph', 'kn']),
    )
    .action((file: string, options: SheetOptions, self: Command) => writeSheet(file, options, self, context));
}

async function writeSheet(file: string, options: SheetOptions, self: Command, context: Context): Promise<void> {
  const { out } = options;
  const refuse = (problems: Parameters<typeof printProblems>[1]): void => {
    printProblems(out, problems, context.terminal);
    context.exit(EXIT.badInput);
  };
  if (!SHEET_FILE.test(out))
    return usageError(self, [{ path: 'out', message: `"${out}" must end in .html or .pdf` }], { out: '--out' });
  // opened now, so that nobody waits for a plan that cannot be written
  const sheet = await openSheetFile(out);
  if (!sheet.ok) return refuse(sheet.problems);
  try {
    const made = await planFromFiles(file, { ...options, flips: true }, self, context);
    if (made === null) return;
    const units = { ...CHOSEN[options.units], ...(options.windUnits && { speed: options.windUnits }) };
    const html = sheetOfPlan(made, { format: FORMATS[options.format], paper: options.paper, units });
    const written = await sheet.value.write(html);
    if (!written.ok) return refuse(written.problems);
    const { length } = made.plan.holes;
    context.terminal.out(`${plain(out)}: ${length === 1 ? '1 hole' : `${length} holes`}, ready to print at 100 %\n`);
    context.exit(EXIT.good);
  } finally {
    await sheet.value.close();
  }
}
