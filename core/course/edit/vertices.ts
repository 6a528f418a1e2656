import type { Geometry, Position } from 'geojson';

/** Where a vertex stands in `coordinates`: `[]` for a Point, `[3]` in a LineString, `[0, 3]` in a Polygon's outer ring. */
export type VertexPath = readonly number[];
export type Vertex = Readonly<{ path: VertexPath; position: Position }>;
type Coordinates = Position | Position[] | Position[][] | Position[][][];
export type PlainGeometry = Exclude<Geometry, { type: 'GeometryCollection' }>;

/** How deep the positions lie in `coordinates`. */
const DEPTH: Readonly<Record<PlainGeometry['type'], number>> = {
  Point: 0,
  MultiPoint: 1,
  LineString: 1,
  MultiLineString: 2,
  Polygon: 2,
  MultiPolygon: 3,
};

/** A geometry whose vertices can be edited; collections and features without place have none. */
export function isPlain(geometry: Geometry | null): geometry is PlainGeometry {
  return geometry !== null && geometry.type !== 'GeometryCollection';
}

export const isArea = (geometry: PlainGeometry): boolean =>
  geometry.type === 'Polygon' || geometry.type === 'MultiPolygon';

/** The vertices in file order; a ring's closing position, which repeats its first, is left out. */
export function verticesOf(geometry: Geometry | null): Vertex[] {
  if (!isPlain(geometry)) return [];
  return walk(geometry.coordinates, DEPTH[geometry.type], [], isArea(geometry));
}

function walk(coordinates: Coordinates, depth: number, path: VertexPath, isClosed: boolean): Vertex[] {
  if (depth === 0) return [{ path, position: coordinates as Position }];
  const list = coordinates as Coordinates[];
  const open = depth === 1 && isClosed ? list.slice(0, -1) : list;
  return open.flatMap((inner, i) => walk(inner, depth - 1, [...path, i], isClosed));
}

/** The run of positions (line or ring, its closing one included) that holds the vertex. */
export function runOf(geometry: PlainGeometry, path: VertexPath): readonly Position[] {
  let here: Coordinates = geometry.coordinates;
  for (const step of path.slice(0, -1)) here = (here as Coordinates[])[step] as Coordinates;
  return here as Position[];
}

/** The geometry with every position replaced. */
export function mapPositions(geometry: Geometry, to: (position: Position) => Position): Geometry {
  if (geometry.type === 'GeometryCollection')
    return { ...geometry, geometries: geometry.geometries.map(part => mapPositions(part, to)) };
  const deep = (coordinates: Coordinates, depth: number): Coordinates =>
    depth === 0
      ? to(coordinates as Position)
      : ((coordinates as Coordinates[]).map(inner => deep(inner, depth - 1)) as Coordinates);
  return { ...geometry, coordinates: deep(geometry.coordinates, DEPTH[geometry.type]) } as Geometry;
}

/** The geometry with the run that holds the vertex replaced. */
export function withRun(geometry: PlainGeometry, path: VertexPath, run: readonly Position[]): PlainGeometry {
  const deep = (coordinates: Coordinates, steps: VertexPath): Coordinates =>
    steps.length === 0
      ? [...run]
      : ((coordinates as Coordinates[]).with(
          steps[0]!,
          deep((coordinates as Coordinates[])[steps[0]!]!, steps.slice(1)),
        ) as Coordinates);
  return { ...geometry, coordinates: deep(geometry.coordinates, path.slice(0, -1)) } as PlainGeometry;
}
