import type { Feature, Geometry } from 'geojson';
import type { Notes } from './notes.ts';

type TagValue = string | number | boolean;
/** OpenStreetMap tags of one feature, by key; `path` says where in the file each stands. Blank and null values are absent. */
export type Tags = ReadonlyMap<string, Readonly<{ value: TagValue; path: string }>>;
export type TaggedFeature = Readonly<{ index: number; path: string; geometry: Geometry | null; tags: Tags }>;

/** What OSM converters write beside the tags; never tags themselves. */
const bookkeeping = new Set(['type', 'id', 'tags', 'relations', 'meta']);

/**
 * The feature's tags, from `properties.tags` where a converter nested them and from `properties` itself.
 * A key given twice with different values is a problem.
 */
export function readTags(feature: Feature, index: number, notes: Notes): TaggedFeature {
  const path = `features[${index}]`;
  const tags = new Map<string, { value: TagValue; path: string }>();
  const properties: Record<string, unknown> = feature.properties ?? {};
  const nested = properties.tags;
  if (typeof nested === 'object' && nested !== null && !Array.isArray(nested)) {
    for (const [key, value] of Object.entries(nested)) {
      if (isGiven(value)) tags.set(key, { value, path: `${path}.properties.tags.${key}` });
    }
  }
  for (const [key, value] of Object.entries(properties)) {
    if (bookkeeping.has(key) || key.startsWith('@') || !isGiven(value)) continue;
    const twin = tags.get(key);
    if (twin === undefined) tags.set(key, { value, path: `${path}.properties.${key}` });
    else if (String(twin.value).trim() !== String(value).trim()) {
      notes.problems.push({
        path: `${path}.properties.${key}`,
        message: `"${key}" is ${value} here but ${twin.value} in "tags": keep one of the two`,
      });
    }
  }
  return { index, path, geometry: feature.geometry, tags };
}

function isGiven(value: unknown): value is TagValue {
  if (typeof value === 'string') return value.trim() !== '';
  return typeof value === 'number' || typeof value === 'boolean';
}

/** The tag as text without outer blanks, or undefined when it is not given. */
export function tagText(tags: Tags, key: string): string | undefined {
  const tag = tags.get(key);
  return tag === undefined ? undefined : String(tag.value).trim();
}

/** The tag as a lower-case keyword; JSON true and false read as yes and no. */
export function tagWord(tags: Tags, key: string): string | undefined {
  const text = tagText(tags, key)?.toLowerCase();
  if (text === 'true') return 'yes';
  return text === 'false' ? 'no' : text;
}

/** Where the tag stands in the file, or the feature itself when it is not given. */
export function tagPath(feature: TaggedFeature, key: string): string {
  return feature.tags.get(key)?.path ?? feature.path;
}

/** What to call the feature in a message: `tree "Old oak"`, `basket 7`. */
export function label(feature: TaggedFeature, what: string): string {
  const name = tagText(feature.tags, 'name');
  const ref = tagText(feature.tags, 'ref');
  return [what, ref, name === undefined ? undefined : `"${name}"`].filter(part => part !== undefined).join(' ');
}
