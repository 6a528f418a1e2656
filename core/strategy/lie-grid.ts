import { nearestStation } from '../geometry/along-line.ts';
import type { Lie } from './march.ts';
import { distanceToBasket, LONGEST_PUTT_M, type ValueField } from './value-field.ts';
import { groundAt, type World } from './world.ts';

/** Coarse lies whose values differ by less, on ground with nothing on it, are interpolated between. */
const SMOOTH = 0.08;

/** A lie of a field by its index. */
export function lieAt(world: World, field: ValueField, node: number): Lie {
  const east_m = field.x0_m + (node % field.columns) * field.cell_m;
  const north_m = field.y0_m + Math.floor(node / field.columns) * field.cell_m;
  return { east_m, north_m, ground_m: groundAt(world, east_m, north_m) };
}

/** Every second lie in both directions. */
export function isCoarse(field: ValueField, node: number): boolean {
  return (node % field.columns) % 2 === 0 && Math.floor(node / field.columns) % 2 === 0;
}

/** Bands of lies in the order of what is left of the hole: along the line of play, plus how far off it they are. */
export function bandsOutwards(world: World, field: ValueField): readonly (readonly number[])[] {
  const line = world.map.line;
  const length = nearestStation(line, world.basket).station_m;
  const nodes: { node: number; remaining_m: number }[] = [];
  for (let node = 0; node < field.value.length; node++) {
    if (!field.isLie[node]) continue;
    const x = field.x0_m + (node % field.columns) * field.cell_m;
    const y = field.y0_m + Math.floor(node / field.columns) * field.cell_m;
    const near = nearestStation(line, [x, y]);
    const direct = distanceToBasket(field, x, y);
    nodes.push({ node, remaining_m: Math.max(direct, length - near.station_m + 0.5 * near.distance_m) });
  }
  nodes.sort((a, b) => a.remaining_m - b.remaining_m || a.node - b.node);
  const bands: number[][] = [];
  let startsAt = Number.NEGATIVE_INFINITY;
  for (const { node, remaining_m } of nodes) {
    if (remaining_m >= startsAt + 2 * field.cell_m) {
      startsAt = remaining_m;
      bands.push([]);
    }
    bands[bands.length - 1].push(node);
  }
  return bands;
}

export function neighbours(field: ValueField, node: number, reach: number): number[] {
  const column = node % field.columns;
  const row = Math.floor(node / field.columns);
  const found: number[] = [];
  for (let r = Math.max(0, row - reach); r <= Math.min(field.rows - 1, row + reach); r++) {
    for (let c = Math.max(0, column - reach); c <= Math.min(field.columns - 1, column + reach); c++) {
      if (r !== row || c !== column) found.push(r * field.columns + c);
    }
  }
  return found;
}

/** The two or four coarse lies next to a fine one; −1 where the grid ends. */
export function coarseAround(field: ValueField, node: number): number[] {
  const column = node % field.columns;
  const row = Math.floor(node / field.columns);
  const columns = column % 2 === 0 ? [column] : [column - 1, column + 1];
  const rows = row % 2 === 0 ? [row] : [row - 1, row + 1];
  return rows.flatMap(r => columns.map(c => (r < field.rows && c < field.columns ? r * field.columns + c : -1)));
}

/** True when a fine lie need not be searched: its coarse neighbours agree, throw clean, and nothing lies between them. */
export function isSmooth(world: World, field: ValueField, node: number, isClean: (node: number) => boolean): boolean {
  const around = coarseAround(field, node);
  if (around.some(n => n < 0 || !field.isLie[n] || !isClean(n))) return false;
  const values = around.map(n => field.value[n]);
  if (Math.max(...values) - Math.min(...values) > SMOOTH) return false;
  const x = field.x0_m + (node % field.columns) * field.cell_m;
  const y = field.y0_m + Math.floor(node / field.columns) * field.cell_m;
  if (distanceToBasket(field, x, y) < LONGEST_PUTT_M) return false;
  const r = world.raster;
  const reach = Math.ceil(field.cell_m / r.cell_m);
  const column = Math.floor((x - r.x0_m) / r.cell_m);
  const row = Math.floor((y - r.y0_m) / r.cell_m);
  for (let w = Math.max(0, row - reach); w <= Math.min(r.rows - 1, row + reach); w++) {
    for (let c = Math.max(0, column - reach); c <= Math.min(r.columns - 1, column + reach); c++) {
      const cell = w * r.columns + c;
      if (r.zone[cell] !== 0 || r.lowTop_m[cell] > 0) return false;
    }
  }
  return true;
}
