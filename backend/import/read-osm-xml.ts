import type { Result } from '../../core/units/result.ts';
import { degrees, isDegrees } from './degrees.ts';
import { importLimits } from './import-limits.ts';
import { leftOutCounter, type OsmData, type OsmElement, type OsmMember, osmId } from './osm-element.ts';
import { scanXml } from './scan-xml.ts';

type Open = {
  type: 'node' | 'way' | 'relation';
  id: number;
  lat: number;
  lon: number;
  tags: [string, string][];
  nodes: number[];
  members: OsmMember[];
  isDeleted: boolean;
};
type Attributes = ReadonlyMap<string, string>;

/** OpenStreetMap XML (API 0.6, and what Overpass writes as `out body`). @returns its elements, or the first thing wrong with its line and column */
export function readOsmXml(text: string): Result<OsmData> {
  const elements: OsmElement[] = [];
  const leftOut = leftOutCounter();
  let current: Open | undefined;
  let references = 0;
  const tooManyReferences = () =>
    ++references > importLimits.osmReferences
      ? `the file has more than ${importLimits.osmReferences} corners of ways and members of relations: cut it down to the course and its surroundings`
      : undefined;

  const begin = (type: Open['type'], attributes: Attributes): string | undefined => {
    if (current !== undefined) return `a ${type} stands inside a ${current.type}: the file is damaged`;
    if (elements.length >= importLimits.osmElements)
      return `the file has more than ${importLimits.osmElements} nodes, ways and relations: cut it down to the course and its surroundings`;
    const id = osmId(attributes.get('id'));
    if (id === undefined) return `this ${type} has no id, or one that is no whole number`;
    const isDeleted = attributes.get('action') === 'delete' || attributes.get('visible') === 'false';
    const [lat, lon] = [degrees(attributes.get('lat')), degrees(attributes.get('lon'))];
    if (type === 'node' && !isDeleted && !(isDegrees(lat, 90) && isDegrees(lon, 180)))
      return `node ${id} has no latitude from -90 to 90 and longitude from -180 to 180 (lat, lon in degrees)`;
    current = { type, id, lat, lon, tags: [], nodes: [], members: [], isDeleted };
    return undefined;
  };

  const open = (name: string, attributes: Attributes): string | undefined => {
    switch (name) {
      case 'node':
      case 'way':
      case 'relation':
        return begin(name, attributes);
      case 'tag': {
        const key = attributes.get('k');
        if (current === undefined) return undefined;
        if (key === undefined || key === '') return `a tag of ${current.type} ${current.id} has no key (k)`;
        current.tags.push([key, attributes.get('v') ?? '']);
        return undefined;
      }
      case 'nd': {
        if (current === undefined) return undefined;
        const ref = osmId(attributes.get('ref'));
        if (ref === undefined) return `a corner of ${current.type} ${current.id} names no node (ref)`;
        current.nodes.push(ref);
        return tooManyReferences();
      }
      case 'member': {
        if (current === undefined) return undefined;
        const [type, ref] = [attributes.get('type'), osmId(attributes.get('ref'))];
        if ((type !== 'node' && type !== 'way' && type !== 'relation') || ref === undefined)
          return `a member of relation ${current.id} does not say what it is (type, ref)`;
        current.members.push({ type, ref, role: attributes.get('role') ?? '' });
        return tooManyReferences();
      }
      default:
        return undefined;
    }
  };

  const close = (name: string): void => {
    if (current === undefined || name !== current.type) return;
    const { type, id, lat, lon, nodes, members, isDeleted } = current;
    const tags = Object.fromEntries(current.tags);
    current = undefined;
    if (isDeleted) leftOut.add(`${type}s`, 'marked as deleted in the file');
    else if (type === 'node') elements.push({ type, id, lat, lon, tags });
    else if (type === 'way') elements.push({ type, id, nodes, tags });
    else elements.push({ type, id, members, tags });
  };

  const wrong = scanXml(text, { open, close, text: () => {} });
  return wrong === undefined
    ? { ok: true, value: { elements, leftOut: leftOut.lines() } }
    : { ok: false, problems: [wrong] };
}
