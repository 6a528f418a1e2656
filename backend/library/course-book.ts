import { setImmediate } from 'node:timers/promises';
import type { Course } from '../../core/course/course.ts';
import { parseCourseText } from '../../core/course/parse-course-text.ts';
import { buildHoleMap } from '../../core/geometry/build-hole-map.ts';
import type { HoleMap } from '../../core/geometry/hole-map.ts';
import type { Result } from '../../core/units/result.ts';
import type { Store } from '../store/open-store.ts';
import { lru } from './lru.ts';

const KEPT_COURSES = 6;

/** The library's courses as the core knows them, read once. */
export type CourseBook = Readonly<{
  get(courseId: string): Result<Course>;
  /** Everything a throw can meet on one hole. */
  map(courseId: string, ref: string): Result<HoleMap>;
  /** All holes' maps; lets other calls through between two holes. */
  maps(courseId: string): Promise<Result<readonly HoleMap[]>>;
}>;

type Entry = { text: string; course: Result<Course>; maps: Map<string, HoleMap> };

export function courseBook({ tables }: Store): CourseBook {
  const read = lru<Entry>(KEPT_COURSES);

  function entry(courseId: string): Entry | undefined {
    const row = tables.courses.get({ courseId });
    const file = tables.courseFiles.get({ courseId });
    if (row === undefined || file === undefined) return undefined;
    const known = read.get(courseId);
    if (known !== undefined && known.text === file.text) return known;
    const fresh = { text: file.text, course: parseCourseText(file.text, row.fileName), maps: new Map() };
    read.set(courseId, fresh);
    return fresh;
  }

  function get(courseId: string): Result<Course> {
    const found = entry(courseId);
    const row = tables.courses.get({ courseId });
    if (found === undefined || row === undefined) return noCourse;
    if (!found.course.ok) return found.course;
    return { ok: true, value: { ...found.course.value, name: row.name } };
  }

  function map(courseId: string, ref: string): Result<HoleMap> {
    const course = get(courseId);
    if (!course.ok) return course;
    const { maps } = entry(courseId)!;
    const known = maps.get(ref);
    if (known !== undefined) return { ok: true, value: known };
    const hole = course.value.holes.find(hole => hole.ref === ref);
    if (hole === undefined) {
      const refs = course.value.holes.map(hole => hole.ref).join(', ');
      return { ok: false, problems: [{ path: 'ref', message: `the course has no hole "${ref}": ${refs}` }] };
    }
    const built = buildHoleMap(course.value, hole);
    maps.set(ref, built);
    return { ok: true, value: built };
  }

  return {
    get,
    map,
    maps: async courseId => {
      const course = get(courseId);
      if (!course.ok) return course;
      const all: HoleMap[] = [];
      for (const { ref } of course.value.holes) {
        const built = map(courseId, ref);
        if (!built.ok) return built;
        all.push(built.value);
        await setImmediate();
      }
      return { ok: true, value: all };
    },
  };
}

const noCourse: Result<never> = {
  ok: false,
  problems: [{ path: 'courseId', message: 'is no course of the library: it may have been deleted' }],
};
