import type { Feature, FeatureCollection } from 'geojson';
import { featureAt } from './edit-features.ts';

/** New values by key; null takes the tag away. */
export type TagChanges = Readonly<Record<string, string | number | null>>;

/** A tag's value as text, wherever the file keeps it; undefined when it is not given. */
export function tagOf(feature: Feature, key: string): string | undefined {
  const properties: Record<string, unknown> = feature.properties ?? {};
  const value = properties[key] ?? nestedTags(properties)?.[key];
  if (typeof value !== 'string' && typeof value !== 'number' && typeof value !== 'boolean') return undefined;
  return String(value).trim() === '' ? undefined : String(value).trim();
}

/**
 * The file with other tags on one feature, written where its tags stand (`properties`, or `properties.tags`); all else stays.
 * @throws {RangeError} when there is no such feature
 */
export function changeTags(file: FeatureCollection, index: number, changes: TagChanges): FeatureCollection {
  return { ...file, features: file.features.with(index, withTags(featureAt(file, index), changes)) };
}

/** The feature with other tags. */
export function withTags(feature: Feature, changes: TagChanges): Feature {
  return { ...feature, properties: changed(feature, changes) };
}

function changed(feature: Feature, changes: TagChanges): Record<string, unknown> {
  const properties: Record<string, unknown> = feature.properties ?? {};
  const nested = nestedTags(properties);
  const direct: [string, string | number | null][] = [];
  const inTags: [string, string | number | null][] = [];
  for (const [key, value] of Object.entries(changes)) {
    const isNested = nested !== undefined && (Object.hasOwn(nested, key) || !Object.hasOwn(properties, key));
    // A key that stands in both places is changed in both: the reader refuses two values.
    if (isNested) inTags.push([key, value]);
    if (!isNested || Object.hasOwn(properties, key)) direct.push([key, value]);
  }
  const outer = edited(properties, direct);
  return inTags.length === 0 ? outer : { ...outer, tags: edited(nested!, inTags) };
}

function edited(
  object: Readonly<Record<string, unknown>>,
  changes: readonly (readonly [string, string | number | null])[],
): Record<string, unknown> {
  const entries = new Map(Object.entries(object));
  for (const [key, value] of changes) {
    if (value === null) entries.delete(key);
    else entries.set(key, value);
  }
  // fromEntries defines its keys, so that a key named __proto__ stays a plain key.
  return Object.fromEntries(entries);
}

function nestedTags(properties: Readonly<Record<string, unknown>>): Readonly<Record<string, unknown>> | undefined {
  const { tags } = properties;
  return typeof tags === 'object' && tags !== null && !Array.isArray(tags)
    ? (tags as Record<string, unknown>)
    : undefined;
}
