import type { Feature, FeatureCollection } from 'geojson';
import { addFeatures, featureAt } from './edit-features.ts';
import { changeTags, tagOf } from './edit-tags.ts';

/** One hole of a layout as the file has it; what else it says is kept. */
export type LayoutEntry = Readonly<{ ref: string | number; tee?: string; basket?: string; par?: number }> &
  Readonly<Record<string, unknown>>;

/** The file with a new layout at its end. */
export function addLayout(file: FeatureCollection, name: string, holes: readonly LayoutEntry[]): FeatureCollection {
  return addFeatures(file, {
    type: 'Feature',
    geometry: null,
    properties: { disc_golf: 'layout', name, holes: [...holes] },
  });
}

/** The layout's holes as the file has them; undefined when the feature is no layout, or its list cannot be read. */
export function layoutHolesOf(feature: Feature): readonly LayoutEntry[] | undefined {
  if (tagOf(feature, 'disc_golf')?.toLowerCase() !== 'layout') return undefined;
  const { list } = holderOf(feature);
  const holes = typeof list === 'string' ? parsed(list) : list;
  if (!Array.isArray(holes)) return undefined;
  const isEntry = (hole: unknown): hole is LayoutEntry =>
    typeof hole === 'object' && hole !== null && 'ref' in hole && ['string', 'number'].includes(typeof hole.ref);
  return holes.every(isEntry) ? holes : undefined;
}

/**
 * The file with other holes in one layout.
 * @throws {RangeError} when there is no such feature
 */
export function setLayoutHoles(
  file: FeatureCollection,
  index: number,
  holes: readonly LayoutEntry[],
): FeatureCollection {
  const feature = featureAt(file, index);
  const { isNested } = holderOf(feature);
  const properties = (feature.properties ?? {}) as Record<string, unknown>;
  const changed = isNested
    ? { ...properties, tags: { ...(properties.tags as Record<string, unknown>), holes: [...holes] } }
    : { ...properties, holes: [...holes] };
  return { ...file, features: file.features.with(index, { ...feature, properties: changed }) };
}

/** @throws {RangeError} when there is no such feature */
export function renameLayout(file: FeatureCollection, index: number, name: string): FeatureCollection {
  return changeTags(file, index, { name });
}

function holderOf({ properties }: Feature): { list: unknown; isNested: boolean } {
  const direct: Record<string, unknown> = properties ?? {};
  if (Object.hasOwn(direct, 'holes')) return { list: direct.holes, isNested: false };
  const { tags } = direct;
  const isNested = typeof tags === 'object' && tags !== null && !Array.isArray(tags);
  return { list: isNested ? (tags as Record<string, unknown>).holes : undefined, isNested };
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}
