import { describe, expect, it } from 'vitest';
import { modelFile } from '../terrain/model-file.ts';
import { addTinyRound, openTestBackend } from './open-test-backend.ts';

// The tiny round lies about 60° north, 25° east: two holes running 80 m east, 200 m apart (course-file.ts).
const ground = {
  code: 32635,
  lon_deg: 25.0007,
  lat_deg: 60.0009,
  pixel: 3,
  side: 301,
  height: (dx: number, dy: number) => 40 + 0.03 * dx + 0.01 * dy,
};

describe('terrain beside a course', () => {
  it('gives its holes their rise, says what it is, and is taken back', async () => {
    const { ask, events } = openTestBackend();
    const { courseId } = await addTinyRound({ ask });
    expect(await ask('getTerrain', { courseId })).toBeNull();
    const flat = await ask('getHole', { courseId, ref: '1' });
    expect(flat.report.rise_m).toBeNull();

    const added = await ask('addTerrain', { courseId, terrain: modelFile({ ...ground, name: 'valley.tif' }) });
    expect(added.undo.what).toBe('Add terrain to Tiny Links');
    expect(added.ground).toMatchObject({
      terrain: { source: 'valley.tif', crs: 'EPSG:32635 (WGS 84 / UTM zone 35N)' },
      covered: ['1', '2'],
      missing: [],
      treeHeights: 0,
    });
    expect(added.ground.assumptions.join()).toContain('does not say what its heights count from');
    expect(await ask('getTerrain', { courseId })).toEqual(added.ground);
    expect(events.filter(({ kind }) => kind === 'libraryChanged').at(-1)).toMatchObject({ areas: ['courses'] });
    const hole = await ask('getHole', { courseId, ref: '1' });
    // 80 m east at 3 cm a metre; the grid is turned by 1.7° here (0.02 m), heights are kept to the centimetre.
    expect(Math.abs(hole.report.rise_m! - 2.4)).toBeLessThanOrEqual(0.05);
    const course = await ask('getCourse', { courseId });
    expect(course.notMapped).not.toContain('heights');
    expect(course.assumptions.map(({ message }) => message).join()).toContain('the ground is read from valley.tif');

    await ask('undo', { changeId: added.undo.changeId });
    expect(await ask('getTerrain', { courseId })).toBeNull();
    expect((await ask('getHole', { courseId, ref: '1' })).report.rise_m).toBeNull();
  });

  it('is removed by hand, goes with its course and comes back with it', async () => {
    const { ask, refused } = openTestBackend();
    const { courseId } = await addTinyRound({ ask });
    const { ground: kept } = await ask('addTerrain', { courseId, terrain: modelFile(ground) });
    const gone = await ask('removeCourse', { courseId });
    await ask('undo', { changeId: gone.undo.changeId });
    expect(await ask('getTerrain', { courseId })).toEqual(kept);
    await ask('removeTerrain', { courseId });
    expect(await ask('getTerrain', { courseId })).toBeNull();
    expect(await refused('removeTerrain', { courseId })).toMatchObject([{ path: 'courseId' }]);
  });

  it('survives a restart, and travels in the library file', async () => {
    const first = openTestBackend();
    const { courseId } = await addTinyRound(first);
    const { ground: kept } = await first.ask('addTerrain', { courseId, terrain: modelFile(ground) });
    const { text } = await first.ask('exportLibrary', {});
    await first.backend.close();
    const again = openTestBackend({ folder: first.folder });
    expect(await again.ask('getTerrain', { courseId })).toEqual(kept);
    const other = openTestBackend();
    await other.ask('importLibrary', { text, how: 'replace' });
    expect(await other.ask('getTerrain', { courseId })).toEqual(kept);
    expect(JSON.parse((await other.ask('exportLibrary', {})).text)).toEqual(JSON.parse(text));
  });

  it('a file that is no model is refused with its place, and nothing changes', async () => {
    const { ask, refused } = openTestBackend();
    const { courseId } = await addTinyRound({ ask });
    const before = (await ask('listChanges', {})).length;
    expect(await refused('addTerrain', { courseId, terrain: '/no/such/file.tif' })).toMatchObject([
      { path: 'terrain', message: expect.stringContaining('no such file') },
    ]);
    const problems = await refused('addTerrain', {
      courseId,
      terrain: modelFile(ground),
      surface: modelFile({ ...ground, lon_deg: 26 }),
    });
    expect(problems).toMatchObject([{ path: 'surface', message: expect.stringContaining('does not cover') }]);
    expect((await ask('listChanges', {})).length).toBe(before);
  });

  it('changes what the list says of a course whose par is derived', async () => {
    const { ask } = openTestBackend();
    const { courseId } = await addTinyRound({ ask });
    const line = async () => (await ask('listCourses', {})).find(course => course.courseId === courseId)!;
    const before = await line();
    await ask('addTerrain', { courseId, terrain: modelFile(ground) });
    // Pars are mapped here: the same line, made anew.
    expect(await line()).toEqual(before);
  });
});
