import { join } from 'node:path';
import Database from 'better-sqlite3';
import { temporaryFolder } from '../temporary-folder.ts';

/** A picture as far as its first bytes go; the last ones tell it from another. */
export const picture = (kind: 'png' | 'jpg' | 'webp', ...last: number[]): Buffer =>
  Buffer.from([
    ...{
      png: [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a],
      jpg: [0xff, 0xd8, 0xff, 0xe0],
      webp: [0x52, 0x49, 0x46, 0x46, 0, 0, 0, 0, 0x57, 0x45, 0x42, 0x50],
    }[kind],
    ...last,
  ]);

type Row = readonly [z: number, column: number, row: number, data: Buffer];
type Made = Readonly<{
  metadata?: Readonly<Record<string, string>>;
  rows?: readonly Row[];
  /** In place of the tables of the specification. */
  schema?: string;
}>;

const SCHEMA = `
  CREATE TABLE metadata (name text, value text);
  CREATE TABLE tiles (zoom_level integer, tile_column integer, tile_row integer, tile_data blob);
  CREATE UNIQUE INDEX tile_index ON tiles (zoom_level, tile_column, tile_row);`;

/** An MBTiles file laid out as the specification's schema says. @returns its path */
export function mbtilesFile({ metadata = {}, rows = [], schema = SCHEMA }: Made, name = 'map.mbtiles'): string {
  const path = join(temporaryFolder(), name);
  const db = new Database(path);
  db.exec(schema);
  for (const pair of Object.entries({ name: 'Town from above', format: 'png', ...metadata }))
    db.prepare('INSERT INTO metadata VALUES (?, ?)').run(...pair);
  const insert = rows.length === 0 ? undefined : db.prepare('INSERT INTO tiles VALUES (?, ?, ?, ?)');
  db.transaction(() => {
    for (const row of rows) insert?.run(...row);
  })();
  db.close();
  return path;
}
