import { type ObstacleRaster, ZONE_OUT_OF_BOUNDS } from '../geometry/obstacle-raster.ts';

/** Numbers a cell of `CellTable.cells`, and what each is. */
export const CELL_STRIDE = 8;
export const CELL = {
  /** Ground above the tee's ground, metres. */
  ground: 0,
  /** Height above the ground over which nothing is met, metres. */
  top: 1,
  lowTop: 2,
  lowDensity: 3,
  highBase: 4,
  highTop: 5,
  highDensity: 6,
  /** ZONE_ bits. */
  zone: 7,
} as const;

/** An obstacle raster's layers side by side, so that a march reads one place in memory a step. */
export type CellTable = Readonly<{
  cells: Float32Array;
  /** False when no cell is out of bounds: a march need then not remember where it was last in bounds. */
  hasOutOfBounds: boolean;
}>;

const made = new WeakMap<ObstacleRaster, CellTable>();

/** The table of a raster, made once and kept as long as the raster is. */
export function cellTable(raster: ObstacleRaster): CellTable {
  let table = made.get(raster);
  if (!table) {
    table = makeTable(raster);
    made.set(raster, table);
  }
  return table;
}

function makeTable(raster: ObstacleRaster): CellTable {
  const count = raster.columns * raster.rows;
  const cells = new Float32Array(count * CELL_STRIDE);
  let hasOutOfBounds = false;
  for (let i = 0; i < count; i++) {
    const at = i * CELL_STRIDE;
    cells[at + CELL.ground] = raster.ground_m[i];
    cells[at + CELL.top] = Math.max(raster.lowTop_m[i], raster.highTop_m[i]);
    cells[at + CELL.lowTop] = raster.lowTop_m[i];
    cells[at + CELL.lowDensity] = raster.lowDensity[i];
    cells[at + CELL.highBase] = raster.highBase_m[i];
    cells[at + CELL.highTop] = raster.highTop_m[i];
    cells[at + CELL.highDensity] = raster.highDensity[i];
    cells[at + CELL.zone] = raster.zone[i];
    if (raster.zone[i] & ZONE_OUT_OF_BOUNDS) hasOutOfBounds = true;
  }
  return { cells, hasOutOfBounds };
}
