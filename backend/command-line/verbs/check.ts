import type { Command } from 'commander';
import { type CheckReport, checkCourse } from '../../api/check-course.ts';
import type { Context } from '../context.ts';
import { loadCourse } from '../load.ts';
import { wrapped } from '../paragraphs.ts';
import { EXIT, printProblems } from '../problems.ts';
import { plain, type Terminal } from '../terminal.ts';

export function addCheck(program: Command, { terminal, exit }: Context): void {
  program
    .command('check')
    .description('check a course file: what is wrong with it, what is mapped, what to confirm')
    .argument('<course>', 'course file (GeoJSON)')
    .option('--json', 'machine-readable report')
    .action((file: string, options: { json?: true }) => {
      const report = checkCourse(loadCourse(file));
      if (options.json) terminal.out(`${JSON.stringify(report, null, 2)}\n`);
      printProblems(file, report.problems, terminal);
      if (report.ok && !options.json) print(file, report, terminal);
      exit(report.ok ? EXIT.good : EXIT.badInput);
    });
}

function print(file: string, report: CheckReport, terminal: Terminal): void {
  const { columns } = terminal;
  terminal.out(`${plain(file)}: ok, "${plain(report.course ?? '')}"\n\n`);
  const counts = report.counts.map(({ what, count }) => `${count} ${count === 1 ? singular(what) : what}`);
  terminal.out(wrapped(counts.join(', '), columns, 'mapped:     '));
  terminal.out(
    wrapped(
      report.notMapped.length === 0 ? 'nothing missing' : `${report.notMapped.join(', ')} (may be there all the same)`,
      columns,
      'not mapped: ',
    ),
  );
  if (report.assumptions.length === 0) return;
  terminal.out('\nassumed, please confirm:\n');
  for (const { path, message } of report.assumptions) terminal.out(wrapped(`${path}: ${message}`, columns, '  - '));
}

const SINGULAR: Readonly<Record<string, string>> = {
  'woods and scrub': 'wood or scrub',
  'tree rows and hedges': 'tree row or hedge',
  'walls, fences and buildings': 'wall, fence or building',
  'out-of-bounds': 'out-of-bounds',
  'places where people pass': 'place where people pass',
};

function singular(what: string): string {
  return SINGULAR[what] ?? what.replace(/s$/, '');
}
