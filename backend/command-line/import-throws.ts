import { headerOfColumn } from '../../core/player/csv-columns.ts';
import { fitPlayer } from '../../core/player/fit-player.ts';
import type { PlayerFile } from '../../core/player/player-file.ts';
import { importReport } from '../fieldwork/import-report.ts';
import { planCsvImport, withSessions } from '../fieldwork/plan-csv-import.ts';
import { rowProblems } from '../fieldwork/row-problems.ts';
import { readTextFile } from '../files/read-text-file.ts';
import { writeFileWhole } from '../files/write-file-whole.ts';
import type { Context } from './context.ts';
import { type CsvWords, csvOptionsOf, plainOptions } from './options/csv-options.ts';
import { EXIT, printProblems } from './problems.ts';
import { during } from './progress.ts';
import type { Units } from './show-units.ts';
import { throwsImportTable } from './tables/throws-import-table.ts';

type ImportWords = CsvWords & Readonly<{ csv: string; player: string; json?: true; units: Units }>;

/** `throws --csv`: shows what a table adds and does to the fit, and with `--out` writes the player whole. */
export async function importThrows(file: PlayerFile, words: ImportWords, { terminal }: Context): Promise<number> {
  const refuse = (problems: Parameters<typeof printProblems>[1], name = words.csv) => {
    printProblems(name, problems, terminal);
    return EXIT.badInput;
  };
  const text = readTextFile(words.csv);
  if (!text.ok) return refuse(text.problems);
  const guessed = planCsvImport(file, text.value, plainOptions(words));
  if (!guessed.ok) return refuse(guessed.problems);
  const { columns } = guessed.value;
  const options = csvOptionsOf(
    words,
    columns.map(({ name }) => name),
    columns.map(({ meaning }) => meaning && headerOfColumn(meaning)),
  );
  if (!options.ok) return refuse(options.problems);
  const planned = planCsvImport(file, text.value, options.value);
  if (!planned.ok) return refuse(planned.problems);
  const plan = planned.value;
  if (plan.problems.length > 0) return refuse(plan.problems);
  const bad = plan.rows.filter(({ problems }) => problems.length > 0).length;
  if (bad !== (words.leaveOut ?? 0))
    return refuse([
      ...rowProblems(plan),
      {
        path: 'file',
        message: `${bad} of ${plan.rows.length} rows are bad and nothing is taken: mend them${bad === 0 ? ' is not needed, leave --leave-out away' : `, or leave them out with --leave-out ${bad}`}`,
      },
    ]);
  if (plan.sessions.length === 0)
    return refuse([
      {
        path: 'file',
        message: plan.known > 0 ? 'holds only throws the player has already' : 'holds no row that can be used',
      },
    ]);
  const after = withSessions(file, plan.sessions);
  if (!after.ok) return refuse(after.problems);
  const [old, fresh] = during(terminal, 'fitting before and after', () => [fitPlayer(file), fitPlayer(after.value)]);
  if (words.out !== undefined) {
    const player = { schema: 'roundwright/player@1', ...after.value };
    const written = await writeFileWhole(words.out, `${JSON.stringify(player, null, 2)}\n`);
    if (!written.ok) return refuse(written.problems, words.out);
  }
  const report = importReport(file, plan, old!, fresh!, words.out ?? null);
  if (words.json) terminal.out(`${JSON.stringify(report, null, 2)}\n`);
  else terminal.out(throwsImportTable(report, words.units, terminal));
  return EXIT.good;
}
