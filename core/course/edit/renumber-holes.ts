import type { Feature, FeatureCollection } from 'geojson';
import { refKey, refKeys } from '../hole-ref.ts';
import { featureAt } from './edit-features.ts';
import { layoutHolesOf, setLayoutHoles } from './edit-layouts.ts';
import { changeTags, tagOf } from './edit-tags.ts';

/**
 * The file with holes called otherwise, everywhere a hole is named: lines, tees, baskets (also those shared by several
 * holes), what belongs to a hole, and layouts.
 * @param refs - new ref by old one; refs may change places, as in 3 → 4 and 4 → 3
 */
export function renumberHoles(file: FeatureCollection, refs: ReadonlyMap<string, string>): FeatureCollection {
  const byKey = new Map([...refs].map(([from, to]) => [refKey(from), to]));
  let renumbered = file;
  for (const [index, feature] of file.features.entries()) {
    const holes = layoutHolesOf(feature);
    if (holes !== undefined) {
      const changed = holes.map(hole => ({ ...hole, ref: byKey.get(refKey(String(hole.ref))) ?? hole.ref }));
      if (changed.some((hole, i) => hole.ref !== holes[i]!.ref))
        renumbered = setLayoutHoles(renumbered, index, changed);
      continue;
    }
    const ref = namesHole(feature) ? tagOf(feature, 'ref') : undefined;
    if (ref === undefined || !refKeys(ref).some(key => byKey.has(key))) continue;
    const changed = ref.split(';').map(part => byKey.get(refKey(part)) ?? part.trim());
    renumbered = changeTags(renumbered, index, { ref: changed.join(';') });
  }
  return renumbered;
}

/** One hole called otherwise; a hole that has that ref already takes the old one. */
export function renumberHole(file: FeatureCollection, from: string, to: string): FeatureCollection {
  return renumberHoles(
    file,
    new Map([
      [to, from],
      [from, to],
    ]),
  );
}

/**
 * The file with a tee or basket given to a hole.
 * @param how - `only`: to this hole alone; `also`: shared with the holes it has
 * @throws {RangeError} when there is no such feature
 */
export function attachSite(
  file: FeatureCollection,
  index: number,
  ref: string,
  how: 'only' | 'also' = 'only',
): FeatureCollection {
  const before = tagOf(featureAt(file, index), 'ref');
  if (how === 'only' || before === undefined) return changeTags(file, index, { ref });
  if (refKeys(before).includes(refKey(ref))) return file;
  return changeTags(file, index, { ref: `${before};${ref}` });
}

/** Roads and buildings have refs of their own. */
function namesHole(feature: Feature): boolean {
  if (tagOf(feature, 'disc_golf') !== undefined || tagOf(feature, 'obstacle') !== undefined) return true;
  const isSomethingElse = ['highway', 'building', 'railway', 'waterway'].some(key => tagOf(feature, key) !== undefined);
  return !isSomethingElse && ['natural', 'landuse', 'barrier'].some(key => tagOf(feature, key) !== undefined);
}
