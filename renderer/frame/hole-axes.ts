import type { LocalPoint } from '../../core/geometry/hole-map.ts';

/** The hole laid on its side: `along_m` from the tee towards the basket, `left_m` to the thrower's left. */
type HolePoint = readonly [along_m: number, left_m: number];

export type HoleAxes = Readonly<{
  bearing_deg: number;
  toHole: (point: LocalPoint) => HolePoint;
  toLocal: (point: HolePoint) => LocalPoint;
}>;

/** Axes of a hole whose basket lies at `basket` (metres east and north of the tee). Map and side view share them. */
export function holeAxes(basket: LocalPoint): HoleAxes {
  const length = Math.hypot(basket[0], basket[1]);
  const [east, north] = length === 0 ? [0, 1] : [basket[0] / length, basket[1] / length];
  return {
    bearing_deg: ((Math.atan2(east, north) * 180) / Math.PI + 360) % 360,
    toHole: ([e, n]) => [e * east + n * north, n * east - e * north],
    toLocal: ([along, left]) => [along * east - left * north, along * north + left * east],
  };
}
