import type { OutOfBounds } from './course.ts';
import { stripWidths_m } from './defaults.ts';
import { limits } from './limits.ts';
import type { Notes } from './notes.ts';
import { onMap, standInFor, wrongShape } from './on-map.ts';
import { isFootpath } from './read-people.ts';
import { readRelief } from './read-relief.ts';
import { areaOf, linesOf } from './shapes.ts';
import { lengthTag } from './tag-number.ts';
import { label, type TaggedFeature, type Tags, tagPath, tagText, tagWord } from './tags.ts';

/** Values of `waterway` that are works or services, not water. */
const dryWaterways = new Set([
  'dam',
  'weir',
  'lock_gate',
  'water_point',
  'fuel',
  'boatyard',
  'turning_point',
  'milestone',
  'sluice_gate',
  'no',
]);

/**
 * Surroundings that count as out-of-bounds: water unless `out_of_bounds=no` (an assumption to confirm: the course
 * decides), anything else only when it says `out_of_bounds=yes`. A `disc_golf` tag on the same feature decides before this.
 */
export function readOutGround(feature: TaggedFeature, notes: Notes): OutOfBounds[] {
  const { tags } = feature;
  const word = tagWord(tags, 'out_of_bounds');
  if (word !== undefined && word !== 'yes' && word !== 'no') {
    notes.problems.push({
      path: tagPath(feature, 'out_of_bounds'),
      message: `out_of_bounds=${tagText(tags, 'out_of_bounds')} is not known: write yes or no`,
    });
  }
  if (word === 'no' || (tags.has('disc_golf') && tagWord(tags, 'disc_golf') !== 'course')) return [];
  const water = isWater(tags);
  if (word !== 'yes' && !water) return [];
  const area = isStrip(feature) ? undefined : areaOf(feature);
  const shapes = area === undefined ? linesOf(feature) : [area];
  if (shapes.length === 0) {
    if (word === 'yes') wrongShape(feature, 'out-of-bounds', 'a Polygon or LineString', notes);
    return [];
  }
  const what = label(feature, waterWord(tags));
  if (word !== 'yes') {
    notes.assumptions.push({
      path: feature.path,
      message: `${what} is taken as out-of-bounds: to confirm; tag out_of_bounds=yes or no as the course decides`,
    });
  }
  const relief = readRelief(feature, notes);
  const width = lengthTag(feature, 'width', limits.width_m, notes);
  return shapes.map(geometry => {
    const { assumed, orDefault } = standInFor(
      feature,
      water ? 'waterway' : 'road',
      water ? 'waterways' : 'roads',
      notes,
    );
    const strip = geometry.type === 'LineString' && isStrip(feature);
    const strip_m = strip ? orDefault(width, 'strip_m', 'width', defaultWidth_m(tags)) : undefined;
    const reason = word === 'yes' ? 'tagged' : 'water';
    return {
      ...onMap(feature, assumed),
      kind: 'outOfBounds',
      geometry,
      reason,
      ...(strip_m === undefined ? {} : { strip_m }),
      ...relief,
    };
  });
}

/** Open water on the ground: not a dam, not a culvert. */
export function isWater(tags: Tags): boolean {
  if ((tagWord(tags, 'tunnel') ?? 'no') !== 'no') return false;
  const waterway = tagWord(tags, 'waterway');
  const flowing = waterway !== undefined && !dryWaterways.has(waterway);
  return tagWord(tags, 'natural') === 'water' || (tagWord(tags, 'water') ?? 'no') !== 'no' || flowing;
}

function waterWord(tags: Tags): string {
  const kind = [tagWord(tags, 'water'), tagWord(tags, 'waterway')].find(word => word !== undefined && word !== 'yes');
  return kind?.replaceAll('_', ' ') ?? 'water';
}

/** A road or stream drawn as a line is itself out, over its width; other lines are edges of what lies beyond. */
function isStrip({ tags, geometry }: TaggedFeature): boolean {
  const line = geometry?.type === 'LineString' || geometry?.type === 'MultiLineString';
  return (
    line &&
    (tags.has('highway') || tags.has('railway') || (tags.has('waterway') && tagWord(tags, 'waterway') !== 'riverbank'))
  );
}

function defaultWidth_m(tags: Tags): number {
  if (tags.has('waterway')) return stripWidths_m.waterway;
  return isFootpath(tagWord(tags, 'highway')) ? stripWidths_m.path : stripWidths_m.road;
}
