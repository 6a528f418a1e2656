import { createHash } from 'node:crypto';
import type { FeatureCollection } from 'geojson';
import type { Course } from '../../core/course/course.ts';
import { parseCourse } from '../../core/course/parse-course.ts';
import { type Comparison, compareFiles } from '../../core/course/update/compare-files.ts';
import { compareHoles, type HoleChange } from '../../core/course/update/compare-holes.ts';
import type { Problem, Result } from '../../core/units/result.ts';
import type { Tables } from '../store/changes.ts';
import { originOf } from './course-origin.ts';

/** A stored course beside its map as it came again. */
export type CourseUpdate = Readonly<{
  stored: Course;
  /** Changes with the stored course, so that an answer to an older comparison is noticed. */
  basis: string;
  comparison: Comparison;
  /** The map alone: what a later update compares with. */
  fresh: FeatureCollection;
}>;

/** @param tellsAll - whether the map's silence about a thing says that it is not there */
export function compareWithStored(
  tables: Tables,
  stored: Course,
  courseId: string,
  fresh: FeatureCollection,
  tellsAll: boolean,
): CourseUpdate {
  const text = tables.courseFiles.get({ courseId })!.text;
  const origin = tables.courseOrigins.get({ courseId })?.text ?? '';
  const basis = createHash('sha256').update(text).update('\n').update(origin).digest('base64url');
  return { stored, basis, comparison: compareFiles(stored.source, originOf(tables, courseId), fresh, tellsAll), fresh };
}

/** The course with the differences taken, and what they do to its holes; or why they make no course. */
export function takeDifferences(
  { stored, comparison }: CourseUpdate,
  taken: ReadonlySet<string>,
  fileName: string,
): Readonly<{ file: FeatureCollection; course: Result<Course>; holes: readonly HoleChange[] }> {
  const file = comparison.merge(taken);
  const course = parseCourse(file, fileName);
  return { file, course, holes: course.ok ? compareHoles(stored, course.value) : [] };
}

/** Keys taken that the comparison does not know. */
export function unknownKeys({ comparison }: CourseUpdate, taken: readonly string[]): Problem[] {
  const known = new Set(comparison.differences.map(({ key }) => key));
  return taken.flatMap((key, i) =>
    known.has(key)
      ? []
      : [{ path: `take[${i}]`, message: `"${key}" is no difference of these two: compare them again` }],
  );
}
