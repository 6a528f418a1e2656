/** A tile of the spherical Mercator scheme all web maps use: columns run east from 180° west, rows south from the top. */
export type TileAddress = Readonly<{ z: number; x: number; y: number }>;

/** Where spherical Mercator ends: there the world is a square. atan(sinh(π)) in degrees. */
export const MERCATOR_LIMIT_deg = (Math.atan(Math.sinh(Math.PI)) * 180) / Math.PI;
/** @source EPSG:3857: a sphere of the WGS 84 semi-major axis */
const RADIUS_m = 6378137;
const TILE_pixels = 256;

/**
 * Place in the world's square, 0 to 1 from the west and from the top.
 * @throws {RangeError} when the latitude is beyond the scheme
 */
export function worldPlace(lon_deg: number, lat_deg: number): readonly [x: number, y: number] {
  if (!(Math.abs(lat_deg) <= MERCATOR_LIMIT_deg))
    throw new RangeError(`lat_deg must lie within ±${MERCATOR_LIMIT_deg}, got ${lat_deg}`);
  const lat = (lat_deg * Math.PI) / 180;
  return [(lon_deg + 180) / 360, (1 - Math.asinh(Math.tan(lat)) / Math.PI) / 2];
}

/** The inverse of `worldPlace`. */
export function placeInWorld(x: number, y: number): readonly [lon_deg: number, lat_deg: number] {
  return [x * 360 - 180, (Math.atan(Math.sinh(Math.PI * (1 - 2 * y))) * 180) / Math.PI];
}

/** The tile a place lies in. @throws {RangeError} as `worldPlace` */
export function tileAt(lon_deg: number, lat_deg: number, z: number): TileAddress {
  const side = 2 ** z;
  const [x, y] = worldPlace(lon_deg, lat_deg);
  const inside = (value: number) => Math.min(side - 1, Math.max(0, Math.floor(value * side)));
  return { z, x: inside(x), y: inside(y) };
}

/** Row as an MBTiles file counts it, from the south. @source MBTiles 1.3, "Tiles" (Tile Map Service order) */
export function mbtilesRow({ z, y }: Pick<TileAddress, 'z' | 'y'>): number {
  return 2 ** z - 1 - y;
}

/** Metres on the ground that one pixel of a tile covers there. */
export function metresPerPixel(lat_deg: number, z: number): number {
  const around_m = 2 * Math.PI * RADIUS_m * Math.cos((lat_deg * Math.PI) / 180);
  return around_m / (TILE_pixels * 2 ** z);
}
