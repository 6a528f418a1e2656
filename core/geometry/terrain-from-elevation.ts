import type { ElevationGrid } from '../course/elevation-grid.ts';
import type { LocalPoint, Terrain } from './hole-map.ts';
import { type LocalFrame, toLonLat } from './local-frame.ts';
import { sampleElevation } from './sample-elevation.ts';
import { pinTerrain } from './terrain.ts';

/** With less of the hole's ground covered the model is left out: half a slope is worse than what the map says. */
const LEAST_COVERED = 0.9;

/**
 * Fills a hole's terrain grid from an elevation model, as heights above the tee's ground. Gaps in the model are closed from
 * their rims.
 * @param blank - the grid to fill, e.g. level ground
 * @param exact - places (tee, basket) where the grid itself must give the model's height
 * @returns undefined when the model has no height at one of `exact`, or covers too little of the grid
 */
export function terrainFromElevation(
  model: ElevationGrid,
  frame: LocalFrame,
  blank: Terrain,
  exact: readonly LocalPoint[],
): Terrain | undefined {
  const heightAt_m = (point: LocalPoint) => sampleElevation(model, ...toLonLat(frame, point));
  const tee_m = heightAt_m([0, 0]);
  const pins = exact.map(at => ({ at, height_m: heightAt_m(at) }));
  if (tee_m === undefined || pins.some(pin => pin.height_m === undefined)) return undefined;
  const { columns, rows, x0_m, y0_m, cell_m } = blank;
  const height_m = new Float32Array(columns * rows).fill(Number.NaN);
  let covered = 0;
  for (let row = 0; row < rows; row++)
    for (let column = 0; column < columns; column++) {
      const found_m = heightAt_m([x0_m + column * cell_m, y0_m + row * cell_m]);
      if (found_m === undefined) continue;
      height_m[row * columns + column] = found_m - tee_m;
      covered++;
    }
  if (covered < LEAST_COVERED * columns * rows) return undefined;
  closeGaps(height_m, columns, rows);
  const terrain: Terrain = { ...blank, height_m, known: true };
  pinTerrain(
    terrain,
    pins.map(pin => ({ at: pin.at, height_m: pin.height_m! - tee_m })),
  );
  return terrain;
}

/** Ring by ring: an empty node takes the mean of its neighbours that are known. */
function closeGaps(height_m: Float32Array, columns: number, rows: number): void {
  let empty = [...height_m.keys()].filter(k => Number.isNaN(height_m[k]!));
  while (empty.length > 0) {
    const filled = empty.flatMap(k => {
      const [row, column] = [Math.floor(k / columns), k % columns];
      const known = [
        column > 0 ? height_m[k - 1]! : Number.NaN,
        column < columns - 1 ? height_m[k + 1]! : Number.NaN,
        row > 0 ? height_m[k - columns]! : Number.NaN,
        row < rows - 1 ? height_m[k + columns]! : Number.NaN,
      ].filter(h => !Number.isNaN(h));
      return known.length === 0 ? [] : [{ k, h: known.reduce((sum, h) => sum + h, 0) / known.length }];
    });
    for (const { k, h } of filled) height_m[k] = h;
    empty = empty.filter(k => Number.isNaN(height_m[k]!));
  }
}
