import type { Command } from 'commander';
import { puttingReport } from '../../../core/player/putting-report.ts';
import type { Context } from '../context.ts';
import { loadPlayer } from '../load.ts';
import { EXIT, printProblems } from '../problems.ts';
import { type Units, unitsOption } from '../show-units.ts';
import { puttingTable } from '../tables/putting-table.ts';

export function addPutting(program: Command, { terminal, exit }: Context): void {
  program
    .command('putting')
    .description('the putting log by distance, with the fitted chance and what it leaves open')
    .requiredOption('--player <file>', 'player file (JSON): discs, fieldwork, putting')
    .option('--json', 'machine-readable report')
    .addOption(unitsOption())
    .action((options: { player: string; json?: true; units: Units }) => {
      const file = loadPlayer(options.player);
      if (!file.ok) {
        printProblems(options.player, file.problems, terminal);
        return exit(EXIT.badInput);
      }
      const report = puttingReport(file.value.name, file.value.putting ?? []);
      if (options.json) terminal.out(`${JSON.stringify(report, null, 2)}\n`);
      else terminal.out(puttingTable(report, options.units, terminal));
      return exit(EXIT.good);
    });
}
