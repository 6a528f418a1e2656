import type { PeoplePlace } from './course.ts';
import { onMap } from './on-map.ts';
import { areaOf, isClosed, linesOf, pointsOf } from './shapes.ts';
import { type TaggedFeature, type Tags, tagWord } from './tags.ts';

const footpaths = new Set(['footway', 'path', 'cycleway', 'bridleway', 'steps', 'pedestrian', 'track', 'corridor']);

export function isFootpath(highway: string | undefined): boolean {
  return highway !== undefined && footpaths.has(highway);
}

/** Where people walk, drive, park, play or live: for cautions. Point-like street furniture is not a place. */
export function readPeople(feature: TaggedFeature): PeoplePlace[] {
  const what = placeWord(feature.tags);
  if (what === undefined) return [];
  const way = what === 'path' || what === 'road';
  // A closed path goes round; its inside is nobody's way unless it is drawn as an area.
  const loop = way && feature.geometry?.type === 'LineString' && isClosed(feature.geometry);
  const area = loop ? undefined : areaOf(feature);
  const shapes = area === undefined ? [...linesOf(feature), ...(way ? [] : pointsOf(feature))] : [area];
  return shapes.map(geometry => ({ ...onMap(feature), kind: 'people', geometry, what }));
}

function placeWord(tags: Tags): string | undefined {
  const highway = tagWord(tags, 'highway');
  if (highway !== undefined && highway !== 'no') return isFootpath(highway) ? 'path' : 'road';
  if (tagWord(tags, 'leisure') === 'playground') return 'playground';
  if (tagWord(tags, 'amenity') === 'parking') return 'parking';
  return (tagWord(tags, 'building') ?? 'no') === 'no' ? undefined : 'building';
}
