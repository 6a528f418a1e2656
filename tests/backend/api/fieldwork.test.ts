import { describe, expect, it } from 'vitest';
import { tinyPlayer } from '../tiny-round.ts';
import { addTinyRound, openTestBackend } from './open-test-backend.ts';

const THROW = { discId: 'mid', hand: 'backhand', shape: 'flat', power: 'full', distance_m: 80.5, side_m: -2 } as const;

describe('sessions of throws', () => {
  it('are added, filled, changed, emptied and deleted, each taken back on its own', async () => {
    const { ask, refused, events } = openTestBackend();
    const { playerId } = await addTinyRound({ ask });
    const sessions = async () => (await ask('getFieldwork', { playerId })).sessions;
    const before = await sessions();
    const day = { date: '2026-06-01', wind: { speed_mps: 3, from_deg: 90, height_m: 2 }, bearing_deg: 0 };
    const { session } = await ask('addSession', { playerId, session: { ...day, throws: [] } });
    expect(session).toBe(before.length);
    const first = await ask('addThrows', { playerId, session, add: [THROW] });
    expect(first.undo.what).toBe('Add a throw of Plain midrange');
    await ask('addThrows', { playerId, session, add: [{ ...THROW, distance_m: 77 }] });
    expect(events.at(-1)).toEqual({ kind: 'libraryChanged', areas: ['players'] });
    await ask('updateThrow', { playerId, session, throws: 2, place: 1, to: { ...THROW, hand: 'forehand' } });
    expect((await sessions())[session]).toEqual({ ...day, throws: [THROW, { ...THROW, hand: 'forehand' }] });

    const calm = await ask('updateSession', { playerId, session, throws: 2, conditions: { note: 'indoors' } });
    expect((await sessions())[session]).toMatchObject({ note: 'indoors', throws: [THROW, {}] });
    expect((await sessions())[session]).not.toHaveProperty('wind');
    await ask('undo', { changeId: calm.undo.changeId });
    expect((await sessions())[session]).toMatchObject(day);

    await ask('removeThrow', { playerId, session, throws: 2, place: 0 });
    expect((await sessions())[session]!.throws).toEqual([{ ...THROW, hand: 'forehand' }]);
    const gone = await ask('removeSession', { playerId, session, throws: 1 });
    expect(gone.undo.what).toBe('Delete the session of 2026-06-01 (1 throws)');
    expect(await sessions()).toEqual(before);
    await ask('undo', { changeId: gone.undo.changeId });
    expect(await sessions()).toHaveLength(before.length + 1);
    // a change in between stands in the way
    expect(await refused('undo', { changeId: first.undo.changeId })).toHaveLength(1);
  });

  it('refuse what another window has changed meanwhile, and what cannot be', async () => {
    const { ask, refused } = openTestBackend();
    const { playerId } = await addTinyRound({ ask });
    const at = { playerId, session: 0, throws: 21 }; // tinyPlayer: 9 + 9 + 3 throws
    expect(await refused('removeSession', { ...at, throws: 20 })).toEqual([
      { path: 'session', message: expect.stringContaining('holds 21 throws by now') },
    ]);
    expect(await refused('removeThrow', { ...at, place: 21 })).toMatchObject([{ path: 'place' }]);
    expect(await refused('removeSession', { ...at, session: 9 })).toMatchObject([{ path: 'session' }]);
    expect(await refused('addThrows', { playerId, session: 0, add: [THROW, { ...THROW, distance_m: 900 }] })).toEqual([
      { path: 'add[1].distance_m', message: expect.stringContaining('got 900') },
    ]);
    expect(await refused('updateThrow', { ...at, place: 3, to: { ...THROW, discId: 'nope' } })).toEqual([
      { path: 'to.discId', message: expect.stringContaining('"nope" is not the id') },
    ]);
    const wind = { speed_mps: 4, from_deg: 0, height_m: 10 };
    expect(await refused('updateSession', { ...at, conditions: { wind } })).toEqual([
      { path: 'conditions.bearing_deg', message: expect.stringContaining('needs the direction') },
    ]);
    expect(await refused('addSession', { playerId, session: { wind, throws: [] } })).toEqual([
      { path: 'session.bearing_deg', message: expect.stringContaining('needs the direction') },
    ]);
    // a player without a measured throw cannot be fitted
    expect(await refused('removeSession', at)).toMatchObject([{ path: 'sessions' }]);
  });
});

describe('a table of throws', () => {
  it('is shown, taken in whole and taken back; what comes out goes in again', async () => {
    const { ask, refused } = openTestBackend();
    const { playerId } = await addTinyRound({ ask });
    const file = await ask('exportThrowsCsv', { playerId, length: 'ft', speed: 'mph' });
    expect(file.fileName).toBe('tiny-player-throws.csv');
    expect(file.text.split('\r\n')[0]).toBe(
      'session,date,disc,hand,shape,power,distance_ft,side_ft,wind_mph,windFrom_deg,windHeight_ft,bearing_deg,rise_ft,surface,note',
    );
    expect(await refused('importThrowsCsv', { playerId, text: file.text })).toEqual([
      { path: 'file', message: 'holds only throws the player has already' },
    ]);
    const other = { ...tinyPlayer(), sessions: [{ throws: [{ discId: 'mid', distance_m: 80 }] }] };
    const { playerId: fresh } = await ask('importPlayer', { fileName: 'x', text: JSON.stringify(other) });
    const preview = await ask('previewThrowsCsv', { playerId: fresh, text: file.text });
    expect(preview).toMatchObject({ good: 21, bad: 0, throws: 21, sessions: 1, known: 0 });
    expect((await ask('getFieldwork', { playerId: fresh })).sessions).toHaveLength(1);
    const { undo } = await ask('importThrowsCsv', { playerId: fresh, text: file.text });
    expect(undo.what).toBe('Import 21 throws');
    const [mine, theirs] = [await ask('getFieldwork', { playerId }), await ask('getFieldwork', { playerId: fresh })];
    expect(theirs.sessions.slice(1)).toEqual(mine.sessions);
    await ask('undo', { changeId: undo.changeId });
    expect((await ask('getFieldwork', { playerId: fresh })).sessions).toHaveLength(1);
  });

  it('with bad rows goes in only when exactly those are agreed to be left out', async () => {
    const { ask, refused } = openTestBackend();
    const { playerId } = await addTinyRound({ ask });
    const text = 'disc,distance_m,side_m\nmid,81,1\nnope,82,2\nmid,x,2\n';
    expect(await ask('previewThrowsCsv', { playerId, text })).toMatchObject({ good: 1, bad: 2, throws: 1 });
    for (const dropBad of [0, 1, 3])
      expect((await refused('importThrowsCsv', { playerId, text, dropBad })).map(({ path }) => path)).toEqual([
        'dropBad',
        'line 3, disc',
        'line 4, distance_m',
      ]);
    expect(await ask('importThrowsCsv', { playerId, text, dropBad: 2 })).toMatchObject({ throws: 1, sessions: 1 });
  });

  it('shows every bad row of a long one', async () => {
    const { ask } = openTestBackend();
    const { playerId } = await addTinyRound({ ask });
    const rows = Array.from({ length: 400 }, (_, i) => (i % 4 === 3 ? 'mid,far' : `mid,${60 + (i % 20)}`));
    const preview = await ask('previewThrowsCsv', { playerId, text: `disc,distance_m\n${rows.join('\n')}` });
    expect([preview.good, preview.bad]).toEqual([300, 100]);
    expect(preview.rows.filter(({ problems }) => problems.length > 0)).toHaveLength(100);
    expect(preview.rows.map(({ line }) => line)).toEqual(preview.rows.map(({ line }) => line).sort((a, b) => a - b));
  });
});

describe('where a disc lands', () => {
  it('is shown from the same fit as the range table', async () => {
    const { ask, refused, faults } = openTestBackend();
    const { playerId } = await addTinyRound({ ask });
    const [table, scatter] = [
      await ask('getThrows', { playerId }),
      await ask('getDiscScatter', { playerId, discId: 'mid', hand: 'backhand' }),
    ];
    const row = table.throws.find(({ discId, hand }) => discId === 'mid' && hand === 'backhand')!;
    expect(Math.abs(scatter.averageDay_m - row.averageDay_m)).toBeLessThanOrEqual(0.06); // the table keeps tenths
    expect(scatter.views[0]!.points).toHaveLength(9);
    expect(await refused('getDiscScatter', { playerId, discId: 'nope', hand: 'backhand' })).toMatchObject([
      { path: 'discId' },
    ]);
    expect(faults).toEqual([]);
  }, 60_000);
});

describe('the putting log', () => {
  it('is added to, changed and emptied, each taken back', async () => {
    const { ask, refused } = openTestBackend();
    const { playerId } = await addTinyRound({ ask });
    const rows = async () => (await ask('getPutting', { playerId })).rows;
    const before = await rows();
    const putts = { distance_m: 5, attempts: 10, makes: 7, date: '2026-06-01' };
    await ask('addPutts', { playerId, putts });
    expect((await rows()).at(-1)).toEqual(putts);
    const place = before.length;
    const { undo } = await ask('updatePutts', { playerId, place, was: putts, to: { ...putts, makes: 8 } });
    expect((await rows())[place]).toMatchObject({ makes: 8 });
    expect(await refused('removePutts', { playerId, place, was: putts })).toMatchObject([{ path: 'place' }]);
    await ask('undo', { changeId: undo.changeId });
    await ask('removePutts', { playerId, place, was: putts });
    expect(await rows()).toEqual(before);
    expect(await refused('addPutts', { playerId, putts: { ...putts, makes: 11 } })).toEqual([
      { path: 'putts.makes', message: expect.stringContaining('more than the 10 attempts') },
    ]);
    expect(
      await refused('updatePutts', { playerId, place: 0, was: before[0]!, to: { ...putts, attempts: 1.5 } }),
    ).toEqual(expect.arrayContaining([{ path: 'to.attempts', message: 'must be a whole number' }]));
  });
});
