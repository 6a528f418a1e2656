import { nearestStation } from '../../core/geometry/along-line.ts';
import type { LocalPoint } from '../../core/geometry/hole-map.ts';
import { lineLength_m } from '../../core/geometry/line-length.ts';
import { isInPolygon } from '../../core/geometry/point-in-polygon.ts';
import { besideLine, stations, strip } from './beside-line.ts';
import { courseText, type Site } from './course-text.ts';
import { clearOfHoles_m, holeItems, teePad } from './hole-plan.ts';
import { area, type MapItem, point, withHeight } from './map-item.ts';
import { ridgeHoles as holes, type RidgeHole } from './ridge-and-reservoir-holes.ts';
import { ridgeFeatures } from './ridge-features.ts';
import { reservoir, ridgeHeight_m } from './ridge-ground.ts';
import { seededRandom } from './seeded-random.ts';
import { scatter, tree, unmeasuredTree } from './trees.ts';
import { woodsBeside } from './woods-beside.ts';

const site: Site = { originLon_deg: 15.4127, originLat_deg: 59.6402, turn_deg: 14, height_m: ridgeHeight_m };
const random = seededRandom(402437);
const grounds: readonly LocalPoint[] = [
  [-30, 55],
  [60, 30],
  [150, 0],
  [250, -8],
  [400, 8],
  [520, 0],
  [650, 40],
  [715, 180],
  [722, 330],
  [650, 450],
  [460, 475],
  [330, 505],
  [190, 450],
  [20, 425],
  [-28, 300],
];
const features = ridgeFeatures(holes);
const woods: readonly MapItem[] = holes.flatMap(woodItems);

/** The long course of slopes, water, out-of-bounds and mandos: GeoJSON text. */
export function ridgeAndReservoir(): string {
  const course = area(grounds, {
    leisure: 'disc_golf_course',
    name: 'Ridge and Reservoir',
    sport: 'disc_golf',
    holes: '18',
  });
  return courseText([course, ...holes.flatMap(play), ...features, ...woods, ...trees(), ...surveyedHeights()], site);
}

/** Line, tee (a pad on every third hole) and basket, all with the height of the ground; the fairway where it is mown or laid. */
function play(hole: RidgeHole): MapItem[] {
  const [line, tee, basket] = holeItems(hole) as [MapItem, MapItem, MapItem];
  const items = [line, Number(hole.ref) % 3 === 0 ? teePad(hole, {}) : tee, basket].map(withHeight);
  if (!hole.fairway) return items;
  const { surface, from_m, to_m, half_m } = hole.fairway;
  const wavy = (s: number) => half_m + 1.5 * Math.sin(s / 19);
  const mown = strip(
    hole.line,
    stations(from_m, to_m, 9),
    s => -wavy(s),
    s => wavy(s + 30),
  );
  return [...items, area(mown, { disc_golf: 'fairway', ref: hole.ref, surface })];
}

function woodItems(hole: RidgeHole): MapItem[] {
  const others = holes.filter(other => other !== hole);
  return (hole.woods ?? []).flatMap((wood, i) => {
    const phase = random.between(0, 6.28);
    const edge = { ...wood, edge_m: (s: number) => wood.edge_m + 1.8 * Math.sin(s / 11 + phase) };
    const tags = {
      ...(i % 2 === 0 ? { natural: 'wood' } : { landuse: 'forest' }),
      height: String(random.whole(12, 19)),
      min_height: (1.6 + 0.4 * random.whole(0, 3)).toFixed(1),
      density: (0.5 + 0.05 * random.whole(0, 6)).toFixed(2),
    };
    return woodsBeside(hole, others, edge, isFree).map(ring => area(ring, tags));
  });
}

/** Neither in water nor on anything else that is drawn as an area or a line. */
function isFree(p: LocalPoint): boolean {
  return [{ points: reservoir, form: 'area' as const }, ...features].every(item => {
    if (item.form === 'point') return true;
    const ring = item.form === 'area' ? [...item.points, item.points[0]!] : item.points;
    if (item.form === 'area' && isInPolygon(p, [ring])) return false;
    return nearestStation(ring, p).distance_m > 4;
  });
}

/** Scattered over the open ground, thinner near the lines; one in twelve was never measured. */
function trees(): MapItem[] {
  const inWood = (p: LocalPoint) => woods.some(wood => isInPolygon(p, [[...wood.points, wood.points[0]!]]));
  const free = (p: LocalPoint) =>
    isInPolygon(p, [[...grounds, grounds[0]!]]) &&
    clearOfHoles_m(p, holes) > 8 + random.between(0, 9) &&
    isFree(p) &&
    !inWood(p);
  const scattered = scatter([-30, 0], [722, 500], 900, 11, free, random);
  const fairway: readonly (readonly [ref: number, station_m: number, left_m: number])[] = [
    [1, 70, -5],
    [3, 140, 4],
    [9, 90, -5],
    [11, 70, 4],
    [12, 60, -6],
    [12, 215, 6],
    [13, 60, -4],
    [15, 95, 5],
    [18, 80, 4],
  ];
  const near = fairway.map(([ref, s, left]) => besideLine(holes[ref - 1]!.line, s, left));
  return [
    ...scattered.map((p, i) =>
      i % 12 === 7 ? unmeasuredTree(p) : tree(p, random.pick(['park', 'slender', 'conifer'] as const), random),
    ),
    ...near.map(p => tree(p, 'slender', random)),
  ];
}

/** Heights measured with a levelling staff beside every hole, and on a coarse net between. */
function surveyedHeights(): MapItem[] {
  const beside = holes.flatMap(hole =>
    stations(12, lineLength_m(hole.line) - 12, 22).map(s => besideLine(hole.line, s, random.between(-16, 16))),
  );
  const net = stations(0, 700, 78).flatMap(x => stations(70, 440, 74).map((y): LocalPoint => [x, y]));
  return [...beside, ...net].map(p => point(p, { man_made: 'survey_point', ele: ridgeHeight_m(p).toFixed(2) }));
}
