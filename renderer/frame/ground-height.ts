import type { PlainHoleMap } from '../../backend/api/contract/hole-map.ts';
import type { LocalPoint } from '../../core/geometry/hole-map.ts';

/** Height of the ground above the tee's ground, bilinear; the edge's height beyond the grid. */
export function groundHeight_m(terrain: PlainHoleMap['terrain'], [east_m, north_m]: LocalPoint): number {
  const { x0_m, y0_m, cell_m, columns, rows, height_m } = terrain;
  if (!terrain.known || columns < 2 || rows < 2) return 0;
  const x = Math.min(columns - 1.000001, Math.max(0, (east_m - x0_m) / cell_m));
  const y = Math.min(rows - 1.000001, Math.max(0, (north_m - y0_m) / cell_m));
  const [column, row] = [Math.floor(x), Math.floor(y)];
  const [fx, fy] = [x - column, y - row];
  const at = (c: number, r: number) => height_m[r * columns + c]!;
  const south = at(column, row) * (1 - fx) + at(column + 1, row) * fx;
  const north = at(column, row + 1) * (1 - fx) + at(column + 1, row + 1) * fx;
  return south * (1 - fy) + north * fy;
}
