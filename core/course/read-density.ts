import { coverDefaults, lightDensity } from './defaults.ts';
import type { Notes } from './notes.ts';
import { parseShare } from './tag-share.ts';
import { type TaggedFeature, tagPath, tagText } from './tags.ts';

const words: Readonly<Record<string, number>> = {
  light: lightDensity,
  open: lightDensity,
  dense: coverDefaults.wood.density,
};

/**
 * `density`: the share of throws that stems and undergrowth stop on 10 m of level flight, as 0…1, a percentage, or one
 * of the words light, open, dense (our own tag; no OpenStreetMap definition).
 * @returns undefined when not given, or when bad (then a problem is noted)
 */
export function readDensity(feature: TaggedFeature, notes: Notes): number | undefined {
  const text = tagText(feature.tags, 'density')?.toLowerCase();
  if (text === undefined) return undefined;
  if (Object.hasOwn(words, text)) return words[text];
  const share = parseShare(text);
  if (share !== undefined) return share;
  notes.problems.push({
    path: tagPath(feature, 'density'),
    message: `density ${text} is not a share: write 0 to 1 (the share of throws stopped on 10 m of level flight), such as 0.3, or light, open or dense`,
  });
  return undefined;
}
