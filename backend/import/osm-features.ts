import type { Feature, FeatureCollection } from 'geojson';
import osmtogeojson from 'osmtogeojson';
import type { Problem } from '../../core/units/result.ts';
import { importLimits } from './import-limits.ts';
import {
  type LeftOut,
  leftOutCounter,
  type OsmData,
  type OsmElement,
  type OsmRelation,
  type OsmWay,
} from './osm-element.ts';

/** A course that a relation names; its members as feature ids. */
type NamedCourse = Readonly<{ id: string; name: string; members: ReadonlySet<string> }>;

export type OsmFeatures = Readonly<{
  /** Tags stand directly in `properties`; ids read `way/123`. */
  features: readonly Feature[];
  relations: readonly NamedCourse[];
  leftOut: readonly LeftOut[];
  assumptions: readonly Problem[];
}>;

type Convert = (data: { elements: readonly object[] }) => FeatureCollection;

/** OpenStreetMap elements as GeoJSON features; who edited what, and when, stays behind. */
export function osmFeatures({ elements, leftOut: before }: OsmData): OsmFeatures {
  const leftOut = leftOutCounter();
  for (const { what, count, why } of before) leftOut.add(what, why, count);
  const usable = withoutHeavyRelations(elements, leftOut);
  // It writes into what it is given, and its types know only its default export.
  const copies = usable.map(copyOf);
  const { features } = (osmtogeojson as unknown as Convert)({ elements: copies });
  const assumptions: Problem[] = [];
  const kept = features.flatMap(feature => {
    const { id, geometry, properties } = feature;
    const tags = properties?.tags as Record<string, string>;
    if (Object.keys(tags).length === 0) return [];
    if (properties?.tainted === true)
      assumptions.push({
        path: String(id),
        message: `${tags.name ?? tags.disc_golf ?? 'this'} is not whole in the file (corners are missing): it is drawn as far as it goes`,
      });
    return [{ type: 'Feature', id, properties: { ...tags }, geometry } as Feature];
  });
  const taggedWithoutPlace = missingShapes(elements, new Set(kept.map(({ id }) => String(id))));
  for (const what of taggedWithoutPlace) leftOut.add(what, 'none of its corners is in the file');
  return { features: kept, relations: namedCourses(elements), leftOut: leftOut.lines(), assumptions };
}

function copyOf(element: OsmElement): object {
  switch (element.type) {
    case 'node':
      return { ...element, tags: { ...element.tags } };
    case 'way':
      return { ...element, nodes: [...element.nodes], tags: { ...element.tags } };
    case 'relation':
      return { ...element, members: element.members.map(member => ({ ...member })), tags: { ...element.tags } };
    default:
      return element satisfies never;
  }
}

/** Rings are sorted into each other corner by corner: a few made-up relations could take hours. */
function withoutHeavyRelations(
  elements: readonly OsmElement[],
  leftOut: ReturnType<typeof leftOutCounter>,
): OsmElement[] {
  const ways = new Map(
    elements.flatMap(element => (element.type === 'way' ? [[element.id, element.nodes.length]] : [])),
  );
  let pairs = 0;
  return elements.filter(element => {
    if (element.type !== 'relation') return true;
    const cornersOf = (role: string) =>
      element.members.reduce((sum, member) => sum + (isOf(member.role, role) ? (ways.get(member.ref) ?? 0) : 0), 0);
    const cost = cornersOf('outer') * cornersOf('inner');
    const isHeavy = element.members.length > importLimits.membersOfRelation || pairs + cost > importLimits.ringPairs;
    if (!isHeavy) pairs += cost;
    else if (!isCourseRelation(element)) leftOut.add('areas of many parts', 'too large to be drawn here');
    return !isHeavy || isCourseRelation(element);
  });
}

const isOf = (role: string, wanted: string) => role === wanted || (role === '' && wanted === 'outer');

function isCourseRelation({ tags }: OsmRelation): boolean {
  return tags.type === 'disc_golf_course' || tags.leisure === 'disc_golf_course';
}

function namedCourses(elements: readonly OsmElement[]): NamedCourse[] {
  return elements.flatMap(element =>
    element.type === 'relation' && isCourseRelation(element)
      ? [
          {
            id: `relation/${element.id}`,
            name: element.tags.name ?? `relation ${element.id}`,
            members: new Set(element.members.map(({ type, ref }) => `${type}/${ref}`)),
          },
        ]
      : [],
  );
}

function missingShapes(elements: readonly OsmElement[], drawn: ReadonlySet<string>): string[] {
  return elements.flatMap(element => {
    const isGolfWay = (way: OsmElement): way is OsmWay => way.type === 'way' && way.tags.disc_golf !== undefined;
    return isGolfWay(element) && !drawn.has(`way/${element.id}`)
      ? [`${element.tags.disc_golf} ${element.tags.ref ?? ''} (way/${element.id})`]
      : [];
  });
}
