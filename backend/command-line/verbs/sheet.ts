import { extname } from 'node:path';
import { type Command, Option } from 'commander';
import type { Browser } from 'playwright-core';
import type { Paper, SheetFormat } from '../../../core/sheet/sheet-input.ts';
import type { Result } from '../../../core/units/result.ts';
import type { UnitsChoice } from '../../../core/units/units-choice.ts';
import { checkCanWrite, writeFileWhole } from '../../files/write-file-whole.ts';
import { openBrowser } from '../../sheet/open-browser.ts';
import { sheetOfPlan } from '../../sheet/sheet-of-plan.ts';
import { sheetPdf } from '../../sheet/sheet-pdf.ts';
import type { Context } from '../context.ts';
import { addPlanningOptions, type PlanningOptions } from '../options/planning-options.ts';
import { usageError } from '../options/usage.ts';
import { planFromFiles } from '../plan-from-files.ts';
import { EXIT, printProblems } from '../problems.ts';
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
  const kind = extname(out).toLowerCase();
  if (!['.html', '.htm', '.pdf'].includes(kind))
    return usageError(self, [{ path: 'out', message: `"${out}" must end in .html or .pdf` }], { out: '--out' });
  // asked now, so that nobody waits for a plan that cannot be written
  const place = await checkCanWrite(out);
  if (!place.ok) return refuse(place.problems);
  const browser = kind === '.pdf' ? await openBrowser() : null;
  if (browser?.ok === false) return refuse(browser.problems.map(withHtmlOffer));
  try {
    const made = await planFromFiles(file, { ...options, flips: true }, self, context);
    if (made === null) return;
    const units = { ...CHOSEN[options.units], ...(options.windUnits && { speed: options.windUnits }) };
    const html = sheetOfPlan(made, { format: FORMATS[options.format], paper: options.paper, units });
    const content = await contentOf(html, browser?.value ?? null);
    if (!content.ok) return refuse(content.problems.map(withHtmlOffer));
    const written = await writeFileWhole(out, content.value);
    if (!written.ok) return refuse(written.problems);
    const { length } = made.plan.holes;
    context.terminal.out(`${plain(out)}: ${length === 1 ? '1 hole' : `${length} holes`}, ready to print at 100 %\n`);
    context.exit(EXIT.good);
  } finally {
    await browser?.value.close();
  }
}

async function contentOf(html: string, browser: Browser | null): Promise<Result<string | Uint8Array>> {
  return browser === null ? { ok: true, value: html } : sheetPdf(browser, html);
}

function withHtmlOffer({ message }: Readonly<{ message: string }>) {
  return { path: 'file', message: `${message}; or write it as .html and print that from any browser` };
}
