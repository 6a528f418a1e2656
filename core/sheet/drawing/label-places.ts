import { closestOnRings } from '../../geometry/closest-point.ts';
import type { LocalPolygon } from '../../geometry/hole-map.ts';
import { isInAny } from '../../geometry/point-in-polygon.ts';
import type { Place } from './svg.ts';
import type { ViewFrame } from './view-frame.ts';

const WORD_SIZE_MM = 2.1;
const LETTER_MM = 1.15;
const STEP_MM = 1.5;

/** Boxes of words already placed. */
export type Taken = (readonly [x_mm: number, y_mm: number, halfWidth_mm: number])[];

/**
 * A place for a word inside areas, as far from their edges as can be, clear of the words placed before; it is then taken.
 * @returns null when the word fits nowhere
 */
export function placeInAreas(
  text: string,
  polygons: readonly LocalPolygon[],
  frame: ViewFrame,
  taken: Taken,
): Place | null {
  const half_mm = halfWidth_mm(text);
  let best: Place | null = null;
  let most = 0;
  for (let y = 2 * WORD_SIZE_MM; y < frame.height_mm - 0.5; y += STEP_MM) {
    for (let x = half_mm + 0.5; x < frame.width_mm - half_mm; x += STEP_MM) {
      if (!isFree([x, y], half_mm, taken)) continue;
      const point = frame.ground([x, y - WORD_SIZE_MM / 3]);
      if (!isInAny(point, polygons)) continue;
      const edge_mm = Math.min(x - half_mm, frame.width_mm - half_mm - x, frame.height_mm - y);
      const room = Math.min(closestOnRings(point, polygons).distance_m * frame.mmPerMetre, edge_mm + 2);
      if (room > most) {
        most = room;
        best = [x, y];
      }
    }
  }
  if (best !== null) taken.push([best[0], best[1], half_mm]);
  return best;
}

/** The first of these places where the word is inside the frame and clear of the others; it is then taken. */
export function placeAtOneOf(text: string, places: Iterable<Place>, frame: ViewFrame, taken: Taken): Place | null {
  const half_mm = halfWidth_mm(text);
  for (const [x, y] of places) {
    const inside =
      x >= half_mm && x <= frame.width_mm - half_mm && y >= WORD_SIZE_MM + 0.3 && y <= frame.height_mm - 0.5;
    if (!inside || !isFree([x, y], half_mm, taken)) continue;
    taken.push([x, y, half_mm]);
    return [x, y];
  }
  return null;
}

function isFree([x, y]: Place, half_mm: number, taken: Taken): boolean {
  return taken.every(
    ([otherX, otherY, otherHalf_mm]) =>
      Math.abs(x - otherX) > half_mm + otherHalf_mm + 0.4 || Math.abs(y - otherY) > WORD_SIZE_MM * 1.15,
  );
}

const halfWidth_mm = (text: string): number => (text.length * LETTER_MM) / 2;
