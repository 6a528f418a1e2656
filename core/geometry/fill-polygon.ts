import type { LocalPolygon } from './hole-map.ts';

/** A square grid of cells: row 0 south, column 0 west; cell (column, row) begins at x0 + column·cell, y0 + row·cell. */
export type CellGrid = Readonly<{ x0_m: number; y0_m: number; cell_m: number; columns: number; rows: number }>;

/** Calls `mark(index)` once for every cell whose centre lies in the polygon (even–odd over all rings), by scanline. */
export function fillCentres(grid: CellGrid, polygon: LocalPolygon, mark: (index: number) => void): void {
  const { x0_m, y0_m, cell_m, columns, rows } = grid;
  const hits: number[][] = [];
  for (const ring of polygon)
    for (let i = 1; i < ring.length; i++) {
      const [a, b] = [ring[i - 1]!, ring[i]!];
      const [low, high] = a[1] < b[1] ? [a, b] : [b, a];
      if (low[1] === high[1]) continue;
      const first = Math.max(0, Math.ceil((low[1] - y0_m) / cell_m - 0.5));
      const last = Math.min(rows - 1, Math.ceil((high[1] - y0_m) / cell_m - 0.5) - 1);
      const slope = (high[0] - low[0]) / (high[1] - low[1]);
      for (let row = first; row <= last; row++) {
        const x = low[0] + (y0_m + (row + 0.5) * cell_m - low[1]) * slope;
        const inRow = hits[row];
        if (inRow === undefined) hits[row] = [x];
        else inRow.push(x);
      }
    }
  for (const [row, xs] of hits.entries()) {
    if (xs === undefined) continue;
    xs.sort((p, q) => p - q);
    for (let k = 1; k < xs.length; k += 2) {
      const first = Math.max(0, Math.ceil((xs[k - 1]! - x0_m) / cell_m - 0.5));
      const last = Math.min(columns - 1, Math.ceil((xs[k]! - x0_m) / cell_m - 0.5) - 1);
      for (let column = first; column <= last; column++) mark(row * columns + column);
    }
  }
}

/** As `fillCentres`, but for every cell whose square the polygon touches; a cell may be marked more than once. */
export function fillTouched(grid: CellGrid, polygon: LocalPolygon, mark: (index: number) => void): void {
  fillCentres(grid, polygon, mark);
  for (const ring of polygon) markLine(grid, ring, mark);
}

/** Calls `mark(index)` for every cell the line runs through; a cell may be marked more than once. */
export function markLine(
  grid: CellGrid,
  line: readonly (readonly [number, number])[],
  mark: (index: number) => void,
): void {
  const { x0_m, y0_m, cell_m, columns, rows } = grid;
  for (let i = 1; i < line.length; i++) {
    const [a, b] = [line[i - 1]!, line[i]!];
    const [low, high] = a[1] < b[1] ? [a, b] : [b, a];
    const first = Math.max(0, Math.floor((low[1] - y0_m) / cell_m));
    const last = Math.min(rows - 1, Math.floor((high[1] - y0_m) / cell_m));
    const slope = high[1] > low[1] ? (high[0] - low[0]) / (high[1] - low[1]) : 0;
    for (let row = first; row <= last; row++) {
      const [south, north] = [y0_m + row * cell_m, y0_m + (row + 1) * cell_m];
      const xs =
        slope === 0
          ? [low[0], high[0]]
          : [low[0] + (Math.max(south, low[1]) - low[1]) * slope, low[0] + (Math.min(north, high[1]) - low[1]) * slope];
      const west = Math.max(0, Math.floor((Math.min(...xs) - x0_m) / cell_m));
      const east = Math.min(columns - 1, Math.floor((Math.max(...xs) - x0_m) / cell_m));
      for (let column = west; column <= east; column++) mark(row * columns + column);
    }
  }
}
