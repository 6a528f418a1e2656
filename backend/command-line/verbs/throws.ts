import type { Command } from 'commander';
import { fitPlayer } from '../../../core/player/fit-player.ts';
import { reportThrows } from '../../library/report-throws.ts';
import type { Context } from '../context.ts';
import { exportThrows } from '../export-throws.ts';
import { importThrows } from '../import-throws.ts';
import { loadPlayer } from '../load.ts';
import { measureFor } from '../measure-for.ts';
import { addCsvOptions, type CsvWords, strayCsvOption } from '../options/csv-options.ts';
import { addMeasureOptions, type MeasureWords, strayMeasureOption } from '../options/measure-options.ts';
import { EXIT, printProblems } from '../problems.ts';
import { during } from '../progress.ts';
import { type Units, unitsOption } from '../show-units.ts';
import { measureTable } from '../tables/measure-table.ts';
import { throwsTable } from '../tables/throws-table.ts';

export function addThrows(program: Command, context: Context): void {
  const { terminal, exit } = context;
  const command = program
    .command('throws')
    .description("a player's range: how far and where each disc goes, and how sure that is")
    .requiredOption('--player <file>', 'player file (JSON): discs, fieldwork, putting')
    .option('--json', 'machine-readable report')
    .addOption(unitsOption());
  addCsvOptions(command).option('--export <file>', 'write all measured throws as a table (CSV)');
  addMeasureOptions(command).action(
    async (options: CsvWords & MeasureWords & { player: string; json?: true; units: Units; export?: string }) => {
      const stray = strayCsvOption(options);
      if (stray !== null)
        return command.error(`error: option '${stray}' says nothing without --csv`, { exitCode: EXIT.usage });
      const strayMeasure = strayMeasureOption(options);
      if (strayMeasure !== null)
        return command.error(`error: option '${strayMeasure}' says nothing without --course`, { exitCode: EXIT.usage });
      const file = loadPlayer(options.player);
      if (!file.ok) {
        printProblems(options.player, file.problems, terminal);
        return exit(EXIT.badInput);
      }
      const { csv } = options;
      if (csv !== undefined) return exit(await importThrows(file.value, { ...options, csv }, context));
      if (options.export !== undefined)
        return exit(await exportThrows(file.value, options.export, options.units, context));
      const player = during(terminal, 'fitting the throws', () => fitPlayer(file.value));
      const measured = await measureFor(player, options, command, context);
      if (measured === 'ended') return;
      const report = await reportThrows(file.value, player);
      if (options.json)
        terminal.out(`${JSON.stringify({ ...report, ...(measured && { measureNext: measured }) }, null, 2)}\n`);
      else {
        terminal.out(throwsTable(report, player.putting, options.units, terminal));
        if (measured !== null) terminal.out(measureTable(measured, options.units, terminal));
      }
      return exit(EXIT.good);
    },
  );
}
