import type { LocalPoint } from '../../core/geometry/hole-map.ts';
import type { ShotDrawing } from '../../core/strategy/hole-drawing.ts';

/** Metres from the middle of where a shot comes to rest to the basket. */
export function leaves_m(drawing: ShotDrawing | null, basket: LocalPoint | null): number | null {
  const middle = drawing?.spread[0]?.centre;
  return middle === undefined || basket === null ? null : Math.hypot(basket[0] - middle[0], basket[1] - middle[1]);
}
