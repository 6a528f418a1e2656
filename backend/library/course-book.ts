import { setImmediate } from 'node:timers/promises';
import type { Course } from '../../core/course/course.ts';
import { parseCourseText } from '../../core/course/parse-course-text.ts';
import { withLayout } from '../../core/course/with-layout.ts';
import { buildHoleMap } from '../../core/geometry/build-hole-map.ts';
import type { HoleMap } from '../../core/geometry/hole-map.ts';
import { withGround } from '../../core/geometry/with-ground.ts';
import type { Result } from '../../core/units/result.ts';
import type { Store } from '../store/open-store.ts';
import { groundBook } from './ground-book.ts';
import { lru } from './lru.ts';

const KEPT_COURSES = 6;

/** The library's courses as the core knows them, read once; with the name of a layout, as that layout plays them. */
export type CourseBook = Readonly<{
  get(courseId: string, layout?: string): Result<Course>;
  /** Everything a throw can meet on one hole. */
  map(courseId: string, ref: string, layout?: string): Result<HoleMap>;
  /** All holes' maps, in order of play; lets other calls through between two holes. */
  maps(courseId: string, layout?: string): Promise<Result<readonly HoleMap[]>>;
}>;

type Entry = { text: string; ground: string | undefined; course: Result<Course>; maps: Map<string, HoleMap> };

export function courseBook(store: Pick<Store, 'tables'>): CourseBook {
  const { tables } = store;
  const grounds = groundBook(store);
  const read = lru<Entry>(KEPT_COURSES);

  function entry(courseId: string): Entry | undefined {
    const row = tables.courses.get({ courseId });
    const file = tables.courseFiles.get({ courseId });
    if (row === undefined || file === undefined) return undefined;
    const known = read.get(courseId);
    const ground = grounds.digest(courseId);
    if (known !== undefined && known.text === file.text && known.ground === ground) return known;
    const parsed = parseCourseText(file.text, row.fileName);
    const kept = ground === undefined ? undefined : grounds.get(courseId)?.ground;
    const course = parsed.ok ? { ok: true as const, value: withGround(parsed.value, kept) } : parsed;
    const fresh = { text: file.text, ground, course, maps: new Map() };
    read.set(courseId, fresh);
    return fresh;
  }

  function get(courseId: string, layout?: string): Result<Course> {
    const found = entry(courseId);
    const row = tables.courses.get({ courseId });
    if (found === undefined || row === undefined) return noCourse;
    if (!found.course.ok) return found.course;
    const course = { ...found.course.value, name: row.name };
    return layout === undefined ? { ok: true, value: course } : withLayout(course, layout);
  }

  function map(courseId: string, ref: string, layout?: string): Result<HoleMap> {
    const course = get(courseId, layout);
    if (!course.ok) return course;
    const { maps } = entry(courseId)!;
    const key = JSON.stringify([ref, layout?.trim().toLowerCase()]);
    const known = maps.get(key);
    if (known !== undefined) return { ok: true, value: known };
    const hole = course.value.holes.find(hole => hole.ref === ref);
    if (hole === undefined) {
      const refs = course.value.holes.map(hole => hole.ref).join(', ');
      return { ok: false, problems: [{ path: 'ref', message: `the course has no hole "${ref}": ${refs}` }] };
    }
    const built = buildHoleMap(course.value, hole);
    maps.set(key, built);
    return { ok: true, value: built };
  }

  return {
    get,
    map,
    maps: async (courseId, layout) => {
      const course = get(courseId, layout);
      if (!course.ok) return course;
      const all: HoleMap[] = [];
      for (const { ref } of course.value.holes) {
        const built = map(courseId, ref, layout);
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
