import type { Feature, FeatureCollection } from 'geojson';

/**
 * The course file with another name: written where the name was read from (the course's feature, else the collection), and
 * nothing else changed.
 */
export function nameCourse(source: FeatureCollection, name: string): FeatureCollection {
  const at = source.features.findIndex(isCourse);
  if (at === -1) return { ...source, name } as FeatureCollection;
  return { ...source, features: source.features.with(at, named(source.features[at]!, name)) };
}

function isCourse({ properties }: Feature): boolean {
  return [properties, properties?.tags].some(tags => typeof tags === 'object' && tags?.leisure === 'disc_golf_course');
}

function named(feature: Feature, name: string): Feature {
  const properties = feature.properties ?? {};
  const nested = properties.tags as Record<string, unknown> | undefined;
  const inTags = typeof nested === 'object' && nested !== null;
  return {
    ...feature,
    properties: {
      ...properties,
      ...(inTags ? { tags: { ...nested, name } } : {}),
      ...(!inTags || 'name' in properties ? { name } : {}),
    },
  };
}
