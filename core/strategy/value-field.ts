import type { LocalPoint } from '../geometry/hole-map.ts';
import { type PuttingValue, puttFrom } from './putting-value.ts';

/** Putts are considered up to here; further out only throws are. */
export const LONGEST_PUTT_M = 25;
/** Leaving the mapped ground: assumed cost, and metres a throw wins back. */
const OUTSIDE_COST = 0.3;
const OUTSIDE_M_PER_THROW = 40;
/** Below this clear chance the putt's value comes from the grid, where the obstacle is counted in. */
const OPEN_PUTT_CHANCE = 0.97;
/** Values are not told apart above this: a lie with no way out. */
export const MOST_THROWS = 12;

/**
 * Expected throws to hole out from anywhere on a hole: a square grid, bilinear between, with the exact putting value near the
 * basket. Row 0 south, column 0 west; index = row * columns + column.
 */
export type ValueField = Readonly<{
  x0_m: number;
  y0_m: number;
  cell_m: number;
  columns: number;
  rows: number;
  value: Float64Array;
  /** 1 where a lie can be (in bounds, near the hole); other cells hold values for interpolation only. */
  isLie: Uint8Array;
  /** Chance that a putt from the cell meets nothing; 1 beyond putting range. */
  openPutt: Float64Array;
  putting: PuttingValue;
  basket: LocalPoint;
}>;

/** Bilinear reading of any grid that lies like the field's; clamped at the edges. */
export function gridAt(field: ValueField, grid: Float64Array, x_m: number, y_m: number): number {
  let column = (x_m - field.x0_m) / field.cell_m;
  let row = (y_m - field.y0_m) / field.cell_m;
  const lastColumn = field.columns - 1;
  const lastRow = field.rows - 1;
  column = column < 0 ? 0 : Math.min(column, lastColumn);
  row = row < 0 ? 0 : Math.min(row, lastRow);
  const c = column >= lastColumn ? lastColumn - 1 : column | 0;
  const r = row >= lastRow ? lastRow - 1 : row | 0;
  const fc = column - c;
  const fr = row - r;
  const at = r * field.columns + c;
  const south = grid[at] + (grid[at + 1] - grid[at]) * fc;
  const north = grid[at + field.columns] + (grid[at + field.columns + 1] - grid[at + field.columns]) * fc;
  return south + (north - south) * fr;
}

export function distanceToBasket(field: ValueField, x_m: number, y_m: number): number {
  const dx = x_m - field.basket[0];
  const dy = y_m - field.basket[1];
  return Math.sqrt(dx * dx + dy * dy);
}

/** True where holing out from here is a putt: the putting value holds and nothing stands in the way. */
export function isPutt(field: ValueField, x_m: number, y_m: number, distance_m: number): boolean {
  return distance_m < LONGEST_PUTT_M && gridAt(field, field.openPutt, x_m, y_m) > OPEN_PUTT_CHANCE;
}

/** Throws that coming back from off the mapped ground takes; 0 on it. */
export function outsideThrows(field: ValueField, x_m: number, y_m: number): number {
  const west = field.x0_m - x_m;
  const south = field.y0_m - y_m;
  const east = -west - (field.columns - 1) * field.cell_m;
  const north = -south - (field.rows - 1) * field.cell_m;
  const outside = Math.max(0, west, east) + Math.max(0, south, north);
  return outside > 0 ? OUTSIDE_COST + outside / OUTSIDE_M_PER_THROW : 0;
}

/** Expected throws to hole out from a lie at a local point. */
export function valueAt(field: ValueField, x_m: number, y_m: number): number {
  const d = distanceToBasket(field, x_m, y_m);
  let value = gridAt(field, field.value, x_m, y_m);
  value += outsideThrows(field, x_m, y_m);
  if (isPutt(field, x_m, y_m, d)) {
    const putt = puttFrom(field.putting, d);
    if (putt < value) value = putt;
  }
  return value;
}
