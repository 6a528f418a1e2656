import type { LocalPoint } from '../../geometry/hole-map.ts';
import type { Place } from './svg.ts';

/** The hole turned so that the basket is straight up from the tee, scaled into a frame on paper. */
export type ViewFrame = Readonly<{
  width_mm: number;
  height_mm: number;
  mmPerMetre: number;
  place(point: LocalPoint): Place;
  /** The ground under a place on paper. */
  ground(place: Place): LocalPoint;
  /** Direction on paper, clockwise from up, of a true bearing. */
  turned_deg(bearing_deg: number): number;
}>;

/** A straight hole is drawn with some ground on both sides. */
const LEAST_WIDTH_M = 30;
const DEGREE = Math.PI / 180;

/**
 * @param points - what must be seen
 * @param margin_mm - of the frame, kept clear of them
 */
export function viewFrame(
  points: readonly LocalPoint[],
  up_deg: number,
  margin_mm: number,
  width_mm: number,
  height_mm: number,
): ViewFrame {
  const [sin, cos] = [Math.sin(up_deg * DEGREE), Math.cos(up_deg * DEGREE)];
  const turned = points.map(([east, north]): Place => [east * cos - north * sin, east * sin + north * cos]);
  const rights = turned.map(([right]) => right);
  const ups = turned.map(([, up]) => up);
  const [left_m, right_m] = [Math.min(...rights), Math.max(...rights)];
  const [low_m, high_m] = [Math.min(...ups), Math.max(...ups)];
  const mmPerMetre = Math.min(
    (width_mm - 2 * margin_mm) / Math.max(LEAST_WIDTH_M, right_m - left_m),
    (height_mm - 2 * margin_mm) / (high_m - low_m),
  );
  const middle_m = [(left_m + right_m) / 2, (low_m + high_m) / 2] as const;
  return {
    width_mm,
    height_mm,
    mmPerMetre,
    place([east, north]) {
      const [right, up] = [east * cos - north * sin, east * sin + north * cos];
      return [width_mm / 2 + (right - middle_m[0]) * mmPerMetre, height_mm / 2 - (up - middle_m[1]) * mmPerMetre];
    },
    ground([x, y]) {
      const right = middle_m[0] + (x - width_mm / 2) / mmPerMetre;
      const up = middle_m[1] - (y - height_mm / 2) / mmPerMetre;
      return [right * cos + up * sin, up * cos - right * sin];
    },
    turned_deg: bearing_deg => bearing_deg - up_deg,
  };
}
