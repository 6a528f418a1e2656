import type { HoleMap, LocalPoint } from '../geometry/hole-map.ts';
import { distance_m } from '../geometry/line-length.ts';
import { localFrame, toLocal } from '../geometry/local-frame.ts';
import type { Place } from './round-file.ts';

/** A place on the hole, and what had to be assumed to put it there. */
export type Placed = Readonly<{ at: LocalPoint; assumed: string | null }>;

/**
 * Where a written place is, in the hole's local frame. A distance to the basket is put on the line of play, turned aside round
 * the basket when a side was written; that is assumed and said.
 */
export function placeOf(map: Pick<HoleMap, 'origin' | 'line' | 'basket'>, place: Place): Placed {
  if ('lonLat' in place) {
    return { at: toLocal(localFrame(map.origin[0], map.origin[1]), place.lonLat), assumed: null };
  }
  if ('east_m' in place) return { at: [place.east_m, place.north_m], assumed: null };
  const { toBasket_m, side_m, isBeyond = false } = place;
  const on = isBeyond ? pastBasket(map, toBasket_m) : beforeBasket(map, toBasket_m);
  const beside =
    side_m === undefined || toBasket_m === 0 ? 0 : Math.asin(Math.max(-1, Math.min(1, side_m / toBasket_m)));
  // right of the line as the thrower sees it: counter-clockwise round the basket before it, clockwise past it
  const at = turned(map.basket, on, isBeyond ? -beside : beside);
  const where = isBeyond ? 'in line past the basket' : 'on the line of play';
  return {
    at,
    assumed:
      side_m === undefined ? `put ${where}: only its distance is known` : `put beside ${where} by what was written`,
  };
}

/** The last point of the line of play at this distance from the basket; behind the tee when it is farther than all of the line. */
function beforeBasket({ line, basket }: Pick<HoleMap, 'line' | 'basket'>, toBasket_m: number): LocalPoint {
  if (toBasket_m === 0) return basket;
  for (let i = line.length - 1; i > 0; i--) {
    const [near, far] = [line[i]!, line[i - 1]!];
    const [a, b] = [distance_m(near, basket), distance_m(far, basket)];
    if (a <= toBasket_m && toBasket_m <= b) return onLeg(near, far, basket, toBasket_m);
  }
  const tee = line[0]!;
  const away = distance_m(tee, basket);
  return [
    basket[0] + ((tee[0] - basket[0]) * toBasket_m) / away,
    basket[1] + ((tee[1] - basket[1]) * toBasket_m) / away,
  ];
}

/** Where the leg from `near` to `far` leaves the circle round the basket. */
function onLeg(near: LocalPoint, far: LocalPoint, basket: LocalPoint, radius_m: number): LocalPoint {
  const [dx, dy] = [far[0] - near[0], far[1] - near[1]];
  const [cx, cy] = [near[0] - basket[0], near[1] - basket[1]];
  const a = dx * dx + dy * dy;
  const b = cx * dx + cy * dy;
  const c = cx * cx + cy * cy - radius_m * radius_m;
  const t = a === 0 ? 0 : (-b + Math.sqrt(Math.max(0, b * b - a * c))) / a;
  return [near[0] + t * dx, near[1] + t * dy];
}

function pastBasket({ line, basket }: Pick<HoleMap, 'line' | 'basket'>, toBasket_m: number): LocalPoint {
  const before = line.findLast(point => distance_m(point, basket) > 0.5) ?? line[0]!;
  const away = distance_m(before, basket);
  return [
    basket[0] + ((basket[0] - before[0]) * toBasket_m) / away,
    basket[1] + ((basket[1] - before[1]) * toBasket_m) / away,
  ];
}

/** @param angle - radians, counter-clockwise */
function turned(centre: LocalPoint, point: LocalPoint, angle: number): LocalPoint {
  const [dx, dy] = [point[0] - centre[0], point[1] - centre[1]];
  const [sin, cos] = [Math.sin(angle), Math.cos(angle)];
  return [centre[0] + dx * cos - dy * sin, centre[1] + dx * sin + dy * cos];
}
