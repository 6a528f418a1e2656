import type { Course, CourseHole } from '../course/course.ts';
import { buildHoleMap } from '../geometry/build-hole-map.ts';
import type { HoleMap } from '../geometry/hole-map.ts';
import { estimateHole, firstLeg_deg, type HoleEstimate } from './estimate-hole.ts';
import { holeFromTee, teesOf } from './hole-from-tee.ts';
import type { ReachLine } from './reach-lines.ts';

/** A hole suits from a tee when the green is reached in the throws par allows at least this often (own choice, no source). */
export const SUITS_FROM = 0.35;

/** One tee of a hole with its cheap estimate; the map is what planning it takes. */
export type TeeFit = Readonly<{ key: string; name: string; map: HoleMap; estimate: HoleEstimate }>;

/** A hole under a limit: the tee to use, or none. */
export type HoleFit = Readonly<{
  ref: string;
  tees: readonly TeeFit[];
  /** The first tee when it suits, else the longest that does; null: too long from all of them. */
  tee: TeeFit | null;
}>;

export type CourseFit = Readonly<{ key: string; course: string; holes: readonly HoleFit[] }>;

/** Looks at one hole from each of its tees: a few hundredths of a second, most of it for the map. */
export function fitHole(course: Course, hole: CourseHole, linesAt: (aim_deg: number) => readonly ReachLine[]): HoleFit {
  const tees = teesOf(hole).map(({ key, name, tee }): TeeFit => {
    const map = buildHoleMap(course, holeFromTee(hole, tee));
    return { key, name, map, estimate: estimateHole(map, [...linesAt(firstLeg_deg(map))]) };
  });
  return { ref: hole.ref, tees, tee: inOrderOfUse(tees).find(suits) ?? null };
}

/** Its own first tee first, then the others from the longest. */
function inOrderOfUse(tees: readonly TeeFit[]): readonly TeeFit[] {
  const [first, ...others] = tees;
  return [first!, ...others.sort((a, b) => b.estimate.playLength_m - a.estimate.playLength_m)];
}

const suits = ({ estimate }: TeeFit) => estimate.reach20Chance >= SUITS_FROM;

/**
 * How well a course suits: the mean of its best `wanted` holes, holes that are missing counting nothing.
 * @returns 0 (no hole suits) to 1
 */
export function courseScore({ holes }: CourseFit, wanted: number): number {
  const best = holes
    .flatMap(({ tee }) => (tee === null ? [] : [tee.estimate.reach20Chance]))
    .sort((a, b) => b - a)
    .slice(0, wanted);
  return best.reduce((sum, chance) => sum + chance, 0) / wanted;
}

/**
 * The holes of a course to plan for real: those that suit, best first by the estimate, `most` of them, in order of play.
 */
export function holesToPlan({ holes }: CourseFit, most: number): (HoleFit & Readonly<{ tee: TeeFit }>)[] {
  const fit = holes.filter((hole): hole is HoleFit & Readonly<{ tee: TeeFit }> => hole.tee !== null);
  const best = [...fit].sort((a, b) => b.tee.estimate.reach20Chance - a.tee.estimate.reach20Chance).slice(0, most);
  return fit.filter(hole => best.includes(hole));
}
