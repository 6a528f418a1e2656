import type { LonLat } from './course.ts';
import { lineLength_m } from './ground-distance.ts';
import { leastHole_m, limits } from './limits.ts';
import type { Notes } from './notes.ts';
import { linesOf, lonLat } from './shapes.ts';
import { lengthTag, wholeNumberTag } from './tag-number.ts';
import { label, type TaggedFeature, tagText, tagWord } from './tags.ts';

export type HoleFacts = Readonly<{ name?: string; par?: number; taggedLength_m?: number; isPlaced?: false }>;
export type HoleLine = Readonly<{
  feature: TaggedFeature;
  label: string;
  ref?: string;
  facts: HoleFacts;
  positions: readonly LonLat[];
}>;

/** The lines of play as drawn, in file order. */
export function readHoleLines(features: readonly TaggedFeature[], notes: Notes): HoleLine[] {
  return features
    .filter(({ tags }) => tagWord(tags, 'disc_golf') === 'hole')
    .flatMap(feature => {
      const name = label(feature, 'hole');
      const facts = readHoleFacts(feature, notes);
      const lines = linesOf(feature);
      if (lines.length !== 1) {
        const parts = lines.length > 1 ? `, not ${lines.length} parts` : '';
        notes.problems.push({
          path: `${feature.path}.geometry`,
          message: `${name} must be one LineString from tee to basket${parts}: draw it so`,
        });
        return [];
      }
      const length_m = lineLength_m(lines[0]!.coordinates.map(lonLat));
      if (length_m < leastHole_m) {
        notes.problems.push({
          path: `${feature.path}.geometry.coordinates`,
          message: `${name} has a line of zero length (${length_m.toFixed(2)} m): draw it from tee to basket`,
        });
        return [];
      }
      if (tagWord(feature.tags, 'placed') === 'no')
        notes.assumptions.push({
          path: feature.path,
          message: `${name} is not placed on the map (placed=no): its own lengths and directions hold, where it lies does not`,
        });
      const ref = tagText(feature.tags, 'ref');
      const line: HoleLine = { feature, label: name, facts, positions: lines[0]!.coordinates.map(lonLat) };
      return [ref === undefined ? line : { ...line, ref }];
    });
}

/** Name, par and published length, wherever they are tagged: on the line, or on the tee of a hole without one. */
export function readHoleFacts(feature: TaggedFeature, notes: Notes): HoleFacts {
  const name = tagText(feature.tags, 'name');
  const par = wholeNumberTag(feature, 'par', limits.par, notes);
  const taggedLength_m = lengthTag(feature, 'dist', limits.taggedLength_m, notes);
  return {
    ...(name === undefined ? {} : { name }),
    ...(par === undefined ? {} : { par }),
    ...(taggedLength_m === undefined ? {} : { taggedLength_m }),
    ...(tagWord(feature.tags, 'placed') === 'no' ? { isPlaced: false as const } : {}),
  };
}
