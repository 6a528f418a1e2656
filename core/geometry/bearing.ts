import type { LocalPoint } from './hole-map.ts';

/**
 * Direction from one local point to another, degrees clockwise from true north, in [0, 360).
 * @throws {RangeError} when the points coincide: they have no bearing
 */
export function bearing_deg(from: LocalPoint, to: LocalPoint): number {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  if (!(dx * dx + dy * dy > 0)) throw new RangeError(`no bearing from [${from}] to [${to}]`);
  const bearing = (Math.atan2(dx, dy) * 180) / Math.PI;
  return bearing < 0 ? bearing + 360 : bearing;
}

/** Change of direction from bearing `before_deg` to `after_deg`, degrees in (-180, 180], right positive. */
export function turn_deg(before_deg: number, after_deg: number): number {
  const turn = (((after_deg - before_deg) % 360) + 360) % 360;
  return turn > 180 ? turn - 360 : turn;
}
