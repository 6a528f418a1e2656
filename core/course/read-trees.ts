import type { Tree } from './course.ts';
import { treeDefaults } from './defaults.ts';
import { limits } from './limits.ts';
import type { Notes } from './notes.ts';
import { onMap, standInFor } from './on-map.ts';
import { lonLat, pointsOf } from './shapes.ts';
import { checkAbove, lengthTag } from './tag-number.ts';
import { label, type TaggedFeature, tagWord } from './tags.ts';

/** Single trees: `natural=tree`, with `height`, `diameter_crown`, `min_height` (underside of the crown) and `circumference`. */
export function readTrees(feature: TaggedFeature, notes: Notes): Tree[] {
  if (tagWord(feature.tags, 'natural') !== 'tree') return [];
  const points = pointsOf(feature);
  if (points.length === 0) {
    notes.assumptions.push({
      path: feature.path,
      message: `${label(feature, 'tree')} is not a Point: left out; draw it as a Point, or as natural=wood if it is a stand`,
    });
    return [];
  }
  const { assumed, ...numbers } = readNumbers(feature, notes);
  return points.map(point => ({
    ...onMap(feature, assumed),
    kind: 'tree',
    position: lonLat(point.coordinates),
    ...numbers,
  }));
}

function readNumbers(feature: TaggedFeature, notes: Notes) {
  const height = lengthTag(feature, 'height', limits.height_m, notes);
  const base = lengthTag(feature, 'min_height', limits.minHeight_m, notes);
  const crown = lengthTag(feature, 'diameter_crown', limits.crownDiameter_m, notes);
  const circumference = lengthTag(feature, 'circumference', limits.circumference_m, notes);
  checkAbove(feature, base, height, notes);
  const { assumed, orDefault } = standInFor(feature, 'tree', 'trees', notes);
  const tallEnough_m = Math.max(treeDefaults.height_m, (base ?? 0) + treeDefaults.leastCrown_m);
  const height_m = orDefault(height, 'height_m', 'height', tallEnough_m);
  const crownText = `${treeDefaults.crownPerHeight} of the height`;
  const crownDiameter_m = orDefault(
    crown,
    'crownDiameter_m',
    'diameter_crown',
    treeDefaults.crownPerHeight * height_m,
    crownText,
  );
  const low_m = Math.min(treeDefaults.crownBase_m, treeDefaults.crownBasePerHeight * height_m);
  const crownBase_m = orDefault(base, 'crownBase_m', 'min_height (underside of the crown)', low_m);
  const girth = circumference === undefined ? undefined : circumference / Math.PI;
  // A sapling's stem is never wider than its crown.
  const trunkDiameter_m = orDefault(
    girth,
    'trunkDiameter_m',
    'circumference',
    Math.min(treeDefaults.trunkDiameter_m, crownDiameter_m),
    'a trunk of 0.3 m',
  );
  return { assumed, height_m, crownDiameter_m, crownBase_m, trunkDiameter_m };
}
