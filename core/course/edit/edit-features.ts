import type { Feature, FeatureCollection, Geometry } from 'geojson';
import { shiftPosition } from './shift-position.ts';
import { mapPositions } from './vertices.ts';

/**
 * Edits of a course file as values: each gives a new file that shares everything untouched with the old one, unknown
 * features, properties and members included, so undo is a stack of old files. Only `bbox` goes where positions changed:
 * it would be false.
 */

/** A feature as RFC 7946 has it: without geometry when it is nowhere (a layout). */
export type AnyFeature = Feature<Geometry | null>;

/** @returns the file with the features at its end */
export function addFeatures(file: FeatureCollection, ...features: readonly AnyFeature[]): FeatureCollection {
  return withFeatures(file, [...file.features, ...(features as readonly Feature[])]);
}

/** @throws {RangeError} when there is no such feature */
export function removeFeature(file: FeatureCollection, index: number): FeatureCollection {
  featureAt(file, index);
  return withFeatures(file, file.features.toSpliced(index, 1));
}

/**
 * The file with another shape for one feature.
 * @throws {RangeError} when there is no such feature
 */
export function reshapeFeature(file: FeatureCollection, index: number, geometry: Geometry): FeatureCollection {
  const { bbox: _, ...feature } = featureAt(file, index);
  return withFeatures(file, file.features.with(index, { ...feature, geometry }));
}

/**
 * The file with one feature moved as a whole.
 * @throws {RangeError} when there is no such feature, or it has no place
 */
export function moveFeature(
  file: FeatureCollection,
  index: number,
  east_m: number,
  north_m: number,
): FeatureCollection {
  return reshapeFeature(file, index, shifted(placed(file, index), east_m, north_m));
}

/**
 * The file with a copy of one feature at its end, so many metres aside. The copy has no `id`: that names one thing.
 * @throws {RangeError} when there is no such feature, or it has no place
 */
export function copyFeature(
  file: FeatureCollection,
  index: number,
  east_m: number,
  north_m: number,
): FeatureCollection {
  const { id: _, bbox: __, ...feature } = featureAt(file, index);
  return addFeatures(file, { ...feature, geometry: shifted(placed(file, index), east_m, north_m) });
}

/** @throws {RangeError} when there is no such feature */
export function featureAt(file: FeatureCollection, index: number): Feature {
  const feature = file.features[index];
  if (feature === undefined) throw new RangeError(`the file has no feature ${index}, only ${file.features.length}`);
  return feature;
}

function placed(file: FeatureCollection, index: number): Geometry {
  const { geometry } = featureAt(file, index);
  if (geometry === null) throw new RangeError(`feature ${index} has no geometry to move`);
  return geometry;
}

const shifted = (geometry: Geometry, east_m: number, north_m: number): Geometry =>
  mapPositions(geometry, position => shiftPosition(position, east_m, north_m));

function withFeatures({ bbox: _, ...file }: FeatureCollection, features: Feature[]): FeatureCollection {
  return { ...file, features };
}
