import { randomUUID } from 'node:crypto';
import type { FeatureCollection } from 'geojson';
import { describe, expect, it } from 'vitest';
import { addFeatures, removeFeature } from '../../../core/course/edit/edit-features.ts';
import { addLayout } from '../../../core/course/edit/edit-layouts.ts';
import { collection, hole, line, point } from '../../core/course/course-file.ts';
import { tinyCourse } from '../tiny-round.ts';
import { addTinyRound, openTestBackend } from './open-test-backend.ts';

const text = (file: object) => JSON.stringify(file);
const tiny = () => tinyCourse() as FeatureCollection;
const secondTee = point([30, 3], { disc_golf: 'tee', ref: '1', name: 'Short' });
const withTee = () => addFeatures(tiny(), secondTee as never);

describe('a draft', () => {
  it('is kept right or wrong, is found again, and is discarded with a way back', async () => {
    const backend = openTestBackend();
    const { ask, refused } = backend;
    const { courseId } = await addTinyRound(backend);
    expect(await ask('openDraft', { courseId })).toMatchObject({ name: 'Tiny Links', isKept: false, isCourse: true });
    const torn = text(removeFeature(tiny(), 1));
    await ask('keepDraft', { courseId, name: 'Tiny Links', text: torn });
    const kept = await ask('openDraft', { courseId });
    expect([JSON.parse(kept.text), kept.isKept]).toEqual([JSON.parse(torn), true]);
    expect(await ask('listDrafts', {})).toMatchObject([{ courseId, name: 'Tiny Links', isCourse: true }]);
    const { undo } = await ask('discardDraft', { courseId });
    expect(await ask('listDrafts', {})).toEqual([]);
    expect((await refused('discardDraft', { courseId }))[0]!.path).toBe('courseId');
    await ask('undo', { changeId: undo.changeId });
    expect((await ask('openDraft', { courseId })).isKept).toBe(true);
    expect((await refused('keepDraft', { courseId, name: 'x', text: '{"type":' }))[0]!.path).toMatch(/line 1/);
  });

  it('outlives the app, and travels with the library', async () => {
    const first = openTestBackend();
    const courseId = randomUUID();
    await first.ask('keepDraft', { courseId, name: 'Drawn', text: text(collection(secondTee)) });
    const library = await first.ask('exportLibrary', {});
    await first.backend.close();
    const again = openTestBackend({ folder: first.folder });
    expect(await again.ask('listDrafts', {})).toMatchObject([{ courseId, name: 'Drawn', isCourse: false }]);
    const other = openTestBackend();
    await other.ask('importLibrary', { text: library.text, how: 'merge' });
    expect((await other.ask('openDraft', { courseId })).text).toBe((await again.ask('openDraft', { courseId })).text);
  });
});

describe('saving a map', () => {
  it('is whole or not at all, and is taken back with its draft', async () => {
    const backend = openTestBackend();
    const { ask, refused } = backend;
    const { courseId } = await addTinyRound(backend);
    const before = (await ask('exportCourse', { courseId })).text;
    const torn = removeFeature(tiny(), 1);
    expect((await refused('saveCourse', { courseId, name: 'Tiny', text: text(collection()) }))[0]!.message).toContain(
      'the file has no hole',
    );
    expect((await ask('exportCourse', { courseId })).text).toBe(before);
    await ask('keepDraft', { courseId, name: 'Tiny', text: text(torn) });
    const { undo } = await ask('saveCourse', { courseId, name: 'Tiny Two', text: text(withTee()) });
    expect(undo.what).toBe('Edit Tiny Two');
    expect(await ask('listDrafts', {})).toEqual([]);
    const map = await ask('getCourseMap', { courseId });
    expect(map.holes[0]!.tees).toHaveLength(2);
    await ask('undo', { changeId: undo.changeId });
    expect((await ask('exportCourse', { courseId })).text).toBe(before);
    expect((await ask('openDraft', { courseId })).isKept).toBe(true);
  });

  it('makes a course of one that was drawn from nothing', async () => {
    const { ask } = openTestBackend();
    const courseId = randomUUID();
    const { undo } = await ask('saveCourse', { courseId, name: 'Paper Meadow', text: text(collection(...hole('1'))) });
    expect(undo.what).toBe('Add Paper Meadow');
    expect((await ask('getCourse', { courseId })).name).toBe('Paper Meadow');
    expect((await ask('listCourses', {})).find(line => line.courseId === courseId)).toMatchObject({ holes: 1 });
  });
});

describe('a map as drawn so far', () => {
  it('is described, its holes with what a layout can choose', async () => {
    const { ask } = openTestBackend();
    const file = addLayout(withTee(), 'Short tees', [{ ref: '1', tee: 'Short' }]);
    const described = await ask('describeDraft', { text: text(file), ref: '1' });
    expect(described.problems).toEqual([]);
    expect(described.holes[0]).toMatchObject({
      ref: '1',
      par: 3,
      tees: [
        { key: '#1', featureIndex: 1 },
        { key: 'Short', featureIndex: 9 },
      ],
    });
    expect(described.layouts).toEqual([{ name: 'Short tees', featureIndex: 10 }]);
    // 80 m by the course file, 50.1 m from the second tee: √(50² + 3²) by hand.
    expect(Math.abs(described.hole!.report.length_m - 80)).toBeLessThan(0.05);
    const short = await ask('describeDraft', { text: text(file), ref: '1', layout: 'Short tees' });
    expect(Math.abs(short.hole!.report.length_m - Math.hypot(50, 3))).toBeLessThan(0.05);
  });

  it('is described as far as it holds together', async () => {
    const { ask } = openTestBackend();
    const wrong = [
      point([9, 9], { disc_golf: 'mando', ref: '1' }),
      point([9, 40], { natural: 'tree', height: 'tall' }),
      line(
        [
          [0, 400],
          [0.2, 400],
        ],
        { disc_golf: 'hole', ref: '9' },
      ),
    ];
    const {
      problems,
      hole: one,
      holes,
    } = await ask('describeDraft', {
      text: text(addFeatures(tiny(), ...(wrong as never[]))),
      ref: '1',
    });
    expect(problems.map(({ path }) => path)).toEqual(
      ['features[11].geometry.coordinates', 'features[9]', 'features[10].properties.height'].sort(
        (a, b) => problems.findIndex(p => p.path === a) - problems.findIndex(p => p.path === b),
      ),
    );
    expect(holes.map(({ ref }) => ref)).toEqual(['1', '2']);
    expect(Math.abs(one!.report.playLength_m - 80)).toBeLessThan(0.05);
    const nothing = await ask('describeDraft', { text: text(collection(secondTee)), ref: '1' });
    expect([nothing.hole, nothing.holes.length, nothing.problems.length]).toEqual([null, 0, 1]);
  });
});

describe('a walked hole', () => {
  const walked = {
    ref: '3',
    distances: { unit: 'paces', pace_m: 0.8 },
    sizes: 'ft',
    length: 100,
    bearing_deg: 45,
  } as const;

  it('comes as features that join a map, with its numbers', async () => {
    const { ask, refused } = openTestBackend();
    const made = await ask('buildWalkedHole', { hole: walked, start: [25, 60.004], text: text(tiny()) });
    expect(Math.abs(made.report.playLength_m - 80)).toBeLessThan(0.01);
    const joined = addFeatures(tiny(), ...(made.features as never[]));
    const described = await ask('describeDraft', { text: text(joined), ref: '3' });
    expect(described.problems).toEqual([]);
    expect(Math.abs(described.hole!.report.playLength_m - 80)).toBeLessThan(0.01);
    expect(
      (await refused('buildWalkedHole', { hole: { ...walked, gaps: [{ at: 200, width: 10 }] }, start: null })).map(
        p => p.path,
      ),
    ).toEqual(['hole.gaps[0].at']);
  });

  it('without a place lies apart from all else', async () => {
    const { ask } = openTestBackend();
    const made = await ask('buildWalkedHole', { hole: walked, start: null, text: text(tiny()) });
    expect(made.notes.join()).toContain('no place on the map');
    const joined = addFeatures(tiny(), ...(made.features as never[]));
    const { problems, assumptions } = await ask('describeDraft', { text: text(joined), ref: '3' });
    expect(problems).toEqual([]);
    expect(assumptions.some(({ message }) => message.includes('hole 3 is not placed'))).toBe(true);
    const alone = await ask('buildWalkedHole', { hole: walked, start: null });
    expect(alone.map.origin).toEqual([0, 0]);
  });
});

describe('a layout', () => {
  it('is what is planned, shown and listed', async () => {
    const backend = openTestBackend();
    const { ask, refused } = backend;
    const { courseId, playerId } = await addTinyRound(backend);
    const file = addLayout(withTee(), 'Back first', [{ ref: '2' }, { ref: '1', tee: 'Short', par: 2 }]);
    await ask('saveCourse', { courseId, name: 'Tiny Links', text: text(file) });
    expect((await ask('listCourses', {})).find(line => line.courseId === courseId)?.layouts).toEqual(['Back first']);
    const played = await ask('getCourse', { courseId, layout: 'back first' });
    expect(played.holes.map(({ ref, par }) => [ref, par])).toEqual([
      ['2', 3],
      ['1', 2],
    ]);
    expect(played.layouts).toEqual([{ name: 'Back first', holes: 2 }]);
    const { map } = await ask('getHole', { courseId, ref: '1', layout: 'Back first' });
    expect(Math.abs(Math.hypot(...map.basket) - Math.hypot(50, 3))).toBeLessThan(0.05);
    const whole = await ask('getHole', { courseId, ref: '1' });
    expect(Math.abs(Math.hypot(...whole.map.basket) - 80)).toBeLessThan(0.05);
    const asked = { planId: randomUUID(), courseId, playerId, day: {} };
    expect(await refused('startPlan', { ...asked, layout: 'Blue' })).toEqual([
      { path: 'layout', message: 'the course has no layout "Blue": it has "Back first"' },
    ]);
    // its pins and notes are its own: hole 1 has another tee there
    const layout = 'Back first';
    const shot = {
      discId: 'throw',
      hand: 'backhand',
      shape: 'flat',
      height: 'low',
      hyzer_deg: 0,
      launch_deg: 8,
    } as const;
    const pin = { courseId, playerId, ref: '1', shot: { ...shot, power: 1, aimBearing_deg: 90 } };
    await ask('pinShot', { ...pin, layout, title: 'from the short tee' });
    await ask('setNote', { courseId, layout, ref: '1', text: 'roots beside the short tee' });
    await ask('setNote', { courseId, ref: '1', text: 'walkers' });
    expect((await ask('listPins', { courseId, playerId, layout })).map(({ title }) => title)).toEqual([
      'from the short tee',
    ]);
    expect(await ask('listPins', { courseId, playerId })).toEqual([]);
    const noted = async (of: { layout?: string }) =>
      (await ask('listNotes', { courseId, ...of })).map(note => note.text);
    expect([await noted({ layout }), await noted({})]).toEqual([['roots beside the short tee'], ['walkers']]);
    expect(await refused('pinShot', { ...pin, layout: 'Blue', title: 'x' })).toMatchObject([{ path: 'layout' }]);
    expect(await refused('unpinShot', { courseId, playerId, ref: '1' })).toMatchObject([{ path: 'ref' }]);
    await ask('setSettings', { change: { layouts: { [courseId]: 'Back first' } } });
    expect((await ask('getSettings', {})).layouts).toEqual({ [courseId]: 'Back first' });
  });
});
