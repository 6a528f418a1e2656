import { basename } from 'node:path';
import type { Course } from '../../core/course/course.ts';
import { withLayout } from '../../core/course/with-layout.ts';
import { type PlayerFile, parsePlayerText } from '../../core/player/player-file.ts';
import type { Problem, Result } from '../../core/units/result.ts';
import { readCourseBytes } from '../files/read-course-bytes.ts';
import { readTextFile } from '../files/read-text-file.ts';
import { type ConvertedCourse, convertCourse } from '../import/convert-course.ts';

/**
 * A course file of any kind. Where places have to be confirmed first, there is no course yet: a plan must not stand on a guess.
 * @returns the course, with what the import left out and assumed among its assumptions
 */
export function loadCourse(file: string): Result<Course> {
  const converted = loadConverted(file);
  if (!converted.ok) return converted;
  const { read, course } = converted.value;
  if (read.items.length > 0)
    return {
      ok: false,
      problems: [
        {
          path: 'file',
          message: `does not say which of its ${read.items.length} places are tees and baskets: confirm them with "roundwright convert ${basename(file)} --out course.geojson"`,
        },
      ],
    };
  return course.ok ? { ok: true, value: withImportNotes(course.value.course, converted.value) } : course;
}

/** The same for `check`: proposals are taken as they are and said to be so. */
export function loadProposedCourse(file: string): Result<Course> {
  const converted = loadConverted(file);
  if (!converted.ok) return converted;
  const { course } = converted.value;
  return course.ok ? { ok: true, value: withImportNotes(course.value.course, converted.value) } : course;
}

function loadConverted(file: string): Result<ConvertedCourse> {
  const bytes = readCourseBytes(file);
  return bytes.ok ? convertCourse(bytes.value, basename(file)) : bytes;
}

function withImportNotes(course: Course, { read, leftOut, mapped, assumptions }: ConvertedCourse): Course {
  if (read.kind === 'geojson' && read.items.length === 0) return course;
  const notes: Problem[] = [
    ...mapped.map(({ item, to }) => ({ path: item, message: `is taken as ${to}: not confirmed yet` })),
    ...leftOut.map(({ what, count, why }) => ({ path: 'left out', message: `${what} (${count}): ${why}` })),
  ];
  return { ...course, assumptions: [...notes, ...assumptions] };
}

/** The course as the named layout plays it; without a name, as it is mapped. */
export function asPlayed(course: Course, layout: string | undefined): Result<Course> {
  return layout === undefined ? { ok: true, value: course } : withLayout(course, layout);
}

export function loadPlayer(file: string): Result<PlayerFile> {
  const text = readTextFile(file);
  return text.ok ? parsePlayerText(text.value) : text;
}
