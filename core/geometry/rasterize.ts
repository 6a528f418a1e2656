import type { Relief } from '../course/course.ts';
import { blockTable } from './block-table.ts';
import { boundingBox } from './bounding-box.ts';
import { type CellGrid, fillCentres, fillTouched, markLine } from './fill-polygon.ts';
import type { HoleMap, LocalCover, LocalGap, LocalPoint, LocalPolygon, LocalTree } from './hole-map.ts';
import { distance_m } from './line-length.ts';
import {
  type ObstacleRaster,
  SURFACES,
  ZONE_HAZARD,
  ZONE_NO_DROP,
  ZONE_NO_LINE,
  ZONE_NO_PREVIOUS,
  ZONE_OUT_OF_BOUNDS,
} from './obstacle-raster.ts';
import { groundHeight } from './terrain.ts';

const CELL_m = 1;
const BLOCK_CELLS = 5;
// Hits per metre flown. No measurement stands behind these: they are assumptions, shown to the player with the woods' defaults.
const WOOD_CROWN_PER_m = 0.35;
const TREE_CROWN_PER_m = 0.4;
const CEILING_PER_m = 2;
const SOLID_PER_m = 3;
/** A disc is about 0.21 m across, so its rim meets a trunk when its centre passes within this of the bark. */
const DISC_RADIUS_m = 0.105;
/** What is closed above is closed to here: no throw flies higher. */
const CLOSED_TOP_m = 60;
const POST_RADIUS_m = 0.3;
const POST_HEIGHT_m = 6;
/** Tee pads and drop zones are in bounds even where an island hole leaves everything else out. */
const TEE_RADIUS_m = 3;

type Layers = Omit<
  ObstacleRaster,
  'lostShare' | 'blockCells' | 'blockColumns' | 'blockRows' | 'blockTop_m' | 'blockOut'
>;

/**
 * The hole as a 1 m column raster for marching flights through it (see ObstacleRaster for the layers).
 * Where two things share a cell their heights are joined and the denser counts: a ceiling in a wood keeps the lower underside.
 * @param margin_m - ground round the box of the line of play; one long miss, so that a throw does not leave the map
 */
export function rasterize(map: HoleMap, margin_m = 60): ObstacleRaster {
  const layers = emptyLayers(map, margin_m);
  for (const cover of map.covers) addCover(layers, cover);
  addTrunks(layers, map);
  for (const tree of map.trees) addCrown(layers, tree);
  for (const { polygons, clearance_m, top_m } of map.ceilings)
    for (const polygon of polygons)
      fillTouched(layers, polygon, k =>
        raiseHigh(layers, k, clearance_m, Math.min(top_m, CLOSED_TOP_m), CEILING_PER_m),
      );
  for (const gap of map.gaps) addWindow(layers, gap);
  addZones(layers, map);
  addSurface(layers, map);
  const lost = lostShares(layers, map);
  return { ...layers, ...(lost && { lostShare: lost }), ...blockTable(layers, BLOCK_CELLS) };
}

function emptyLayers(map: HoleMap, margin_m: number): Layers {
  const box = boundingBox(map.line, margin_m);
  const [x0_m, y0_m] = [Math.floor(box.west_m), Math.floor(box.south_m)];
  const columns = Math.ceil((box.east_m - x0_m) / CELL_m);
  const rows = Math.ceil((box.north_m - y0_m) / CELL_m);
  const size = columns * rows;
  const ground_m = new Float32Array(size);
  if (map.terrain.known)
    for (let row = 0; row < rows; row++)
      for (let column = 0; column < columns; column++)
        ground_m[row * columns + column] = groundHeight(map.terrain, x0_m + column + 0.5, y0_m + row + 0.5);
  return {
    x0_m,
    y0_m,
    cell_m: CELL_m,
    columns,
    rows,
    ground_m,
    lowTop_m: new Float32Array(size),
    lowDensity: new Float32Array(size),
    highBase_m: new Float32Array(size),
    highTop_m: new Float32Array(size),
    highDensity: new Float32Array(size),
    zone: new Uint8Array(size),
    surface: new Uint8Array(size),
  };
}

function raiseLow(layers: Layers, k: number, top_m: number, density: number): void {
  if (!(top_m > 0 && density > 0)) return;
  layers.lowTop_m[k] = Math.max(layers.lowTop_m[k]!, top_m);
  layers.lowDensity[k] = Math.max(layers.lowDensity[k]!, density);
}

function raiseHigh(layers: Layers, k: number, base_m: number, top_m: number, density: number): void {
  if (!(top_m > base_m)) return;
  const isEmpty = layers.highTop_m[k] === 0;
  layers.highBase_m[k] = isEmpty ? base_m : Math.min(layers.highBase_m[k]!, base_m);
  layers.highTop_m[k] = Math.max(layers.highTop_m[k]!, top_m);
  layers.highDensity[k] = Math.max(layers.highDensity[k]!, density);
}

function addCover(layers: Layers, cover: LocalCover): void {
  const { form, height_m, base_m, density } = cover;
  const isSolid = form === 'wall' || form === 'building' || form === 'hedge' || form === 'fence';
  // A share d stopped on 10 m of level flight is −ln(1 − d)/10 hits per metre; a share of 1 is as good as solid.
  const stems = Math.min(SOLID_PER_m, -Math.log(1 - Math.min(density, 1)) / 10);
  for (const polygon of cover.polygons) {
    if (isSolid && base_m <= 0) fillTouched(layers, polygon, k => raiseLow(layers, k, height_m, SOLID_PER_m));
    else if (isSolid) fillTouched(layers, polygon, k => raiseHigh(layers, k, base_m, height_m, SOLID_PER_m));
    else if (base_m <= 0) {
      // Bushes fill the ground layer, so that a ceiling over them leaves the air between free.
      const raise = (k: number): void => raiseLow(layers, k, height_m, Math.max(stems, WOOD_CROWN_PER_m));
      fillNarrow(layers, polygon, raise);
    } else
      fillNarrow(layers, polygon, k => {
        raiseLow(layers, k, Math.min(base_m, height_m), stems);
        raiseHigh(layers, k, base_m, height_m, WOOD_CROWN_PER_m);
      });
  }
}

/** By cell centres; an area so thin that it holds none marks what it touches, so that it does not vanish. */
function fillNarrow(grid: CellGrid, polygon: LocalPolygon, mark: (index: number) => void): void {
  let isEmpty = true;
  fillCentres(grid, polygon, k => {
    isEmpty = false;
    mark(k);
  });
  if (isEmpty) fillTouched(grid, polygon, mark);
}

/** Trunks (and gap posts) are thinner than a cell: each spreads its width over the four cells round it; neighbours add up. */
function addTrunks(layers: Layers, map: HoleMap): void {
  const { columns, rows } = layers;
  const density = new Map<number, number>();
  const tops = new Map<number, number>();
  const posts = map.gaps.flatMap(gap =>
    gap.posts.map(at => ({
      at,
      radius_m: POST_RADIUS_m,
      top_m: Number.isFinite(gap.high_m) ? gap.high_m : POST_HEIGHT_m,
    })),
  );
  const trunks = map.trees.map(({ at, trunkRadius_m, crownBase_m }) => ({
    at,
    radius_m: trunkRadius_m,
    top_m: crownBase_m,
  }));
  for (const { at, radius_m, top_m } of [...trunks, ...posts]) {
    if (!(top_m > 0)) continue;
    const perMetre = (2 * (radius_m + DISC_RADIUS_m)) / CELL_m ** 2;
    const [x, y] = [at[0] - layers.x0_m - 0.5, at[1] - layers.y0_m - 0.5];
    const [column, row] = [Math.floor(x), Math.floor(y)];
    for (const [dc, dr] of [
      [0, 0],
      [1, 0],
      [0, 1],
      [1, 1],
    ] as const) {
      const share = (dc === 1 ? x - column : 1 - x + column) * (dr === 1 ? y - row : 1 - y + row);
      const [c, r] = [column + dc, row + dr];
      if (share <= 0 || c < 0 || r < 0 || c >= columns || r >= rows) continue;
      const k = r * columns + c;
      density.set(k, (density.get(k) ?? 0) + share * perMetre);
      tops.set(k, Math.max(tops.get(k) ?? 0, top_m));
    }
  }
  for (const [k, perMetre] of density) raiseLow(layers, k, tops.get(k)!, perMetre);
}

function addCrown(layers: Layers, tree: LocalTree): void {
  const { at, crownRadius_m, crownBase_m, height_m } = tree;
  forDisc(layers, at, crownRadius_m, k => raiseHigh(layers, k, crownBase_m, height_m, TREE_CROWN_PER_m));
}

/** Under and over a gap's window, from post to post, a metre thick. */
function addWindow(layers: Layers, gap: LocalGap): void {
  const [a, b] = gap.posts;
  const width_m = distance_m(a, b);
  if (width_m === 0) return;
  const half = CELL_m / 2 / width_m;
  const [nx, ny] = [-(b[1] - a[1]) * half, (b[0] - a[0]) * half];
  const start: LocalPoint = [a[0] + nx, a[1] + ny];
  const pane: LocalPoint[] = [start, [a[0] - nx, a[1] - ny], [b[0] - nx, b[1] - ny], [b[0] + nx, b[1] + ny], start];
  const raise = (k: number): void => {
    raiseLow(layers, k, gap.low_m, CEILING_PER_m);
    if (Number.isFinite(gap.high_m)) raiseHigh(layers, k, gap.high_m, CLOSED_TOP_m, CEILING_PER_m);
  };
  fillCentres(layers, [pane], raise);
  // The line itself always, so that no flight slips through between cell centres.
  markLine(layers, [a, b], raise);
}

function addZones(layers: Layers, map: HoleMap): void {
  const { zone } = layers;
  for (const { polygons, relief } of map.outOfBounds) {
    const bits = ZONE_OUT_OF_BOUNDS | restrictions(relief);
    for (const polygon of polygons)
      fillCentres(layers, polygon, k => {
        zone[k] = zone[k]! | bits;
      });
  }
  if (map.islands.length > 0) {
    const playable = new Uint8Array(zone.length);
    const keep = (k: number): void => {
      playable[k] = 1;
    };
    for (const { polygons, ownHole } of map.fairways)
      if (ownHole) for (const polygon of polygons) fillCentres(layers, polygon, keep);
    for (const at of [[0, 0] as const, ...map.otherTees, ...map.dropZones.map(d => d.at)])
      forDisc(layers, at, TEE_RADIUS_m, keep);
    // Mapped water often has no hole where the island is: the island counts.
    for (const { polygons } of map.islands)
      for (const polygon of polygons)
        fillCentres(layers, polygon, k => {
          playable[k] = 1;
          zone[k] = 0;
        });
    const bits = map.islands.reduce((sum, { relief }) => sum | restrictions(relief), ZONE_OUT_OF_BOUNDS);
    for (let k = 0; k < zone.length; k++) if (playable[k] === 0) zone[k] = zone[k]! | bits;
  }
  for (const { polygons } of map.hazards)
    for (const polygon of polygons)
      fillCentres(layers, polygon, k => {
        zone[k] = zone[k]! | ZONE_HAZARD;
      });
}

/** ZONE_ bits of what the course does not allow after out-of-bounds. */
function restrictions(relief: readonly Relief[] | undefined): number {
  if (relief === undefined) return 0;
  return (
    (relief.includes('line') ? 0 : ZONE_NO_LINE) |
    (relief.includes('previousLie') ? 0 : ZONE_NO_PREVIOUS) |
    (relief.includes('dropZone') ? 0 : ZONE_NO_DROP)
  );
}

function lostShares(layers: Layers, map: HoleMap): Float32Array | undefined {
  if (map.lostGrounds === undefined || map.lostGrounds.length === 0) return undefined;
  const shares = new Float32Array(layers.zone.length);
  for (const { polygons, share } of map.lostGrounds)
    for (const polygon of polygons)
      fillNarrow(layers, polygon, k => {
        shares[k] = Math.max(shares[k]!, share);
      });
  return shares;
}

function addSurface(layers: Layers, map: HoleMap): void {
  const { surface } = layers;
  const [longGrass, turf] = [SURFACES.indexOf('longGrass'), SURFACES.indexOf('turf')];
  surface.fill(map.fairways.some(fairway => fairway.ownHole) ? longGrass : turf);
  for (const own of [false, true])
    for (const fairway of map.fairways) {
      if (fairway.ownHole !== own) continue;
      const index = SURFACES.indexOf(fairway.surface);
      for (const polygon of fairway.polygons)
        fillCentres(layers, polygon, k => {
          surface[k] = index;
        });
    }
  for (const cover of map.covers)
    if (cover.form === 'wood' || cover.form === 'scrub')
      for (const polygon of cover.polygons)
        fillCentres(layers, polygon, k => {
          surface[k] = longGrass;
        });
}

function forDisc(grid: CellGrid, at: LocalPoint, radius_m: number, mark: (index: number) => void): void {
  const { x0_m, y0_m, cell_m, columns, rows } = grid;
  const first = Math.max(0, Math.ceil((at[1] - radius_m - y0_m) / cell_m - 0.5));
  const last = Math.min(rows - 1, Math.floor((at[1] + radius_m - y0_m) / cell_m - 0.5));
  for (let row = first; row <= last; row++) {
    const half_m = Math.sqrt(Math.max(0, radius_m ** 2 - (y0_m + (row + 0.5) * cell_m - at[1]) ** 2));
    const west = Math.max(0, Math.ceil((at[0] - half_m - x0_m) / cell_m - 0.5));
    const east = Math.min(columns - 1, Math.floor((at[0] + half_m - x0_m) / cell_m - 0.5));
    for (let column = west; column <= east; column++) mark(row * columns + column);
  }
}
