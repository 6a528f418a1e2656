/** Values on a grid, row by row; NaN where there are none. */
export type ValueGrid = Readonly<{ columns: number; rows: number; values: Float32Array }>;

/** A place on the last node may miss it by rounding. */
const SLACK = 1e-6;

/**
 * Value at fractions of columns and rows, bilinear between the four nodes round it; a node without a value is left out of the
 * mean, and a place whose nearest node has none has no value.
 * @returns NaN outside the grid or where there are no data
 */
export function bilinear({ columns, rows, values }: ValueGrid, x: number, y: number): number {
  if (!(x >= -SLACK && y >= -SLACK && x <= columns - 1 + SLACK && y <= rows - 1 + SLACK)) return Number.NaN;
  const column = Math.max(0, Math.min(columns - 2, Math.floor(x)));
  const row = Math.max(0, Math.min(rows - 2, Math.floor(y)));
  const fx = Math.min(1, Math.max(0, x - column));
  const fy = Math.min(1, Math.max(0, y - row));
  const nearest = values[(row + (fy < 0.5 ? 0 : 1)) * columns + column + (fx < 0.5 ? 0 : 1)]!;
  if (Number.isNaN(nearest)) return Number.NaN;
  let [sum, weight] = [0, 0];
  for (let corner = 0; corner < 4; corner++) {
    const [dx, dy] = [corner & 1, corner >> 1];
    const value = values[(row + dy) * columns + column + dx]!;
    if (Number.isNaN(value)) continue;
    const w = (dx === 1 ? fx : 1 - fx) * (dy === 1 ? fy : 1 - fy);
    sum += w * value;
    weight += w;
  }
  return sum / weight;
}
