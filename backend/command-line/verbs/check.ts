import type { Command } from 'commander';
import { countWords } from '../../../core/course/count-words.ts';
import { type CheckReport, checkCourse } from '../../api/check-course.ts';
import type { Context } from '../context.ts';
import { asPlayed, loadProposedCourse } from '../load.ts';
import { loadCourseWithGround } from '../load-with-ground.ts';
import { addGroundOptions, type GroundOptions } from '../options/ground-options.ts';
import { LAYOUT_HELP } from '../options/planning-options.ts';
import { usageError } from '../options/usage.ts';
import { wrapped } from '../paragraphs.ts';
import { EXIT, printProblems } from '../problems.ts';
import { plain, type Terminal } from '../terminal.ts';

type CheckOptions = GroundOptions & Readonly<{ json?: true; layout?: string }>;

export function addCheck(program: Command, { terminal, exit }: Context): void {
  const command = program
    .command('check')
    .description('check a course file: what is wrong with it, what is mapped, what to confirm')
    .argument('<course>', 'course file (GeoJSON, OpenStreetMap XML or Overpass JSON, GPX, KML, KMZ)');
  addGroundOptions(command)
    .option('--layout <name>', LAYOUT_HELP)
    .option('--json', 'machine-readable report')
    .action(async (file: string, options: CheckOptions, self: Command) => {
      const mapped = await loadCourseWithGround(file, options, loadProposedCourse);
      const played = mapped.ok ? asPlayed(mapped.value, options.layout) : mapped;
      if (mapped.ok && !played.ok) return usageError(self, played.problems, { layout: '--layout' });
      const report = checkCourse(played);
      if (options.json) terminal.out(`${JSON.stringify(report, null, 2)}\n`);
      printProblems(file, report.problems, terminal);
      if (report.ok && !options.json) print(file, report, terminal);
      exit(report.ok ? EXIT.good : EXIT.badInput);
    });
}

function print(file: string, report: CheckReport, terminal: Terminal): void {
  const { columns } = terminal;
  terminal.out(`${plain(file)}: ok, "${plain(report.course ?? '')}"\n\n`);
  const counts = report.counts.map(countWords);
  terminal.out(wrapped(counts.join(', '), columns, 'mapped:     '));
  terminal.out(
    wrapped(
      report.notMapped.length === 0 ? 'nothing missing' : `${report.notMapped.join(', ')} (may be there all the same)`,
      columns,
      'not mapped: ',
    ),
  );
  for (const { name, holes } of report.layouts)
    terminal.out(wrapped(`"${plain(name)}" plays ${holes.map(holeWords).join(', ')}`, columns, 'layout:     '));
  if (report.assumptions.length === 0) return;
  terminal.out('\nassumed, please confirm:\n');
  for (const { path, message } of report.assumptions) terminal.out(wrapped(`${path}: ${message}`, columns, '  - '));
}

/** "4 (long to B)". */
function holeWords({ ref, tee, basket }: CheckReport['layouts'][number]['holes'][number]): string {
  const ends = [tee ?? [], basket === undefined ? [] : `to ${basket}`].flat();
  return plain(ends.length === 0 ? ref : `${ref} (${ends.join(' ')})`);
}
