import type { TileAddress } from '../../core/geometry/web-tiles.ts';
import type { Result } from '../../core/units/result.ts';
import type { BaseMap } from '../api/contract/base-map.ts';
import { lru } from '../library/lru.ts';
import { fetchTile } from './fetch-tile.ts';
import { DEEPEST_ZOOM, type Mbtiles, openMbtiles } from './open-mbtiles.ts';
import { plainLine } from './plain-line.ts';
import type { Tile } from './tile.ts';
import { tileAddress } from './tile-address.ts';

/** In memory only: the pictures belong to whoever serves them, and looking again fetches again. */
const KEPT_TILES = 256;
/** At once from one server: what public tile servers ask of a viewer. */
const AT_ONCE = 2;
/** Waiting for their turn; more is a map moved faster than it can be drawn. */
const MOST_WAITING = 120;
const DEEPEST_WEB_ZOOM = 19;

type BaseMapFacts = Readonly<{
  name: string;
  attribution: string;
  minZoom: number;
  maxZoom: number;
  bounds?: readonly [west: number, south: number, east: number, north: number];
}>;

/** Pictures under the course's map: from a file on this machine, or fetched for it where the player allowed that. */
export type TileDesk = Readonly<{
  /** @returns what the map is, or one problem with path `path` or `address` */
  facts(map: BaseMap): Result<BaseMapFacts>;
  /** @returns null where the map has no picture, or nothing may be fetched */
  tile(map: BaseMap, address: TileAddress): Promise<Tile | null>;
  close(): void;
}>;

type Options = Readonly<{ userAgent: string; get?: typeof fetch }>;

export function tileDesk({ userAgent, get }: Options): TileDesk {
  let file: Readonly<{ path: string; opened: Result<Mbtiles> }> | undefined;
  const kept = lru<Promise<Tile | null>>(KEPT_TILES);
  const turns: (() => void)[] = [];
  let fetching = 0;

  function fileAt(path: string): Result<Mbtiles> {
    if (file?.path === path && file.opened.ok) return file.opened;
    closeFile();
    file = { path, opened: openMbtiles(path) };
    return file.opened;
  }

  function closeFile(): void {
    if (file?.opened.ok) file.opened.value.close();
    file = undefined;
  }

  async function inTurn(address: string): Promise<Tile | null> {
    if (turns.length >= MOST_WAITING) return null;
    if (fetching >= AT_ONCE) await new Promise<void>(resolve => turns.push(resolve));
    fetching++;
    try {
      return await fetchTile(address, userAgent, get);
    } finally {
      fetching--;
      turns.shift()?.();
    }
  }

  async function fromWeb(address: string): Promise<Tile | null> {
    const known = kept.get(address);
    if (known !== undefined) return known;
    const coming = inTurn(address);
    kept.set(address, coming);
    const tile = await coming;
    // What failed may be there the next time.
    if (tile === null) kept.remove(address);
    return tile;
  }

  return {
    facts: map => {
      if (map.kind === 'file') {
        const opened = fileAt(map.path);
        return opened.ok ? { ok: true, value: opened.value.facts } : opened;
      }
      const address = tileAddress(map.address);
      if (!address.ok) return address;
      const attribution = plainLine(map.attribution, 300);
      return { ok: true, value: { name: address.value.host, attribution, minZoom: 0, maxZoom: DEEPEST_WEB_ZOOM } };
    },
    tile: async (map, tile) => {
      const side = 2 ** tile.z;
      if (tile.z > DEEPEST_ZOOM || tile.x >= side || tile.y >= side) return null;
      if (map.kind === 'file') {
        const opened = fileAt(map.path);
        return opened.ok ? opened.value.tile(tile) : null;
      }
      if (!map.isAllowed) return null;
      const address = tileAddress(map.address);
      return address.ok ? fromWeb(address.value.of(tile)) : null;
    },
    close: closeFile,
  };
}
