import type { FeatureCollection, Geometry, Position } from 'geojson';
import { moveVertex } from '../../../core/course/edit/edit-vertices.ts';
import type { DrawnShape, FeatureKind } from '../../../core/course/edit/kinds.ts';
import { offset_m, shiftPosition } from '../../../core/course/edit/shift-position.ts';
import { type Snap, snap } from '../../../core/course/edit/snap.ts';
import { mapPositions, type Vertex, verticesOf } from '../../../core/course/edit/vertices.ts';
import type { LocalPolygon } from '../../../core/geometry/hole-map.ts';
import { isInside } from '../../frame/inside.ts';

/** A shape in the making. */
export type Tool = Readonly<{
  kind: FeatureKind;
  shape: DrawnShape;
  points: readonly Position[];
  /** What its kind cannot do without: the side of a mando, the height under a ceiling. */
  tags: Readonly<Record<string, string>>;
}>;

/** Something picked up by keyboard or pointer and not put down yet. */
export type Held = Readonly<{
  index: number;
  /** Its place among the vertices; null: the whole thing. */
  vertex: number | null;
  /** Where the cross was when it was picked up. */
  from: Position;
  geometry: Geometry;
}>;

/** What the hands are doing on the map; the map itself is kept apart. */
export type Editing = Readonly<{
  tool: Tool | null;
  chosen: number | null;
  vertex: number | null;
  held: Held | null;
  cross: Position;
}>;

/** Where the cross means: what it holds on to, or where it is. */
export function aimOf(
  file: FeatureCollection,
  { cross, held }: Pick<Editing, 'cross' | 'held'>,
  reach_m: number | null,
): Readonly<{ position: Position; held: Snap | null }> {
  // A whole thing keeps its shape: it follows the cross, and nothing holds it.
  if (reach_m === null || held?.vertex === null) return { position: cross, held: null };
  const found = snap(file, cross, reach_m, held?.index);
  return found === undefined ? { position: cross, held: null } : { position: found.position, held: found };
}

/** The shape of what is held, were it put down at `to`. */
export function heldShape(held: Held, to: Position, shift: readonly [east_m: number, north_m: number]): Geometry {
  if (held.vertex === null) return mapPositions(held.geometry, position => shiftPosition(position, shift[0], shift[1]));
  const vertex = verticesOf(held.geometry)[held.vertex]!;
  return moveVertex(held.geometry, vertex.path, keepHeight(vertex, to));
}

/** Longitude and latitude from the map, height from what was there. */
function keepHeight({ position }: Vertex, to: Position): Position {
  return [to[0]!, to[1]!, ...position.slice(2)];
}

/** Nearer than this to the cross, a thing is under it. */
const UNDER_m = 3;

/** The thing under the cross: the nearest point or line, else the innermost area. */
export function thingUnder(file: FeatureCollection, cross: Position): number | null {
  const near = snap(file, cross, UNDER_m);
  if (near !== undefined) return near.featureIndex;
  let found: { index: number; size: number } | null = null;
  for (const [index, { geometry }] of file.features.entries()) {
    const polygons =
      geometry?.type === 'Polygon'
        ? [geometry.coordinates]
        : geometry?.type === 'MultiPolygon'
          ? geometry.coordinates
          : [];
    const rings = polygons as unknown as LocalPolygon[];
    if (!isInside([cross[0]!, cross[1]!], rings)) continue;
    const lat = polygons.flat(2).map(([, at]) => at!);
    const size = Math.max(...lat) - Math.min(...lat);
    if (found === null || size < found.size) found = { index, size };
  }
  return found?.index ?? null;
}

/** The vertex of the chosen thing under the cross; null when there is none. */
export function vertexUnder(geometry: Geometry | null, cross: Position): number | null {
  const away = verticesOf(geometry).map(({ position }) => Math.hypot(...offset_m(cross, position)));
  const nearest = away.indexOf(Math.min(...away));
  return nearest >= 0 && away[nearest]! <= UNDER_m ? nearest : null;
}

/** Longitude and latitude alone: a height belongs to the place it was measured at. */
export const plainly = (at: Position): Position => [at[0]!, at[1]!];
