import type { FeatureCollection, Position } from 'geojson';
import { kindOf } from './kinds.ts';
import { offset_m, shiftPosition } from './shift-position.ts';
import { isArea, isPlain, type PlainGeometry, type Vertex, verticesOf } from './vertices.ts';

/** Where a position was drawn to, and what it was drawn to. */
export type Snap = Readonly<{ position: Position; to: 'site' | 'vertex' | 'edge'; featureIndex: number }>;

/**
 * The nearest thing to hold on to: tees and baskets first, then other vertices, then edges; of one kind the nearest.
 * @param reach_m - how far away it may be
 * @param except - a feature that is being drawn or moved: it does not hold on to itself
 * @returns undefined when nothing is within reach
 */
export function snap(file: FeatureCollection, position: Position, reach_m: number, except?: number): Snap | undefined {
  let vertex: { found: Snap; away_m: number; isSite: boolean } | undefined;
  let edge: { found: Snap; away_m: number } | undefined;
  for (const [featureIndex, feature] of file.features.entries()) {
    const { geometry } = feature;
    if (featureIndex === except || !isPlain(geometry)) continue;
    const extent = extentOf(geometry);
    if (isBeyond(extent, position, reach_m)) continue;
    const isSite = geometry.type === 'Point' && ['tee', 'basket'].includes(kindOf(feature) ?? '');
    const { vertices } = extent;
    for (const [i, { path, position: at }] of vertices.entries()) {
      const away_m = Math.hypot(...offset_m(position, at));
      const isBetter = vertex === undefined || (isSite === vertex.isSite ? away_m < vertex.away_m : isSite);
      if (away_m <= reach_m && isBetter)
        vertex = { found: { position: at, to: isSite ? 'site' : 'vertex', featureIndex }, away_m, isSite };
      const next = followerOf(vertices, i, isArea(geometry));
      if (geometry.type === 'Point' || geometry.type === 'MultiPoint' || next === undefined) continue;
      const near = nearestOnEdge(position, at, next.position);
      if (near.away_m <= reach_m && near.away_m < (edge?.away_m ?? Number.POSITIVE_INFINITY) && path.length > 0)
        edge = { found: { position: near.position, to: 'edge', featureIndex }, away_m: near.away_m };
    }
  }
  return (vertex ?? edge)?.found;
}

type Extent = Readonly<{ vertices: readonly Vertex[]; south_deg: number; north_deg: number }>;

/** Shapes are values: what was worked out for one holds as long as it is there. A hand on the map asks at every step. */
const extents = new WeakMap<PlainGeometry, Extent>();

function extentOf(geometry: PlainGeometry): Extent {
  const known = extents.get(geometry);
  if (known !== undefined) return known;
  const vertices = verticesOf(geometry);
  let [south_deg, north_deg] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const { position } of vertices) {
    south_deg = Math.min(south_deg, position[1]!);
    north_deg = Math.max(north_deg, position[1]!);
  }
  const extent = { vertices, south_deg, north_deg };
  extents.set(geometry, extent);
  return extent;
}

/** Cheap refusal: the whole shape lies north or south of what can be reached. A degree of latitude is 110.5 km or more. */
function isBeyond({ south_deg, north_deg }: Extent, position: Position, reach_m: number): boolean {
  const reach_deg = reach_m / 110_500;
  return north_deg < position[1]! - reach_deg || south_deg > position[1]! + reach_deg;
}

/** The vertex after this one in its own line or ring. */
function followerOf(vertices: readonly Vertex[], i: number, isClosed: boolean) {
  const here = vertices[i]!.path.slice(0, -1).join();
  const sameRun = (k: number) => vertices[k] !== undefined && vertices[k].path.slice(0, -1).join() === here;
  if (sameRun(i + 1)) return vertices[i + 1];
  return isClosed ? vertices[i - vertices[i]!.path.at(-1)!] : undefined;
}

function nearestOnEdge(p: Position, a: Position, b: Position): { position: Position; away_m: number } {
  const [ax, ay] = offset_m(p, a);
  const [bx, by] = offset_m(p, b);
  const [dx, dy] = [bx - ax, by - ay];
  const lengthSq = dx * dx + dy * dy;
  const t = lengthSq === 0 ? 0 : Math.min(1, Math.max(0, -(ax * dx + ay * dy) / lengthSq));
  const [east_m, north_m] = [ax + t * dx, ay + t * dy];
  return { position: shiftPosition([p[0]!, p[1]!], east_m, north_m), away_m: Math.hypot(east_m, north_m) };
}
