import type { Feature, Geometry, Position } from 'geojson';
import type { TagChanges } from './edit-tags.ts';
import { type DrawnShape, type FeatureKind, KINDS } from './kinds.ts';

/** Positions a shape needs before it is one, and how many it takes at most. */
export function positionsFor(kind: FeatureKind, shape: DrawnShape): Readonly<{ least: number; most: number }> {
  const { exactly } = KINDS[kind];
  if (exactly !== undefined) return { least: exactly, most: exactly };
  if (shape === 'Point') return { least: 1, most: 1 };
  return { least: shape === 'LineString' ? 2 : 3, most: Number.POSITIVE_INFINITY };
}

/**
 * A feature of a kind from the positions it was drawn with.
 * @param tags - beside those that make its kind; null and blank ones are left out
 * @throws {RangeError} when there are too few positions for its shape
 */
export function makeFeature(
  kind: FeatureKind,
  shape: DrawnShape,
  positions: readonly Position[],
  tags: TagChanges = {},
): Feature {
  const { least, most } = positionsFor(kind, shape);
  if (positions.length < least || positions.length > most)
    throw new RangeError(
      `a ${KINDS[kind].word} as a ${shape} takes ${least} positions or more, got ${positions.length}`,
    );
  const given = Object.entries(tags).filter(([, value]) => value !== null && value !== '');
  return {
    type: 'Feature',
    properties: { ...KINDS[kind].tags, ...Object.fromEntries(given) },
    geometry: geometryOf(shape, positions),
  };
}

function geometryOf(shape: DrawnShape, positions: readonly Position[]): Geometry {
  if (shape === 'Point') return { type: 'Point', coordinates: positions[0]! };
  if (shape === 'LineString') return { type: 'LineString', coordinates: [...positions] };
  return { type: 'Polygon', coordinates: [[...positions, positions[0]!]] };
}
