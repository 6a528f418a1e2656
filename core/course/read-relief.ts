import type { DropZoneUse, Relief } from './course.ts';
import type { Notes } from './notes.ts';
import { type TaggedFeature, tagPath, tagText } from './tags.ts';

const reliefs: Readonly<Record<string, Relief>> = {
  line: 'line',
  previous_lie: 'previousLie',
  drop_zone: 'dropZone',
};
const uses: Readonly<Record<string, DropZoneUse>> = {
  out_of_bounds: 'outOfBounds',
  mando: 'mando',
  lost_disc: 'lostDisc',
};

/** `relief` of out-of-bounds ground or an island: where the course lets a throw that went out be played from (our own tag). */
export function readRelief(feature: TaggedFeature, notes: Notes): { relief?: readonly Relief[] } {
  const relief = wordsOf(feature, 'relief', reliefs, notes);
  return relief === undefined ? {} : { relief };
}

/** `serves` of a drop zone: what it is for (our own tag). */
export function readUses(feature: TaggedFeature, notes: Notes): { uses?: readonly DropZoneUse[] } {
  const served = wordsOf(feature, 'serves', uses, notes);
  return served === undefined ? {} : { uses: served };
}

/** A list of known words with semicolons between, as OpenStreetMap writes lists. */
function wordsOf<T>(
  feature: TaggedFeature,
  key: string,
  known: Readonly<Record<string, T>>,
  notes: Notes,
): readonly T[] | undefined {
  const text = tagText(feature.tags, key);
  if (text === undefined) return undefined;
  const words = text
    .toLowerCase()
    .split(';')
    .map(word => word.trim())
    .filter(word => word !== '');
  const unknown = words.filter(word => !Object.hasOwn(known, word));
  if (unknown.length > 0) {
    notes.problems.push({
      path: tagPath(feature, key),
      message: `${key}=${text} is not known: write ${Object.keys(known).join(', ')}, or several with semicolons between`,
    });
    return undefined;
  }
  return words.length === 0 ? undefined : [...new Set(words.map(word => known[word]!))];
}
