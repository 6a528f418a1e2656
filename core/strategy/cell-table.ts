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
  /** 1 for ground in bounds so near to out-of-bounds that a lie on it may be moved from the line. */
  byTheLine: Uint8Array;
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
  return { cells, hasOutOfBounds, byTheLine: hasOutOfBounds ? nearOut(raster) : new Uint8Array(count) };
}

/** Cells in bounds with an out-of-bounds cell among those within two rows and columns. */
function nearOut({ zone, columns, rows }: ObstacleRaster): Uint8Array {
  const near = new Uint8Array(zone.length);
  for (let k = 0; k < zone.length; k++) {
    if ((zone[k] & ZONE_OUT_OF_BOUNDS) === 0) continue;
    const column = k % columns;
    const row = Math.floor(k / columns);
    for (let r = Math.max(0, row - 2); r <= Math.min(rows - 1, row + 2); r++)
      for (let c = Math.max(0, column - 2); c <= Math.min(columns - 1, column + 2); c++) near[r * columns + c] = 1;
  }
  for (let k = 0; k < zone.length; k++) if (zone[k] & ZONE_OUT_OF_BOUNDS) near[k] = 0;
  return near;
}
