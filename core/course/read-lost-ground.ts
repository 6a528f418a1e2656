import type { LostGround } from './course.ts';
import type { Notes } from './notes.ts';
import { onMap, wrongShape } from './on-map.ts';
import { areaOf } from './shapes.ts';
import { parseShare } from './tag-share.ts';
import { type TaggedFeature, tagPath, tagText } from './tags.ts';

/**
 * Ground where discs get lost: any area with `lost_disc`, the share of discs at rest on it that are not found, beside its own tags
 * (our own tag; no OpenStreetMap definition). Without the tag every disc is found, in the thickest wood too.
 */
export function readLostGround(feature: TaggedFeature, notes: Notes): LostGround[] {
  const text = tagText(feature.tags, 'lost_disc');
  if (text === undefined) return [];
  const share = parseShare(text);
  if (share === undefined) {
    notes.problems.push({
      path: tagPath(feature, 'lost_disc'),
      message: `lost_disc ${text} is not a share: write 0 to 1 (the share of discs at rest there that are not found), such as 0.03 or 3%`,
    });
    return [];
  }
  const geometry = areaOf(feature);
  if (geometry === undefined) {
    wrongShape(feature, 'ground where discs get lost', 'a Polygon', notes);
    return [];
  }
  return share === 0 ? [] : [{ ...onMap(feature), kind: 'lostGround', geometry, share }];
}
