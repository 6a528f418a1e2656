import { blockTable } from '../../../core/geometry/block-table.ts';
import type { HoleMap, Terrain } from '../../../core/geometry/hole-map.ts';
import type { ObstacleRaster } from '../../../core/geometry/obstacle-raster.ts';
import type { Ends, Marcher } from '../../../core/strategy/march.ts';
import type { MandoPlane, World } from '../../../core/strategy/world.ts';

const LEVEL: Terrain = {
  x0_m: -200,
  y0_m: -200,
  cell_m: 400,
  columns: 2,
  rows: 3,
  height_m: new Float32Array(6),
  known: false,
};

/** A bare hole: tee at the origin, straight line of play to the basket, nothing else unless given. */
export function bareHole(parts: Partial<HoleMap> & Pick<HoleMap, 'basket'>): HoleMap {
  return {
    ref: '1',
    par: 3,
    parSource: 'derived',
    origin: [24.9, 60.2],
    line: [[0, 0], parts.basket],
    otherTees: [],
    terrain: LEVEL,
    trees: [],
    covers: [],
    ceilings: [],
    gaps: [],
    outOfBounds: [],
    hazards: [],
    islands: [],
    dropZones: [],
    mandos: [],
    fairways: [],
    people: [],
    assumptions: [],
    ...parts,
  };
}

/** A plane of ground, rise per metre east and north, as a terrain that covers any hole of the tests. */
export function slopedTerrain(perEast: number, perNorth: number): Terrain {
  const cell_m = 4;
  const columns = 301;
  const rows = 301;
  const x0_m = -600;
  const y0_m = -600;
  const height_m = new Float32Array(columns * rows);
  for (let row = 0; row < rows; row++)
    for (let column = 0; column < columns; column++)
      height_m[row * columns + column] = perEast * (x0_m + column * cell_m) + perNorth * (y0_m + row * cell_m);
  return { x0_m, y0_m, cell_m, columns, rows, height_m, known: true };
}

/** One cell's content by its centre; whatever is left out is empty turf at height 0. */
type Cell = Partial<{
  ground_m: number;
  lowTop_m: number;
  lowDensity: number;
  highBase_m: number;
  highTop_m: number;
  highDensity: number;
  zone: number;
  surface: number;
}>;
const TURF = 1;

/** A 1 m raster over [-half, half] east and [-20, north] north, filled cell by cell. */
export function rasterOf(fill: (east_m: number, north_m: number) => Cell, half_m = 60, north_m = 140): ObstacleRaster {
  const columns = 2 * half_m;
  const rows = north_m + 20;
  const size = columns * rows;
  const layers = {
    x0_m: -half_m,
    y0_m: -20,
    cell_m: 1,
    columns,
    rows,
    ground_m: new Float32Array(size),
    lowTop_m: new Float32Array(size),
    lowDensity: new Float32Array(size),
    highBase_m: new Float32Array(size),
    highTop_m: new Float32Array(size),
    highDensity: new Float32Array(size),
    zone: new Uint8Array(size),
    surface: new Uint8Array(size),
  };
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      const k = row * columns + column;
      const cell = fill(layers.x0_m + column + 0.5, layers.y0_m + row + 0.5);
      layers.ground_m[k] = cell.ground_m ?? 0;
      layers.lowTop_m[k] = cell.lowTop_m ?? 0;
      layers.lowDensity[k] = cell.lowDensity ?? 0;
      layers.highBase_m[k] = cell.highBase_m ?? 0;
      layers.highTop_m[k] = cell.highTop_m ?? 0;
      layers.highDensity[k] = cell.highDensity ?? 0;
      layers.zone[k] = cell.zone ?? 0;
      layers.surface[k] = cell.surface ?? TURF;
    }
  }
  return { ...layers, ...blockTable(layers, 5) };
}

export function worldOf(
  raster: ObstacleRaster,
  rest: Readonly<{ mandos?: readonly MandoPlane[]; dropZone?: readonly [number, number] }> = {},
): World {
  const basket = [0, 100] as const;
  const dropZone = rest.dropZone ?? null;
  return {
    map: bareHole({ basket }),
    raster,
    basket,
    mandos: rest.mandos ?? [],
    dropZone,
    mandoDropZone: dropZone,
    lostDropZone: null,
  };
}

type Point = readonly [along_m: number, left_m: number, up_m: number];

/** The corners joined by pieces of at most `piece_m`, as `[along, left, up]` triples. */
export function polyline(corners: readonly Point[], piece_m = 1.3): Float64Array {
  const numbers: number[] = [...corners[0]];
  for (let i = 1; i < corners.length; i++) {
    const [a, b] = [corners[i - 1], corners[i]];
    const pieces = Math.max(1, Math.ceil(Math.hypot(b[0] - a[0], b[1] - a[1]) / piece_m));
    for (let k = 1; k <= pieces; k++) for (let c = 0; c < 3; c++) numbers.push(a[c] + ((b[c] - a[c]) * k) / pieces);
  }
  return Float64Array.from(numbers);
}

export type End = Readonly<{
  x: number;
  y: number;
  weight: number;
  penalty: number;
  kind: number;
  restX: number;
  restY: number;
}>;

function endsOf(ends: Ends): End[] {
  return Array.from({ length: ends.count }, (_, i) => ({
    x: ends.x[i],
    y: ends.y[i],
    weight: ends.weight[i],
    penalty: ends.penalty[i],
    kind: ends.kind[i],
    restX: ends.restX[i],
    restY: ends.restY[i],
  }));
}

type March = Readonly<{
  mode: 'search' | 'exact';
  from?: readonly [number, number];
  ground_m?: number;
  aim_deg?: number;
  skid?: readonly [along_m: number, left_m: number];
}>;

/** Marches a path from a lie (the tee unless said) along an aim (north unless said). */
export function march(marcher: Marcher, path: Float64Array, { mode, from, ground_m, aim_deg, skid }: March) {
  const aim = ((aim_deg ?? 0) * Math.PI) / 180;
  const lie = { east_m: from?.[0] ?? 0, north_m: from?.[1] ?? 0, ground_m: ground_m ?? 0 };
  const [skidX, skidY] = skid ?? [0, 0];
  marcher.march(
    new Float32Array(path),
    0,
    path.length / 3,
    lie,
    Math.sin(aim),
    Math.cos(aim),
    skidX,
    skidY,
    mode === 'exact',
  );
  return { clear: marcher.ends.clear, ends: endsOf(marcher.ends) };
}
