import type { Course } from '../../core/course/course.ts';
import { buildHoleMap } from '../../core/geometry/build-hole-map.ts';
import type { Result } from '../../core/units/result.ts';
import { type ConvertedCourse, convertCourse, type ImportChoices } from '../import/convert-course.ts';

export type ImportedCourse = Readonly<{ course: Course; text: string; converted: ConvertedCourse }>;

/**
 * A course from a file of any kind, ready to be kept: it can be drawn and planned, and nothing in it is a guess.
 * @returns problems with the path `choices.roles` where the user has not yet said what the places are
 */
export function importedCourse(bytes: Uint8Array, fileName: string, choices: ImportChoices): Result<ImportedCourse> {
  const converted = convertCourse(bytes, fileName, choices);
  if (!converted.ok) return converted;
  const { read, course } = converted.value;
  if (read.items.length > 0 && choices.roles === undefined)
    return {
      ok: false,
      problems: [
        {
          path: 'choices.roles',
          message: `the file does not say what its ${read.items.length} places and lines are: confirm or change what is proposed for each`,
        },
      ],
    };
  if (!course.ok) return course;
  for (const hole of course.value.course.holes) buildHoleMap(course.value.course, hole);
  return { ok: true, value: { ...course.value, converted: converted.value } };
}
