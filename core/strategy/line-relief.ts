import { type ObstacleRaster, ZONE_OUT_OF_BOUNDS } from '../geometry/obstacle-raster.ts';

/** How far in from the out-of-bounds line a lie may be moved. @source Official Rules of Disc Golf 806.02 (1 m, at right angles to the line) */
const RELIEF_M = 1;
/** Cells to each side that the line can be within 1 m in. */
const REACH_CELLS = 2;

/** A point, rewritten by what moves it. */
export type MovedPoint = { x: number; y: number };

/**
 * The metre that the rules give from the out-of-bounds line: moves a point nearer than that to 1 m from the nearest out-of-bounds
 * ground, straight away from it. Taken whenever it can be (assumed: a lie off the line is never worse); where 1 m in is out again,
 * the point stays.
 */
export function createLineRelief(raster: ObstacleRaster): (point: MovedPoint) => void {
  const { x0_m, y0_m, cell_m, columns, rows, zone } = raster;
  const isOut = (column: number, row: number) =>
    column >= 0 &&
    row >= 0 &&
    column < columns &&
    row < rows &&
    (zone[row * columns + column] & ZONE_OUT_OF_BOUNDS) !== 0;

  return point => {
    const x = (point.x - x0_m) / cell_m;
    const y = (point.y - y0_m) / cell_m;
    const column = Math.floor(x);
    const row = Math.floor(y);
    let least = RELIEF_M / cell_m;
    let awayX = 0;
    let awayY = 0;
    for (let r = row - REACH_CELLS; r <= row + REACH_CELLS; r++) {
      for (let c = column - REACH_CELLS; c <= column + REACH_CELLS; c++) {
        if (!isOut(c, r)) continue;
        const dx = x - Math.max(c, Math.min(c + 1, x));
        const dy = y - Math.max(r, Math.min(r + 1, y));
        const distance = Math.sqrt(dx * dx + dy * dy);
        if (distance >= least) continue;
        least = distance;
        // on the very edge of the cell: away from its middle, along the axis it is beside
        const onEdge = distance < 1e-9;
        awayX = onEdge ? edgeSide(x - c - 0.5) : dx / distance;
        awayY = onEdge ? edgeSide(y - r - 0.5) : dy / distance;
      }
    }
    if (awayX === 0 && awayY === 0) return;
    const length = Math.sqrt(awayX * awayX + awayY * awayY);
    const move = RELIEF_M / cell_m - least;
    const movedX = x + (awayX / length) * move;
    const movedY = y + (awayY / length) * move;
    if (isOut(Math.floor(movedX), Math.floor(movedY))) return;
    point.x = x0_m + movedX * cell_m;
    point.y = y0_m + movedY * cell_m;
  };
}

/** −1, 0 or 1: on which edge of its cell a coordinate lies. */
function edgeSide(fromMiddle: number): number {
  return Math.abs(Math.abs(fromMiddle) - 0.5) < 1e-9 ? Math.sign(fromMiddle) : 0;
}
