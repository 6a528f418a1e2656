import type { LonLat, Site } from './course.ts';
import { refKeys } from './hole-ref.ts';
import { limits } from './limits.ts';
import type { Notes } from './notes.ts';
import { areaOf, centreOf, lonLat, pointsOf, polygonsOf } from './shapes.ts';
import { lengthTag } from './tag-number.ts';
import { label, type TaggedFeature, tagText, tagWord } from './tags.ts';

export type SiteKind = 'tee' | 'basket';
/** A mapped tee or basket with the holes its `ref` names (none: it belongs where a line ends). */
export type MappedSite = Readonly<{ site: Site; refs: readonly string[]; feature: TaggedFeature; label: string }>;

/** Tees (points or areas; of an area the centre) or baskets (points) of the map, in file order. */
export function readSites(features: readonly TaggedFeature[], kind: SiteKind, notes: Notes): MappedSite[] {
  return features
    .filter(feature => siteKind(feature) === kind)
    .flatMap(feature => {
      const name = label(feature, kind);
      const positions = sitePositions(feature, kind);
      if (positions.length === 0)
        notes.problems.push({ path: `${feature.path}.geometry`, message: wrongGeometry(name, kind) });
      const ele_m = lengthTag(feature, 'ele', limits.elevation_m, notes);
      return positions.map(position => mapped(feature, position, ele_m, name));
    });
}

/** Is it a tee or a basket? `pin` is an older word for basket. */
export function siteKind({ tags }: TaggedFeature): SiteKind | undefined {
  const word = tagWord(tags, 'disc_golf');
  if (word === 'pin') return 'basket';
  return word === 'tee' || word === 'basket' ? word : undefined;
}

function sitePositions(feature: TaggedFeature, kind: SiteKind): LonLat[] {
  const area = kind === 'tee' ? areaOf(feature) : undefined;
  const centres = area === undefined ? [] : polygonsOf(area).map(centreOf);
  return [...pointsOf(feature).map(point => lonLat(point.coordinates)), ...centres];
}

function wrongGeometry(name: string, kind: SiteKind): string {
  return `${name} must be a Point${kind === 'tee' ? ' or a Polygon' : ''}: draw it as one`;
}

function mapped(feature: TaggedFeature, position: LonLat, ele_m: number | undefined, name: string): MappedSite {
  const ref = tagText(feature.tags, 'ref');
  const height_m = position[2] ?? ele_m;
  const siteName = tagText(feature.tags, 'name');
  const site: Site = {
    position,
    ...(height_m === undefined ? {} : { height_m }),
    ...(ref === undefined ? {} : { ref }),
    ...(siteName === undefined ? {} : { name: siteName }),
    featureIndex: feature.index,
  };
  return { site, refs: refKeys(ref), feature, label: name };
}
