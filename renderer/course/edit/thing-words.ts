import type { Feature } from 'geojson';
import { tagOf } from '../../../core/course/edit/edit-tags.ts';
import { KINDS, kindOf } from '../../../core/course/edit/kinds.ts';

/** What to call a thing of the map: "tee 3, Long", "tree", "water, Mill pond". */
export function thingWords(feature: Feature): string {
  const ref = tagOf(feature, 'ref');
  const name = tagOf(feature, 'name');
  return [[kindWords(feature), ref].filter(Boolean).join(' '), name].filter(Boolean).join(', ');
}

function kindWords(feature: Feature): string {
  const kind = kindOf(feature);
  if (kind !== undefined) return KINDS[kind].word;
  if (tagOf(feature, 'leisure') === 'disc_golf_course') return 'the course';
  const keys = ['disc_golf', 'obstacle', 'building', 'barrier', 'highway', 'natural', 'landuse', 'waterway', 'amenity'];
  for (const key of keys) {
    const value = tagOf(feature, key);
    if (value !== undefined) return (value === 'yes' ? key : value).replaceAll('_', ' ');
  }
  return 'something else';
}
