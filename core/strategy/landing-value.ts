import { type ObstacleRaster, SURFACES, ZONE_OUT_OF_BOUNDS } from '../geometry/obstacle-raster.ts';
import { mayGoIn, mostHoled } from './hole-out.ts';
import type { Lie } from './march.ts';
import { distanceToBasket, type ValueField, valueAt } from './value-field.ts';
import type { WindBins } from './wind-bins.ts';
import { groundAt, type World } from './world.ts';

const DEGREE = Math.PI / 180;
/** Least cost of ending out of bounds or past a mando, for a bound before marching: the penalty, less what relief may gain. */
const SUSPECT_COST = 0.8;
const LONGEST_SHIFT_M = 25;

/** Where the middle of a stored shot comes to rest from a lie, nothing in the way, over sloping ground. `out` receives local metres. */
export function landingOf(
  world: World,
  bins: WindBins,
  shot: number,
  aim_deg: number,
  lie: Lie,
  out: Float64Array,
): void {
  const bin = bins.at(aim_deg).landing;
  const along = bin[3 * shot];
  const left = bin[3 * shot + 1];
  const sin = Math.sin(aim_deg * DEGREE);
  const cos = Math.cos(aim_deg * DEGREE);
  let x = lie.east_m + sin * along - cos * left;
  let y = lie.north_m + cos * along + sin * left;
  if (world.map.terrain.known) {
    const shift = slopeShift_m(world, lie, x, y, along, bin[3 * shot + 2]);
    x += sin * shift;
    y += cos * shift;
  }
  out[0] = x;
  out[1] = y;
}

/** Indices of all shots of some bins. */
export function everyShot({ library }: WindBins): Uint32Array {
  return Uint32Array.from(library.shots, (_, i) => i);
}

/**
 * Throws to hole out after the middle of each shot along each of some aims from a lie, were nothing in the way: a cheap lower bound
 * on what marching it gives (obstacles only cost). Shots that come down more than `farthest_m` away are left out (Infinity).
 * @param shots - indices of the shots asked about
 * @param out - receives `[shot][aim]`
 */
export function landingValues(
  world: World,
  bins: WindBins,
  field: ValueField,
  lie: Lie,
  shots: ArrayLike<number>,
  aims_deg: readonly number[],
  farthest_m: number,
  out: Float64Array,
): void {
  const sloped = world.map.terrain.known;
  const point = new Float64Array(2);
  const range_m = distanceToBasket(field, lie.east_m, lie.north_m);
  const holedAtMost = mostHoled(range_m);
  const { shots: specs } = bins.library;
  const rollsAlike = !specs.some(({ shape }) => shape === 'roller') || isLevelTurf(world);
  aims_deg.forEach((aim_deg, aim) => {
    const { landing } = bins.at(aim_deg);
    const sin = Math.sin(aim_deg * DEGREE);
    const cos = Math.cos(aim_deg * DEGREE);
    for (let i = 0; i < shots.length; i++) {
      const shot = shots[i];
      const at = i * aims_deg.length + aim;
      if (!rollsAlike && specs[shot].shape === 'roller') {
        // on other ground it rolls much further or much less far: no bound is known but the throw itself
        out[at] = 1;
        continue;
      }
      const along = landing[3 * shot];
      if (along > farthest_m) {
        out[at] = Number.POSITIVE_INFINITY;
        continue;
      }
      const left = landing[3 * shot + 1];
      let x = lie.east_m + sin * along - cos * left;
      let y = lie.north_m + cos * along + sin * left;
      if (sloped) {
        const shift = slopeShift_m(world, lie, x, y, along, landing[3 * shot + 2]);
        x += sin * shift;
        y += cos * shift;
      }
      point[0] = x;
      point[1] = y;
      const suspect = isOut(world, x, y) || (world.mandos.length > 0 && crossesMando(world, lie, point));
      // what may have gone in on the way there costs this one throw only
      const holed = holedAtMost > 0 && mayGoIn(range_m, x - field.basket[0], y - field.basket[1]) ? holedAtMost : 0;
      out[at] = 1 + (1 - holed) * valueAt(field, x, y) + (suspect ? SUSPECT_COST : 0);
    }
  });
}

const levelTurf = new WeakMap<ObstacleRaster, boolean>();

function isLevelTurf({ map, raster }: World): boolean {
  const known = levelTurf.get(raster);
  if (known !== undefined) return known;
  const turf = SURFACES.indexOf('turf');
  const found = !map.terrain.known && raster.surface.every(surface => surface === turf);
  levelTurf.set(raster, found);
  return found;
}

function slopeShift_m(world: World, lie: Lie, x: number, y: number, along: number, forwardPerFall: number): number {
  const fall = lie.ground_m - groundAt(world, x, y);
  return Math.max(-along * 0.8, Math.min(LONGEST_SHIFT_M, fall * forwardPerFall));
}

function isOut(world: World, x: number, y: number): boolean {
  const r = world.raster;
  const column = Math.min(r.columns - 1, Math.max(0, Math.floor((x - r.x0_m) / r.cell_m)));
  const row = Math.min(r.rows - 1, Math.max(0, Math.floor((y - r.y0_m) / r.cell_m)));
  return (r.zone[row * r.columns + column] & ZONE_OUT_OF_BOUNDS) !== 0;
}

function crossesMando(world: World, lie: Lie, to: Float64Array): boolean {
  for (const m of world.mandos) {
    if (m.low_m > 2) continue;
    const dx = to[0] - lie.east_m;
    const dy = to[1] - lie.north_m;
    const ex = m.bx - m.ax;
    const ey = m.by - m.ay;
    const det = dx * ey - dy * ex;
    if (det === 0) continue;
    const f = ((m.ax - lie.east_m) * ey - (m.ay - lie.north_m) * ex) / det;
    const g = ((m.ax - lie.east_m) * dy - (m.ay - lie.north_m) * dx) / det;
    if (f > 0 && f <= 1 && g >= 0 && g <= 1) return true;
  }
  return false;
}
