import { statSync } from 'node:fs';
import { basename } from 'node:path';
import Database from 'better-sqlite3';
import { mbtilesRow, type TileAddress } from '../../core/geometry/web-tiles.ts';
import type { Result } from '../../core/units/result.ts';
import { type PictureType, pictureType } from './picture-type.ts';
import { plainLine } from './plain-line.ts';
import type { Tile } from './tile.ts';

/** Deeper zooms than a hand's breadth a pixel show nothing. */
export const DEEPEST_ZOOM = 24;
/** A picture of 512 × 512 without compression. */
export const LARGEST_TILE_BYTES = 1_100_000;
/** Looking through a file without an index for each tile is borne up to this size. */
const LARGEST_UNINDEXED_BYTES = 50_000_000;
/** What a view may be made of: recursion or invented blobs would never end or fill the memory. */
const RISKY_VIEW =
  /\b(with|recursive|union|randomblob|zeroblob|generate_series|json_each|printf|replace|group_concat)\b/i;

type MbtilesFacts = Readonly<{
  name: string;
  attribution: string;
  minZoom: number;
  maxZoom: number;
  /** West, south, east, north in degrees; absent when the file does not say. */
  bounds?: readonly [number, number, number, number];
}>;

export type Mbtiles = Readonly<{ facts: MbtilesFacts; tile(address: TileAddress): Tile | null; close(): void }>;

/**
 * Opens a raster MBTiles file, read only.
 * @returns the file, or one problem with path `path` that says what to do
 * @source MBTiles 1.3
 */
export function openMbtiles(path: string): Result<Mbtiles> {
  let db: Database.Database | undefined;
  try {
    const stat = statSync(path);
    if (!stat.isFile()) return refused('is a folder: name the .mbtiles file in it');
    db = new Database(path, { readonly: true, fileMustExist: true, timeout: 500 });
    db.pragma('trusted_schema = OFF');
    db.pragma('cell_size_check = ON');
    const fault = schemaFault(db, stat.size);
    if (fault !== undefined) {
      db.close();
      return refused(fault);
    }
    const metadata = readMetadata(db);
    const facts = factsOf(db, metadata, path);
    if (!facts.ok) {
      db.close();
      return facts;
    }
    return { ok: true, value: opened(db, facts.value) };
  } catch (error) {
    db?.close();
    return refused(inWords(error));
  }
}

function opened(db: Database.Database, facts: MbtilesFacts): Mbtiles {
  const query = db
    .prepare(
      `SELECT tile_data FROM tiles WHERE zoom_level = ? AND tile_column = ? AND tile_row = ?
       AND length(tile_data) <= ${LARGEST_TILE_BYTES} LIMIT 1`,
    )
    .pluck();
  return {
    facts,
    tile: ({ z, x, y }) => {
      const bytes: unknown = query.get(z, x, mbtilesRow({ z, y }));
      if (!Buffer.isBuffer(bytes)) return null;
      const type: PictureType | undefined = pictureType(bytes);
      return type === undefined ? null : { bytes, type };
    },
    close: () => {
      db.close();
    },
  };
}

function schemaFault(db: Database.Database, size: number): string | undefined {
  const rows = db
    .prepare("SELECT name, type, substr(sql, 1, 20000) AS sql FROM sqlite_master WHERE type IN ('table', 'view')")
    .all() as { name: string; type: string; sql: string | null }[];
  const named = (name: string) => rows.find(row => row.name.toLowerCase() === name);
  if (named('tiles') === undefined || named('metadata') === undefined)
    return 'is a database, but no MBTiles file: it has no "tiles" and "metadata"';
  for (const { type, sql } of rows)
    if (type === 'view' && RISKY_VIEW.test(sql ?? ''))
      return 'makes its tiles up as it is read: save it with its tiles stored';
  const plan = db
    .prepare('EXPLAIN QUERY PLAN SELECT tile_data FROM tiles WHERE zoom_level = 1 AND tile_column = 1 AND tile_row = 1')
    .all() as { detail: string }[];
  if (size > LARGEST_UNINDEXED_BYTES && plan.some(({ detail }) => /^SCAN/.test(detail)))
    return 'has no index on its tiles: each one would take seconds to find. Add one (zoom_level, tile_column, tile_row)';
  return undefined;
}

function readMetadata(db: Database.Database): ReadonlyMap<string, string> {
  const rows = db
    .prepare('SELECT name, substr(CAST(value AS TEXT), 1, 5000) AS value FROM metadata LIMIT 200')
    .all() as { name: unknown; value: unknown }[];
  return new Map(
    rows.flatMap(({ name, value }) =>
      typeof name === 'string' && typeof value === 'string' ? [[name.toLowerCase(), value] as const] : [],
    ),
  );
}

function factsOf(db: Database.Database, metadata: ReadonlyMap<string, string>, path: string): Result<MbtilesFacts> {
  const format = metadata.get('format')?.toLowerCase().trim();
  if (format === 'pbf' || format === 'mvt')
    return refused('holds vector tiles: only pictures (png, jpg, webp) are drawn');
  const first: unknown = db
    .prepare(`SELECT tile_data FROM tiles WHERE length(tile_data) <= ${LARGEST_TILE_BYTES} LIMIT 1`)
    .pluck()
    .get();
  if (!Buffer.isBuffer(first)) return refused('holds no tiles');
  if (pictureType(first) === undefined) return refused('holds tiles that are no pictures (png, jpg or webp)');
  const zoom = (name: string, edge: 'min' | 'max') => {
    const said = Number(metadata.get(name) ?? Number.NaN);
    if (Number.isInteger(said) && said >= 0 && said <= DEEPEST_ZOOM) return said;
    return Number(db.prepare(`SELECT ${edge}(zoom_level) FROM tiles`).pluck().get());
  };
  const [minZoom, maxZoom] = [zoom('minzoom', 'min'), zoom('maxzoom', 'max')];
  if (!(minZoom >= 0 && maxZoom >= minZoom && maxZoom <= DEEPEST_ZOOM)) return refused('has zooms that make no sense');
  const bounds = (metadata.get('bounds') ?? '').split(',').map(Number);
  const [west = Number.NaN, south = Number.NaN, east = Number.NaN, north = Number.NaN] = bounds;
  const isBox =
    bounds.length === 4 && west >= -180 && east <= 180 && south >= -90 && north <= 90 && west < east && south < north;
  return {
    ok: true,
    value: {
      name: plainLine(metadata.get('name') ?? '', 80) || basename(path),
      attribution: plainLine(metadata.get('attribution') ?? '', 300),
      minZoom,
      maxZoom,
      ...(isBox && { bounds: [west, south, east, north] as const }),
    },
  };
}

const WORDS: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file: check the name and the folder',
  ENOTDIR: 'there is no such file: a part of its path is not a folder',
  EACCES: 'may not be read: change its permissions',
  EPERM: 'may not be read: change its permissions',
  SQLITE_NOTADB: 'is no MBTiles file: it is not a database',
  SQLITE_CORRUPT: 'is damaged: copy or download it again',
  SQLITE_CANTOPEN: 'cannot be opened: check the name and its permissions',
  SQLITE_BUSY: 'is being written by another program: close it there first',
};

function inWords(error: unknown): string {
  const { code, message = String(error) } = error as { code?: string; message?: string };
  return WORDS[code ?? ''] ?? `is no MBTiles file that can be read (${message})`;
}

function refused(message: string): Result<never> {
  return { ok: false, problems: [{ path: 'path', message }] };
}
