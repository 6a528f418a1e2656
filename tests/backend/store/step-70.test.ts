import Database from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { changeLog } from '../../../backend/store/changes.ts';
import { migrate } from '../../../backend/store/migrate.ts';
import { rowTable } from '../../../backend/store/row-table.ts';
import { ALL_STEPS } from '../../../backend/store/steps/all-steps.ts';
import { TABLE_NAMES } from '../../../backend/store/tables.ts';
import { taken } from '../taken.ts';

describe('pins and notes of before layouts had their own', () => {
  it('belong to the course as mapped, and what was done to them can still be taken back', () => {
    const db = new Database(':memory:');
    db.pragma('foreign_keys = ON');
    migrate(
      db,
      ALL_STEPS.filter(({ version }) => version < 70),
      () => {},
    );
    db.exec(`
      INSERT INTO courses (courseId, name, fileName, sample, addedAt_ms) VALUES ('c', 'C', 'c.geojson', 0, 0);
      INSERT INTO players (playerId, file, sample, addedAt_ms) VALUES ('p', '{}', 0, 0);
      INSERT INTO pins (courseId, playerId, ref, shot, title) VALUES ('c', 'p', '1', '{}', 'flat');
      INSERT INTO notes (courseId, ref, text) VALUES ('c', '2', 'mind the stream');
    `);
    const before = { courseId: 'c', ref: '2', text: 'old' };
    const edits = [
      { table: 'notes', before, after: { ...before, text: 'mind the stream' } },
      { table: 'pins', before: null, after: { courseId: 'c', playerId: 'p', ref: '1', shot: '{}', title: 'flat' } },
    ];
    db.prepare('INSERT INTO changes (changeId, at_ms, what, edits) VALUES (?, 0, ?, ?)').run(
      'x',
      'Note',
      JSON.stringify(edits),
    );
    migrate(db, ALL_STEPS, () => {});
    const tables = Object.fromEntries(TABLE_NAMES.map(name => [name, rowTable(db, name)])) as never;
    const pins = rowTable(db, 'pins');
    const notes = rowTable(db, 'notes');
    expect(pins.where()).toEqual([{ courseId: 'c', playerId: 'p', layout: '', ref: '1', shot: '{}', title: 'flat' }]);
    expect(notes.where()).toEqual([{ courseId: 'c', layout: '', ref: '2', text: 'mind the stream' }]);
    taken(changeLog(db, tables, () => 0).undo('x'));
    expect([pins.where().length, notes.where()[0]?.text]).toEqual([0, 'old']);
    // one hole of two layouts has two notes
    notes.put({ courseId: 'c', layout: 'Long', ref: '2', text: 'another basket' });
    expect(notes.where({ courseId: 'c' })).toHaveLength(2);
  });
});
