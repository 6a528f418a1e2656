import type { Ceiling, Gap, LonLat } from './course.ts';
import { ceilingWidth_m } from './defaults.ts';
import { groundDistance_m } from './ground-distance.ts';
import { limits } from './limits.ts';
import type { Notes } from './notes.ts';
import { onMap, standInFor, wrongShape } from './on-map.ts';
import { areaOf, linesOf, lonLat, polygonsOf } from './shapes.ts';
import { checkAbove, lengthTag } from './tag-number.ts';
import { label, type TaggedFeature, tagPath, tagText, tagWord } from './tags.ts';

/** A gap is a window to throw through; between posts farther apart there is nothing to thread. */
const widestGap_m = 100;
const narrowestGap_m = 0.21; // a disc is about that wide; nothing can be thrown through less

/** `obstacle=ceiling` and `obstacle=gap`, our own tags. */
export function readOverhead(feature: TaggedFeature, notes: Notes): (Ceiling | Gap)[] {
  const obstacle = tagWord(feature.tags, 'obstacle');
  if (obstacle === 'ceiling') return readCeilings(feature, notes);
  if (obstacle === 'gap') return readGap(feature, notes);
  if (obstacle !== undefined) {
    notes.assumptions.push({
      path: tagPath(feature, 'obstacle'),
      message: `obstacle=${tagText(feature.tags, 'obstacle')} is not known here (ceiling and gap are): left out`,
    });
  }
  return [];
}

function readCeilings(feature: TaggedFeature, notes: Notes): Ceiling[] {
  const area = areaOf(feature);
  const shapes = area === undefined ? linesOf(feature) : polygonsOf(area);
  if (shapes.length === 0) wrongShape(feature, 'ceiling', 'a Polygon or LineString', notes);
  const clearance_m = lengthTag(feature, 'min_height', limits.clearance_m, notes);
  const top_m = lengthTag(feature, 'height', limits.height_m, notes);
  const width = lengthTag(feature, 'width', limits.width_m, notes);
  checkAbove(feature, clearance_m, top_m, notes);
  if (clearance_m === undefined) {
    if (!feature.tags.has('min_height')) {
      notes.problems.push({
        path: feature.path,
        message: `${label(feature, 'ceiling')} has no min_height: add the free height under it in metres, such as "min_height": "3"`,
      });
    }
    return [];
  }
  return shapes.map(geometry => {
    const { assumed, orDefault } = standInFor(feature, 'ceiling line', 'ceiling lines', notes);
    const width_m = geometry.type === 'LineString' ? orDefault(width, 'width_m', 'width', ceilingWidth_m) : 0;
    return {
      ...onMap(feature, assumed),
      kind: 'ceiling',
      geometry,
      clearance_m,
      top_m: top_m ?? Number.POSITIVE_INFINITY,
      width_m,
    };
  });
}

function readGap(feature: TaggedFeature, notes: Notes): Gap[] {
  const low_m = lengthTag(feature, 'min_height', limits.minHeight_m, notes);
  const high_m = lengthTag(feature, 'height', limits.height_m, notes);
  checkAbove(feature, low_m, high_m, notes);
  const [line, ...more] = linesOf(feature);
  if (line === undefined || more.length > 0 || line.coordinates.length !== 2) {
    wrongShape(feature, 'gap', 'a LineString of two positions, post to post', notes);
    return [];
  }
  const posts = line.coordinates.map(lonLat) as [LonLat, LonLat];
  const wide_m = groundDistance_m(...posts);
  if (wide_m < narrowestGap_m || wide_m > widestGap_m) {
    notes.problems.push({
      path: `${feature.path}.geometry.coordinates`,
      message: `${label(feature, 'gap')} is ${wide_m.toFixed(2)} m wide: draw it from post to post, ${narrowestGap_m} to ${widestGap_m} m`,
    });
    return [];
  }
  return [{ ...onMap(feature), kind: 'gap', posts, low_m: low_m ?? 0, high_m: high_m ?? Number.POSITIVE_INFINITY }];
}
