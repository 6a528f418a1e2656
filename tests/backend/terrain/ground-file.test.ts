import { describe, expect, it } from 'vitest';
import { groundFile, readGroundFile } from '../../../backend/terrain/ground-file.ts';
import type { ElevationModel } from '../../../core/course/elevation-grid.ts';
import { taken } from '../taken.ts';

// Invented heights over both signs, with gaps at either end of a row.
const model: ElevationModel = {
  west_deg: 24.9,
  north_deg: 60.2,
  stepLon_deg: 2e-5,
  stepLat_deg: 1e-5,
  columns: 40,
  rows: 30,
  source: 'hill.tif',
  crs: 'EPSG:32635 (WGS 84 / UTM zone 35N)',
  resolution_m: 1,
  datum: 'heights: N2000',
  height_m: Float32Array.from({ length: 1200 }, (_, k) =>
    k % 40 === 0 || k % 97 === 5 || k % 40 === 39 ? Number.NaN : Math.sin(k / 7) * 300 + (k % 13) / 9,
  ),
};

describe('ground as the library keeps it', () => {
  it('comes back within half a centimetre, gaps and facts as they were', () => {
    const back = taken(readGroundFile(JSON.parse(JSON.stringify(groundFile({ terrain: model, surface: model })))));
    const { height_m, ...facts } = model;
    for (const { height_m: read_m, ...read } of [back.terrain, back.surface!]) {
      expect(read).toEqual(facts);
      height_m.forEach((want_m, k) => {
        if (Number.isNaN(want_m)) expect(read_m[k]).toBeNaN();
        else expect(Math.abs(read_m[k]! - want_m)).toBeLessThanOrEqual(0.005 + 2e-5);
      });
    }
  });

  const file = groundFile({ terrain: model });
  const changed = (terrain: object) => ({ ...file, terrain: { ...file.terrain, ...terrain } });
  it.each<readonly [string, unknown, string, RegExp]>([
    ['nothing', null, 'ground', /./],
    ['another schema', { ...file, schema: 'other@1' }, 'schema', /./],
    ['heights that are no base64', changed({ heights: '!!' }), 'terrain.heights', /./],
    ['heights that are not deflated', changed({ heights: 'AAAA' }), 'terrain.heights', /unpacked/],
    ['fewer heights than nodes', changed({ rows: 31 }), 'terrain.heights', /in place of/],
    ['more heights than nodes', changed({ rows: 29 }), 'terrain.heights', /unpacked/],
    ['more nodes than are taken', changed({ rows: 5_000_000 }), 'terrain.heights', /more than/],
    ['a step of nothing', changed({ stepLon_deg: 0 }), 'terrain.stepLon_deg', /./],
    ['a name with a line break of its own kind', changed({ source: 'a\u0000b' }), 'terrain.source', /./],
  ])('%s is refused with its place', (_, input, path, message) => {
    const read = readGroundFile(input);
    expect(read.ok ? [] : read.problems.map(problem => problem.path)).toContain(path);
    expect(read.ok || message.test(read.problems[0]!.message)).toBe(true);
  });
});
