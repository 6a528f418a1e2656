import { randomUUID } from 'node:crypto';
import { setImmediate } from 'node:timers/promises';
import type { Course, CourseHole } from '../../../core/course/course.ts';
import { exportCourse } from '../../../core/course/export-course.ts';
import { parseCourseText } from '../../../core/course/parse-course-text.ts';
import { besideLongitude } from '../../../core/geometry/beside-longitude.ts';
import { buildHoleMap } from '../../../core/geometry/build-hole-map.ts';
import { describeHole } from '../../../core/geometry/describe-hole.ts';
import type { HoleMap } from '../../../core/geometry/hole-map.ts';
import { lineLength_m } from '../../../core/geometry/line-length.ts';
import { localFrame, toLocal } from '../../../core/geometry/local-frame.ts';
import type { Result } from '../../../core/units/result.ts';
import { putGround, removeGround } from '../../library/ground-book.ts';
import { importedCourse } from '../../library/imported-course.ts';
import { keptName } from '../../library/kept-name.ts';
import { nameCourse } from '../../library/name-course.ts';
import { sharedIn } from '../../share/shared-bytes.ts';
import type { Editor } from '../../store/changes.ts';
import { SUMMARY_VERSION } from '../../store/summaries.ts';
import { readGroundFile } from '../../terrain/ground-file.ts';
import { type AppContext, sayChanged } from '../app-context.ts';
import { checkCourse } from '../check-course.ts';
import type { Output } from '../contract/api.ts';
import type { courses } from '../contract/courses.ts';
import { courseFileBytes } from '../course-file-bytes.ts';
import { courseMap } from '../course-map.ts';
import type { Handlers } from '../dispatch.ts';
import { fileNameOf } from '../file-name.ts';
import { plainHoleMap } from '../plain-hole-map.ts';

export function courseHandlers(app: AppContext): Pick<Handlers, keyof typeof courses> {
  const { store, courses: book } = app;
  const { tables, changes } = store;
  return {
    listCourses: async () => {
      const lines: Output<'listCourses'> = [];
      const known = store.summaries.courses.all(SUMMARY_VERSION);
      for (const { courseId, name, sample } of tables.courses.where()) {
        let facts = known.get(courseId) as CourseFacts | undefined;
        if (facts === undefined) {
          const course = book.get(courseId);
          if (!course.ok) return course;
          facts = courseFacts(course.value);
          store.summaries.courses.put(courseId, SUMMARY_VERSION, facts);
          // A large library of an older app takes a while: other calls go through between two courses.
          await setImmediate();
        }
        lines.push({ courseId, name, sample: sample === 1, ...facts });
      }
      return { ok: true, value: lines.sort((a, b) => byName.compare(a.name, b.name)) };
    },
    getCourse: async ({ courseId, layout }) => {
      const course = book.get(courseId, layout);
      const maps = await book.maps(courseId, layout);
      const row = tables.courses.get({ courseId });
      if (!course.ok) return course;
      if (!maps.ok) return maps;
      const { sample, fileName } = row!;
      return {
        ok: true,
        value: { ...previewOf(course.value, maps.value), courseId, sample: sample === 1, fileName },
      };
    },
    getCourseMap: ({ courseId }) => {
      const course = book.get(courseId);
      return course.ok ? { ok: true, value: courseMap(course.value) } : course;
    },
    getHole: ({ courseId, ref, layout }) => {
      const course = book.get(courseId, layout);
      if (!course.ok) return course;
      const map = book.map(courseId, ref, layout);
      if (!map.ok) return map;
      return {
        ok: true,
        value: { map: plainHoleMap(map.value), report: describeHole(map.value, course.value.notMapped) },
      };
    },
    previewCourse: ({ fileName, choices = {}, ...file }) => {
      const bytes = courseFileBytes(file);
      const read = bytes.ok ? importedCourse(bytes.value, fileName, choices) : bytes;
      if (!read.ok) return read;
      const { course } = read.value;
      return { ok: true, value: previewOf(course, mapsOf(course)) };
    },
    importCourse: ({ fileName, choices = {}, ...file }) => {
      const bytes = courseFileBytes(file);
      const read = bytes.ok ? importedCourse(bytes.value, fileName, choices) : bytes;
      if (!read.ok) return read;
      const { course, text } = read.value;
      const courseId = randomUUID();
      const name = keptName(course.name);
      const undo = changes.change(`Add ${name}`, editor => {
        editor.put('courses', { courseId, name, fileName, sample: 0, addedAt_ms: app.now_ms() });
        editor.put('courseFiles', { courseId, text });
        // Ground and notes come along where the course was handed on as a page.
        if (bytes.ok) putShared(editor, courseId, bytes.value);
      });
      store.summaries.courses.put(courseId, SUMMARY_VERSION, courseFacts(course));
      sayChanged(app, ['courses']);
      return { ok: true, value: { undo, courseId } };
    },
    renameCourse: ({ courseId, name }) => {
      const row = tables.courses.get({ courseId });
      const course = book.get(courseId);
      if (row === undefined || !course.ok) return course.ok ? noCourse : course;
      const undo = changes.change(`Rename ${row.name}`, editor => editor.put('courses', { ...row, name }));
      sayChanged(app, ['courses']);
      return { ok: true, value: { undo } };
    },
    removeCourse: ({ courseId }) => {
      const row = tables.courses.get({ courseId });
      if (row === undefined) return noCourse;
      const undo = changes.change(`Delete ${row.name}`, editor => {
        for (const pin of tables.pins.where({ courseId })) editor.remove('pins', pin);
        for (const note of tables.notes.where({ courseId })) editor.remove('notes', note);
        for (const { roundId } of tables.rounds.where({ courseId })) editor.remove('rounds', { roundId });
        editor.remove('courseDrafts', { courseId });
        removeGround(editor, courseId);
        editor.remove('courseOrigins', { courseId });
        editor.remove('courseFiles', { courseId });
        editor.remove('courses', { courseId });
      });
      sayChanged(app, ['courses', 'pins', 'rounds']);
      return { ok: true, value: { undo } };
    },
    exportCourse: ({ courseId }) => {
      const course = book.get(courseId);
      const file = tables.courseFiles.get({ courseId });
      if (!course.ok) return course;
      const asRead = parseCourseText(file!.text, tables.courses.get({ courseId })!.fileName);
      const { name } = course.value;
      const kept = asRead.ok && keptName(asRead.value.name) === name;
      const text = kept ? file!.text : `${JSON.stringify(nameCourse(exportCourse(course.value), name), null, 1)}\n`;
      return { ok: true, value: { fileName: fileNameOf(name, 'geojson'), text } };
    },
  };
}

/** `localeCompare` would make one for each pair. */
const byName = new Intl.Collator('en');

function putShared(editor: Editor, courseId: string, bytes: Uint8Array): void {
  const shared = sharedIn(bytes);
  if (shared === null || !shared.ok) return;
  const { ground, notes } = shared.value;
  for (const { ref, text } of notes) editor.put('notes', { courseId, layout: '', ref, text });
  const read = ground === undefined ? undefined : readGroundFile(ground);
  if (read?.ok) putGround(editor, courseId, read.value);
}

const noCourse: Result<never> = {
  ok: false,
  problems: [{ path: 'courseId', message: 'is no course of the library: it may have been deleted' }],
};

const mapsOf = (course: Course) => course.holes.map(hole => buildHoleMap(course, hole));

type CourseFacts = Pick<Output<'listCourses'>[number], 'holes' | 'par' | 'playLength_m' | 'centre' | 'layouts'>;

function courseFacts(course: Course): CourseFacts {
  const { holes } = course;
  const [first_deg] = holes[0]!.tee.position;
  const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
  // The short way round from the first tee, so that a course across the antimeridian lies where it lies.
  const lon_deg = mean(holes.map(({ tee }) => besideLongitude(tee.position[0], first_deg)));
  return {
    holes: holes.length,
    // Only a par that has to be derived needs the ground, which takes its time.
    par: holes.reduce((sum, hole) => sum + (hole.par ?? buildHoleMap(course, hole).par), 0),
    playLength_m: holes.reduce((sum, hole) => sum + playLength_m(hole), 0),
    centre: [besideLongitude(lon_deg, 0), mean(holes.map(({ tee }) => tee.position[1]))],
    layouts: course.layouts.map(({ name }) => name),
  };
}

function playLength_m({ tee, line }: CourseHole): number {
  const frame = localFrame(tee.position[0], tee.position[1]);
  return lineLength_m(line.map(position => toLocal(frame, position)));
}

function previewOf(course: Course, maps: readonly HoleMap[]): Output<'previewCourse'> {
  const { counts, notMapped, assumptions } = checkCourse({ ok: true, value: course });
  return {
    name: course.name,
    holes: maps.map(map => {
      const { ref, name, par, parSource, length_m, playLength_m, bearing_deg, rise_m } = describeHole(map);
      return {
        ref,
        ...(name === undefined ? {} : { name }),
        par,
        parSource,
        length_m,
        playLength_m,
        bearing_deg,
        rise_m,
        isPlaced: course.holes.find(hole => hole.ref === ref)?.isPlaced !== false,
      };
    }),
    counts,
    notMapped,
    assumptions,
    layouts: course.layouts.map(({ name, holes }) => ({ name, holes: holes.length })),
  };
}
