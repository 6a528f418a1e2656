import type { Feature, FeatureCollection, Position } from 'geojson';
import { refKey, refKeys } from '../hole-ref.ts';
import { tagOf, withTags } from './edit-tags.ts';
import { kindOf } from './kinds.ts';
import { offset_m, shiftPosition } from './shift-position.ts';
import { mapPositions, verticesOf } from './vertices.ts';

/** What lies nearer than this to the line of a hole without a place belongs to it: such holes are drawn 800 m apart. */
const NEAR_m = 350;

/** The line of a hole that is drawn nowhere in particular (`placed=no`); undefined when the hole has a place. */
export function unplacedLine(file: FeatureCollection, ref: string): Feature | undefined {
  return file.features.find(feature => isUnplaced(feature) && refKeys(tagOf(feature, 'ref')).includes(refKey(ref)));
}

/**
 * The file with a hole that had no place put where it is: its tee at `to`, everything round it along with it, all distances
 * and directions kept.
 * @throws {RangeError} when the hole has no line with `placed=no`
 */
export function placeHole(file: FeatureCollection, ref: string, to: Position): FeatureCollection {
  const line = unplacedLine(file, ref);
  if (line === undefined) throw new RangeError(`hole ${ref} has no line with placed=no`);
  const along = verticesOf(line.geometry).map(({ position }) => position);
  const tee = along[0]!;
  const features = file.features.map(feature => {
    const isNear = verticesOf(feature.geometry).some(({ position }) =>
      along.some(at => Math.hypot(...offset_m(at, position)) < NEAR_m),
    );
    if (!isNear) return feature;
    const { bbox: _, ...moved } = feature;
    const geometry = mapPositions(feature.geometry, position => {
      const [lon, lat] = shiftPosition([to[0]!, to[1]!], ...offset_m(tee, position));
      return [lon!, lat!, ...position.slice(2)];
    });
    return isUnplaced(feature) ? withTags({ ...moved, geometry }, { placed: null }) : { ...moved, geometry };
  });
  const { bbox: _, ...placed } = file;
  return wherever({ ...placed, features }, to);
}

/** A map of which every hole has a place has one itself. */
function wherever(file: FeatureCollection, start: Position): FeatureCollection {
  if (!('placed' in file) || file.features.some(isUnplaced)) return file;
  const { placed: _, ...rest } = file;
  return 'start' in rest ? ({ ...rest, start: [start[0], start[1]] } as FeatureCollection) : rest;
}

const isUnplaced = (feature: Feature): boolean =>
  kindOf(feature) === 'line' && tagOf(feature, 'placed')?.toLowerCase() === 'no';
