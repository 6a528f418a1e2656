import { type ObstacleRaster, ZONE_OUT_OF_BOUNDS } from './obstacle-raster.ts';

type Blocks = Pick<ObstacleRaster, 'blockCells' | 'blockColumns' | 'blockRows' | 'blockTop_m' | 'blockOut'>;
type Layers = Omit<ObstacleRaster, keyof Blocks>;

/**
 * Coarse table over a raster, blocks of `blockCells` × `blockCells` cells: what stands highest in each, and whether it is out of
 * bounds (a block that is partly so has the height Infinity: there every step counts).
 */
export function blockTable(raster: Layers, blockCells: number): Blocks {
  const { columns, rows, ground_m, lowTop_m, highTop_m, zone } = raster;
  const blockColumns = Math.ceil(columns / blockCells);
  const blockRows = Math.ceil(rows / blockCells);
  const blockTop_m = new Float32Array(blockColumns * blockRows).fill(Number.NEGATIVE_INFINITY);
  const blockOut = new Uint8Array(blockTop_m.length);
  const cells = new Uint16Array(blockTop_m.length);
  const out = new Uint16Array(blockTop_m.length);
  for (let row = 0; row < rows; row++)
    for (let column = 0; column < columns; column++) {
      const k = row * columns + column;
      const block = Math.floor(row / blockCells) * blockColumns + Math.floor(column / blockCells);
      const top_m = ground_m[k]! + Math.max(lowTop_m[k]!, highTop_m[k]!);
      if (top_m > blockTop_m[block]!) blockTop_m[block] = top_m;
      cells[block]!++;
      if (zone[k]! & ZONE_OUT_OF_BOUNDS) out[block]!++;
    }
  for (let block = 0; block < out.length; block++) {
    if (out[block] === cells[block]) blockOut[block] = 1;
    else if (out[block]! > 0) blockTop_m[block] = Number.POSITIVE_INFINITY;
  }
  return { blockCells, blockColumns, blockRows, blockTop_m, blockOut };
}
