import type { FeatureCollection } from 'geojson';
import type { Notes } from './notes.ts';
import { type TaggedFeature, tagText, tagWord } from './tags.ts';

/** The name of the course feature, else of the collection, else of the file. */
export function courseName(
  source: FeatureCollection,
  features: readonly TaggedFeature[],
  fileName: string,
  notes: Notes,
): string {
  const courses = features.filter(({ tags }) => tagWord(tags, 'leisure') === 'disc_golf_course');
  const names = courses.flatMap(({ tags }) => tagText(tags, 'name') ?? []);
  if (new Set(names).size > 1) {
    notes.assumptions.push({
      path: courses[1]!.path,
      message: `the file holds several courses (${names.join(', ')}): their holes are read as one course, named after the first`,
    });
  }
  const collectionName = (source as { name?: unknown }).name;
  const fromCollection =
    typeof collectionName === 'string' && collectionName.trim() !== '' ? collectionName.trim() : undefined;
  return names[0] ?? fromCollection ?? fileName.replace(/^.*[\\/]/, '').replace(/\.(?:geo)?json$/i, '');
}
