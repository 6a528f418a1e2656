import { type Command, Option } from 'commander';
import { describeCourse } from '../../api/describe-course.ts';
import type { Context } from '../context.ts';
import { asPlayed } from '../load.ts';
import { loadCourseWithGround } from '../load-with-ground.ts';
import { addGroundOptions, type GroundOptions } from '../options/ground-options.ts';
import { holeList } from '../options/hole-list.ts';
import { LAYOUT_HELP } from '../options/planning-options.ts';
import { usageError } from '../options/usage.ts';
import { EXIT, printProblems } from '../problems.ts';
import { type Units, unitsOption } from '../show-units.ts';
import { holeDetails } from '../tables/hole-details.ts';
import { holesTable } from '../tables/holes-table.ts';

type HolesOptions = GroundOptions & Readonly<{ json?: true; hole?: string; layout?: string; units: Units }>;

export function addHoles(program: Command, { terminal, exit }: Context): void {
  const command = program
    .command('holes')
    .description('what the map says of every hole: lengths, low branches, gaps, out-of-bounds, people')
    .argument('<course>', 'course file (GeoJSON)');
  addGroundOptions(command)
    .option('--json', 'machine-readable report')
    .addOption(new Option('--hole <holes>', 'these holes in detail: 4 or 1,3-5 or all'))
    .option('--layout <name>', LAYOUT_HELP)
    .addOption(unitsOption())
    .action(async (file: string, options: HolesOptions, command: Command) => {
      const mapped = await loadCourseWithGround(file, options);
      if (!mapped.ok) {
        printProblems(file, mapped.problems, terminal);
        return exit(EXIT.badInput);
      }
      const course = asPlayed(mapped.value, options.layout);
      if (!course.ok) return usageError(command, course.problems, { layout: '--layout' });
      const refs = options.hole === undefined ? undefined : holeList(options.hole, course.value);
      if (refs?.ok === false) return usageError(command, refs.problems, { holes: '--hole' });
      const report = describeCourse(course.value, refs?.value);
      if (options.json) terminal.out(`${JSON.stringify(report, null, 2)}\n`);
      else if (refs === undefined) terminal.out(holesTable(report, options.units, terminal));
      else terminal.out(report.holes.map(hole => holeDetails(hole, options.units, terminal)).join('\n'));
      return exit(EXIT.good);
    });
}
