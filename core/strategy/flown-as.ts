import type { DiscModel } from '../flight/disc-model.ts';
import {
  type FittedThrow,
  SPECIAL_SHAPES,
  type SpecialShape,
  type SpecialThrow,
  specialOf,
} from '../player/fitted-player.ts';

/** What a shot is flown with. */
export type Flown = Readonly<{ model: DiscModel; releaseSpeed_mps: number; spinPerSpeed: number }>;

/**
 * The disc as a shot of this shape is flown: as fitted thrown flat, or, for a roller or an overhead throw, as fitted on its own.
 * @throws {RangeError} for a special shape that was not fitted
 */
export function flownAs(fitted: FittedThrow, shape: string): Flown {
  return isSpecialShape(shape) ? fittedSpecial(fitted, shape) : fitted;
}

/**
 * Shots of one disc from one hand that stand for each other: all its lines on the flat, its rollers, its overhead throws. The index
 * of the throw for the first, so that a player without special throws has as many kinds as throws.
 */
export function kindOf({ throwIndex, shape }: Readonly<{ throwIndex: number; shape: string }>, throws: number): number {
  return throwIndex + throws * (1 + (SPECIAL_SHAPES as readonly string[]).indexOf(shape));
}

/** How many numbers `kindOf` may give. */
export function kindsOf(throws: readonly FittedThrow[]): number {
  return (
    throws.length * (throws.some(({ specials }) => specials?.some(({ fit }) => fit)) ? 1 + SPECIAL_SHAPES.length : 1)
  );
}

/** @throws {RangeError} when it was not fitted */
export function fittedSpecial(fitted: FittedThrow, shape: SpecialShape): SpecialThrow {
  const special = specialOf(fitted, shape);
  if (special === null) throw new RangeError(`no ${shape} of ${fitted.discId}, ${fitted.hand} was fitted`);
  return special;
}

export function isSpecialShape(shape: string): shape is SpecialShape {
  return (SPECIAL_SHAPES as readonly string[]).includes(shape);
}
