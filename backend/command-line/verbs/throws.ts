import type { Command } from 'commander';
import { fitPlayer } from '../../../core/player/fit-player.ts';
import { throwsReport } from '../../../core/player/throws-report.ts';
import type { Context } from '../context.ts';
import { loadPlayer } from '../load.ts';
import { EXIT, printProblems } from '../problems.ts';
import { during } from '../progress.ts';
import { type Units, unitsOption } from '../show-units.ts';
import { throwsTable } from '../tables/throws-table.ts';

export function addThrows(program: Command, { terminal, exit }: Context): void {
  program
    .command('throws')
    .description("a player's range: how far and where each disc goes, and how sure that is")
    .requiredOption('--player <file>', 'player file (JSON): discs, fieldwork, putting')
    .option('--json', 'machine-readable report')
    .addOption(unitsOption())
    .action((options: { player: string; json?: true; units: Units }) => {
      const file = loadPlayer(options.player);
      if (!file.ok) {
        printProblems(options.player, file.problems, terminal);
        return exit(EXIT.badInput);
      }
      const player = during(terminal, 'fitting the throws', () => fitPlayer(file.value));
      const report = throwsReport(player);
      if (options.json) terminal.out(`${JSON.stringify(report, null, 2)}\n`);
      else terminal.out(throwsTable(report, player.putting, options.units, terminal));
      return exit(EXIT.good);
    });
}
