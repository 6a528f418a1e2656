import type { Course } from '../../core/course/course.ts';
import { parseCourseText } from '../../core/course/parse-course-text.ts';
import { buildHoleMap } from '../../core/geometry/build-hole-map.ts';
import type { Result } from '../../core/units/result.ts';

/** A course that can also be drawn and planned: only such comes into the library. */
export function readableCourse(text: string, fileName: string): Result<Course> {
  const course = parseCourseText(text, fileName);
  if (course.ok) for (const hole of course.value.holes) buildHoleMap(course.value, hole);
  return course;
}
