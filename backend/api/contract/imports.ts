import { z } from 'zod';
import { ImportReportSchema } from '../../import/import-report.ts';
import { CourseFileShape } from './course-file.ts';
import { courses } from './courses.ts';
import { ChangedSchema, Id, ProblemSchema } from './values.ts';

const DifferenceSchema = z.strictObject({
  key: z.string(),
  does: z.enum(['add', 'remove', 'change']).describe('what taking it does to the course'),
  by: z.enum(['file', 'you', 'both']).describe('who made the difference since the map last came in'),
  what: z.string().describe('in a word: tee, tree, water'),
  ref: z.string().optional(),
  name: z.string().optional(),
  moved_m: z.number().optional(),
  hasNewShape: z.boolean(),
  tags: z.array(z.strictObject({ key: z.string(), before: z.string().nullable(), after: z.string().nullable() })),
  isTaken: z.boolean().describe('unless the user says otherwise'),
});

const HoleChangeSchema = z.strictObject({
  ref: z.string(),
  does: z.enum(['add', 'remove', 'change']),
  teeMoved_m: z.number().optional(),
  basketMoved_m: z.number().optional(),
  lengthBefore_m: z.number().optional(),
  lengthAfter_m: z.number().optional(),
  parBefore: z.int().optional(),
  parAfter: z.int().optional(),
});

const UpdateSchema = z.strictObject({
  courseId: Id,
  name: z.string(),
  basis: z.string().describe('the course as compared; hand it back with `updateCourse`'),
  differences: z.array(DifferenceSchema),
  same: z.int().describe('things that are the same in both'),
  holes: z.array(HoleChangeSchema).describe('what the differences taken do to the holes'),
  problems: z.array(ProblemSchema).describe('why the differences taken make no course'),
  hasDraft: z.boolean().describe('changes drawn but not saved, which would undo the update when they are'),
  pinsAndNotes: z.array(z.string()).describe('holes that go and have pins or notes, which stay with their number'),
});

/** Keys of differences, as `readCourseFile` gave them. */
const Keys = z.array(z.string().max(40)).max(200_000);

/** Courses from files of any kind. Nothing is stored but by `importCourse` and `updateCourse`. */
export const imports = {
  /** What the file is, what it would become, what has to be said of it, and, with `updateOf`, what it would change. */
  readCourseFile: {
    input: z.strictObject({
      ...CourseFileShape,
      updateOf: Id.optional(),
      take: Keys.optional().describe('differences to take; left out: as proposed'),
    }),
    output: z.strictObject({
      report: ImportReportSchema,
      map: courses.getCourseMap.output.nullable().describe('of the course it would make'),
      holes: z.array(z.strictObject({ ref: z.string(), playLength_m: z.number() })),
      sameAs: z
        .strictObject({ courseId: Id, name: z.string() })
        .nullable()
        .describe('a course of the library that this looks like'),
      update: UpdateSchema.nullable(),
    }),
  },
  /** Takes differences into a course of the library, all or none. */
  updateCourse: {
    input: z.strictObject({ ...CourseFileShape, courseId: Id, basis: z.string().max(100), take: Keys }),
    output: ChangedSchema.extend({ courseId: Id }),
  },
};
