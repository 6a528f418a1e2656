import type { ElevationGrid } from '../course/elevation-grid.ts';
import { bilinear } from './bilinear.ts';

/**
 * Height at a place, bilinear between the nodes round it.
 * @returns metres above the model's datum; undefined outside the grid or where it has no data
 */
export function sampleElevation(grid: ElevationGrid, lon_deg: number, lat_deg: number): number | undefined {
  const { columns, rows, height_m } = grid;
  const x = eastOf_deg(grid, lon_deg) / grid.stepLon_deg;
  const y = (grid.north_deg - lat_deg) / grid.stepLat_deg;
  const found_m = bilinear({ columns, rows, values: height_m }, x, y);
  return Number.isNaN(found_m) ? undefined : found_m;
}

/** The short way round, so that a grid may lie across the antimeridian. */
function eastOf_deg(grid: ElevationGrid, lon_deg: number): number {
  const east = (lon_deg - grid.west_deg) % 360;
  const wrapped = east < 0 ? east + 360 : east;
  return wrapped > 359 ? wrapped - 360 : wrapped;
}
