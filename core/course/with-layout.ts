import type { Result } from '../units/result.ts';
import type { Course, CourseHole, LayoutHole, Site } from './course.ts';
import { refKey } from './hole-ref.ts';
import { lineBetween } from './line-between.ts';
import { sameName } from './read-layouts.ts';
import { findSite } from './site-key.ts';

/**
 * The course as one of its layouts plays it, and called so: its holes in order of play, each from the chosen tee to the chosen
 * basket. Everything that takes a course's holes then plans and prints the layout.
 * @param name - of the layout; letter case does not count
 * @returns the course, or one problem with path `layout` that lists the layouts there are
 */
export function withLayout(course: Course, name: string): Result<Course> {
  const layout = course.layouts.find(layout => sameName(layout.name, name));
  if (layout === undefined) {
    const names = course.layouts.map(({ name }) => `"${name}"`).join(', ');
    const message = `the course has no layout "${name}": ${names === '' ? 'it has none' : `it has ${names}`}`;
    return { ok: false, problems: [{ path: 'layout', message }] };
  }
  const holes = layout.holes.map(entry => played(course, entry));
  return { ok: true, value: { ...course, name: `${course.name}, ${layout.name}`, holes } };
}

function played(course: Course, entry: LayoutHole): CourseHole {
  const hole = course.holes.find(hole => refKey(hole.ref) === refKey(entry.ref));
  if (hole === undefined) throw new RangeError(`layout names hole ${entry.ref}, which the course does not have`);
  const [tee, basket] = [chosen(hole.tees, entry.tee), chosen(hole.baskets, entry.basket)];
  const isAsMapped = tee === hole.tee && basket === hole.basket;
  return {
    ...hole,
    ...(entry.par === undefined ? {} : { par: entry.par }),
    tee,
    basket,
    // A published length is that of the hole's first tee and basket.
    ...(isAsMapped ? {} : { taggedLength_m: undefined, line: lineBetween(hole, tee, basket) }),
  };
}

function chosen(sites: readonly Site[], key: string | undefined): Site {
  const site = key === undefined ? sites[0] : findSite(sites, key);
  if (site === undefined) throw new RangeError(`layout names "${key}", which the hole does not have`);
  return site;
}
