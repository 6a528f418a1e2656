import type { Feature, FeatureCollection, Geometry, Position } from 'geojson';
import { useMemo, useState } from 'react';
import {
  addFeatures,
  copyFeature,
  featureAt,
  moveFeature,
  removeFeature,
  reshapeFeature,
} from '../../../core/course/edit/edit-features.ts';
import { changeTags } from '../../../core/course/edit/edit-tags.ts';
import { canRemoveVertex, insertVertex, moveVertex, removeVertex } from '../../../core/course/edit/edit-vertices.ts';
import { type FeatureKind, KINDS, kindOf } from '../../../core/course/edit/kinds.ts';
import { makeFeature, positionsFor } from '../../../core/course/edit/make-feature.ts';
import { offset_m, positionAt, shiftPosition } from '../../../core/course/edit/shift-position.ts';
import { isPlain, type Vertex, verticesOf } from '../../../core/course/edit/vertices.ts';
import { usePlanner } from '../../state/planner.tsx';
import { type DraftMap, deskOf } from './draft-desk.ts';
import { aimOf, type Editing, heldShape, plainly, type Tool, thingUnder, vertexUnder } from './editing.ts';
import { isNowhere, startOf } from './hole-parts.ts';
import type { MapKey } from './map-keys.ts';
import { thingWords } from './thing-words.ts';

/** Kinds that are drawn for the hole at work. */
const OF_HOLE: ReadonlySet<FeatureKind> = new Set(['tee', 'basket', 'line', 'fairway', 'mando', 'dropZone']);
/** A copy lies so far north and east of its original that both can be seen. */
const COPY_ASIDE_m = 4;

export type Drawing = ReturnType<typeof useDrawing>;

/**
 * The hands on the map: what is drawn, chosen and moved, and what that does to the file. Pointer and keys do the same.
 * @param holeRef - the hole at work
 * @param reach_m - how far points and edges are held on to; null: not at all
 * @param onChosen - a thing was chosen on the map
 */
export function useDrawing(map: DraftMap, holeRef: string, reach_m: number | null, onChosen: () => void) {
  const { backend, perform } = usePlanner();
  const { courseId, name, file } = map;
  const [now, setNow] = useState<Editing>(() => ({
    ...{ tool: null, chosen: null, vertex: null, held: null },
    cross: startOf(file),
  }));
  const put = (changes: Partial<Editing>) => setNow(before => ({ ...before, ...changes }));
  // A thing that was chosen may be gone: what was drawn is taken back elsewhere.
  const chosen = now.chosen !== null && file.features[now.chosen] !== undefined ? now.chosen : null;
  const held = now.held !== null && file.features[now.held.index] !== undefined ? now.held : null;
  const editing: Editing = { ...now, chosen, held };
  const { tool, cross } = editing;
  const feature: Feature | null = chosen === null ? null : featureAt(file, chosen);
  const vertex: Vertex | undefined =
    now.vertex === null ? undefined : verticesOf(feature?.geometry ?? null)[now.vertex];

  const isAtWork = tool !== null || held !== null;
  const aim = useMemo(
    () => aimOf(file, { cross, held }, isAtWork ? reach_m : null),
    [file, cross, held, isAtWork, reach_m],
  );
  const preview = useMemo(
    () => (held === null ? null : heldShape(held, aim.position, offset_m(held.from, cross))),
    [held, aim, cross],
  );
  const sketch = useMemo(() => sketchOf(tool, aim.position), [tool, aim]);
  const shown = useMemo(() => {
    if (sketch !== null) return addFeatures(file, sketch);
    return held === null || preview === null ? file : reshapeFeature(file, held.index, preview);
  }, [file, held, preview, sketch]);

  const commit = (what: string, next: FeatureCollection) => {
    const desk = deskOf(backend);
    perform({
      what,
      redo: () => desk.change(courseId, name, next),
      undo: () => desk.change(courseId, name, file),
    });
  };
  const reshape = (what: string, index: number, geometry: Geometry) =>
    commit(`${what} ${thingWords(featureAt(file, index))}`, reshapeFeature(file, index, geometry));

  const begin = (wanted: Tool | null) => put({ tool: wanted, held: null, vertex: null });

  function finish(points: readonly Position[] = tool?.points ?? []) {
    if (tool === null) return;
    // A double click, or Enter twice in one place, is one point.
    const apart = points.filter((at, i) => i === 0 || at.join() !== points[i - 1]!.join());
    if (apart.length < positionsFor(tool.kind, tool.shape).least) return;
    const made = makeFeature(tool.kind, tool.shape, apart, {
      ...tool.tags,
      ref: OF_HOLE.has(tool.kind) ? holeRef : null,
      placed: tool.kind === 'line' && isNowhere(file) ? 'no' : null,
    });
    commit(`draw ${thingWords(made)}`, addFeatures(file, made));
    // Trees come in numbers.
    if (tool.kind === 'tree') put({ tool: { ...tool, points: [] } });
    else {
      put({ tool: null, chosen: file.features.length, vertex: null });
      onChosen();
    }
  }

  function takeBack() {
    if (tool !== null) put({ tool: { ...tool, points: tool.points.slice(0, -1) } });
  }

  function choose(index: number, at?: Position) {
    if (file.features[index] === undefined) return;
    const place = at ?? verticesOf(featureAt(file, index).geometry)[0]?.position;
    put({ tool: null, chosen: index, vertex: null, held: null, ...(place && { cross: plainly(place) }) });
    onChosen();
  }

  function chooseVertex(index: number | null) {
    const at = index === null ? undefined : verticesOf(feature?.geometry ?? null)[index]?.position;
    put({ vertex: index, held: null, ...(at && { cross: plainly(at) }) });
  }

  function stepVertex(by: 1 | -1) {
    const { length } = verticesOf(feature?.geometry ?? null);
    if (length > 0) chooseVertex(((now.vertex ?? (by === 1 ? -1 : 0)) + by + length) % length);
  }

  /** Enter, or a click: places, puts down, picks up or chooses. */
  function place(at: Position = cross) {
    if (tool !== null) {
      const points = [...tool.points, plainly(aimOf(file, { cross: at, held: null }, reach_m).position)];
      put({ tool: { ...tool, points }, cross: at });
      if (points.length >= positionsFor(tool.kind, tool.shape).most) finish(points);
      return;
    }
    if (held !== null) return putDown(at);
    const near = vertexUnder(feature?.geometry ?? null, at);
    if (near !== null) return pickUp(near, at);
    const under = thingUnder(file, at);
    if (under === null) put({ chosen: null, vertex: null, cross: at });
    else choose(under, at);
  }

  /** @param index - of the vertex; null: the whole thing */
  function pickUp(index: number | null, at: Position, from: Position = at) {
    if (feature === null || chosen === null || !isPlain(feature.geometry)) return;
    put({ vertex: index, cross: at, held: held ?? { index: chosen, vertex: index, from, geometry: feature.geometry } });
  }

  function putDown(at: Position) {
    if (held === null) return;
    const { position } = aimOf(file, { cross: at, held }, reach_m);
    const shape = heldShape(held, position, offset_m(held.from, at));
    put({ held: null, cross: plainly(position) });
    if (JSON.stringify(shape) !== JSON.stringify(held.geometry))
      reshape(held.vertex === null ? 'move' : 'move a point of', held.index, shape);
  }

  function cancel() {
    if (held !== null) put({ held: null, cross: held.from });
    else if (tool !== null) begin(tool.points.length > 0 ? { ...tool, points: [] } : null);
    else if (now.vertex !== null) put({ vertex: null });
    else put({ chosen: null });
  }

  /** The chosen point where the thing can do without it, else the thing. */
  function remove() {
    if (feature === null || chosen === null) return;
    if (vertex === undefined || !canRemoveVertex(feature.geometry, vertex.path)) return removeThing();
    put({ vertex: null, held: null });
    reshape('delete a point of', chosen, removeVertex(feature.geometry, vertex.path));
  }

  function removeThing() {
    if (feature === null || chosen === null) return;
    put({ chosen: null, vertex: null, held: null });
    commit(`delete ${thingWords(feature)}`, removeFeature(file, chosen));
  }

  function copy() {
    if (feature === null || chosen === null || (feature.geometry as Geometry | null) === null) return;
    commit(`copy ${thingWords(feature)}`, copyFeature(file, chosen, COPY_ASIDE_m, COPY_ASIDE_m));
    put({ chosen: file.features.length, vertex: null });
  }

  /** A new point after another one: half way to the next, or where it is wanted. */
  function insert(after: number = now.vertex ?? 0, at?: Position) {
    if (feature === null || chosen === null || !isPlain(feature.geometry)) return;
    const vertices = verticesOf(feature.geometry);
    const [here, next] = [vertices[after], vertices[after + 1] ?? vertices[0]];
    const isLine = feature.geometry.type !== 'Point' && feature.geometry.type !== 'MultiPoint';
    if (here === undefined || next === undefined || !isLine) return;
    const [east_m, north_m] = offset_m(here.position, next.position);
    const between = at ?? shiftPosition(plainly(here.position), east_m / 2, north_m / 2);
    put({ vertex: after + 1, cross: plainly(between) });
    reshape('add a point to', chosen, insertVertex(feature.geometry, here.path, between));
  }

  function moveBy(bearing_deg: number, distance_m: number) {
    if (feature === null || chosen === null || (feature.geometry as Geometry | null) === null) return;
    if (vertex !== undefined) {
      const to = positionAt(vertex.position, bearing_deg, distance_m);
      put({ cross: plainly(to) });
      return reshape('move a point of', chosen, moveVertex(feature.geometry, vertex.path, to));
    }
    const bearing = (bearing_deg * Math.PI) / 180;
    const [east_m, north_m] = [distance_m * Math.sin(bearing), distance_m * Math.cos(bearing)];
    commit(`move ${thingWords(feature)}`, moveFeature(file, chosen, east_m, north_m));
  }

  function tag(key: string, value: string | number | null) {
    if (feature === null || chosen === null) return;
    const kind = kindOf(feature);
    const label = kind === undefined ? undefined : KINDS[kind].fields.find(field => field.key === key)?.label;
    commit(`${(label ?? key).toLowerCase()} of ${thingWords(feature)}`, changeTags(file, chosen, { [key]: value }));
  }

  const keys: Readonly<Record<Exclude<MapKey['does'], 'shift' | 'step' | 'zoom'>, () => void>> = {
    place,
    finish,
    takeBack,
    cancel,
    remove,
    hold: () => pickUp(null, cross),
    copy,
    insert,
  };
  function press(key: Exclude<MapKey, { does: 'zoom' }>) {
    if (key.does === 'shift') put({ cross: shiftPosition(cross, key.east_m, key.north_m) });
    else if (key.does === 'step') stepVertex(key.by);
    else keys[key.does]();
  }

  return {
    ...{ editing, feature, vertex, aim, preview, shown },
    ...{ commit, begin, finish, takeBack, choose, chooseVertex, place, pickUp, putDown, press },
    ...{ remove, removeThing, copy, insert, moveBy, tag },
    moveCross: (at: Position) => put({ cross: plainly(at) }),
  };
}

/** Tees and baskets on the cross would only pair up with everything it passes. */
const NOT_BEFORE_PLACED: ReadonlySet<FeatureKind> = new Set(['tee', 'basket', 'dropZone', 'mando']);

/** What would be drawn, were the next point here and the last: the hole's numbers follow it. */
function sketchOf(tool: Tool | null, next: Position): Feature | null {
  if (tool === null || NOT_BEFORE_PLACED.has(tool.kind)) return null;
  const points = [...tool.points, plainly(next)];
  const apart = points.filter((at, i) => i === 0 || at.join() !== points[i - 1]!.join());
  const { least, most } = positionsFor(tool.kind, tool.shape);
  if (apart.length < least || apart.length > most) return null;
  return makeFeature(tool.kind, tool.shape, apart, tool.tags);
}
