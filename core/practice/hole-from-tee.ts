import type { CourseHole, Site } from '../course/course.ts';
import { groundDistance_m } from '../course/ground-distance.ts';
import { lineBetween } from '../course/line-between.ts';
import { siteKey } from '../course/site-key.ts';

/** One of a hole's tees with what to call it; `key` is what a layout calls it. */
export type TeeChoice = Readonly<{ key: string; name: string; tee: Site }>;

/** A tee nearer to the basket is a slip of the map: there is nothing to throw. */
const LEAST_HOLE_M = 5;

/** The tees of a hole, the one planned for first. */
export function teesOf(hole: CourseHole): TeeChoice[] {
  const others = hole.tees.filter(
    tee => tee !== hole.tee && groundDistance_m(tee.position, hole.basket.position) >= LEAST_HOLE_M,
  );
  return [hole.tee, ...others].map(tee => {
    const key = hole.tees.includes(tee) ? siteKey(tee, hole.tees) : '#1';
    const name = key.startsWith('#') ? (hole.tees.length > 1 ? `tee ${key.slice(1)}` : 'tee') : `${key} tee`;
    return { key, name, tee };
  });
}

/** The hole played from another of its tees: its line keeps the bends that lie before that tee. */
export function holeFromTee(hole: CourseHole, tee: Site): CourseHole {
  if (tee === hole.tee) return hole;
  return { ...hole, tee, taggedLength_m: undefined, line: lineBetween(hole, tee, hole.basket) };
}
