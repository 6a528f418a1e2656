import { describe, expect, it } from 'vitest';
import { api } from '../../../backend/api/contract/api.ts';
import { parseCourseText } from '../../../core/course/parse-course-text.ts';
import { taken } from '../taken.ts';
import { tinyCourse, tinyPlayer } from '../tiny-round.ts';
import { addTinyRound, openTestBackend } from './open-test-backend.ts';

const SHOT = {
  discId: 'mid',
  hand: 'backhand',
  shape: 'flat',
  height: 'standard',
  hyzer_deg: 0,
  launch_deg: 9,
  power: 1,
  aimBearing_deg: 90,
} as const;

describe('a new library', () => {
  it('holds the sample courses and players, and shows one', async () => {
    const { ask } = openTestBackend();
    const courses = await ask('listCourses', {});
    expect(courses.map(({ name, holes, sample }) => [name, holes, sample])).toEqual([
      ['Hollow Orchard', 18, true],
      ['Millrace Green', 9, true],
      ['Ridge and Reservoir', 18, true],
    ]);
    expect(await ask('listPlayers', {})).toHaveLength(2);
    const settings = await ask('getSettings', {});
    expect(courses.find(({ courseId }) => courseId === settings.courseId)?.name).toBe('Ridge and Reservoir');
    expect(settings.playerId).not.toBeNull();
  });

  it('does not bring deleted samples back', async () => {
    const first = openTestBackend();
    for (const { courseId } of await first.ask('listCourses', {})) await first.ask('removeCourse', { courseId });
    await first.backend.close();
    const { ask } = openTestBackend({ folder: first.folder });
    expect(await ask('listCourses', {})).toEqual([]);
    expect((await ask('getSettings', {})).courseId).toBeNull();
  });

  it('is given as plain JSON that holds the contract, with the same numbers everywhere', async () => {
    const { ask } = openTestBackend();
    for (const line of await ask('listCourses', {})) {
      const { courseId } = line;
      const { holes } = await ask('getCourse', { courseId });
      expect(line.par).toBe(holes.reduce((sum, { par }) => sum + par, 0));
      const playLength_m = holes.reduce((sum, hole) => sum + hole.playLength_m, 0);
      expect(Math.abs(line.playLength_m - playLength_m)).toBeLessThan(0.5);
      for (const { ref } of holes) {
        const hole = await ask('getHole', { courseId, ref });
        api.getHole.output.parse(JSON.parse(JSON.stringify(hole)));
        expect(hole.report.ref).toBe(ref);
      }
      const map = await ask('getCourseMap', { courseId });
      api.getCourseMap.output.parse(JSON.parse(JSON.stringify(map)));
      expect(map.holes.map(({ ref }) => ref)).toEqual(holes.map(({ ref }) => ref));
    }
  });
});

describe('courses', () => {
  it('import, rename, export, delete and take back', async () => {
    const { ask, refused, events } = openTestBackend();
    const text = JSON.stringify(tinyCourse());
    const preview = await ask('previewCourse', { fileName: 'tiny.geojson', text });
    expect(preview.holes.map(({ ref }) => ref)).toEqual(['1', '2']);
    const { courseId } = await ask('importCourse', { fileName: 'tiny.geojson', text });
    expect((await ask('exportCourse', { courseId })).text).toBe(text);
    await ask('setNote', { courseId, ref: '2', text: 'walkers behind the hedge' });
    await ask('renameCourse', { courseId, name: 'Tiny Loop' });
    const file = await ask('exportCourse', { courseId });
    expect(file.fileName).toBe('tiny-loop.geojson');
    const again = taken(parseCourseText(file.text, 'x'));
    expect(again.name).toBe('Tiny Loop');
    expect(again.source.features).toHaveLength(taken(parseCourseText(text, 'x')).source.features.length);
    const { undo } = await ask('removeCourse', { courseId });
    expect(undo.what).toBe('Delete Tiny Loop');
    expect(await refused('getCourse', { courseId })).toEqual([
      { path: 'courseId', message: expect.stringContaining('may have been deleted') },
    ]);
    await ask('undo', { changeId: undo.changeId });
    expect((await ask('getCourse', { courseId })).name).toBe('Tiny Loop');
    expect(await ask('listNotes', { courseId })).toEqual([{ ref: '2', text: 'walkers behind the hedge' }]);
    expect(events.at(-1)).toEqual({ kind: 'libraryChanged', areas: expect.arrayContaining(['courses', 'pins']) });
  });

  it('take a file with an unkeepable name, and give the file back as it came', async () => {
    const { ask, faults } = openTestBackend();
    const course = tinyCourse() as { features: { properties: Record<string, unknown> }[] };
    course.features[0]!.properties.name = `\u0000\ud800 Loop\n${'x'.repeat(300)}`;
    const text = JSON.stringify(course);
    const { courseId } = await ask('importCourse', { fileName: 'a.geojson', text });
    const { name } = await ask('getCourse', { courseId });
    expect(name).toMatch(/^\ufffd Loop x+$/);
    expect(name).toHaveLength(120);
    expect((await ask('exportCourse', { courseId })).text).toBe(text);
    const { text: library } = await ask('exportLibrary', {});
    expect(await ask('importLibrary', { text: library, how: 'replace' })).toMatchObject({ courses: 4 });
    expect(faults).toEqual([]);
  });

  it('says where a file is wrong, in the paths of the file', async () => {
    const { refused } = openTestBackend();
    expect(await refused('importCourse', { fileName: 'x', text: '{"type": "FeatureCollection",}' })).toEqual([
      { path: 'line 1, column 30', message: expect.stringContaining('a comma stands before }') },
    ]);
  });
});

describe('players', () => {
  it('import, change discs, export and take back', async () => {
    const { ask, refused } = openTestBackend();
    const { playerId } = await addTinyRound({ ask });
    const disc = { id: 'driver', name: 'Long one', speed: 9, glide: 5, turn: -1, fade: 2 };
    await ask('addDisc', { playerId, disc });
    expect((await ask('getPlayer', { playerId })).discs.at(-1)).toEqual({
      ...disc,
      class: 'control',
      role: 'throwing',
    });
    expect(await refused('addDisc', { playerId, disc })).toEqual([
      { path: 'disc.id', message: expect.stringContaining('already the id') },
    ]);
    expect(await refused('updateDisc', { playerId, discId: 'driver', disc: { ...disc, speed: 99 } })).toEqual([
      { path: 'disc.speed', message: expect.stringContaining('got 99') },
    ]);
    const before = await ask('exportPlayer', { playerId });
    // The measured throws follow the disc to its new id, and go with it when it is deleted.
    await ask('updateDisc', {
      playerId,
      discId: 'mid',
      disc: { id: 'mid2', name: 'Worn', speed: 5, glide: 5, turn: -2, fade: 1 },
    });
    const throws = async () => (await ask('getPlayer', { playerId })).sessions[0]!.throws;
    const all = await throws();
    const { undo } = await ask('removeDisc', { playerId, discId: 'mid2' });
    expect(all - (await throws())).toBe(12); // tinyPlayer: 9 backhand and 3 forehand throws of it
    await ask('undo', { changeId: undo.changeId });
    expect(await throws()).toBe(all);
    await ask('removeDisc', { playerId, discId: 'mid2' });
    expect(await refused('removeDisc', { playerId, discId: 'throw' })).toEqual([
      { path: 'discId', message: expect.stringContaining('the only disc with measured throws') },
    ]);
    const { playerId: copy } = await ask('importPlayer', before);
    expect(await ask('exportPlayer', { playerId: copy })).toEqual(before);
  });

  it('say where a file is wrong', async () => {
    const { refused } = openTestBackend();
    const text = JSON.stringify({ ...tinyPlayer(), handedness: 'both' });
    expect(await refused('previewPlayer', { fileName: 'x', text })).toEqual([
      { path: 'handedness', message: expect.stringContaining('"both" is not known') },
    ]);
  });
});

describe('pins and notes', () => {
  it('are kept per course, player and hole, and can be taken back', async () => {
    const { ask, refused } = openTestBackend();
    const { courseId, playerId } = await addTinyRound({ ask });
    const pin = { courseId, playerId, ref: '1', shot: SHOT, title: 'midrange off the tee, flat' };
    await ask('pinShot', pin);
    const { undo } = await ask('pinShot', { ...pin, title: 'another' });
    await ask('undo', { changeId: undo.changeId });
    expect(await ask('listPins', { courseId, playerId })).toEqual([{ ref: '1', shot: SHOT, title: pin.title }]);
    await ask('unpinShot', { courseId, playerId, ref: '1' });
    expect(await ask('listPins', { courseId, playerId })).toEqual([]);
    expect(await refused('unpinShot', { courseId, playerId, ref: '1' })).toHaveLength(1);
    expect(await refused('pinShot', { ...pin, ref: '7' })).toEqual([
      { path: 'ref', message: 'the course has no hole "7"' },
    ]);
    for (const text of ['\u0000x', 'half a \ud83d'])
      expect(await refused('setNote', { courseId, ref: '1', text })).toMatchObject([{ path: 'text' }]);
    await ask('setNote', { courseId, ref: '1', text: 'left of the bench\nnot right' });
    await ask('setNote', { courseId, ref: '1', text: '' });
    expect(await ask('listNotes', { courseId })).toEqual([]);
  });
});

describe('settings', () => {
  it('change in part and outlive a restart', async () => {
    const first = openTestBackend();
    const before = await first.ask('getSettings', {});
    const change = { theme: 'dark', day: { wind: { speed_mps: 6, from_deg: 90 } } } as const;
    expect(await first.ask('setSettings', { change })).toEqual({ ...before, ...change });
    await first.backend.close();
    const second = openTestBackend({ folder: first.folder });
    expect(await second.ask('getSettings', {})).toEqual({ ...before, ...change });
    expect(await second.refused('setSettings', { change: { courseId: crypto.randomUUID() } })).toEqual([
      { path: 'change.courseId', message: 'is no course of the library' },
    ]);
  });
});

describe('the whole library', () => {
  it('goes out and comes into another one the same', async () => {
    const here = openTestBackend();
    const { courseId, playerId } = await addTinyRound(here);
    await here.ask('pinShot', { courseId, playerId, ref: '1', shot: SHOT, title: 'flat' });
    await here.ask('setNote', { courseId, ref: '2', text: 'slow green' });
    const { text } = await here.ask('exportLibrary', {});
    const there = openTestBackend();
    const before = await there.ask('exportLibrary', {});
    const replaced = await there.ask('importLibrary', { text, how: 'replace' });
    expect(replaced).toMatchObject({ courses: 4, players: 3, pins: 1, notes: 1 });
    expect(JSON.parse((await there.ask('exportLibrary', {})).text)).toEqual(JSON.parse(text));
    expect(await there.ask('importLibrary', { text, how: 'merge' })).toMatchObject({ courses: 0, players: 0, pins: 0 });
    const [merge] = await there.ask('listChanges', {});
    await there.ask('undo', { changeId: merge!.changeId });
    await there.ask('undo', { changeId: replaced.undo.changeId });
    expect(await there.ask('exportLibrary', {})).toEqual(before);
  });

  it('is refused with every problem, and nothing of it is taken', async () => {
    const { ask, refused } = openTestBackend();
    const file = JSON.parse((await ask('exportLibrary', {})).text);
    file.courses[0].text = '{}';
    file.players[0].file.handedness = 'both';
    file.notes.push({ courseId: crypto.randomUUID(), ref: '1', text: 'lost' });
    const problems = await refused('importLibrary', { text: JSON.stringify(file), how: 'replace' });
    expect(problems.map(({ path }) => path)).toEqual(
      expect.arrayContaining([
        expect.stringMatching(/^courses\[0\]\.text: /),
        'players[0].file: handedness',
        'notes[0].courseId',
      ]),
    );
    expect(await ask('listCourses', {})).toHaveLength(3);
    expect(await refused('importLibrary', { text: '{"schema": "other"}', how: 'merge' })).toContainEqual({
      path: 'schema',
      message: expect.stringContaining('this is no library file'),
    });
  });
});

describe('the dispatcher', () => {
  it.each([['nope'], ['__proto__'], ['constructor'], ['toString'], ['']])('refuses the method "%s"', async method => {
    const { backend } = openTestBackend();
    expect(await backend.call(method, {})).toEqual({
      ok: false,
      problems: [{ path: 'method', message: `there is no method "${method}"` }],
    });
  });

  it('names what is wrong with the input', async () => {
    const { refused, faults } = openTestBackend();
    expect(await refused('getCourse', { courseId: 'x', more: 1 })).toEqual([
      { path: 'courseId', message: 'must be an id of the library' },
      { path: 'input', message: expect.stringContaining('more') },
    ]);
    expect(await refused('getCourse', null)).toHaveLength(1);
    expect(faults).toEqual([]);
  });
});
