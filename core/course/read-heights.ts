import type { Position } from 'geojson';
import type { Course } from './course.ts';
import { limits } from './limits.ts';
import type { Notes } from './notes.ts';
import { positionsOf } from './positions.ts';
import { lonLat } from './shapes.ts';
import { lengthTag } from './tag-number.ts';
import type { TaggedFeature } from './tags.ts';

type Heights = Course['heights'];

/**
 * Ground heights: third coordinates, and `ele` for every position of its feature that has none (a contour line has one
 * for all).
 */
export function readHeights(features: readonly TaggedFeature[], notes: Notes): Heights {
  const thirds = features.flatMap(feature => positionsOf(feature.geometry).filter(hasHeight));
  // Converters write 0 where they know nothing.
  const blank =
    thirds.length > 1 && thirds.every(position => position[2] === 0) && !features.some(({ tags }) => tags.has('ele'));
  if (blank) {
    notes.assumptions.push({ path: 'features', message: 'every third coordinate is 0: read as heights not given' });
    return [];
  }
  const heights = features.flatMap(feature => featureHeights(feature, notes));
  if (
    thirds.length > 0 &&
    features.some(({ tags, geometry }) => tags.has('ele') && !positionsOf(geometry).every(hasHeight))
  ) {
    notes.assumptions.push({
      path: 'features',
      message:
        'heights come both as third coordinates (above the ellipsoid by RFC 7946) and as ele (above sea level): taken as measured from the same level',
    });
  }
  return heights;
}

function featureHeights(feature: TaggedFeature, notes: Notes): Heights {
  const ele_m = lengthTag(feature, 'ele', limits.elevation_m, notes);
  const positions = positionsOf(feature.geometry);
  const absurd = positions.find(position => hasHeight(position) && !believable(position[2]!));
  if (absurd !== undefined) {
    notes.problems.push({
      path: `${feature.path}.geometry.coordinates`,
      message: `third coordinate ${absurd[2]} is not a believable height: expected ${limits.elevation_m.least} to ${limits.elevation_m.most} m`,
    });
    return [];
  }
  return positions.flatMap(position => {
    const height_m = position[2] ?? ele_m;
    return height_m === undefined ? [] : [{ position: lonLat(position), height_m }];
  });
}

function hasHeight(position: Position): boolean {
  return position[2] !== undefined;
}

function believable(height_m: number): boolean {
  return height_m >= limits.elevation_m.least && height_m <= limits.elevation_m.most;
}
