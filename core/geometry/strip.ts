import { dissolve } from './dissolve.ts';
import type { LocalPoint, LocalPolygon } from './hole-map.ts';
import { distance_m } from './line-length.ts';

const JOINT_CORNERS = 12;

/**
 * The ground within half a width of a line, ends cut flat so that stations along it stay exact, bends rounded.
 * @param width_m - full width, above 0
 * @throws {RangeError} when the width is not above 0
 */
export function strip(line: readonly LocalPoint[], width_m: number): LocalPolygon[] {
  if (!(width_m > 0)) throw new RangeError(`width_m must be above 0, got ${width_m}`);
  const half_m = width_m / 2;
  const pieces: LocalPolygon[] = [];
  for (let i = 1; i < line.length; i++) {
    const [a, b] = [line[i - 1]!, line[i]!];
    const leg_m = distance_m(a, b);
    if (leg_m === 0) continue;
    const [nx, ny] = [(-(b[1] - a[1]) / leg_m) * half_m, ((b[0] - a[0]) / leg_m) * half_m];
    if (pieces.length > 0) pieces.push(joint(a, half_m));
    const start: LocalPoint = [a[0] + nx, a[1] + ny];
    pieces.push([[start, [a[0] - nx, a[1] - ny], [b[0] - nx, b[1] - ny], [b[0] + nx, b[1] + ny], start]]);
  }
  return dissolve(pieces);
}

function joint(centre: LocalPoint, radius_m: number): LocalPolygon {
  const corners = Array.from({ length: JOINT_CORNERS }, (_, k): LocalPoint => {
    const angle = (2 * Math.PI * k) / JOINT_CORNERS;
    return [centre[0] + radius_m * Math.cos(angle), centre[1] + radius_m * Math.sin(angle)];
  });
  return [[...corners, corners[0]!]];
}
