import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { openMbtiles } from '../../../backend/base-map/open-mbtiles.ts';
import { taken } from '../taken.ts';
import { temporaryFolder } from '../temporary-folder.ts';
import { mbtilesFile, picture } from './mbtiles-file.ts';

describe('a raster file', () => {
  // The specification's example: tile 11/327/791 is stored with tile_row 1256.
  it('gives the tile whose row it counts from the south', () => {
    const file = taken(openMbtiles(mbtilesFile({ rows: [[11, 327, 1256, picture('png', 7)]] })));
    expect(file.tile({ z: 11, x: 327, y: 791 })).toEqual({ bytes: picture('png', 7), type: 'image/png' });
    expect(file.tile({ z: 11, x: 327, y: 1256 })).toBeNull();
    file.close();
  });

  it('says what its pictures are by their bytes', () => {
    const rows = [
      [1, 0, 0, picture('png')],
      [1, 1, 0, picture('jpg')],
      [1, 0, 1, picture('webp')],
      [1, 1, 1, Buffer.from('<svg onload=alert(1)>')],
    ] as const;
    const file = taken(openMbtiles(mbtilesFile({ metadata: { format: 'jpg' }, rows })));
    const types = [
      [0, 1],
      [1, 1],
      [0, 0],
      [1, 0],
    ].map(([x, y]) => file.tile({ z: 1, x: x!, y: y! })?.type ?? null);
    expect(types).toEqual(['image/png', 'image/jpeg', 'image/webp', null]);
    file.close();
  });

  it('reads its name, zooms, bounds and whose it is, as plain text', () => {
    const metadata = {
      name: 'Hill & dale',
      minzoom: '12',
      maxzoom: '17',
      bounds: '24.8,60.1,25,60.3',
      attribution: '&copy; <a href="https://example.org">The surveyors</a><script>alert(1)</script>',
    };
    const file = taken(openMbtiles(mbtilesFile({ metadata, rows: [[12, 1, 1, picture('png')]] })));
    expect(file.facts).toEqual({
      name: 'Hill & dale',
      minZoom: 12,
      maxZoom: 17,
      bounds: [24.8, 60.1, 25, 60.3],
      attribution: '© The surveyors alert(1)',
    });
    file.close();
  });

  it('finds its zooms in the tiles, and has no bounds that make no sense', () => {
    const rows = [
      [3, 1, 1, picture('png')],
      [5, 1, 1, picture('png')],
    ] as const;
    const file = taken(openMbtiles(mbtilesFile({ metadata: { bounds: '10,20,5,30', maxzoom: 'deep' }, rows })));
    expect(file.facts).toEqual({ name: 'Town from above', attribution: '', minZoom: 3, maxZoom: 5 });
    file.close();
  });

  it('may store its tiles behind a view, as the specification allows', () => {
    const schema = `
      CREATE TABLE metadata (name text, value text);
      CREATE TABLE map (zoom_level integer, tile_column integer, tile_row integer, tile_id text);
      CREATE TABLE images (tile_id text, tile_data blob);
      CREATE UNIQUE INDEX map_index ON map (zoom_level, tile_column, tile_row);
      CREATE UNIQUE INDEX image_index ON images (tile_id);
      INSERT INTO map VALUES (2, 1, 3, 'a');
      INSERT INTO images VALUES ('a', x'89504e470d0a1a0a');
      CREATE VIEW tiles AS SELECT map.zoom_level AS zoom_level, map.tile_column AS tile_column, map.tile_row AS tile_row,
        images.tile_data AS tile_data FROM map JOIN images ON images.tile_id = map.tile_id;`;
    const file = taken(openMbtiles(mbtilesFile({ schema })));
    expect(file.tile({ z: 2, x: 1, y: 0 })?.type).toBe('image/png');
    file.close();
  });

  it('is not changed by being read', () => {
    const path = mbtilesFile({ rows: [[0, 0, 0, picture('png')]] });
    const before = readFileSync(path);
    const file = taken(openMbtiles(path));
    file.tile({ z: 0, x: 0, y: 0 });
    file.close();
    expect(readFileSync(path).equals(before)).toBe(true);
  });
});

describe('what is no such file says so', () => {
  const withBytes = (bytes: Uint8Array) => {
    const path = join(temporaryFolder(), 'map.mbtiles');
    writeFileSync(path, bytes);
    return path;
  };
  const good = () =>
    mbtilesFile({
      rows: Array.from({ length: 400 }, (_, k) => [9, k, 1, picture('png', ...Array(300).fill(k & 255))] as const),
    });
  it.each<readonly [string, () => string, RegExp]>([
    ['missing', () => '/no/such/map.mbtiles', /no such file/],
    ['a folder', () => temporaryFolder(), /is a folder/],
    ['text', () => withBytes(Buffer.from('hello, this is text and not a database at all')), /not a database/],
    ['nothing', () => withBytes(Buffer.alloc(0)), /no MBTiles file/],
    [
      'another database',
      () => withTable('CREATE TABLE shopping (what text); CREATE TABLE metadata (name text, value text)'),
      /no "tiles"/,
    ],
    ['cut off', () => withBytes(readFileSync(good()).subarray(0, 40_000)), /damaged|no MBTiles file/],
    [
      'vector tiles',
      () => mbtilesFile({ metadata: { format: 'pbf' }, rows: [[0, 0, 0, Buffer.from([1])]] }),
      /vector tiles/,
    ],
    ['no tiles', () => mbtilesFile({}), /no tiles/],
    ['tiles that are no pictures', () => mbtilesFile({ rows: [[0, 0, 0, Buffer.from('GIF89a')]] }), /no pictures/],
    [
      'a tile of ten megabytes',
      () =>
        mbtilesFile({
          rows: [
            [0, 0, 0, picture('png', ...Buffer.alloc(1))],
            [1, 0, 0, Buffer.alloc(10_000_000)],
          ].slice(1) as never,
        }),
      /no tiles/,
    ],
    ['zooms beyond anything', () => mbtilesFile({ rows: [[400, 0, 0, picture('png')]] }), /zooms/],
    ['a view that never ends', () => mbtilesFile({ schema: ENDLESS }), /makes its tiles up/],
    ['a view of invented blobs', () => mbtilesFile({ schema: INVENTED }), /makes its tiles up/],
  ])('%s', (_, path, want) => {
    const file = path();
    const before_ms = performance.now();
    const opened = openMbtiles(file);
    expect(opened.ok ? [] : opened.problems.map(({ path, message }) => `${path}: ${message}`)).toEqual([
      expect.stringMatching(want),
    ]);
    expect(performance.now() - before_ms).toBeLessThan(2000);
  });
});

function withTable(schema: string): string {
  return mbtilesFile({ schema });
}

const ENDLESS = `
  CREATE TABLE metadata (name text, value text);
  CREATE VIEW tiles AS WITH RECURSIVE n(k) AS (SELECT 1 UNION ALL SELECT k + 1 FROM n)
    SELECT k AS zoom_level, k AS tile_column, k AS tile_row, x'89504e47' AS tile_data FROM n;`;
const INVENTED = `
  CREATE TABLE metadata (name text, value text);
  CREATE VIEW tiles AS SELECT 1 AS zoom_level, 1 AS tile_column, 1 AS tile_row, randomblob(900000000) AS tile_data;`;
