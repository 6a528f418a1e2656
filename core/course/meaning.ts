import { coverForms } from './read-covers.ts';
import { isWater } from './read-out-ground.ts';
import { type Tags, tagText, tagWord } from './tags.ts';

/**
 * What a feature is to a course, in a word for messages; undefined when it is nothing to it and only travels through.
 */
export function meaning(tags: Tags): string | undefined {
  const golf = tagText(tags, 'disc_golf');
  if (golf !== undefined) return golf;
  const obstacle = tagText(tags, 'obstacle');
  if (obstacle !== undefined) return obstacle;
  const leisure = tagWord(tags, 'leisure');
  if (leisure === 'disc_golf_course') return 'course';
  if (leisure === 'playground') return 'playground';
  if (tagWord(tags, 'natural') === 'tree') return 'tree';
  const [form] = coverForms(tags);
  if (form !== undefined) return form === 'treeRow' ? 'tree row' : form;
  if (isWater(tags)) return 'water';
  if (tags.has('highway')) return 'way';
  if (tagWord(tags, 'amenity') === 'parking') return 'parking';
  if (tags.has('out_of_bounds')) return 'out-of-bounds';
  return tags.has('lost_disc') ? 'ground where discs get lost' : undefined;
}
