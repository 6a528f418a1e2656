import type { Command } from 'commander';
import type { PlanReport } from '../../../core/strategy/plan-report.ts';
import type { Context } from '../context.ts';
import { addPlanningOptions, type PlanningOptions } from '../options/planning-options.ts';
import { planFromFiles } from '../plan-from-files.ts';
import { EXIT } from '../problems.ts';
import { type Units, unitsOption } from '../show-units.ts';
import { holePlan } from '../tables/hole-plan.ts';
import { planTable } from '../tables/plan-table.ts';
import type { Terminal } from '../terminal.ts';

type PlanOptions = PlanningOptions & Readonly<{ detail?: true; flips?: true; json?: true; units: Units }>;

export function addPlan(program: Command, context: Context): void {
  const command = program
    .command('plan')
    .description('what to throw on every hole, how sure it is, and what else there is');
  addPlanningOptions(command)
    .option('--detail', 'every hole in detail (one alone always is): next throws, alternatives, reasons')
    .option('--flips', 'also look what other winds would choose (with --json; on with --detail or a single hole)')
    .option('--json', 'machine-readable plan')
    .addOption(unitsOption())
    .action(async (file: string, options: PlanOptions, self: Command) => {
      const made = await planFromFiles(file, options, self, context);
      if (made === null) return;
      print(made.plan, options, context.terminal);
      context.exit(EXIT.good);
    });
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
