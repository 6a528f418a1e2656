import type { Course, CourseHole, LonLat, Site } from '../course/course.ts';
import { nameInText } from '../units/name-in-text.ts';
import { boundingBox } from './bounding-box.ts';
import { carryObjects } from './carry-objects.ts';
import { derivePar } from './derive-par.ts';
import type { HoleMap, LocalPoint, Terrain } from './hole-map.ts';
import { distance_m, lineLength_m } from './line-length.ts';
import { type LocalFrame, localFrame, toLocal } from './local-frame.ts';
import type { KnownHeight } from './surface-through-heights.ts';
import { buildTerrain, groundHeight } from './terrain.ts';
import { terrainFromElevation } from './terrain-from-elevation.ts';

/** Things within this distance of the box round the line of play are carried on the hole's map. */
const SURROUNDINGS_m = 80;
/** Heights this much further out still shape the ground. */
const HEIGHTS_BEYOND_m = 100;

/**
 * Everything one hole's throws can meet, in its local frame (plain data, crosses to workers).
 * The line of play runs from the hole's tee over the drawn bends to its basket.
 * @throws {RangeError} when tee and basket are the same place, or lie within a degree of a pole
 */
export function buildHoleMap(course: Course, hole: CourseHole): HoleMap {
  const frame = localFrame(hole.tee.position[0], hole.tee.position[1]);
  const line = lineOfPlay(frame, hole);
  const basket = line.at(-1)!;
  const box = boundingBox(line, SURROUNDINGS_m);
  const heights = heightsNear(course, hole, frame, line);
  const mapped = buildTerrain(box, heights, [[0, 0], basket]);
  const surveyed = course.ground && terrainFromElevation(course.ground.terrain, frame, mapped, [[0, 0], basket]);
  const terrain = surveyed ?? mapped;
  const carried = carryObjects(course, hole, frame, line, box);
  const origin: HoleMap['origin'] = [hole.tee.position[0], hole.tee.position[1]];
  return {
    ref: hole.ref,
    ...(hole.name === undefined ? {} : { name: hole.name }),
    par: hole.par ?? derivePar(lineLength_m(line), groundHeight(terrain, basket[0], basket[1])),
    parSource: hole.par === undefined ? 'derived' : 'tagged',
    origin,
    basket,
    line,
    otherTees: hole.tees.map(tee => toLocal(frame, tee.position)).filter(at => distance_m(at, [0, 0]) > 0.05),
    terrain,
    ...carried.objects,
    assumptions: [
      ...holeAssumptions(hole, terrain, surveyed !== undefined),
      ...groundNotes(course, surveyed !== undefined, heights.length),
      ...carried.assumptions,
    ],
  };
}

function lineOfPlay(frame: LocalFrame, hole: CourseHole): LocalPoint[] {
  const bends = hole.line.slice(1, -1).map(position => toLocal(frame, position));
  const ends: LocalPoint[] = [[0, 0], ...bends, toLocal(frame, hole.basket.position)];
  const line = ends.filter((p, i) => i === 0 || distance_m(p, ends[i - 1]!) > 0);
  if (line.length < 2) throw new RangeError(`hole ${hole.ref}: tee and basket are at the same place`);
  return line;
}

/** The hole's own tee and basket first: where one place has several heights or there are too many, the first count. */
function heightsNear(course: Course, hole: CourseHole, frame: LocalFrame, line: readonly LocalPoint[]): KnownHeight[] {
  const box = boundingBox(line, SURROUNDINGS_m + HEIGHTS_BEYOND_m);
  const sites = [hole.tee, hole.basket, ...course.holes.flatMap(h => [...h.tees, ...h.baskets])];
  const all = [
    ...sites.map(site => ({ position: site.position, height_m: siteHeight_m(site) })),
    ...course.holes.flatMap(h => h.line.map(position => ({ position, height_m: position[2] }))),
    ...course.heights,
  ];
  return all.flatMap(({ position, height_m }) => {
    if (height_m === undefined || !isNear(position, hole.tee.position)) return [];
    const at = toLocal(frame, position);
    const inside = at[0] >= box.west_m && at[0] <= box.east_m && at[1] >= box.south_m && at[1] <= box.north_m;
    return inside ? [{ at, height_m }] : [];
  });
}

const siteHeight_m = (site: Site): number | undefined => site.height_m ?? site.position[2];

/** Cheap refusal of places far off: the local frame holds for a few kilometres only. */
function isNear(position: LonLat, tee: LonLat): boolean {
  return Math.abs(position[1] - tee[1]) < 0.1;
}

function holeAssumptions(hole: CourseHole, terrain: Terrain, isSurveyed: boolean): string[] {
  const said: string[] = [];
  if (hole.isPlaced === false) said.push('the hole has no place on the map: what lies round it is not known');
  if (!terrain.known) said.push('heights are not mapped: the ground is taken as level');
  else if (!isSurveyed && (siteHeight_m(hole.tee) === undefined || siteHeight_m(hole.basket) === undefined))
    said.push(
      'the height of the tee or the basket is not mapped: it is read off a smooth surface through the heights near by',
    );
  if (hole.par === undefined) said.push('par is not mapped: derived by the close range method for an expert');
  if (hole.lineSource === 'straight') said.push('no line of play is mapped: tee and basket are joined straight');
  return said;
}

/** A model coarser than this smooths over the slopes a throw meets on a hole. */
const COARSE_m = 10;

function groundNotes(course: Course, isSurveyed: boolean, mappedHeights: number): string[] {
  if (course.ground === undefined) return [];
  const { source, resolution_m, datum } = course.ground.terrain;
  if (!isSurveyed) return [`the elevation model ${nameInText(source)} does not cover this hole: it is left out here`];
  const said = [`the ground is read from the elevation model ${nameInText(source)} (${datum})`];
  if (resolution_m > COARSE_m)
    said.push(`the elevation model has a height every ${Math.round(resolution_m)} m only: short slopes are lost in it`);
  if (mappedHeights > 0) said.push('heights in the course file are not used beside the elevation model');
  return said;
}
