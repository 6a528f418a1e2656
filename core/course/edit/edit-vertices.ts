import type { Geometry, Position } from 'geojson';
import { isArea, isPlain, type PlainGeometry, runOf, type VertexPath, withRun } from './vertices.ts';

/**
 * The geometry with one vertex elsewhere; a ring stays closed.
 * @throws {RangeError} when there is no such vertex
 */
export function moveVertex(geometry: Geometry, path: VertexPath, to: Position): PlainGeometry {
  const plain = editable(geometry, path);
  if (path.length === 0) return { ...plain, coordinates: to } as PlainGeometry;
  const run = runOf(plain, path);
  const i = path.at(-1)!;
  const moved = run.with(i, to);
  return withRun(plain, path, isArea(plain) && i === 0 ? moved.with(-1, to) : moved);
}

/**
 * The geometry with a new vertex after the one at `path`.
 * @throws {RangeError} when there is no such vertex, or the geometry is made of points
 */
export function insertVertex(geometry: Geometry, path: VertexPath, position: Position): PlainGeometry {
  const plain = editable(geometry, path);
  if (plain.type === 'Point' || plain.type === 'MultiPoint')
    throw new RangeError(`a ${plain.type} has no line to put a vertex into`);
  return withRun(plain, path, runOf(plain, path).toSpliced(path.at(-1)! + 1, 0, position));
}

/** Whether the shape still is one without a vertex: lines keep two, rings three. */
export function canRemoveVertex(geometry: Geometry | null, path: VertexPath): boolean {
  if (!isPlain(geometry) || path.length === 0) return false;
  const least = geometry.type === 'MultiPoint' ? 1 : isArea(geometry) ? 4 : 2;
  return runOf(geometry, path).length > least;
}

/**
 * The geometry without a vertex; a ring stays closed.
 * @throws {RangeError} when there is no such vertex, or too few would be left
 */
export function removeVertex(geometry: Geometry, path: VertexPath): PlainGeometry {
  const plain = editable(geometry, path);
  if (!canRemoveVertex(plain, path))
    throw new RangeError(`vertex ${path.join('.')} is one of the last that make a ${plain.type}`);
  const i = path.at(-1)!;
  const rest = runOf(plain, path).toSpliced(i, 1);
  return withRun(plain, path, isArea(plain) && i === 0 ? rest.with(-1, rest[0]!) : rest);
}

function editable(geometry: Geometry, path: VertexPath): PlainGeometry {
  if (!isPlain(geometry)) throw new RangeError(`a ${geometry.type} has no vertices of its own`);
  const run = path.length === 0 ? undefined : runOf(geometry, path);
  const isThere = run === undefined ? geometry.type === 'Point' : run[path.at(-1)!] !== undefined;
  if (!isThere) throw new RangeError(`a ${geometry.type} has no vertex ${path.join('.') || '(alone)'}`);
  return geometry;
}
