import type { Polygon, Position } from 'geojson';
import type { Course, CourseHole, CourseObject, LonLat } from '../../../core/course/course.ts';
import type { LocalPoint } from '../../../core/geometry/hole-map.ts';
import { localFrame, toLonLat } from '../../../core/geometry/local-frame.ts';

/** Moves a sketch over the ground before it becomes degrees. */
export type Placing = Readonly<{ lon_deg: number; lat_deg: number; turn_deg: number; mirrored: boolean }>;
export const asDrawn: Placing = { lon_deg: 24.9, lat_deg: 60.2, turn_deg: 0, mirrored: false };

/** Hands out GeoJSON for a hole sketched in metres: x to the right of the tee, y straight ahead. */
export function sketcher(placing: Placing = asDrawn) {
  const frame = localFrame(placing.lon_deg, placing.lat_deg);
  const turn = (placing.turn_deg * Math.PI) / 180;
  const at = ([x, y]: LocalPoint): [number, number] => {
    const right = placing.mirrored ? -x : x;
    // A turn clockwise, as bearings go.
    const point: LocalPoint = [
      right * Math.cos(turn) + y * Math.sin(turn),
      y * Math.cos(turn) - right * Math.sin(turn),
    ];
    const [lon, lat] = toLonLat(frame, point);
    return [lon, lat];
  };
  const positions = (points: readonly LocalPoint[]): Position[] => points.map(at);
  return {
    at,
    positions,
    line: (...points: LocalPoint[]) => ({ type: 'LineString' as const, coordinates: positions(points) }),
    area: (...points: LocalPoint[]): Polygon => ({
      type: 'Polygon',
      coordinates: [positions([...points, points[0]!])],
    }),
    box: (west: number, south: number, east: number, north: number): Polygon => ({
      type: 'Polygon',
      coordinates: [
        positions([
          [west, south],
          [east, south],
          [east, north],
          [west, north],
          [west, south],
        ]),
      ],
    }),
  };
}

export type Sketcher = ReturnType<typeof sketcher>;

/** What every object on a map carries. */
export const onMap = (featureIndex: number) => ({
  featureIndex,
  path: `features[${featureIndex}]`,
  assumed: [] as string[],
});

type HoleSketch = Readonly<{
  ref?: string;
  par?: number;
  line: readonly LocalPoint[];
  teeHeight_m?: number;
  basketHeight_m?: number;
}>;

export function holeOf(
  sketch: Sketcher,
  { ref = '1', par, line, teeHeight_m, basketHeight_m }: HoleSketch,
): CourseHole {
  const positions: LonLat[] = line.map(sketch.at);
  const tee = { position: positions[0]!, featureIndex: 1, ...(teeHeight_m !== undefined && { height_m: teeHeight_m }) };
  const basket = {
    position: positions.at(-1)!,
    featureIndex: 2,
    ...(basketHeight_m !== undefined && { height_m: basketHeight_m }),
  };
  return {
    ref,
    ...(par !== undefined && { par }),
    tee,
    basket,
    tees: [tee],
    baskets: [basket],
    line: positions,
    lineSource: 'drawn',
  };
}

export function courseOf(
  holes: readonly CourseHole[],
  objects: readonly CourseObject[] = [],
  rest: Partial<Pick<Course, 'heights' | 'assumptions' | 'notMapped'>> = {},
): Course {
  return {
    name: 'Sketch Meadow',
    holes,
    layouts: [],
    objects,
    heights: [],
    assumptions: [],
    notMapped: [],
    ...rest,
    source: { type: 'FeatureCollection', features: [] },
  };
}

/** An invented tree: 12 m high, crown 6 m across from 3 m up, trunk 0.4 m. */
export function treeAt(sketch: Sketcher, featureIndex: number, point: LocalPoint, numbers: object = {}): CourseObject {
  return {
    ...onMap(featureIndex),
    kind: 'tree',
    position: sketch.at(point),
    height_m: 12,
    crownDiameter_m: 6,
    crownBase_m: 3,
    trunkDiameter_m: 0.4,
    ...numbers,
  };
}

export function woodOf(featureIndex: number, geometry: Polygon, numbers: object = {}): CourseObject {
  return {
    ...onMap(featureIndex),
    kind: 'cover',
    form: 'wood',
    geometry,
    width_m: 4,
    height_m: 15,
    base_m: 2.5,
    density: 0.7,
    ...numbers,
  };
}
