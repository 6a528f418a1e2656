import { z } from 'zod';
import type { Course, CourseObject } from '../../core/course/course.ts';
import type { Problem, Result } from '../../core/units/result.ts';

const Place = z.object({ path: z.string(), message: z.string() });

/** What `check` says of a course file. */
export const CheckReportSchema = z.object({
  schema: z.literal('roundwright/check@1'),
  ok: z.boolean(),
  course: z.string().nullable().describe('null: the file could not be read as a course'),
  problems: z.array(Place).describe('empty when ok'),
  counts: z.array(z.object({ what: z.string(), count: z.int() })).describe('what is mapped'),
  layouts: z
    .array(
      z.object({
        name: z.string(),
        holes: z.array(
          z.object({
            ref: z.string(),
            tee: z.string().optional().describe('the first of the hole when left out'),
            basket: z.string().optional(),
            par: z.int().optional(),
          }),
        ),
      }),
    )
    .describe('ways to play the course, holes in order of play'),
  notMapped: z.array(z.string()).describe('kinds of thing the map says nothing about: not the same as none'),
  assumptions: z.array(Place).describe('stated defaults and readings to confirm'),
});
export type CheckReport = Readonly<z.output<typeof CheckReportSchema>>;

/** Sums up a parsed course, or the problems that stopped it. */
export function checkCourse(parsed: Result<Course>): CheckReport {
  const schema = 'roundwright/check@1';
  if (!parsed.ok) {
    return {
      schema,
      ok: false,
      course: null,
      problems: copies(parsed.problems),
      counts: [],
      layouts: [],
      notMapped: [],
      assumptions: [],
    };
  }
  const { name, holes, layouts, objects, heights, notMapped, assumptions } = parsed.value;
  const counts = [
    { what: 'holes', count: holes.length },
    { what: 'tees', count: holes.reduce((sum, hole) => sum + hole.tees.length, 0) },
    { what: 'baskets', count: holes.reduce((sum, hole) => sum + hole.baskets.length, 0) },
    ...KINDS.map(([what, is]) => ({ what, count: objects.filter(is).length })),
    { what: 'heights', count: heights.length },
  ];
  return {
    schema,
    ok: true,
    course: name,
    problems: [],
    counts: counts.filter(({ count }) => count > 0),
    layouts: layouts.map(({ name, holes }) => ({ name, holes: [...holes] })),
    notMapped: [...notMapped],
    assumptions: copies(assumptions),
  };
}

const copies = (problems: readonly Problem[]) => problems.map(({ path, message }) => ({ path, message }));

const kind = (name: CourseObject['kind']) => (object: CourseObject) => object.kind === name;
const form =
  (...names: string[]) =>
  (object: CourseObject) =>
    object.kind === 'cover' && names.includes(object.form);

const KINDS: readonly (readonly [string, (object: CourseObject) => boolean])[] = [
  ['trees', kind('tree')],
  ['woods and scrub', form('wood', 'scrub')],
  ['tree rows and hedges', form('treeRow', 'hedge')],
  ['walls, fences and buildings', form('wall', 'fence', 'building')],
  ['ceilings', kind('ceiling')],
  ['gaps', kind('gap')],
  ['out-of-bounds', kind('outOfBounds')],
  ['hazards', kind('hazard')],
  ['islands', kind('island')],
  ['places where discs get lost', kind('lostGround')],
  ['drop zones', kind('dropZone')],
  ['mandos', kind('mando')],
  ['fairways', kind('fairway')],
  ['places where people pass', kind('people')],
];
