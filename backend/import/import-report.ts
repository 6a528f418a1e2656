import { z } from 'zod';
import { ROLES } from '../../core/course/import/role.ts';
import { COURSE_KINDS } from './course-kind.ts';

const Place = z.object({ path: z.string(), message: z.string() });
const Counts = z.array(z.object({ what: z.string(), count: z.int() }));

const Choice = z.object({
  role: z.enum(ROLES),
  ref: z.string().optional().describe('the hole'),
  label: z.string().optional().describe('which of several tees or baskets'),
  par: z.int().optional(),
});

/** What `convert` says of a file, and what the import shows before anything is taken in. */
export const ImportReportSchema = z.object({
  schema: z.literal('roundwright/convert@1'),
  ok: z.boolean().describe('it can be taken in as it stands'),
  file: z.string(),
  kind: z.enum(COURSE_KINDS).nullable().describe('by content, not by name; null: not known or not readable'),
  kindWords: z.string().nullable(),
  encoding: z.string().nullable().describe('how the text was written; archives: the text inside'),
  course: z.string().nullable().describe('its name; null: no course yet'),
  problems: z.array(Place).describe('empty when ok'),
  read: Counts.describe('what is in the file'),
  items: z
    .array(
      z.object({
        index: z.int().describe('counts in the file’s things'),
        name: z.string(),
        folder: z.string().optional(),
        shape: z.enum(['point', 'line', 'area', 'mixed']),
        place: z.tuple([z.number(), z.number()]).describe('longitude, latitude of its first corner, in degrees'),
        roles: z.array(z.enum(ROLES)).describe('what it can be'),
        proposal: Choice.extend({ sure: z.boolean(), why: z.string() }),
        chosen: Choice,
      }),
    )
    .describe('places and lines whose role the file does not say; to be confirmed'),
  courses: z
    .array(z.object({ id: z.string(), name: z.string(), holes: z.int() }))
    .describe('when the file holds several: one has to be chosen'),
  chosenCourse: z.string().nullable(),
  hasHeights: z.boolean().describe('heights above sea level that can be taken or left'),
  mapped: z.array(z.object({ item: z.string(), to: z.string() })).describe('what became what'),
  leftOut: z.array(z.object({ what: z.string(), count: z.int(), why: z.string() })),
  assumptions: z.array(Place).describe('readings and stated defaults to confirm'),
  counts: Counts.describe('what is mapped in the course'),
  notMapped: z.array(z.string()).describe('kinds of thing the map says nothing about: not the same as none'),
});
export type ImportReport = z.output<typeof ImportReportSchema>;
