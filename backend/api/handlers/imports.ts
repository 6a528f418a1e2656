import type { Course } from '../../../core/course/course.ts';
import { lineLength_m } from '../../../core/course/ground-distance.ts';
import { refKey } from '../../../core/course/hole-ref.ts';
import type { HoleChange } from '../../../core/course/update/compare-holes.ts';
import { buildHoleMap } from '../../../core/geometry/build-hole-map.ts';
import type { Problem, Result } from '../../../core/units/result.ts';
import { convertCourse } from '../../import/convert-course.ts';
import { reportImport } from '../../import/report-import.ts';
import { keepOrigin } from '../../library/course-origin.ts';
import { draftText } from '../../library/draft.ts';
import { importedCourse } from '../../library/imported-course.ts';
import { keptName } from '../../library/kept-name.ts';
import { compareWithStored, takeDifferences, unknownKeys } from '../../library/update-course.ts';
import { type AppContext, sayChanged } from '../app-context.ts';
import type { Output } from '../contract/api.ts';
import type { imports } from '../contract/imports.ts';
import { courseFileBytes } from '../course-file-bytes.ts';
import { courseMap } from '../course-map.ts';
import type { Handlers } from '../dispatch.ts';

type Update = NonNullable<Output<'readCourseFile'>['update']>;

export function importHandlers(app: AppContext): Pick<Handlers, keyof typeof imports> {
  const { store, courses: book } = app;
  const { tables, changes } = store;

  function compared(
    courseId: string,
    fresh: Course,
    tellsAll: boolean,
    taken: readonly string[] | undefined,
  ): Result<{ update: Update; course: Course | null }> {
    const stored = book.get(courseId);
    const row = tables.courses.get({ courseId });
    if (!stored.ok || row === undefined) return stored.ok ? noCourse : stored;
    const update = compareWithStored(tables, stored.value, courseId, fresh.source, tellsAll);
    const { differences, same } = update.comparison;
    const keys = taken ?? differences.flatMap(({ key, isTaken }) => (isTaken ? [key] : []));
    const { course, holes } = takeDifferences(update, new Set(keys), row.fileName);
    return {
      ok: true,
      value: {
        course: course.ok ? course.value : null,
        update: {
          courseId,
          name: row.name,
          basis: update.basis,
          differences: differences.map(difference => ({ ...difference, tags: [...difference.tags] })),
          same,
          holes: [...holes],
          problems: course.ok ? [] : [...course.problems],
          hasDraft: tables.courseDrafts.get({ courseId }) !== undefined,
          pinsAndNotes: withPinsOrNotes(courseId, holes),
        },
      },
    };
  }

  function withPinsOrNotes(courseId: string, holes: readonly HoleChange[]): string[] {
    const marked = new Set(
      [...tables.pins.where({ courseId }), ...tables.notes.where({ courseId })].map(({ ref }) => refKey(ref)),
    );
    return holes.flatMap(({ ref, does }) => (does === 'remove' && marked.has(refKey(ref)) ? [ref] : []));
  }

  /** By its name in the library, else by the name of the file it came from. */
  function lookalike(name: string, fileName: string): Output<'readCourseFile'>['sameAs'] {
    const rows = tables.courses.where();
    const wanted = keptName(name).toLowerCase();
    const row =
      rows.find(row => row.name.toLowerCase() === wanted) ??
      rows.find(row => row.fileName.toLowerCase() === fileName.toLowerCase());
    return row === undefined ? null : { courseId: row.courseId, name: row.name };
  }

  return {
    readCourseFile: ({ fileName, choices = {}, updateOf, take, ...file }) => {
      const bytes = courseFileBytes(file);
      if (!bytes.ok) return bytes;
      const converted = convertCourse(bytes.value, fileName, choices);
      const report = reportImport(fileName, converted, choices);
      const read = converted.ok && converted.value.course.ok ? converted.value.course.value.course : null;
      const nothing = { report, map: null, holes: [], sameAs: null, update: null };
      if (read === null) return { ok: true, value: nothing };
      const sameAs = lookalike(read.name, fileName);
      const update = updateOf === undefined ? null : compared(updateOf, read, report.items.length === 0, take);
      if (update?.ok === false) return update;
      const course = update === null ? read : update.value.course;
      return {
        ok: true,
        value: {
          report,
          map: course === null ? null : courseMap(course),
          holes: course === null ? [] : holeLines(course),
          sameAs,
          update: update?.value.update ?? null,
        },
      };
    },
    updateCourse: ({ fileName, choices = {}, courseId, basis, take, ...file }) => {
      const bytes = courseFileBytes(file);
      if (!bytes.ok) return bytes;
      const read = importedCourse(bytes.value, fileName, choices);
      if (!read.ok) return read;
      const stored = book.get(courseId);
      const row = tables.courses.get({ courseId });
      if (!stored.ok || row === undefined) return stored.ok ? noCourse : stored;
      const tellsAll = read.value.converted.read.items.length === 0;
      const update = compareWithStored(tables, stored.value, courseId, read.value.course.source, tellsAll);
      if (update.basis !== basis)
        return refused('basis', 'the course was changed since it was compared: look at the differences again');
      const unknown = unknownKeys(update, take);
      if (unknown.length > 0) return { ok: false, problems: unknown };
      const taken = takeDifferences(update, new Set(take), row.fileName);
      if (!taken.course.ok) return { ok: false, problems: taken.course.problems.map(inUpdate) };
      for (const hole of taken.course.value.holes) buildHoleMap(taken.course.value, hole);
      const [text, origin] = [draftText(taken.file), draftText(update.fresh)];
      const undo = changes.change(`Update ${row.name}`, editor => {
        // What came in now is what the next update compares with; waypoints only add to what a whole map said.
        if (!tellsAll) keepOrigin(editor, tables, courseId);
        else if (text === origin) editor.remove('courseOrigins', { courseId });
        else editor.put('courseOrigins', { courseId, text: origin });
        editor.put('courseFiles', { courseId, text });
      });
      sayChanged(app, ['courses', 'courseOrigins']);
      return { ok: true, value: { undo, courseId } };
    },
  };
}

const inUpdate = ({ path, message }: Problem): Problem => ({ path: `updated course: ${path}`, message });

function holeLines(course: Course): Output<'readCourseFile'>['holes'] {
  return course.holes.map(({ ref, line }) => ({ ref, playLength_m: lineLength_m(line) }));
}

const noCourse = refused('courseId', 'is no course of the library: it may have been deleted');

function refused(path: string, message: string): Result<never> {
  return { ok: false, problems: [{ path, message }] };
}
