import type { Feature } from 'geojson';
import { meaning } from '../meaning.ts';
import { newNotes } from '../notes.ts';
import { readTags, type TaggedFeature } from '../tags.ts';

/** What a feature says, as text by key; what converters write beside the tags, and keys that begin with @, are not part of it. */
export function plainTags(feature: Feature): ReadonlyMap<string, string> {
  const { tags } = readTags(feature, 0, newNotes());
  const plain = new Map([...tags].map(([key, { value }]) => [key, String(value).trim()]));
  for (const [key, value] of Object.entries(feature.properties ?? {}))
    if (typeof value === 'object' && value !== null && key !== 'tags' && !key.startsWith('@'))
      plain.set(key, JSON.stringify(value));
  return plain;
}

/** What it is to a course, in a word; things that mean nothing to it are all one kind. */
export function kindOf(feature: Feature): string {
  const { tags } = readTags(feature, 0, newNotes()) satisfies TaggedFeature;
  const word = meaning(tags) ?? 'other';
  return word === 'pin' ? 'basket' : word;
}
