import type { Course, CourseHole } from '../course.ts';
import { groundDistance_m, lineLength_m } from '../ground-distance.ts';
import { refKey } from '../hole-ref.ts';

/** What an update does to one hole, in numbers. */
export type HoleChange = Readonly<{
  ref: string;
  does: 'add' | 'remove' | 'change';
  /** How far the tee and the basket planned for move; absent when they stay. */
  teeMoved_m?: number;
  basketMoved_m?: number;
  /** Along the line of play; absent for a hole that was not there, or is not there any more. */
  lengthBefore_m?: number;
  lengthAfter_m?: number;
  parBefore?: number;
  parAfter?: number;
}>;

/** Smaller moves come from rounding. */
const noMove_m = 0.05;

/** The holes that differ between two states of one course, in the order of the later one, removed ones last. */
export function compareHoles(before: Course, after: Course): HoleChange[] {
  const old = new Map(before.holes.map(hole => [refKey(hole.ref), hole]));
  const fresh = new Set(after.holes.map(hole => refKey(hole.ref)));
  const changed = after.holes.flatMap((hole): HoleChange[] => {
    const was = old.get(refKey(hole.ref));
    if (was === undefined)
      return [{ ref: hole.ref, does: 'add', lengthAfter_m: lineLength_m(hole.line), ...par('parAfter', hole) }];
    const change = changeOf(was, hole);
    return change === undefined ? [] : [change];
  });
  const removed = before.holes
    .filter(hole => !fresh.has(refKey(hole.ref)))
    .map(
      (hole): HoleChange => ({
        ref: hole.ref,
        does: 'remove',
        lengthBefore_m: lineLength_m(hole.line),
        ...par('parBefore', hole),
      }),
    );
  return [...changed, ...removed];
}

function changeOf(was: CourseHole, is: CourseHole): HoleChange | undefined {
  const tee_m = groundDistance_m(was.tee.position, is.tee.position);
  const basket_m = groundDistance_m(was.basket.position, is.basket.position);
  const [before_m, after_m] = [lineLength_m(was.line), lineLength_m(is.line)];
  const isSame =
    tee_m < noMove_m && basket_m < noMove_m && Math.abs(before_m - after_m) < noMove_m && was.par === is.par;
  if (isSame) return undefined;
  return {
    ref: is.ref,
    does: 'change',
    ...(tee_m < noMove_m ? {} : { teeMoved_m: tee_m }),
    ...(basket_m < noMove_m ? {} : { basketMoved_m: basket_m }),
    lengthBefore_m: before_m,
    lengthAfter_m: after_m,
    ...par('parBefore', was),
    ...par('parAfter', is),
  };
}

const par = (key: 'parBefore' | 'parAfter', hole: CourseHole) => (hole.par === undefined ? {} : { [key]: hole.par });
