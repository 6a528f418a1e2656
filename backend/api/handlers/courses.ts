import { randomUUID } from 'node:crypto';
import type { Course, CourseHole } from '../../../core/course/course.ts';
import { exportCourse } from '../../../core/course/export-course.ts';
import { parseCourseText } from '../../../core/course/parse-course-text.ts';
import { buildHoleMap } from '../../../core/geometry/build-hole-map.ts';
import { describeHole } from '../../../core/geometry/describe-hole.ts';
import type { HoleMap } from '../../../core/geometry/hole-map.ts';
import { lineLength_m } from '../../../core/geometry/line-length.ts';
import { localFrame, toLocal } from '../../../core/geometry/local-frame.ts';
import type { Result } from '../../../core/units/result.ts';
import { keptName } from '../../library/kept-name.ts';
import { nameCourse } from '../../library/name-course.ts';
import { readableCourse } from '../../library/readable-course.ts';
import { type AppContext, sayChanged } from '../app-context.ts';
import { checkCourse } from '../check-course.ts';
import type { Output } from '../contract/api.ts';
import type { courses } from '../contract/courses.ts';
import { courseMap } from '../course-map.ts';
import type { Handlers } from '../dispatch.ts';
import { fileNameOf } from '../file-name.ts';
import { plainHoleMap } from '../plain-hole-map.ts';

export function courseHandlers(app: AppContext): Pick<Handlers, keyof typeof courses> {
  const { store, courses: book } = app;
  const { tables, changes } = store;
  /** What the list says of each course, kept as long as its file is the same: a large library is not read again for it. */
  const known = new Map<string, Readonly<{ text: string; facts: CourseFacts }>>();

  function factsOf(courseId: string): Result<CourseFacts> {
    const text = tables.courseFiles.get({ courseId })?.text ?? '';
    const before = known.get(courseId);
    if (before?.text === text) return { ok: true, value: before.facts };
    const course = book.get(courseId);
    if (!course.ok) return course;
    const facts = courseFacts(course.value);
    known.set(courseId, { text, facts });
    return { ok: true, value: facts };
  }

  return {
    listCourses: () => {
      const lines: Output<'listCourses'> = [];
      for (const row of tables.courses.where()) {
        const facts = factsOf(row.courseId);
        if (!facts.ok) return facts;
        const { courseId, name, sample } = row;
        lines.push({ courseId, name, sample: sample === 1, ...facts.value });
      }
      return { ok: true, value: lines.sort((a, b) => a.name.localeCompare(b.name, 'en')) };
    },
    getCourse: async ({ courseId }) => {
      const course = book.get(courseId);
      const maps = await book.maps(courseId);
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
    getHole: ({ courseId, ref }) => {
      const course = book.get(courseId);
      if (!course.ok) return course;
      const map = book.map(courseId, ref);
      if (!map.ok) return map;
      return {
        ok: true,
        value: { map: plainHoleMap(map.value), report: describeHole(map.value, course.value.notMapped) },
      };
    },
    previewCourse: ({ fileName, text }) => {
      const course = parseCourseText(text, fileName);
      if (!course.ok) return course;
      return { ok: true, value: previewOf(course.value, mapsOf(course.value)) };
    },
    importCourse: ({ fileName, text }) => {
      const course = readableCourse(text, fileName);
      if (!course.ok) return course;
      const courseId = randomUUID();
      const name = keptName(course.value.name);
      const undo = changes.change(`Add ${name}`, editor => {
        editor.put('courses', { courseId, name, fileName, sample: 0, addedAt_ms: app.now_ms() });
        editor.put('courseFiles', { courseId, text });
      });
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
        for (const { playerId, ref } of tables.pins.where({ courseId }))
          editor.remove('pins', { courseId, playerId, ref });
        for (const { ref } of tables.notes.where({ courseId })) editor.remove('notes', { courseId, ref });
        editor.remove('courseFiles', { courseId });
        editor.remove('courses', { courseId });
      });
      sayChanged(app, ['courses', 'pins']);
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

const noCourse: Result<never> = {
  ok: false,
  problems: [{ path: 'courseId', message: 'is no course of the library: it may have been deleted' }],
};

const mapsOf = (course: Course) => course.holes.map(hole => buildHoleMap(course, hole));

type CourseFacts = Pick<Output<'listCourses'>[number], 'holes' | 'par' | 'playLength_m' | 'centre'>;

function courseFacts(course: Course): CourseFacts {
  const { holes } = course;
  const middle = (axis: 0 | 1) => holes.reduce((sum, { tee }) => sum + tee.position[axis], 0) / holes.length;
  return {
    holes: holes.length,
    // Only a par that has to be derived needs the ground, which takes its time.
    par: holes.reduce((sum, hole) => sum + (hole.par ?? buildHoleMap(course, hole).par), 0),
    playLength_m: holes.reduce((sum, hole) => sum + playLength_m(hole), 0),
    centre: [middle(0), middle(1)],
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
      };
    }),
    counts,
    notMapped,
    assumptions,
  };
}
