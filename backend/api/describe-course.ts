import { z } from 'zod';
import type { Course } from '../../core/course/course.ts';
import { buildHoleMap } from '../../core/geometry/build-hole-map.ts';
import { describeHole } from '../../core/geometry/describe-hole.ts';
import { HoleReportSchema } from '../../core/geometry/hole-report.ts';

/** What `holes` reports: every hole of a course, along its line of play. */
export const HolesReportSchema = z.object({
  schema: z.literal('roundwright/holes@1'),
  course: z.string(),
  holes: z.array(HoleReportSchema),
  notMapped: z.array(z.string()).describe('kinds of thing the map says nothing about: not the same as none'),
  assumptions: z.array(z.object({ path: z.string(), message: z.string() })),
});
export type HolesReport = Readonly<z.output<typeof HolesReportSchema>>;

/** @param refs - the holes to describe, as the course spells them; all when left out */
export function describeCourse(course: Course, refs?: readonly string[]): HolesReport {
  return {
    schema: 'roundwright/holes@1',
    course: course.name,
    holes: course.holes
      .filter(hole => refs === undefined || refs.includes(hole.ref))
      .map(hole => describeHole(buildHoleMap(course, hole), course.notMapped)),
    notMapped: [...course.notMapped],
    assumptions: course.assumptions.map(({ path, message }) => ({ path, message })),
  };
}
