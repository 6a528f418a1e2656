import type { Course, CourseObject, Cover, Tree } from '../course/course.ts';
import { coverDefaults, treeDefaults } from '../course/defaults.ts';
import type { CourseGround } from '../course/elevation-grid.ts';
import type { Problem } from '../units/result.ts';
import { boundingBox } from './bounding-box.ts';
import { groundCoverage } from './ground-coverage.ts';
import type { LocalPoint } from './hole-map.ts';
import { localFrame, toLocal, toLonLat } from './local-frame.ts';
import { localGround, positionsOf } from './local-shapes.ts';
import { isInAny } from './point-in-polygon.ts';
import { sampleElevation } from './sample-elevation.ts';

/** Lower than this the surface shows no tree: grass, a car, the models' own noise (lidar about 0.2 m, each). */
const LEAST_TREE_m = 2;
/** Taller is no tree on Earth: a crane, a bird, a wrong datum. */
const TALLEST_m = 120;
/** Of a wood's ground, so much must carry trees for its height to be read. */
const LEAST_SHARE = 0.1;
/** A wood is as high as this share of its canopy stays under: its taller trees, not the one giant. */
const WOOD_QUANTILE = 0.9;
/** More samples of one wood tell nothing more. */
const MOST_SAMPLES = 4000;
/** Without a mapped crown, tops are looked for this near the stem. */
const STEM_REACH_m = 2;

/**
 * The course with the elevation models beside it. Where a surface model comes with the terrain, trees, woods and tree rows
 * mapped without a height get that of the canopy (surface less terrain), each said in the course's assumptions.
 */
export function withGround(course: Course, ground: CourseGround | undefined): Course {
  if (ground === undefined) return course;
  const notMapped = course.notMapped.filter(kind => kind !== 'heights');
  const notes: Problem[] = [aboutGround(course, ground)];
  if (ground.surface === undefined)
    return { ...course, ground, notMapped, assumptions: [...course.assumptions, ...notes] };
  const objects = course.objects.map(object => withCanopyHeight(object, ground, notes));
  return { ...course, ground, notMapped, objects, assumptions: [...course.assumptions, ...notes] };
}

function aboutGround(course: Course, { terrain }: CourseGround): Problem {
  const { source, crs, resolution_m, datum } = terrain;
  const { missing } = groundCoverage(course, terrain);
  const left = missing.length === 0 ? '' : `; it does not reach hole ${missing.join(', ')}`;
  return {
    path: 'terrain',
    message: `the ground is read from ${source}, ${crs}, a height every ${resolution_m} m, ${datum}${left}`,
  };
}

function withCanopyHeight(object: CourseObject, ground: CourseGround, notes: Problem[]): CourseObject {
  if (!object.assumed.includes('height_m')) return object;
  const isStand = object.kind === 'cover' && (object.form === 'wood' || object.form === 'treeRow');
  if (object.kind !== 'tree' && !isStand) return object;
  const height_m = object.kind === 'tree' ? treeTop_m(object, ground) : standTop_m(object as Cover, ground);
  if (height_m === undefined) return object;
  notes.push({
    path: object.path,
    message: `height ${height_m.toFixed(1)} m read from the surface model ${ground.surface!.source} less the terrain: confirm`,
  });
  return object.kind === 'tree' ? grownTree(object, height_m) : grownStand(object as Cover, height_m);
}

/** What was only assumed of its crown follows the height. */
function grownTree(tree: Tree, height_m: number): Tree {
  const is = (field: string) => tree.assumed.includes(field);
  const crownDiameter_m = is('crownDiameter_m') ? treeDefaults.crownPerHeight * height_m : tree.crownDiameter_m;
  const crownBase_m = is('crownBase_m')
    ? Math.min(treeDefaults.crownBase_m, treeDefaults.crownBasePerHeight * height_m)
    : tree.crownBase_m;
  const trunkDiameter_m = is('trunkDiameter_m')
    ? Math.min(treeDefaults.trunkDiameter_m, crownDiameter_m)
    : tree.trunkDiameter_m;
  // A crown mapped as beginning above the canopy: the map was measured there, the model may be old.
  if (crownBase_m >= height_m) return tree;
  const assumed = tree.assumed.filter(field => field !== 'height_m');
  return { ...tree, height_m, crownDiameter_m, crownBase_m, trunkDiameter_m, assumed };
}

function grownStand(stand: Cover, height_m: number): Cover {
  const base_m = stand.assumed.includes('base_m')
    ? Math.min(coverDefaults[stand.form].base_m, height_m / 2)
    : stand.base_m;
  if (base_m >= height_m) return stand;
  return { ...stand, height_m, base_m, assumed: stand.assumed.filter(field => field !== 'height_m') };
}

/** Surface above terrain, metres; undefined without data or where it shows no tree. */
function canopyAt(ground: CourseGround, lon_deg: number, lat_deg: number): number | undefined {
  const top_m = sampleElevation(ground.surface!, lon_deg, lat_deg);
  const foot_m = sampleElevation(ground.terrain, lon_deg, lat_deg);
  return top_m === undefined || foot_m === undefined ? undefined : top_m - foot_m;
}

const isTree = (canopy_m: number | undefined): canopy_m is number =>
  canopy_m !== undefined && canopy_m >= LEAST_TREE_m && canopy_m <= TALLEST_m;

/** The highest canopy over the crown: a model's top stands seldom right over the mapped stem. */
function treeTop_m(tree: Tree, ground: CourseGround): number | undefined {
  const [lon_deg, lat_deg] = tree.position;
  const frame = localFrame(lon_deg, lat_deg);
  const reach_m = tree.assumed.includes('crownDiameter_m') ? STEM_REACH_m : tree.crownDiameter_m / 2;
  const step_m = Math.max(0.5, reach_m / 4);
  let top_m: number | undefined;
  for (let x = -reach_m; x <= reach_m; x += step_m)
    for (let y = -reach_m; y <= reach_m; y += step_m) {
      if (Math.hypot(x, y) > reach_m) continue;
      const canopy_m = canopyAt(ground, ...toLonLat(frame, [x, y]));
      if (isTree(canopy_m) && (top_m === undefined || canopy_m > top_m)) top_m = canopy_m;
    }
  return top_m;
}

function standTop_m(stand: Cover, ground: CourseGround): number | undefined {
  const positions = positionsOf(stand.geometry);
  const frame = localFrame(positions[0]![0], positions[0]![1]);
  const box = boundingBox(
    positions.map(position => toLocal(frame, position)),
    stand.width_m,
  );
  const polygons = localGround(frame, stand.geometry, stand.width_m, box);
  const area_m2 = (box.east_m - box.west_m) * (box.north_m - box.south_m);
  const step_m = Math.max(1, Math.sqrt(area_m2 / MOST_SAMPLES));
  const tops: number[] = [];
  let inside = 0;
  for (let x = box.west_m + step_m / 2; x < box.east_m; x += step_m)
    for (let y = box.south_m + step_m / 2; y < box.north_m; y += step_m) {
      const point: LocalPoint = [x, y];
      if (!isInAny(point, polygons)) continue;
      inside++;
      const canopy_m = canopyAt(ground, ...toLonLat(frame, point));
      if (isTree(canopy_m)) tops.push(canopy_m);
    }
  if (tops.length === 0 || tops.length < LEAST_SHARE * inside) return undefined;
  return tops.sort((a, b) => a - b)[Math.min(tops.length - 1, Math.floor(WOOD_QUANTILE * tops.length))];
}
