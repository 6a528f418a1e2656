import type { Range } from './tag-number.ts';

/**
 * What is believable in a course file. Wide bounds around real things: the tallest living tree is about 116 m, so 120 m
 * is the most for anything that stands on a course; a hole of 1500 m is several times any that is played.
 */
export const limits = {
  height_m: { least: 0.1, most: 120 },
  minHeight_m: { least: 0, most: 120 },
  clearance_m: { least: 0.1, most: 120 },
  crownDiameter_m: { least: 0.2, most: 60 },
  circumference_m: { least: 0.03, most: 40 },
  width_m: { least: 0.02, most: 200 },
  par: { least: 2, most: 9 },
  taggedLength_m: { least: 5, most: 1500 },
  elevation_m: { least: -500, most: 9000 },
} as const satisfies Record<string, Range>;

/** A shorter hole has no direction to throw in. */
export const leastHole_m = 1;
export const mostHole_m = 1500;
/** Sites farther than this from the rest do not belong to one course. */
export const mostCourse_m = 50_000;
/** Tees, baskets, holes, mandos and the like: each line is compared with each of them. The largest courses have some two hundred. */
export const mostGolfThings = 2000;
/** Corners of one shape, all its rings together: outlines are looked through for crossings. */
export const mostCorners = 10_000;
