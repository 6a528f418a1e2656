import { basename } from 'node:path';
import { type Command, InvalidArgumentError } from 'commander';
import { parseChoice } from '../../../core/course/import/parse-choice.ts';
import type { RoleChoice } from '../../../core/course/import/propose-roles.ts';
import type { Problem } from '../../../core/units/result.ts';
import { readCourseBytes } from '../../files/read-course-bytes.ts';
import { writeFileWhole } from '../../files/write-file-whole.ts';
import { convertCourse, type ImportChoices } from '../../import/convert-course.ts';
import { chosenRoles, type NamedChoice } from '../../import/named-choices.ts';
import { reportImport } from '../../import/report-import.ts';
import type { Context } from '../context.ts';
import { usageError } from '../options/usage.ts';
import { EXIT, printProblems } from '../problems.ts';
import { importTable } from '../tables/import-table.ts';

type Options = {
  out?: string;
  map: readonly NamedChoice[];
  takeProposed?: true;
  heights?: true;
  course?: string;
  name?: string;
  json?: true;
};

export function addConvert(program: Command, { terminal, exit }: Context): void {
  program
    .command('convert')
    .description('turn a map (OpenStreetMap, GPX, KML, KMZ, drawn GeoJSON) into a course file')
    .argument('<map>', 'map file; its kind is told by what stands in it')
    .option('--out <file>', 'write the course here (GeoJSON); without it, only say what would be')
    .option(
      '--map <name=role>',
      'what a named place is: "Waypoint 7=tee 3", "By the oak=basket 3 long", "Walk=leave out"; again for each',
      addChoice,
      [] as readonly NamedChoice[],
    )
    .option('--take-proposed', 'confirm all proposals that --map does not change')
    .option('--heights', 'take in heights of a GPX or KML file (receivers are often 10 m out)')
    .option('--course <name>', 'which course, by name or id, when the file holds several')
    .option('--name <name>', 'what the course is to be called')
    .option('--json', 'machine-readable report')
    .action(async (file: string, options: Options, command: Command) => {
      const bytes = readCourseBytes(file);
      if (!bytes.ok) {
        printProblems(file, bytes.problems, terminal);
        return exit(EXIT.badInput);
      }
      const first = convertCourse(bytes.value, basename(file));
      const choices: ImportChoices = {
        ...(options.name === undefined ? {} : { name: options.name }),
        ...(options.heights === undefined ? {} : { takeHeights: true }),
      };
      let all = choices;
      if (first.ok) {
        const { items, courses } = first.value.read;
        const roles = chosenRoles(items, options.map);
        if (!roles.ok) return usageError(command, roles.problems, { map: '--map' });
        const course = courses.find(({ id, name }) => options.course === id || options.course === name);
        if (options.course !== undefined && course === undefined)
          return usageError(command, [noCourse(options.course, courses)], { course: '--course' });
        all = { ...choices, roles: roles.value, ...(course === undefined ? {} : { course: course.id }) };
      }
      const converted = convertCourse(bytes.value, basename(file), all);
      const report = reportImport(basename(file), converted, all);
      const unconfirmed =
        options.out !== undefined && !options.takeProposed ? openItems(report.items.length, options.map.length) : [];
      const problems = [...report.problems, ...(report.ok ? unconfirmed : [])];
      if (options.json)
        terminal.out(`${JSON.stringify({ ...report, ok: problems.length === 0, problems }, null, 2)}\n`);
      else if (converted.ok) terminal.out(importTable(report, terminal));
      printProblems(file, problems, terminal);
      if (problems.length > 0 || !converted.ok || !converted.value.course.ok) return exit(EXIT.badInput);
      if (options.out === undefined) return exit(EXIT.good);
      const written = await writeFileWhole(options.out, converted.value.course.value.text);
      if (!written.ok) {
        printProblems(options.out, written.problems, terminal);
        return exit(EXIT.badInput);
      }
      if (!options.json) terminal.out(`\nwritten: ${options.out}\n`);
      return exit(EXIT.good);
    });
}

function addChoice(text: string, before: readonly NamedChoice[]): readonly NamedChoice[] {
  const at = text.lastIndexOf('=');
  if (at < 1) throw new InvalidArgumentError('write the name, an equals sign and what it is: "Waypoint 7=tee 3"');
  const choice = parseChoice(text.slice(at + 1));
  if (!choice.ok) throw new InvalidArgumentError(choice.problems.map(({ message }) => message).join('; '));
  return [...before, { name: text.slice(0, at).trim(), choice: choice.value satisfies RoleChoice }];
}

function noCourse(wanted: string, courses: readonly { id: string; name: string }[]): Problem {
  const list = courses.map(({ id, name }) => (name === '' ? id : name)).join(', ');
  return {
    path: 'course',
    message:
      courses.length === 0
        ? 'the file holds one course only: leave it out'
        : `there is no "${wanted}" in the file: ${list}`,
  };
}

/** Nothing is guessed into a file: what the map does not say, the user confirms. */
function openItems(items: number, said: number): Problem[] {
  if (items <= said) return [];
  return [
    {
      path: 'roles',
      message: `${items - said} places and lines are only proposed: look at the list, change what is wrong with --map, and add --take-proposed`,
    },
  ];
}
