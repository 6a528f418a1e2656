import type { Problem } from '../units/result.ts';
import { mostCorners, mostGolfThings } from './limits.ts';
import { positionsOf } from './positions.ts';
import { label, type TaggedFeature } from './tags.ts';

/**
 * Is there more than can be put together in a moment? Holes are assembled, and outlines looked through, pair by pair.
 * @param features - only those that mean something to a course
 */
export function checkSize(features: readonly TaggedFeature[]): Problem[] {
  const golf = features.filter(({ tags }) => tags.has('disc_golf'));
  if (golf.length > mostGolfThings)
    return [
      {
        path: 'features',
        message: `the file has ${golf.length} tees, baskets, holes and the like; at most ${mostGolfThings} are taken: cut it down to one course`,
      },
    ];
  return features.flatMap(feature => {
    const { geometry } = feature;
    const isOutline = geometry?.type === 'Polygon' || geometry?.type === 'MultiPolygon';
    const corners = isOutline ? positionsOf(geometry).length : 0;
    if (corners <= mostCorners) return [];
    return [
      {
        path: `${feature.path}.geometry`,
        message: `${label(feature, 'this area')} has ${corners} corners; at most ${mostCorners} are taken: simplify it, or cut it to the course`,
      },
    ];
  });
}
