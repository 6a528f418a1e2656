import { z } from 'zod';
import { duplicateKeys } from '../../core/course/duplicate-keys.ts';
import { oversizedJson } from '../../core/course/json-size.ts';
import { jsonSyntaxProblem } from '../../core/course/parse-course-text.ts';
import { problemPath } from '../../core/course/problem-path.ts';
import type { Problem, Result } from '../../core/units/result.ts';
import { isDegrees } from './degrees.ts';
import { importLimits } from './import-limits.ts';
import { leftOutCounter, type OsmData, type OsmElement, osmId } from './osm-element.ts';

const Place = z.looseObject({ lat: z.number(), lon: z.number() });
const Id = z.number().int('must be a whole number');
const Tags = z.record(z.string(), z.union([z.string(), z.number(), z.boolean()])).optional();
const Member = z.looseObject({
  type: z.enum(['node', 'way', 'relation']),
  ref: Id,
  role: z.string().optional(),
  lat: z.number().optional(),
  lon: z.number().optional(),
  geometry: z.array(Place.nullable()).optional(),
});
const Element = z.discriminatedUnion('type', [
  z.looseObject({
    type: z.literal('node'),
    id: Id,
    lat: z.number().optional(),
    lon: z.number().optional(),
    tags: Tags,
  }),
  z.looseObject({
    type: z.literal('way'),
    id: Id,
    nodes: z.array(Id).optional(),
    geometry: z.array(Place.nullable()).optional(),
    tags: Tags,
  }),
  z.looseObject({ type: z.literal('relation'), id: Id, members: z.array(Member).optional(), tags: Tags }),
]);
type Parsed = z.output<typeof Element>;
const MOST_PROBLEMS = 20;

/**
 * Overpass JSON: `out body`, `out geom`, or both. Where only a centre or a box was asked for, there is nothing to draw, and the
 * element is left out with advice.
 * @returns elements with nodes of their own, made up (negative ids) where the file gives places only
 */
export function readOverpass(text: string): Result<OsmData> {
  const large = oversizedJson(text);
  if (large !== undefined) return { ok: false, problems: [large] };
  let input: unknown;
  try {
    input = JSON.parse(text);
  } catch {
    return { ok: false, problems: [jsonSyntaxProblem(text)] };
  }
  const twice = duplicateKeys(text);
  if (twice.length > 0) return { ok: false, problems: twice.slice(0, MOST_PROBLEMS) };
  const list = (input as { elements?: unknown }).elements;
  if (!Array.isArray(list))
    return refuse('elements', 'is missing: Overpass JSON has a list "elements" of nodes, ways and relations');
  if (list.length > importLimits.osmElements)
    return refuse(
      'elements',
      `holds ${list.length}; at most ${importLimits.osmElements} are taken: ask Overpass for the course and its surroundings only`,
    );
  const remark = (input as { remark?: unknown }).remark;
  if (list.length === 0 && typeof remark === 'string')
    return refuse('remark', `Overpass answered without data and says: ${remark.slice(0, 200)}`);

  const problems: Problem[] = [];
  const parsed: Parsed[] = [];
  const leftOut = leftOutCounter();
  for (const [i, item] of list.entries()) {
    const type: unknown = typeof item === 'object' && item !== null ? (item as { type?: unknown }).type : undefined;
    if (typeof type === 'string' && !['node', 'way', 'relation'].includes(type)) {
      leftOut.add(`"${type.slice(0, 20)}" entries`, 'nothing that can be drawn');
      continue;
    }
    const element = Element.safeParse(item);
    if (element.success) parsed.push(element.data);
    else
      problems.push(
        ...element.error.issues.map(issue => ({
          path: problemPath(['elements', i, ...issue.path]),
          message: issue.message,
        })),
      );
    if (problems.length >= MOST_PROBLEMS) break;
  }
  if (problems.length > 0) return { ok: false, problems };
  return elementsOf(parsed, leftOut);
}

function elementsOf(parsed: readonly Parsed[], leftOut: ReturnType<typeof leftOutCounter>): Result<OsmData> {
  const problems: Problem[] = [];
  const elements: OsmElement[] = [];
  const known = new Set<string>();
  /** Nodes that a geometry gives on the way; a node of the file itself knows its tags and goes before. */
  const passing = new Map<number, { lat: number; lon: number }>();
  const hoisted = new Map<number, number[]>();
  const madeUp = new Map<string, number>();
  let references = 0;

  const nodeAt = ({ lat, lon }: { lat: number; lon: number }): number => {
    const key = `${lat} ${lon}`;
    // Negative, far from an editor's own: nothing else in the file has such an id.
    const id = madeUp.get(key) ?? -(2 ** 50) - madeUp.size;
    madeUp.set(key, id);
    passing.set(id, { lat, lon });
    return id;
  };
  const corners = (geometry: readonly ({ lat: number; lon: number } | null)[], nodes: readonly number[] | undefined) =>
    geometry.flatMap((place, i) => {
      if (place === null) return [];
      const id = nodes?.length === geometry.length ? nodes[i]! : undefined;
      if (id === undefined) return [nodeAt(place)];
      passing.set(id, { lat: place.lat, lon: place.lon });
      return [id];
    });

  for (const element of parsed) {
    const { type, id } = element;
    const key = `${type}/${id}`;
    if (osmId(id) === undefined) {
      problems.push({ path: key, message: 'has an id too large to be one' });
      continue;
    }
    if (known.has(key)) {
      leftOut.add(`${type}s`, 'in the file twice: the first is taken');
      continue;
    }
    known.add(key);
    const tags = Object.fromEntries(Object.entries(element.tags ?? {}).map(([name, value]) => [name, String(value)]));
    if (element.type === 'node') {
      if (element.lat === undefined || element.lon === undefined) leftOut.add('nodes', 'without a place in the file');
      else elements.push({ type: 'node', id, lat: element.lat, lon: element.lon, tags });
    } else if (element.type === 'way') {
      const nodes = element.geometry === undefined ? element.nodes : corners(element.geometry, element.nodes);
      references += nodes?.length ?? 0;
      if (nodes === undefined) leftOut.add('ways', NO_SHAPE);
      else elements.push({ type: 'way', id, nodes, tags });
    } else {
      const members = element.members ?? [];
      references += members.length;
      for (const member of members) {
        if (member.type === 'node' && member.lat !== undefined && member.lon !== undefined)
          passing.set(member.ref, { lat: member.lat, lon: member.lon });
        if (member.type !== 'way' || member.geometry === undefined || hoisted.has(member.ref)) continue;
        const nodes = corners(member.geometry, undefined);
        references += nodes.length;
        hoisted.set(member.ref, nodes);
      }
      elements.push({
        type: 'relation',
        id,
        tags,
        members: members.map(member => ({ type: member.type, ref: member.ref, role: member.role ?? '' })),
      });
    }
  }
  if (references > importLimits.osmReferences)
    problems.push({
      path: 'elements',
      message: `have more than ${importLimits.osmReferences} corners and members: ask Overpass for the course and its surroundings only`,
    });
  for (const [id, nodes] of hoisted) if (!known.has(`way/${id}`)) elements.push({ type: 'way', id, nodes, tags: {} });
  for (const [id, place] of passing)
    if (!known.has(`node/${id}`)) elements.push({ type: 'node', id, ...place, tags: {} });
  for (const element of elements)
    if (element.type === 'node' && !(isDegrees(element.lat, 90) && isDegrees(element.lon, 180)))
      problems.push({
        path: `node/${element.id}`,
        message: `lies nowhere: latitude ${element.lat}, longitude ${element.lon}; they must be degrees from -90 to 90 and -180 to 180`,
      });
  if (problems.length > 0) return { ok: false, problems: problems.slice(0, MOST_PROBLEMS) };
  return { ok: true, value: { elements, leftOut: leftOut.lines() } };
}

const NO_SHAPE = 'without a shape in the file: end the Overpass query with "out geom;"';

function refuse(path: string, message: string): Result<never> {
  return { ok: false, problems: [{ path, message }] };
}
