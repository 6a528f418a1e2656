import type { FeatureCollection } from 'geojson';
import { describe, expect, it } from 'vitest';
import type { Input, Output } from '../../../backend/api/contract/api.ts';
import { fixture, fixtureText } from '../import/fixture.ts';
import { tinyCourse } from '../tiny-round.ts';
import { addTinyRound, openTestBackend } from './open-test-backend.ts';

const data = (bytes: Uint8Array | string) => Buffer.from(bytes).toString('base64');
const OSM = { fileName: 'lantern.osm', data: data(fixture('lantern-hollow.osm')) };
const asShown = ({ report }: Output<'readCourseFile'>): NonNullable<Input<'importCourse'>['choices']> => ({
  roles: report.items.map(({ index, chosen }) => ({ index, ...chosen })),
});
const takenOf = ({ update }: Output<'readCourseFile'>) =>
  update!.differences.flatMap(({ key, isTaken }) => (isTaken ? [key] : []));
/** The map a month later: basket 1 eleven metres north, hole 2 a par 4. */
const OSM_LATER = {
  fileName: 'lantern.osm',
  data: data(
    fixtureText('lantern-hollow.osm')
      .replace(
        /(<node id="1002" lat=")([\d.]+)/,
        (_, start: string, lat: string) => start + (Number(lat) + 0.0001).toFixed(7),
      )
      .replace(/(<tag k="ref" v="2"\/>\s*<tag k="par" v=")3/, '$14'),
  ),
};

describe('readCourseFile', () => {
  it('shows what a file would make and keeps nothing', async () => {
    const { ask, events } = openTestBackend();
    const before = await ask('listCourses', {});
    const read = await ask('readCourseFile', OSM);
    expect(read.report).toMatchObject({ ok: true, kind: 'osm', course: 'Lantern Hollow' });
    expect(read.holes.map(({ ref }) => ref)).toEqual(['1', '2', '3']);
    expect(read.map?.holes).toHaveLength(3);
    expect(read.sameAs).toBeNull();
    expect(await ask('listCourses', {})).toEqual(before);
    expect(events.filter(({ kind }) => kind === 'libraryChanged')).toEqual([]);
  });

  it('answers with a report where there is no course yet', async () => {
    const { ask } = openTestBackend();
    const file = { fileName: 'places.gpx', text: fixtureText('lantern-hollow.gpx') };
    const { report } = await ask('readCourseFile', file);
    const roles = asShown({ report } as Output<'readCourseFile'>).roles!;
    const wrong = roles.map(choice =>
      choice.role === 'basket' && choice.ref === '1' ? { ...choice, role: 'leave' as const } : choice,
    );
    const read = await ask('readCourseFile', { ...file, choices: { roles: wrong } });
    expect(read).toMatchObject({ map: null, holes: [], report: { ok: false, kind: 'gpx' } });
    expect(read.report.problems[0]!.message).toContain('no basket');
  });

  it('wants the text or the bytes, not both and not neither', async () => {
    const { refused } = openTestBackend();
    for (const file of [{}, { text: '{}', data: data('{}') }])
      expect(await refused('readCourseFile', { fileName: 'a', ...file })).toMatchObject([{ path: 'text' }]);
    expect(await refused('readCourseFile', { fileName: 'a', data: '§' })).toMatchObject([
      { path: 'data', message: 'is not base64' },
    ]);
  });
});

describe('importCourse', () => {
  it('takes nothing in that was only proposed', async () => {
    const { ask, refused } = openTestBackend();
    const file = { fileName: 'places.kmz', data: data(fixture('lantern-hollow.kmz')) };
    expect(await refused('importCourse', file)).toMatchObject([{ path: 'choices.roles' }]);
    expect(await refused('previewCourse', file)).toMatchObject([{ path: 'choices.roles' }]);
    const choices = asShown(await ask('readCourseFile', file));
    const { courseId, undo } = await ask('importCourse', { ...file, choices: { ...choices, name: 'Pond Nine' } });
    expect(await ask('getCourse', { courseId })).toMatchObject({
      name: 'Pond Nine',
      fileName: 'places.kmz',
      sample: false,
    });
    await ask('undo', { changeId: undo.changeId });
    expect((await ask('listCourses', {})).map(({ name }) => name)).not.toContain('Pond Nine');
  });

  it('exports what came in, letter for letter', async () => {
    const { ask } = openTestBackend();
    const text = JSON.stringify({ ...tinyCourse(), extra: [1, { a: null }] });
    const { courseId } = await ask('importCourse', { fileName: 'a.geojson', text });
    expect((await ask('exportCourse', { courseId })).text).toBe(text);
  });
});

describe('updateCourse', () => {
  it('shows the differences, takes those that are ticked, and can be taken back', async () => {
    const { ask } = openTestBackend();
    const { courseId } = await ask('importCourse', OSM);
    const read = await ask('readCourseFile', { ...OSM_LATER, updateOf: courseId });
    expect(read.sameAs).toEqual({ courseId, name: 'Lantern Hollow' });
    expect(read.update!.differences.map(({ does, by, what, ref }) => [does, by, what, ref])).toEqual([
      ['change', 'file', 'hole', '1'],
      ['change', 'file', 'hole', '2'],
      ['change', 'file', 'basket', '1'],
    ]);
    const [first, second] = read.update!.holes;
    // 0.0001° of latitude at 60.2° north: 11.143 m by the radius of curvature M of references/standards 6.4's formula, [C].
    expect(Math.abs(first!.basketMoved_m! - 11.143)).toBeLessThan(0.02);
    expect(second).toMatchObject({ ref: '2', parBefore: 3, parAfter: 4 });
    const before = await ask('exportCourse', { courseId });
    const { undo } = await ask('updateCourse', {
      ...OSM_LATER,
      courseId,
      basis: read.update!.basis,
      take: takenOf(read),
    });
    expect((await ask('readCourseFile', { ...OSM_LATER, updateOf: courseId })).update!.differences).toEqual([]);
    await ask('undo', { changeId: undo.changeId });
    expect(await ask('exportCourse', { courseId })).toEqual(before);
  });

  it('keeps what the user drew since, and says so', async () => {
    const { ask } = openTestBackend();
    const { courseId } = await ask('importCourse', OSM);
    const { name, text } = await ask('openDraft', { courseId });
    const drawn = JSON.parse(text) as FeatureCollection;
    const tree = {
      type: 'Feature' as const,
      properties: { natural: 'tree', height: '7' },
      geometry: { type: 'Point' as const, coordinates: [24.9004, 60.2004] },
    };
    await ask('saveCourse', {
      courseId,
      name,
      text: JSON.stringify({ ...drawn, features: [...drawn.features, tree] }),
    });
    const read = await ask('readCourseFile', { ...OSM_LATER, updateOf: courseId });
    expect(read.update!.differences.at(-1)).toMatchObject({ does: 'remove', by: 'you', what: 'tree', isTaken: false });
    await ask('updateCourse', { ...OSM_LATER, courseId, basis: read.update!.basis, take: takenOf(read) });
    const updated = JSON.parse((await ask('exportCourse', { courseId })).text) as FeatureCollection;
    expect(updated.features).toContainEqual(tree);
    // The next update still knows whose it is.
    const next = await ask('readCourseFile', { ...OSM_LATER, updateOf: courseId });
    expect(next.update!.differences).toMatchObject([{ by: 'you', what: 'tree' }]);
  });

  it('refuses an answer to an older comparison, and unknown differences', async () => {
    const { ask, refused } = openTestBackend();
    const { courseId } = await ask('importCourse', OSM);
    const { update } = await ask('readCourseFile', { ...OSM_LATER, updateOf: courseId });
    const input = { ...OSM_LATER, courseId, basis: update!.basis, take: ['new 999'] };
    expect(await refused('updateCourse', input)).toMatchObject([{ path: 'take[0]' }]);
    await ask('updateCourse', { ...input, take: [update!.differences[0]!.key] });
    expect(await refused('updateCourse', { ...input, take: [] })).toMatchObject([{ path: 'basis' }]);
    expect(await refused('updateCourse', { ...input, courseId: crypto.randomUUID() })).toMatchObject([
      { path: 'courseId' },
    ]);
  });

  it('changes nothing when the differences taken make no course', async () => {
    const { ask, refused } = openTestBackend();
    const { courseId } = await addTinyRound({ ask });
    const broken = tinyCourse() as { features: { properties?: Record<string, unknown> }[] };
    // Hole 2 without its line and its basket: taking both away leaves a tee alone.
    const text = JSON.stringify({
      ...broken,
      features: broken.features.filter(({ properties }) => properties?.ref !== '2'),
    });
    const { update } = await ask('readCourseFile', { fileName: 'a', text, updateOf: courseId });
    const gone = update!.differences
      .filter(({ does, what }) => does === 'remove' && what !== 'tee')
      .map(({ key }) => key);
    const half = await ask('readCourseFile', { fileName: 'a', text, updateOf: courseId, take: gone });
    expect(half.update!.problems[0]!.message).toContain('no basket');
    const before = await ask('exportCourse', { courseId });
    expect(
      (await refused('updateCourse', { fileName: 'a', text, courseId, basis: update!.basis, take: gone }))[0]!.path,
    ).toMatch(/^updated course/);
    expect(await ask('exportCourse', { courseId })).toEqual(before);
  });

  it('warns of pins and notes on a hole that goes', async () => {
    const { ask } = openTestBackend();
    const { courseId } = await addTinyRound({ ask });
    await ask('setNote', { courseId, ref: '2', text: 'mind the path' });
    const course = tinyCourse() as { features: { properties?: Record<string, unknown> }[] };
    const text = JSON.stringify({
      ...course,
      features: course.features.filter(({ properties }) => properties?.ref !== '2'),
    });
    const { update } = await ask('readCourseFile', { fileName: 'a', text, updateOf: courseId });
    expect(update!.holes).toMatchObject([{ ref: '2', does: 'remove' }]);
    expect(update!.pinsAndNotes).toEqual(['2']);
  });

  it('waypoints move tees and baskets and take nothing else away', async () => {
    const { ask } = openTestBackend();
    const { courseId } = await ask('importCourse', OSM);
    const before = await ask('getCourse', { courseId });
    const moved = fixtureText('lantern-hollow.gpx').replace('lat="60.2004667"', 'lat="60.2005667"');
    const file = { fileName: 'walk.gpx', text: moved };
    const read = await ask('readCourseFile', { ...file, updateOf: courseId });
    const choices = asShown(read);
    expect(read.update!.holes.map(({ ref, does }) => [ref, does])).toEqual([['1', 'change']]);
    expect(read.update!.differences.filter(({ does, isTaken }) => does === 'remove' && isTaken)).toEqual([]);
    await ask('updateCourse', { ...file, choices, courseId, basis: read.update!.basis, take: takenOf(read) });
    const after = await ask('getCourse', { courseId });
    expect(after.holes.map(({ par }) => par)).toEqual(before.holes.map(({ par }) => par));
    expect(after.counts).toEqual(before.counts.map(line => (line.what === 'tees' ? { ...line, count: 4 } : line)));
    // The whole map, when it comes again, still knows what it had brought.
    const again = await ask('readCourseFile', { ...OSM, updateOf: courseId });
    expect(again.update!.differences.filter(({ does, what }) => does === 'remove' && what !== 'tee')).toEqual([]);
  });

  it('survives the way through a library file', async () => {
    const first = openTestBackend();
    const { courseId } = await first.ask('importCourse', OSM);
    const { name, text } = await first.ask('openDraft', { courseId });
    const drawn = JSON.parse(text) as FeatureCollection;
    await first.ask('saveCourse', {
      courseId,
      name,
      text: JSON.stringify({
        ...drawn,
        features: drawn.features.filter(({ properties }) => properties?.natural !== 'tree'),
      }),
    });
    const library = await first.ask('exportLibrary', {});
    const second = openTestBackend();
    await second.ask('importLibrary', { text: library.text, how: 'replace' });
    const read = await second.ask('readCourseFile', { ...OSM, updateOf: courseId });
    expect(read.update!.differences).toMatchObject([{ does: 'add', by: 'you', what: 'tree', isTaken: false }]);
  });
});
