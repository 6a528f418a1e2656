import type { Box } from './bounding-box.ts';
import type { LocalPoint, Terrain } from './hole-map.ts';
import { type KnownHeight, surfaceThrough } from './surface-through-heights.ts';

const CELL_m = 4;

/**
 * Ground of a hole: a smooth surface through the known heights, on a 4 m grid with a node at the tee, where it is 0.
 * Fewer than two heights say nothing about slope: the ground is level and `known` is false.
 * @param heights - above any common datum, metres; the tee's own height need not be among them
 * @param exact - places among the heights (tee, basket) where the grid itself must give the height, not only the surface
 * @throws {RangeError} when the box is not finite
 */
export function buildTerrain(box: Box, heights: readonly KnownHeight[], exact: readonly LocalPoint[] = []): Terrain {
  const first = { column: Math.floor(box.west_m / CELL_m), row: Math.floor(box.south_m / CELL_m) };
  const columns = Math.ceil(box.east_m / CELL_m) - first.column + 1;
  const rows = Math.ceil(box.north_m / CELL_m) - first.row + 1;
  if (!(columns > 0 && rows > 0 && Number.isFinite(columns * rows)))
    throw new RangeError(`terrain box must be finite, got ${JSON.stringify(box)}`);
  const grid = { x0_m: first.column * CELL_m, y0_m: first.row * CELL_m, cell_m: CELL_m, columns, rows };
  const height_m = new Float32Array(columns * rows);
  const surface = surfaceThrough(heights);
  if (surface === undefined) return { ...grid, height_m, known: false };
  const tee_m = surface([0, 0]);
  for (let row = 0; row < rows; row++)
    for (let column = 0; column < columns; column++)
      height_m[row * columns + column] = surface([grid.x0_m + column * CELL_m, grid.y0_m + row * CELL_m]) - tee_m;
  const terrain: Terrain = { ...grid, height_m, known: true };
  pinTerrain(
    terrain,
    exact.map(at => ({ at, height_m: surface(at) - tee_m })),
  );
  return terrain;
}

/** Ground above the tee's ground, metres; beyond the grid, that of its edge. */
export function groundHeight(terrain: Terrain, x_m: number, y_m: number): number {
  const { columns, rows, cell_m, height_m } = terrain;
  const x = Math.min(columns - 1, Math.max(0, (x_m - terrain.x0_m) / cell_m));
  const y = Math.min(rows - 1, Math.max(0, (y_m - terrain.y0_m) / cell_m));
  const column = Math.min(columns - 2, Math.floor(x));
  const row = Math.min(rows - 2, Math.floor(y));
  const [fx, fy] = [x - column, y - row];
  const k = row * columns + column;
  const south = height_m[k]! * (1 - fx) + height_m[k + 1]! * fx;
  const north = height_m[k + columns]! * (1 - fx) + height_m[k + columns + 1]! * fx;
  return south * (1 - fy) + north * fy;
}

/** Nudges the four nodes round each place, least change first, until the grid passes through it (Kaczmarz 1937). Writes into the grid. */
export function pinTerrain(terrain: Terrain, places: readonly KnownHeight[]): void {
  const { columns, rows, cell_m, height_m } = terrain;
  for (let pass = 0; pass < 3; pass++)
    for (const { at, height_m: wanted_m } of places) {
      const [x, y] = [(at[0] - terrain.x0_m) / cell_m, (at[1] - terrain.y0_m) / cell_m];
      if (!(x >= 0 && y >= 0 && x <= columns - 1 && y <= rows - 1)) continue;
      const column = Math.min(columns - 2, Math.floor(x));
      const row = Math.min(rows - 2, Math.floor(y));
      const [fx, fy] = [x - column, y - row];
      const weights = [(1 - fx) * (1 - fy), fx * (1 - fy), (1 - fx) * fy, fx * fy];
      const size = weights.reduce((sum, w) => sum + w * w, 0);
      const miss_m = wanted_m - groundHeight(terrain, at[0], at[1]);
      for (const [corner, w] of weights.entries()) {
        const k = (row + (corner >> 1)) * columns + column + (corner & 1);
        height_m[k] = height_m[k]! + (miss_m * w) / size;
      }
    }
}
