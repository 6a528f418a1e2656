import type { HoleMap, LocalCover, LocalPoint, LocalPolygon } from '../../../core/geometry/hole-map.ts';
import { bareHole } from './small-world.ts';

/** Moves a drawn point: a mirror, a turn. */
export type Move = (point: LocalPoint) => LocalPoint;
export const asDrawn: Move = point => point;
export const mirrored: Move = ([x, y]) => [-x, y];
/** Clockwise, as bearings go. */
export function turned(angle_deg: number): Move {
  const [sin, cos] = [Math.sin((angle_deg * Math.PI) / 180), Math.cos((angle_deg * Math.PI) / 180)];
  return ([x, y]) => [x * cos + y * sin, y * cos - x * sin];
}
/** Exactly, without rounding. */
export const quarterTurn: Move = ([x, y]) => [y, -x];

export function boxRing(west: number, south: number, east: number, north: number, move: Move = asDrawn): LocalPolygon {
  const corners: LocalPoint[] = [
    [west, south],
    [east, south],
    [east, north],
    [west, north],
    [west, south],
  ];
  return [corners.map(move)];
}

export const area = (...polygons: LocalPolygon[]) => ({ source: 'features[0]', assumed: [], polygons });

const wood = (polygon: LocalPolygon, numbers: Partial<LocalCover> = {}): LocalCover => ({
  ...area(polygon),
  form: 'wood',
  height_m: 14,
  base_m: 2,
  density: 0.7,
  ...numbers,
});

/**
 * An invented hole of 97 m that has everything to one side: bends right round a wood, out-of-bounds all along the left, a hazard behind.
 * The box of its line is 21 × 96 m, so that grids of 1 m and 5 m lie the same way when it is mirrored or turned by a right angle.
 */
export function elbow(move: Move = asDrawn, woodFrom_m = 5): HoleMap {
  const basket = move([21, 96]);
  return bareHole({
    basket,
    line: [[0, 0], move([0, 62]), basket],
    outOfBounds: [area(boxRing(-90, -90, -14, 200, move))],
    covers: [wood(boxRing(woodFrom_m, 20, 34, 62, move))],
    hazards: [area(boxRing(6, 104, 16, 114, move))],
  });
}

/** An invented hole of 85 m over water to a green, with a drop zone on the far side. */
export function overWater(): HoleMap {
  return bareHole({
    basket: [0, 85],
    outOfBounds: [area(boxRing(-80, 12, 80, 66)), area(boxRing(-80, 101, 80, 170))],
    dropZones: [{ source: 'features[7]', assumed: [], at: [14, 70] }],
  });
}

/** An invented open hole of 62 m. */
export const shortOpen = (): HoleMap => bareHole({ basket: [0, 62] });
