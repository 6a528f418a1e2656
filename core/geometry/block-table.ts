import type { ObstacleRaster } from './obstacle-raster.ts';

type Layers = Omit<ObstacleRaster, 'blockCells' | 'blockColumns' | 'blockRows' | 'blockTop_m'>;

/**
 * Coarse table over a raster: for each block of `blockCells` × `blockCells` cells the height above the tee's ground under which
 * anything may be met in the block or the eight round it; Infinity where any of them holds penalty ground.
 */
export function blockTable(
  raster: Layers,
  blockCells: number,
): Pick<ObstacleRaster, 'blockCells' | 'blockColumns' | 'blockRows' | 'blockTop_m'> {
  const { columns, rows, ground_m, lowTop_m, highTop_m, zone } = raster;
  const blockColumns = Math.ceil(columns / blockCells);
  const blockRows = Math.ceil(rows / blockCells);
  const own = new Float32Array(blockColumns * blockRows).fill(Number.NEGATIVE_INFINITY);
  for (let row = 0; row < rows; row++)
    for (let column = 0; column < columns; column++) {
      const k = row * columns + column;
      const block = Math.floor(row / blockCells) * blockColumns + Math.floor(column / blockCells);
      const top_m = zone[k] === 0 ? ground_m[k]! + Math.max(lowTop_m[k]!, highTop_m[k]!) : Number.POSITIVE_INFINITY;
      if (top_m > own[block]!) own[block] = top_m;
    }
  const blockTop_m = new Float32Array(own.length);
  for (let row = 0; row < blockRows; row++)
    for (let column = 0; column < blockColumns; column++) {
      let top_m = Number.NEGATIVE_INFINITY;
      for (let r = Math.max(0, row - 1); r <= Math.min(blockRows - 1, row + 1); r++)
        for (let c = Math.max(0, column - 1); c <= Math.min(blockColumns - 1, column + 1); c++)
          top_m = Math.max(top_m, own[r * blockColumns + c]!);
      blockTop_m[row * blockColumns + column] = top_m;
    }
  return { blockCells, blockColumns, blockRows, blockTop_m };
}
