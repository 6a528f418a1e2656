import type { LocalPoint } from '../../core/geometry/hole-map.ts';
import { localFrame, toLocal, toLonLat } from '../../core/geometry/local-frame.ts';
import {
  MERCATOR_LIMIT_deg,
  metresPerPixel,
  placeInWorld,
  type TileAddress,
  tileAt,
} from '../../core/geometry/web-tiles.ts';

/** A tile and where three of its corners lie in the hole's local frame. */
export type PlacedTile = TileAddress &
  Readonly<{ northWest: LocalPoint; northEast: LocalPoint; southWest: LocalPoint }>;

/** A few screens full; deeper zooms would fetch more than can be looked at. */
const MOST_TILES = 48;
/** Sharp enough on any screen at the scale a hole is drawn. */
const FINEST_m = 0.25;

/**
 * The tiles under a box round a hole. Over one hole the map's projection is affine to some centimetres: each tile lies as a
 * parallelogram.
 * @param origin - of the hole's frame, degrees
 * @param box - in the frame, metres
 */
export function tilesOverHole(
  origin: readonly [lon_deg: number, lat_deg: number],
  box: Readonly<{ west_m: number; south_m: number; east_m: number; north_m: number }>,
  zooms: Readonly<{ minZoom: number; maxZoom: number }>,
): PlacedTile[] {
  const frame = localFrame(origin[0], origin[1]);
  const corners = (
    [
      [box.west_m, box.south_m],
      [box.west_m, box.north_m],
      [box.east_m, box.south_m],
      [box.east_m, box.north_m],
    ] as const
  ).map(corner => toLonLat(frame, corner));
  if (corners.some(([, lat_deg]) => Math.abs(lat_deg) > MERCATOR_LIMIT_deg)) return [];
  let z = zooms.maxZoom;
  while (z > zooms.minZoom && metresPerPixel(origin[1], z) < FINEST_m) z--;
  for (; z >= zooms.minZoom; z--) {
    const range = rangeOf(corners, z);
    if (range.count <= MOST_TILES) return placed(range, z);
  }
  return [];

  function placed({ columns, rows }: ReturnType<typeof rangeOf>, z: number): PlacedTile[] {
    const corner = (x: number, y: number): LocalPoint => toLocal(frame, placeInWorld(x / 2 ** z, y / 2 ** z));
    return columns.flatMap(x =>
      rows.map(y => ({
        z,
        x: x % 2 ** z,
        y,
        northWest: corner(x, y),
        northEast: corner(x + 1, y),
        southWest: corner(x, y + 1),
      })),
    );
  }
}

function rangeOf(corners: readonly (readonly [number, number])[], z: number) {
  const tiles = corners.map(([lon_deg, lat_deg]) => tileAt(lon_deg, lat_deg, z));
  const side = 2 ** z;
  const first = tiles[0]!.x;
  // The short way round, so that a hole across the antimeridian has its few tiles and not the whole world's.
  const xs = tiles.map(({ x }) => x - side * Math.round((x - first) / side) + side);
  const ys = tiles.map(({ y }) => y);
  const span = (values: readonly number[]) => {
    const low = Math.min(...values);
    return { low, count: Math.max(...values) - low + 1 };
  };
  const [across, down] = [span(xs), span(ys)];
  const count = across.count * down.count;
  const list = ({ low, count: length }: ReturnType<typeof span>) =>
    count > MOST_TILES ? [] : Array.from({ length }, (_, k) => low + k);
  return { count, columns: list(across), rows: list(down) };
}
