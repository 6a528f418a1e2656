import { CHOICE, type Ends } from './march.ts';
import { type ValueField, valueAt } from './value-field.ts';

/** Where play goes on after out-of-bounds. */
export const RELIEF = { line: 0, dropZone: 1, previousLie: 2 } as const;

/**
 * Which lie a thrower takes after an out-of-bounds end: the one with the fewest throws among those the course allows. In from the
 * line goes before the drop zone, both before the previous lie, when they are equal. Where nothing is allowed or to be had, the
 * previous lie is left.
 * @param dropX, dropY - the drop zone for out-of-bounds; NaN when the hole has none
 * @param lieValue - value of the lie thrown from, where known: unknown, it is taken only when there is no other
 * @returns a RELIEF code
 * @source Official Rules of Disc Golf 806.02 (text of 2013): previous lie, up to 1 m in from where it last crossed, drop zone
 */
export function relief(
  ends: Ends,
  i: number,
  field: ValueField,
  dropX: number,
  dropY: number,
  lieValue: number | undefined,
): number {
  const choices = ends.choices[i];
  let best: number = RELIEF.previousLie;
  let least = Number.POSITIVE_INFINITY;
  if (!Number.isNaN(ends.x[i])) {
    best = RELIEF.line;
    least = valueAt(field, ends.x[i], ends.y[i]);
  }
  if (choices & CHOICE.dropZone && !Number.isNaN(dropX)) {
    const drop = valueAt(field, dropX, dropY);
    if (drop < least) {
      best = RELIEF.dropZone;
      least = drop;
    }
  }
  return choices & CHOICE.previousLie && lieValue !== undefined && lieValue < least ? RELIEF.previousLie : best;
}
