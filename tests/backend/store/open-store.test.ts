import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { newestOf, type Step } from '../../../backend/store/migrate.ts';
import { LIBRARY_FILE, openStore } from '../../../backend/store/open-store.ts';
import { ALL_STEPS } from '../../../backend/store/steps/all-steps.ts';
import { taken } from '../taken.ts';
import { temporaryFolder } from '../temporary-folder.ts';

const note = { courseId: 'c', layout: '', ref: '1', text: 'mind the stream' };
const course = { courseId: 'c', name: 'Short Loop', fileName: 'short.geojson', sample: 0, addedAt_ms: 5 } as const;
const NOW = Date.UTC(2026, 4, 1, 10, 15, 0, 123);

function written(folder: string): void {
  const store = taken(openStore(folder));
  store.transaction(() => {
    store.tables.courses.put(course);
    store.tables.notes.put(note);
  });
  store.close();
}
const files = (folder: string, pattern: RegExp) => readdirSync(folder).filter(name => pattern.test(name));

describe('openStore', () => {
  it('keeps what was written, over a restart', () => {
    const folder = temporaryFolder();
    written(folder);
    const store = taken(openStore(folder));
    expect(store.tables.courses.where()).toEqual([course]);
    expect(store.tables.notes.get(note)).toEqual(note);
    expect(store.notes).toEqual([]);
    store.close();
  });

  it('makes a backup with the old rows before a step, and only then changes the file', () => {
    const folder = temporaryFolder();
    written(folder);
    const nextStep: Step = {
      version: newestOf(ALL_STEPS) + 10,
      up: db => db.exec("UPDATE notes SET text = 'changed by the step'"),
    };
    const store = taken(openStore(folder, { steps: [...ALL_STEPS, nextStep], now_ms: () => NOW }));
    expect(store.tables.notes.get(note)?.text).toBe('changed by the step');
    const [backup] = files(folder, /backup/);
    expect(backup).toBe(`library.backup-20260501-101500-123-v${newestOf(ALL_STEPS)}.sqlite`);
    expect(store.notes).toEqual([expect.stringContaining(backup!)]);
    store.close();
    const old = new Database(join(folder, backup!), { readonly: true });
    expect(old.pragma('user_version', { simple: true })).toBe(newestOf(ALL_STEPS));
    expect(old.prepare('SELECT text FROM notes').pluck().all()).toEqual([note.text]);
    old.close();
  });

  it('is copied when the last copy is older than a week, and the last five copies are kept', () => {
    const folder = temporaryFolder();
    written(folder);
    const day_ms = 24 * 3600 * 1000;
    for (let day = 0; day < 60; day++) taken(openStore(folder, { now_ms: () => NOW + day * day_ms })).close();
    const dates = files(folder, /backup/).map(name =>
      name.slice('library.backup-'.length, -`-101500-123-v${newestOf(ALL_STEPS)}.sqlite`.length),
    );
    // 1 May and every eighth day after it, since a copy must be older than a week; the last five, by the calendar.
    expect(dates).toEqual(['20260525', '20260602', '20260610', '20260618', '20260626']);
    const old = new Database(join(folder, files(folder, /backup/).at(-1)!), { readonly: true });
    expect(old.prepare('SELECT text FROM notes').pluck().all()).toEqual([note.text]);
    old.close();
  });

  it('leaves the file at the step before, when a step fails half way', () => {
    const folder = temporaryFolder();
    written(folder);
    const broken: Step = {
      version: newestOf(ALL_STEPS) + 10,
      up: db => {
        db.exec('DELETE FROM notes');
        throw new Error('half way');
      },
    };
    expect(openStore(folder, { steps: [...ALL_STEPS, broken] })).toMatchObject({
      ok: false,
      problems: [{ path: 'library', message: expect.stringContaining('half way') }],
    });
    const store = taken(openStore(folder));
    expect(store.tables.notes.get(note)).toEqual(note);
    store.close();
  });

  it('refuses a library of a newer version and does not touch it', () => {
    const folder = temporaryFolder();
    written(folder);
    const db = new Database(join(folder, LIBRARY_FILE));
    db.pragma('user_version = 990');
    db.close();
    const before = readFileSync(join(folder, LIBRARY_FILE));
    expect(openStore(folder)).toEqual({
      ok: false,
      problems: [
        {
          path: 'library',
          message: expect.stringMatching(
            new RegExp(`newer version of the app \\(990, this one knows ${newestOf(ALL_STEPS)}\\)`),
          ),
        },
      ],
    });
    expect(readFileSync(join(folder, LIBRARY_FILE)).equals(before)).toBe(true);
    expect(files(folder, /damaged|backup/)).toEqual([]);
  });

  it.each([
    {
      name: 'no database at all',
      spoil: () => Buffer.from('this was a shopping list, and a long one at that'.repeat(99)),
    },
    { name: 'a page overwritten', spoil: (whole: Buffer) => Buffer.from(whole).fill(0xaa, 4096, 12288) },
    { name: 'cut off in the middle', spoil: (whole: Buffer) => whole.subarray(0, 9000) },
  ])('sets a damaged library aside, whole, and begins a new one: $name', ({ spoil }) => {
    const folder = temporaryFolder();
    written(folder);
    const spoiled = spoil(readFileSync(join(folder, LIBRARY_FILE)));
    writeFileSync(join(folder, LIBRARY_FILE), spoiled);
    const store = taken(openStore(folder, { now_ms: () => NOW }));
    expect(store.tables.courses.where()).toEqual([]);
    const name = 'library.damaged-20260501-101500-123.sqlite';
    expect(store.notes).toEqual([expect.stringContaining(name)]);
    expect(readFileSync(join(folder, name)).equals(spoiled)).toBe(true);
    store.close();
  });

  it('lets one process in at a time, and says so', () => {
    const folder = temporaryFolder();
    const store = taken(openStore(folder));
    expect(openStore(folder)).toMatchObject({
      ok: false,
      problems: [{ path: 'library', message: expect.stringContaining('in use') }],
    });
    store.close();
    taken(openStore(folder)).close();
  });

  it('says when the folder cannot be one', () => {
    const folder = temporaryFolder();
    writeFileSync(join(folder, 'file'), '');
    expect(openStore(join(folder, 'file'))).toMatchObject({ ok: false, problems: [{ path: 'library' }] });
  });
});
