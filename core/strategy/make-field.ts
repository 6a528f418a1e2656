import { nearestStation } from '../geometry/along-line.ts';
import { ZONE_OUT_OF_BOUNDS } from '../geometry/obstacle-raster.ts';
import { type PuttingValue, puttFrom } from './putting-value.ts';
import { LONGEST_PUTT_M, type ValueField } from './value-field.ts';
import type { World } from './world.ts';

/** Lies are valued this far to the side of the line of play, and this far round the basket. */
const SIDE_M = 28;
const ROUND_BASKET_M = 36;
const FIRST_GUESS_M_PER_THROW = 55;
const SOLID_PER_M = 1;
const SOLID_HEIGHT_M = 1;
/** A putt flies about this high above the ground. */
const PUTT_HEIGHT_M = 1.3;

/** An empty field: where lies can be, how open each putt is, and a high first guess of every value. */
export function makeField(world: World, putting: PuttingValue, cell_m: number): ValueField {
  const { raster, map, basket } = world;
  const columns = Math.max(2, Math.floor(((raster.columns - 1) * raster.cell_m) / cell_m) + 1);
  const rows = Math.max(2, Math.floor(((raster.rows - 1) * raster.cell_m) / cell_m) + 1);
  const x0_m = raster.x0_m + raster.cell_m / 2;
  const y0_m = raster.y0_m + raster.cell_m / 2;
  const count = columns * rows;
  const value = new Float64Array(count);
  const isLie = new Uint8Array(count);
  const openPutt = new Float64Array(count).fill(1);
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      const i = row * columns + column;
      const x = x0_m + column * cell_m;
      const y = y0_m + row * cell_m;
      const d = Math.hypot(x - basket[0], y - basket[1]);
      value[i] = d < LONGEST_PUTT_M ? puttFrom(putting, d) : 2.2 + d / FIRST_GUESS_M_PER_THROW;
      const side = nearestStation(map.line, [x, y]).distance_m;
      if ((side <= SIDE_M || d <= ROUND_BASKET_M) && canLie(world, x, y)) isLie[i] = 1;
      if (d < LONGEST_PUTT_M + cell_m) openPutt[i] = openChance(world, x, y, d);
    }
  }
  return { x0_m, y0_m, cell_m, columns, rows, value, isLie, openPutt, putting, basket };
}

function rasterCell(world: World, x: number, y: number): number {
  const r = world.raster;
  const column = Math.min(r.columns - 1, Math.max(0, Math.floor((x - r.x0_m) / r.cell_m)));
  const row = Math.min(r.rows - 1, Math.max(0, Math.floor((y - r.y0_m) / r.cell_m)));
  return row * r.columns + column;
}

/** In bounds, and not inside something solid (a wall, a hedge, a building): a disc that hits one stays outside it. */
function canLie(world: World, x: number, y: number): boolean {
  const r = world.raster;
  const cell = rasterCell(world, x, y);
  const solid = r.lowDensity[cell] >= SOLID_PER_M && r.lowTop_m[cell] >= SOLID_HEIGHT_M;
  return (r.zone[cell] & ZONE_OUT_OF_BOUNDS) === 0 && !solid;
}

/** Chance that a straight putt meets nothing; the first and last metre are free. */
function openChance(world: World, x: number, y: number, distance_m: number): number {
  const r = world.raster;
  const steps = Math.ceil(distance_m);
  let depth = 0;
  for (let i = 1; i < steps; i++) {
    const t = i / steps;
    const cell = rasterCell(world, x + t * (world.basket[0] - x), y + t * (world.basket[1] - y));
    if (PUTT_HEIGHT_M < r.lowTop_m[cell]) depth += r.lowDensity[cell];
    if (PUTT_HEIGHT_M >= r.highBase_m[cell] && PUTT_HEIGHT_M < r.highTop_m[cell]) depth += r.highDensity[cell];
  }
  return Math.exp((-depth * distance_m) / Math.max(1, steps));
}
