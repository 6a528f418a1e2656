import {
  type Course,
  type CourseHole,
  type CourseObject,
  type DropZoneUse,
  type Fairway,
  type Island,
  type LonLat,
  type OutOfBounds,
  type Relief,
  USUAL_USES,
} from '../course/course.ts';
import { atStation } from './along-line.ts';
import { isForHole, ownerOf } from './belonging.ts';
import { type Box, boundingBox, boxesMeet } from './bounding-box.ts';
import { farSide } from './far-side.ts';
import type { HoleMap, LocalArea, LocalFairway, LocalPoint, LocalPolygon } from './hole-map.ts';
import { distance_m, lineLength_m } from './line-length.ts';
import { type LocalFrame, toLocal } from './local-frame.ts';
import { localGround, localLine, localPolygons, meets, positionsOf } from './local-shapes.ts';
import { mandoPlane } from './mando-plane.ts';
import { isInAny } from './point-in-polygon.ts';
import { surfaceName } from './surface-name.ts';

/** How deep the ground beyond a boundary line is taken to be out. */
const BOUNDARY_DEPTH_m = 100;
/** Share of the line of play that must run on an unnumbered fairway for it to be this hole's. */
const OWN_FAIRWAY_SHARE = 0.25;

type Lists =
  | 'trees'
  | 'covers'
  | 'ceilings'
  | 'gaps'
  | 'outOfBounds'
  | 'hazards'
  | 'islands'
  | 'lostGrounds'
  | 'dropZones'
  | 'mandos'
  | 'fairways'
  | 'people';
type Carried = { -readonly [K in Lists]: NonNullable<HoleMap[K]>[number][] };

/**
 * The course's objects that matter to one hole, in its local frame. Solid things count wherever they stand; penalty areas too,
 * unless they carry another hole's `ref`; mandos, drop zones and fairways go to one hole.
 */
export function carryObjects(
  course: Course,
  hole: CourseHole,
  frame: LocalFrame,
  line: readonly LocalPoint[],
  box: Box,
) {
  const objects: Carried = {
    trees: [],
    covers: [],
    ceilings: [],
    gaps: [],
    outOfBounds: [],
    hazards: [],
    islands: [],
    lostGrounds: [],
    dropZones: [],
    mandos: [],
    fairways: [],
    people: [],
  };
  const assumptions: string[] = [];
  const here = course.objects.filter(object => !isFarOff(object, hole.tee.position) && carryOne(object));
  return { objects, assumptions: [...assumptions, ...dropZoneNotes(objects), ...assumptionsFor(course, here)] };

  function carryOne(object: CourseObject): boolean {
    const origin = { source: object.path, assumed: object.assumed };
    const nearPoint = (at: LocalPoint, reach_m = 0): boolean => boxesMeet(boundingBox([at], reach_m), box);
    switch (object.kind) {
      case 'tree': {
        const at = toLocal(frame, object.position);
        const [crownRadius_m, trunkRadius_m] = [object.crownDiameter_m / 2, object.trunkDiameter_m / 2];
        if (!nearPoint(at, crownRadius_m)) return false;
        const { height_m, crownBase_m } = object;
        objects.trees.push({ ...origin, at, height_m, crownRadius_m, crownBase_m, trunkRadius_m });
        return true;
      }
      case 'cover': {
        const polygons = localGround(frame, object.geometry, object.width_m, box);
        const { form, height_m, base_m, density } = object;
        if (polygons.length > 0) objects.covers.push({ ...origin, form, polygons, height_m, base_m, density });
        return polygons.length > 0;
      }
      case 'ceiling': {
        const polygons = localGround(frame, object.geometry, object.width_m, box);
        const { clearance_m, top_m } = object;
        if (polygons.length > 0) objects.ceilings.push({ ...origin, polygons, clearance_m, top_m });
        return polygons.length > 0;
      }
      case 'gap': {
        const posts = [toLocal(frame, object.posts[0]), toLocal(frame, object.posts[1])] as const;
        if (!boxesMeet(boundingBox(posts), box)) return false;
        objects.gaps.push({ ...origin, posts, low_m: object.low_m, high_m: object.high_m });
        return true;
      }
      case 'outOfBounds': {
        if (ownerOf(course, hole, object) === 'other') return false;
        const { polygons, sure } = outOfBoundsGround(object, frame, line, box);
        if (polygons.length === 0) return false;
        if (!sure)
          assumptions.push(
            `${object.path}: the line of play crosses this boundary; the smaller side is taken as out-of-bounds`,
          );
        const what = object.reason === 'water' ? 'water' : 'out-of-bounds';
        objects.outOfBounds.push({ ...origin, polygons, what, ...named(object), ...reliefOf(object) });
        return true;
      }
      case 'hazard': {
        if (ownerOf(course, hole, object) === 'other') return false;
        return pushArea(objects.hazards, object, 'hazard', localGround(frame, object.geometry, 0, box));
      }
      case 'island': {
        const owner = ownerOf(course, hole, object);
        const polygons = localPolygons(frame, object.geometry);
        const holdsBasket = isInAny(line.at(-1)!, polygons);
        if (owner === 'other' || !holdsBasket || polygons.length === 0) return false;
        objects.islands.push({ ...origin, polygons, what: 'island', ...named(object), ...reliefOf(object) });
        return true;
      }
      case 'lostGround': {
        if (ownerOf(course, hole, object) === 'other') return false;
        const polygons = localGround(frame, object.geometry, 0, box);
        if (polygons.length === 0) return false;
        const { share } = object;
        objects.lostGrounds.push({ ...origin, polygons, what: 'lost discs', share, ...named(object) });
        return true;
      }
      case 'dropZone': {
        if (!isForHole(course, hole, object, [object.position])) return false;
        const { uses } = object;
        objects.dropZones.push({ ...origin, at: toLocal(frame, object.position), ...(uses && { uses }) });
        return true;
      }
      case 'mando': {
        const positions = positionsOf(object.geometry);
        if (!isForHole(course, hole, object, positions)) return false;
        const mando = mandoPlane(
          object,
          positions.map(position => toLocal(frame, position)),
          line,
        );
        objects.mandos.push(mando);
        if (mando.assumed.includes('plane derived, confirm with the course'))
          assumptions.push(`${object.path}: mando plane derived, confirm with the course`);
        return true;
      }
      case 'fairway': {
        const fairway = localFairway(object);
        if (fairway !== undefined) objects.fairways.push(fairway);
        return fairway !== undefined;
      }
      case 'people': {
        const { geometry, what } = object;
        const closed = geometry.type === 'Polygon' || geometry.type === 'MultiPolygon';
        const lines =
          geometry.type === 'Point'
            ? [positionsOf(geometry).map(position => toLocal(frame, position))]
            : geometry.type === 'LineString'
              ? [localLine(frame, geometry)]
              : localPolygons(frame, geometry).flat();
        const near = lines.filter(points => boxesMeet(boundingBox(points), box));
        if (near.length > 0) objects.people.push({ ...origin, what, lines: near, closed });
        return near.length > 0;
      }
      default:
        return object satisfies never;
    }
  }

  function localFairway(object: Fairway): LocalFairway | undefined {
    const owner = ownerOf(course, hole, object);
    const polygons = localGround(frame, object.geometry, 0, box);
    if (owner === 'other' || polygons.length === 0) return undefined;
    const surface = object.surface === undefined ? 'turf' : surfaceName(object.surface);
    if (surface === undefined)
      assumptions.push(
        `${object.path}.properties.surface: "${object.surface}" is not a surface we know; taken as turf`,
      );
    return {
      source: object.path,
      assumed: object.assumed,
      polygons,
      what: 'fairway',
      ...named(object),
      surface: surface ?? 'turf',
      ownHole: owner === 'own' || shareOnGround(line, polygons) >= OWN_FAIRWAY_SHARE,
    };
  }
}

const reliefOf = ({ relief }: OutOfBounds | Island): { relief?: readonly Relief[] } =>
  relief === undefined ? {} : { relief };

/** What the drop zones of a hole leave to a reading. */
function dropZoneNotes({ dropZones, outOfBounds, islands }: Carried): string[] {
  const notes: string[] = [];
  const serving = (use: DropZoneUse) => dropZones.filter(zone => (zone.uses ?? USUAL_USES).includes(use));
  const words: Readonly<Record<DropZoneUse, string>> = {
    outOfBounds: 'out-of-bounds',
    mando: 'a missed mando',
    lostDisc: 'a lost disc',
  };
  for (const use of ['outOfBounds', 'mando', 'lostDisc'] as const) {
    const [first, ...others] = serving(use);
    if (first !== undefined && others.length > 0)
      notes.push(
        `${dropZones.length} drop zones: after ${words[use]} the one of ${first.source} is taken; say with serves= which is for what`,
      );
  }
  if (serving('outOfBounds').length > 0) return notes;
  for (const { relief, source } of [...outOfBounds, ...islands])
    if (relief?.length === 1 && relief[0] === 'dropZone')
      notes.push(`${source}: play goes on from a drop zone only, and the hole has none: the previous lie is taken`);
  return notes;
}

/** The stand-ins of the objects here, one line per kind and number, then what the reader of the file said of them. */
function assumptionsFor(course: Course, here: readonly CourseObject[]): string[] {
  const groups = new Map<string, string[]>();
  for (const { kind, path, assumed } of here)
    for (const what of assumed) {
      const key = `${kind}: ${what} is assumed, not mapped`;
      const paths = groups.get(key);
      if (paths === undefined) groups.set(key, [path]);
      else paths.push(path);
    }
  const standIns = [...groups].map(([text, paths]) => `${text} (${someOf(paths)})`);
  const places = new Set(here.map(({ path }) => path));
  // A reading of a property lies under its object's path.
  const isHere = (path: string): boolean => places.has(path) || places.has(path.slice(0, path.indexOf('.')));
  const readings = course.assumptions
    // The reader's own sums of stand-ins are for the whole course; those of this hole are counted above.
    .filter(({ path, message }) => isHere(path) && !message.endsWith(' assumed'))
    .map(({ path, message }) => `${path}: ${message}`);
  return [...standIns, ...readings];
}

function someOf(paths: readonly string[]): string {
  return paths.length <= 3 ? paths.join(', ') : `${paths.slice(0, 3).join(', ')} and ${paths.length - 3} more`;
}

function pushArea(list: LocalArea[], object: CourseObject, what: string, polygons: readonly LocalPolygon[]): boolean {
  if (polygons.length > 0)
    list.push({ source: object.path, assumed: object.assumed, polygons, what, ...named(object) });
  return polygons.length > 0;
}

const named = (object: CourseObject): { name?: string } => (object.name === undefined ? {} : { name: object.name });

function outOfBoundsGround(object: OutOfBounds, frame: LocalFrame, line: readonly LocalPoint[], box: Box) {
  const { geometry, strip_m } = object;
  if (geometry.type !== 'LineString' || strip_m !== undefined)
    return { polygons: localGround(frame, geometry, strip_m ?? 0, box), sure: true };
  const boundary = localLine(frame, geometry);
  if (lineLength_m(boundary) === 0) return { polygons: [], sure: true };
  // A boundary that comes back to its start is drawn round its area.
  const isOutline = boundary.length > 3 && distance_m(boundary[0]!, boundary.at(-1)!) < 0.01;
  const ground = isOutline ? { polygons: [[boundary]], sure: true } : farSide(boundary, line, BOUNDARY_DEPTH_m);
  return { polygons: ground.polygons.filter(polygon => meets(polygon, box)), sure: ground.sure };
}

function shareOnGround(line: readonly LocalPoint[], polygons: readonly LocalPolygon[]): number {
  const length_m = lineLength_m(line);
  const steps = Math.max(1, Math.ceil(length_m));
  let on = 0;
  for (let k = 0; k < steps; k++) if (isInAny(atStation(line, ((k + 0.5) * length_m) / steps).point, polygons)) on++;
  return on / steps;
}

/** Things more than some 11 km north or south are another place: the local frame does not reach there. */
function isFarOff(object: CourseObject, tee: LonLat): boolean {
  const position = firstPosition(object);
  return position === undefined || Math.abs(position[1] - tee[1]) > 0.1;
}

function firstPosition(object: CourseObject): LonLat | undefined {
  switch (object.kind) {
    case 'tree':
    case 'dropZone':
      return object.position;
    case 'gap':
      return object.posts[0];
    default:
      return positionsOf(object.geometry)[0];
  }
}
