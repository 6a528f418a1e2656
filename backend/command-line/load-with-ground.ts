import type { Course } from '../../core/course/course.ts';
import { withGround } from '../../core/geometry/with-ground.ts';
import type { Result } from '../../core/units/result.ts';
import { readGround } from '../terrain/read-ground.ts';
import { loadCourse } from './load.ts';
import type { GroundOptions } from './options/ground-options.ts';

/**
 * A course with the elevation models beside it.
 * @param load - how the course file is read
 * @returns the course, or problems; those of a model begin with its option
 */
export async function loadCourseWithGround(
  file: string,
  { terrain, surface }: GroundOptions,
  load: (file: string) => Result<Course> = loadCourse,
): Promise<Result<Course>> {
  const course = load(file);
  if (!course.ok) return course;
  if (terrain === undefined)
    return surface === undefined
      ? course
      : { ok: false, problems: [{ path: '--surface', message: 'says nothing without --terrain: give both' }] };
  const ground = await readGround(course.value, { terrain, ...(surface !== undefined && { surface }) });
  if (ground.ok) return { ok: true, value: withGround(course.value, ground.value) };
  return { ok: false, problems: ground.problems.map(({ path, message }) => ({ path: `--${path}`, message })) };
}
