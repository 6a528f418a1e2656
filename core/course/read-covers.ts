import type { LineString, MultiPolygon, Polygon } from 'geojson';
import type { Cover, CoverForm } from './course.ts';
import { coverDefaults } from './defaults.ts';
import { limits } from './limits.ts';
import type { Notes } from './notes.ts';
import { onMap, standInFor } from './on-map.ts';
import { readDensity } from './read-density.ts';
import { areaOf, linesOf, polygonsOf } from './shapes.ts';
import { checkAbove, lengthTag } from './tag-number.ts';
import { label, type TaggedFeature, type Tags, tagWord } from './tags.ts';

const words: Readonly<Record<CoverForm, readonly [one: string, many: string]>> = {
  wood: ['wood', 'woods'],
  scrub: ['scrub', 'scrubs'],
  treeRow: ['tree row', 'tree rows'],
  hedge: ['hedge', 'hedges'],
  wall: ['wall', 'walls'],
  fence: ['fence', 'fences'],
  building: ['building', 'buildings'],
};
/** Forms that have leaves or stems, so that light gets through. */
const loose: ReadonlySet<CoverForm> = new Set(['wood', 'scrub', 'treeRow']);
const walls = new Set(['wall', 'retaining_wall', 'city_wall', 'block', 'jersey_barrier']);
/** Barriers that stop people or wheels, not discs. */
const lowBarriers = new Set([
  'kerb',
  'ditch',
  'cattle_grid',
  'bollard',
  'gate',
  'lift_gate',
  'swing_gate',
  'stile',
  'entrance',
  'height_restrictor',
  'log',
  'no',
]);

/** Ground covered by things in the way: woods, scrub, tree rows, hedges, walls, fences, buildings. */
export function readCovers(feature: TaggedFeature, notes: Notes): Cover[] {
  return coverForms(feature.tags).flatMap(form => readForm(feature, form, notes));
}

/** Which forms the tags name; a wood behind a fence can be both. */
export function coverForms(tags: Tags): CoverForm[] {
  const forms: CoverForm[] = [];
  const natural = tagWord(tags, 'natural');
  if (natural === 'wood' || tagWord(tags, 'landuse') === 'forest') forms.push('wood');
  if (natural === 'scrub') forms.push('scrub');
  if (natural === 'tree_row') forms.push('treeRow');
  const barrier = tagWord(tags, 'barrier');
  if (barrier === 'hedge') forms.push('hedge');
  else if (barrier !== undefined && walls.has(barrier)) forms.push('wall');
  else if (barrier !== undefined && !lowBarriers.has(barrier)) forms.push('fence');
  if ((tagWord(tags, 'building') ?? 'no') !== 'no') forms.push('building');
  return forms;
}

function readForm(feature: TaggedFeature, form: CoverForm, notes: Notes): Cover[] {
  const [one, many] = words[form];
  const shapes = shapesOf(feature, form);
  if (shapes.length === 0) {
    const wanted = loose.has(form) && form !== 'treeRow' ? 'a Polygon' : 'a LineString or Polygon';
    notes.assumptions.push({
      path: feature.path,
      message: `${label(feature, one)} is a ${feature.geometry?.type ?? 'feature without geometry'}: left out; draw it as ${wanted}`,
    });
    return [];
  }
  const defaults = coverDefaults[form];
  const height = lengthTag(feature, 'height', limits.height_m, notes);
  const base = lengthTag(feature, 'min_height', limits.minHeight_m, notes);
  const width = lengthTag(feature, 'width', limits.width_m, notes);
  const density = loose.has(form) ? readDensity(feature, notes) : undefined;
  checkAbove(feature, base, height, notes);
  return shapes.map((geometry, i) => {
    // The parts of a multi-geometry are one thing to the reader: only the first is counted in the summary.
    const { assumed, orDefault } = standInFor(feature, one, many, i === 0 ? notes : { ...notes, standIns: [] });
    const tallEnough_m = base === undefined || base < defaults.height_m ? defaults.height_m : base + defaults.height_m;
    const height_m = orDefault(height, 'height_m', 'height', tallEnough_m);
    const width_m = geometry.type === 'LineString' ? orDefault(width, 'width_m', 'width', defaults.width_m) : 0;
    const lower_m = Math.min(defaults.base_m, height_m / 2);
    const base_m =
      loose.has(form) && form !== 'scrub'
        ? orDefault(base, 'base_m', 'min_height (underside of the branches)', lower_m)
        : (base ?? 0);
    const solid = base_m > 0 ? 0 : 1;
    const stems = loose.has(form)
      ? orDefault(density, 'density', 'density', defaults.density, String(defaults.density))
      : solid;
    return { ...onMap(feature, assumed), kind: 'cover', form, geometry, width_m, height_m, base_m, density: stems };
  });
}

function shapesOf(feature: TaggedFeature, form: CoverForm): (Polygon | MultiPolygon | LineString)[] {
  const drawnArea = feature.geometry?.type === 'Polygon' || feature.geometry?.type === 'MultiPolygon';
  // A closed wall or fence goes round a place; only `area=yes` makes it a block. Converters draw it as a Polygon either way.
  const outline = (form === 'wall' || form === 'fence') && tagWord(feature.tags, 'area') !== 'yes';
  if (drawnArea && outline) {
    return polygonsOf(areaOf(feature)!).flatMap(({ coordinates }) =>
      coordinates.map(ring => ({ type: 'LineString' as const, coordinates: ring })),
    );
  }
  if (drawnArea) return [areaOf(feature)!];
  if (form === 'wood' || form === 'scrub' || form === 'building') {
    const area = areaOf(feature);
    return area === undefined ? (form === 'building' ? linesOf(feature) : []) : [area];
  }
  return linesOf(feature);
}
