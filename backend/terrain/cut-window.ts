import type { ElevationGrid, ElevationModel } from '../../core/course/elevation-grid.ts';
import { bilinear } from '../../core/geometry/bilinear.ts';
import { radiiOfCurvature } from '../../core/geometry/local-frame.ts';
import type { Result } from '../../core/units/result.ts';
import type { ElevationFile, PixelWindow } from './open-elevation-file.ts';

/** Degrees; `east_deg` may pass 180 when the box lies across the antimeridian. */
export type DegreeBox = Readonly<{ west_deg: number; south_deg: number; east_deg: number; north_deg: number }>;

/** The ground of a hole is kept every 4 m: finer than this is thrown away there. */
const FINEST_m = 1;
/** A course of 2 km by 2 km at 1 m. */
const MOST_NODES = 4_000_000;
const MOST_PIXELS = 64_000_000;
/** A degree and some; coarser says nothing of a course. */
const LARGEST_PIXEL_m = 150_000;
const RADIANS_PER_DEGREE = Math.PI / 180;

/**
 * Cuts the part of an elevation model that lies under a box, as a grid of longitudes and latitudes about as fine as the model
 * (1 m at the finest). A model in degrees keeps its own nodes; any other is read bilinear at the new ones.
 * @returns the part, or one problem with path `file`: the model lies elsewhere, or has no heights here
 */
export async function cutWindow(file: ElevationFile, box: DegreeBox): Promise<Result<ElevationModel>> {
  const middle = (box.south_deg + box.north_deg) / 2;
  const { meridian_m, primeVertical_m } = radiiOfCurvature(middle * RADIANS_PER_DEGREE);
  const latitude_m = meridian_m * RADIANS_PER_DEGREE;
  const longitude_m = primeVertical_m * Math.cos(middle * RADIANS_PER_DEGREE) * RADIANS_PER_DEGREE;
  const window = windowUnder(file, box);
  if (window === null) return elsewhere(file);
  const [width, height] = [window.right - window.left, window.bottom - window.top];
  if (width * height > MOST_PIXELS)
    return refused('is so fine, or the course so large, that too many heights lie under it: coarsen it to 1 m');
  const raw = await file.read(window);
  if (!raw.ok) return raw;
  const pixel_m = pixelSize_m(file, window, latitude_m, longitude_m);
  if (!(pixel_m > 0 && pixel_m < LARGEST_PIXEL_m)) return refused('places its pixels with numbers that make no sense');
  const nodes = ownNodes(file, window, pixel_m);
  const grid = nodes ?? freshNodes(box, pixel_m, latitude_m, longitude_m);
  const height_m = nodes === undefined ? resampled(file, window, raw.value, grid) : raw.value;
  if (height_m.every(Number.isNaN))
    return refused('has no heights where this course lies: only pixels marked as without data');
  return {
    ok: true,
    value: {
      ...grid,
      height_m,
      source: file.name,
      crs: file.crs.name,
      resolution_m: Number(pixel_m.toPrecision(3)),
      datum: file.datum.words,
    },
  };
}

/** Pixels under the box and one more on each side; null when they are none. */
function windowUnder(file: ElevationFile, box: DegreeBox): PixelWindow | null {
  let [left, top] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
  let [right, bottom] = [Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY];
  const steps = 8;
  for (let i = 0; i <= steps; i++)
    for (let j = 0; j <= steps; j++) {
      const lon = box.west_deg + ((box.east_deg - box.west_deg) * i) / steps;
      const lat = box.south_deg + ((box.north_deg - box.south_deg) * j) / steps;
      const [x, y] = file.grid.pixelOf(...file.crs.toGrid(nearLongitude(file, lon), lat));
      if (!Number.isFinite(x) || !Number.isFinite(y)) return null;
      [left, right] = [Math.min(left, x), Math.max(right, x)];
      [top, bottom] = [Math.min(top, y), Math.max(bottom, y)];
    }
  const window = {
    left: Math.max(0, Math.floor(left) - 1),
    top: Math.max(0, Math.floor(top) - 1),
    right: Math.min(file.width, Math.ceil(right) + 2),
    bottom: Math.min(file.height, Math.ceil(bottom) + 2),
  };
  return window.right - window.left < 2 || window.bottom - window.top < 2 ? null : window;
}

type Nodes = Omit<ElevationGrid, 'height_m'>;

/** A north-up model in degrees that is not finer than needed keeps its pixels. */
function ownNodes({ crs, grid }: ElevationFile, window: PixelWindow, pixel_m: number): Nodes | undefined {
  const [columns, rows] = [window.right - window.left, window.bottom - window.top];
  const [west_deg, north_deg] = grid.at(window.left, window.top);
  const [east_deg, south_deg] = grid.at(window.right - 1, window.bottom - 1);
  const [, turned_deg] = grid.at(window.right - 1, window.top);
  if (!crs.isGeographic || pixel_m < 0.9 * FINEST_m || columns * rows > MOST_NODES) return undefined;
  if (!(east_deg > west_deg && north_deg > south_deg) || Math.abs(turned_deg - north_deg) > 1e-12) return undefined;
  const [stepLon_deg, stepLat_deg] = [(east_deg - west_deg) / (columns - 1), (north_deg - south_deg) / (rows - 1)];
  return { west_deg, north_deg, stepLon_deg, stepLat_deg, columns, rows };
}

function freshNodes(box: DegreeBox, pixel_m: number, latitude_m: number, longitude_m: number): Nodes {
  const width_m = (box.east_deg - box.west_deg) * longitude_m;
  const height_m = (box.north_deg - box.south_deg) * latitude_m;
  const step_m = Math.max(FINEST_m, pixel_m, Math.sqrt((width_m * height_m) / MOST_NODES));
  const columns = Math.max(2, Math.ceil(width_m / step_m) + 1);
  const rows = Math.max(2, Math.ceil(height_m / step_m) + 1);
  return {
    west_deg: box.west_deg,
    north_deg: box.north_deg,
    stepLon_deg: (box.east_deg - box.west_deg) / (columns - 1),
    stepLat_deg: (box.north_deg - box.south_deg) / (rows - 1),
    columns,
    rows,
  };
}

/** Nodes between two exact projections; in between they are read off straight. Over 32 m that is out by 0.03 mm, over 1 km by 3 cm. */
const EXACT_EVERY = 32;

function resampled(file: ElevationFile, window: PixelWindow, pixels: Float32Array, nodes: Nodes): Float32Array {
  const source = { columns: window.right - window.left, rows: window.bottom - window.top, values: pixels };
  const pixelOf = (column: number, row: number) => {
    const lon_deg = nearLongitude(file, nodes.west_deg + column * nodes.stepLon_deg);
    return file.grid.pixelOf(...file.crs.toGrid(lon_deg, nodes.north_deg - row * nodes.stepLat_deg));
  };
  const height_m = new Float32Array(nodes.columns * nodes.rows);
  for (let top = 0; top < nodes.rows; top += EXACT_EVERY)
    for (let left = 0; left < nodes.columns; left += EXACT_EVERY) {
      const corners = [0, EXACT_EVERY].flatMap(dy => [0, EXACT_EVERY].map(dx => pixelOf(left + dx, top + dy)));
      for (let row = top; row < Math.min(nodes.rows, top + EXACT_EVERY); row++)
        for (let column = left; column < Math.min(nodes.columns, left + EXACT_EVERY); column++) {
          const [fx, fy] = [(column - left) / EXACT_EVERY, (row - top) / EXACT_EVERY];
          const between = (axis: 0 | 1) =>
            (corners[0]![axis] * (1 - fx) + corners[1]![axis] * fx) * (1 - fy) +
            (corners[2]![axis] * (1 - fx) + corners[3]![axis] * fx) * fy;
          const [x, y] = [between(0) - window.left, between(1) - window.top];
          height_m[row * nodes.columns + column] = bilinear(source, x, y);
        }
    }
  return height_m;
}

/** A model in degrees may count 0…360 or 180…200: the turn that brings the place nearest to it. */
function nearLongitude({ crs, grid, width, height }: ElevationFile, lon_deg: number): number {
  if (!crs.isGeographic) return lon_deg > 180 ? lon_deg - 360 : lon_deg;
  const [middle_deg] = grid.at((width - 1) / 2, (height - 1) / 2);
  return lon_deg + 360 * Math.round((middle_deg - lon_deg) / 360);
}

/** On the ground, at the middle of the window: the mean of its two sides. */
function pixelSize_m(file: ElevationFile, window: PixelWindow, latitude_m: number, longitude_m: number): number {
  const [column, row] = [(window.left + window.right) / 2, (window.top + window.bottom) / 2];
  const place = (dx: number, dy: number) => file.crs.toLonLat(...file.grid.at(column + dx, row + dy));
  const [lon, lat] = place(0, 0);
  const along = ([lon2, lat2]: readonly [number, number]) =>
    Math.hypot((lon2 - lon) * longitude_m, (lat2 - lat) * latitude_m);
  return (along(place(1, 0)) + along(place(0, 1))) / 2;
}

function elsewhere(file: ElevationFile): Result<never> {
  const corners = [file.grid.at(0, 0), file.grid.at(file.width - 1, file.height - 1)].map(([x, y]) =>
    file.crs.toLonLat(x, y),
  );
  if (!corners.flat().every(Number.isFinite)) return refused('does not cover this course');
  const words = corners.map(([lon, lat]) => `${lat.toFixed(4)}, ${lon.toFixed(4)}`).join(' to ');
  return refused(`does not cover this course: it lies at latitude, longitude ${words}`);
}

function refused(message: string): Result<never> {
  return { ok: false, problems: [{ path: 'file', message }] };
}
