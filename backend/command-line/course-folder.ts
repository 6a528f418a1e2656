import { readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import type { Course } from '../../core/course/course.ts';
import type { Problem, Result } from '../../core/units/result.ts';
import { loadCourse } from './load.ts';

export type CourseFolder = Readonly<{
  courses: readonly Readonly<{ key: string; course: Course }>[];
  /** Course files that could not be read, each with what is wrong. */
  broken: readonly Readonly<{ file: string; problems: readonly Problem[] }>[];
}>;

const COURSE_FILE = /\.geojson$/i;

/**
 * All course files (.geojson) of a folder in order of their names, or the one file named.
 * @returns a problem with path `courses` when there is no such place, or nothing in it
 */
export function courseFolder(place: string): Result<CourseFolder> {
  let files: string[];
  try {
    files = statSync(place).isDirectory()
      ? readdirSync(place)
          .filter(name => COURSE_FILE.test(name))
          .sort()
          .map(name => join(place, name))
      : [place];
  } catch {
    return refused('is not there or cannot be read: name a folder of course files, or one file');
  }
  if (files.length === 0) return refused('holds no course file: their names end in .geojson');
  const courses: CourseFolder['courses'][number][] = [];
  const broken: CourseFolder['broken'][number][] = [];
  for (const file of files) {
    const course = loadCourse(file);
    if (course.ok) courses.push({ key: file, course: course.value });
    else broken.push({ file, problems: course.problems });
  }
  return { ok: true, value: { courses, broken } };
}

function refused(message: string): Result<never> {
  return { ok: false, problems: [{ path: 'courses', message }] };
}
