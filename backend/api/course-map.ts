import type { Course, CourseObject, LonLat } from '../../core/course/course.ts';
import { besideLongitude } from '../../core/geometry/beside-longitude.ts';
import type { Output } from './contract/api.ts';

type CourseMap = Output<'getCourseMap'>;
type MapObject = CourseMap['objects'][number];

/** The whole course for a map: everything with its place in degrees. */
export function courseMap(course: Course): CourseMap {
  // Drawn in one piece also where it lies across the antimeridian: longitudes may pass 180 here.
  const reference_deg = course.holes[0]?.tee.position[0] ?? 0;
  const lonLat = (position: LonLat): [number, number] => [besideLongitude(position[0], reference_deg), position[1]];
  const holes = course.holes.map(hole => ({
    ref: hole.ref,
    line: hole.line.map(lonLat),
    tees: hole.tees.map(tee => lonLat(tee.position)),
    baskets: hole.baskets.map(basket => lonLat(basket.position)),
  }));
  const objects = course.objects.map(object => beside(mapObject(object), reference_deg));
  return {
    bounds: boundsOf(holes.flatMap(({ line, tees, baskets }) => [...line, ...tees, ...baskets])),
    holes,
    objects,
  };
}

function beside(object: MapObject, reference_deg: number): MapObject {
  const shifted = (coordinates: readonly unknown[]): unknown[] =>
    typeof coordinates[0] === 'number'
      ? [besideLongitude(coordinates[0], reference_deg), ...coordinates.slice(1)]
      : coordinates.map(part => shifted(part as unknown[]));
  return { ...object, geometry: { ...object.geometry, coordinates: shifted(object.geometry.coordinates) } };
}

/** Round the holes only: woods and roads may run far out of the course. */
function boundsOf(places: readonly [number, number][]): CourseMap['bounds'] {
  const lon = places.map(([lon_deg]) => lon_deg);
  const lat = places.map(([, lat_deg]) => lat_deg);
  return {
    southWest: [Math.min(...lon), Math.min(...lat)],
    northEast: [Math.max(...lon), Math.max(...lat)],
  };
}

function mapObject(object: CourseObject): MapObject {
  const { kind, name, ref, assumed } = object;
  return {
    kind,
    ...(name === undefined ? {} : { name }),
    ...(ref === undefined ? {} : { ref }),
    ...shapeOf(object),
    facts: [...factsOf(object), ...(assumed.length > 0 ? [`assumed: ${assumed.join(', ')}`] : [])],
  };
}

const COVER_WORDS = {
  wood: 'woods',
  scrub: 'scrub',
  treeRow: 'tree row',
  hedge: 'hedge',
  wall: 'wall',
  fence: 'fence',
  building: 'building',
} as const;

function shapeOf(object: CourseObject): Pick<MapObject, 'what' | 'geometry' | 'width_m'> {
  switch (object.kind) {
    case 'tree':
      return { what: 'tree', geometry: pointAt(object.position), width_m: object.crownDiameter_m };
    case 'cover':
      return { what: COVER_WORDS[object.form], geometry: plain(object.geometry), width_m: object.width_m };
    case 'ceiling':
      return { what: 'ceiling', geometry: plain(object.geometry), width_m: object.width_m };
    case 'gap':
      return { what: 'gap', geometry: { type: 'LineString', coordinates: object.posts.map(lonLat) } };
    case 'outOfBounds':
      return {
        what: object.reason === 'water' ? 'water' : 'out-of-bounds',
        geometry: plain(object.geometry),
        ...(object.strip_m === undefined ? {} : { width_m: object.strip_m }),
      };
    case 'hazard':
      return { what: 'hazard', geometry: plain(object.geometry) };
    case 'island':
      return { what: 'island', geometry: plain(object.geometry) };
    case 'lostGround':
      return { what: 'ground where discs get lost', geometry: plain(object.geometry) };
    case 'dropZone':
      return { what: 'drop zone', geometry: pointAt(object.position) };
    case 'mando':
      return { what: `mando ${object.side}`, geometry: plain(object.geometry) };
    case 'fairway':
      return { what: object.surface ?? 'fairway', geometry: plain(object.geometry) };
    case 'people':
      return { what: object.what, geometry: plain(object.geometry) };
    default:
      return object satisfies never;
  }
}

const RELIEF_WORDS = { line: 'the line', previousLie: 'the previous lie', dropZone: 'the drop zone' } as const;
const USE_WORDS = { outOfBounds: 'out-of-bounds', mando: 'a missed mando', lostDisc: 'a lost disc' } as const;

function factsOf(object: CourseObject): string[] {
  switch (object.kind) {
    case 'tree':
      return [`${metres(object.height_m)} high`, `branches from ${metres(object.crownBase_m)}`];
    case 'cover':
      return [`${metres(object.height_m)} high`, ...(object.base_m > 0 ? [`free below ${metres(object.base_m)}`] : [])];
    case 'ceiling':
      return [`${metres(object.clearance_m)} free under it`];
    case 'gap':
      return [
        Number.isFinite(object.high_m)
          ? `open from ${metres(object.low_m)} to ${metres(object.high_m)}`
          : `open from ${metres(object.low_m)} up`,
      ];
    case 'lostGround':
      return [`${(100 * object.share).toFixed(1)} % of discs are not found`];
    case 'outOfBounds':
    case 'island':
      return object.relief === undefined
        ? []
        : [`played on from ${object.relief.map(relief => RELIEF_WORDS[relief]).join(' or ')} only`];
    case 'dropZone':
      return object.uses === undefined ? [] : [`for ${object.uses.map(use => USE_WORDS[use]).join(' and ')}`];
    case 'mando':
      return object.height_m === undefined ? [] : [`at ${metres(object.height_m)}`];
    default:
      return [];
  }
}

const metres = (value_m: number) => `${value_m.toFixed(1)} m`;
const lonLat = (position: LonLat): [number, number] => [position[0], position[1]];
const pointAt = (position: LonLat): MapObject['geometry'] => ({ type: 'Point', coordinates: lonLat(position) });
/** GeoJSON without what a converter may have added to it. */
const plain = ({ type, coordinates }: { type: MapObject['geometry']['type']; coordinates: unknown }) => ({
  type,
  coordinates: coordinates as unknown[],
});
