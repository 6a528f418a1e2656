import type { LonLat } from '../course/course.ts';
import { localFrame, toLocal, toLonLat } from './local-frame.ts';

/** Where a thrower stands and which way they mean to throw; true bearing. */
export type ThrowingLine = Readonly<{ origin: LonLat; bearing_deg: number }>;
/** Against the line: along it from where the thrower stands, and beside it, right positive. */
export type LineOffset = Readonly<{ distance_m: number; side_m: number }>;

/**
 * A place on the ground measured against a throwing line, on the ellipsoid (under 0.1 mm up to 1 km).
 * @throws {RangeError} when a number is not finite or the line begins within a degree of a pole
 */
export function offsetFromLine(line: ThrowingLine, place: LonLat): LineOffset {
  const [east, north] = toLocal(frameOf(line), place);
  const [sin, cos] = direction(line);
  return { distance_m: east * sin + north * cos, side_m: east * cos - north * sin };
}

/** The place that lies so far along the line and beside it; the inverse of `offsetFromLine`. */
export function placeOnLine(line: ThrowingLine, { distance_m, side_m }: LineOffset): readonly [number, number] {
  const [sin, cos] = direction(line);
  return toLonLat(frameOf(line), [distance_m * sin + side_m * cos, distance_m * cos - side_m * sin]);
}

const frameOf = ({ origin }: ThrowingLine) => localFrame(origin[0], origin[1]);

function direction({ bearing_deg }: ThrowingLine): [sin: number, cos: number] {
  if (!Number.isFinite(bearing_deg)) throw new RangeError(`bearing_deg must be finite, got ${bearing_deg}`);
  const angle = (bearing_deg * Math.PI) / 180;
  return [Math.sin(angle), Math.cos(angle)];
}
