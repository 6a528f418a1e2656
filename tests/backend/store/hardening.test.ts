import { spawnSync } from 'node:child_process';
import { chmodSync, chownSync, existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import Database from 'better-sqlite3';
import { describe, expect, it, onTestFinished } from 'vitest';
import { openBackend } from '../../../backend/api/open-backend.ts';
import { newestOf, type Step } from '../../../backend/store/migrate.ts';
import { LIBRARY_FILE, openStore, type Store } from '../../../backend/store/open-store.ts';
import { ALL_STEPS } from '../../../backend/store/steps/all-steps.ts';
import { storeTrouble } from '../../../backend/store/store-trouble.ts';
import { taken } from '../taken.ts';
import { temporaryFolder } from '../temporary-folder.ts';

const PROJECT = resolve(import.meta.dirname, '../../..');
const courseRow = (k: number) =>
  ({ courseId: `c${k}`, name: `Course ${k}`, fileName: 'a.geojson', sample: 0, addedAt_ms: 1 }) as const;
const add = ({ changes }: Store, k: number, bytes = 10) =>
  changes.change(`Add ${k}`, editor => {
    editor.put('courses', courseRow(k));
    editor.put('courseFiles', { courseId: `c${k}`, text: 'x'.repeat(bytes) });
  });

describe('a full disk', () => {
  /** The disk ends after so many pages of 4 KiB, as far as this connection goes. */
  const ending = (pages: number): readonly Step[] => [
    ...ALL_STEPS,
    { version: newestOf(ALL_STEPS) + 10, up: db => void db.pragma(`max_page_count = ${pages}`) },
  ];

  it('refuses the change whole, keeps what was confirmed, and goes on when there is room again', () => {
    const folder = temporaryFolder();
    const store = taken(openStore(folder, { steps: ending(120) }));
    let kept = 0;
    let fault: unknown;
    try {
      for (; kept < 1000; kept++) add(store, kept, 20_000);
    } catch (error) {
      fault = error;
    }
    expect(kept).toBeGreaterThan(3);
    expect(fault).toMatchObject({ code: 'SQLITE_FULL' });
    expect(storeTrouble(fault)).toContain('the disk is full');
    expect(store.tables.courses.where()).toHaveLength(kept);
    expect(store.tables.courseFiles.where()).toHaveLength(kept);
    expect(store.changes.list()).toHaveLength(kept);
    store.close();
    const again = taken(openStore(folder, { steps: ending(100_000) }));
    expect(again.tables.courses.where()).toHaveLength(kept);
    add(again, kept, 20_000);
    expect(again.tables.courses.where()).toHaveLength(kept + 1);
    again.close();
  });

  it('says so when the library itself cannot be made', () => {
    const step: Step = {
      version: newestOf(ALL_STEPS) + 10,
      up: () => {
        throw Object.assign(new Error('database or disk is full'), { code: 'SQLITE_FULL' });
      },
    };
    expect(openStore(temporaryFolder(), { steps: [...ALL_STEPS, step] })).toMatchObject({
      ok: false,
      problems: [{ path: 'library', message: expect.stringContaining('the disk is full') }],
    });
  });
});

describe('a library that may not be written', () => {
  /** Another user of this machine, where the tests run as one that may write anything. */
  const OTHER = 65534;

  it.each([
    ['folder', 0o555, 0o444],
    ['file', 0o755, 0o444],
  ])('says so: read-only %s', (_, folderMode, fileMode) => {
    const folder = join(temporaryFolder(), 'library');
    mkdirSync(folder);
    const store = taken(openStore(folder));
    add(store, 1);
    store.close();
    const before = readFileSync(join(folder, LIBRARY_FILE));
    for (const path of ['..', '.', LIBRARY_FILE]) chmodSync(join(folder, path), 0o755);
    chmodSync(join(folder, LIBRARY_FILE), fileMode);
    chmodSync(folder, folderMode);
    const isRoot = process.getuid?.() === 0;
    if (isRoot) for (const path of [folder, join(folder, LIBRARY_FILE)]) chownSync(path, OTHER, OTHER);
    const script = `import { openStore } from ${JSON.stringify(join(PROJECT, 'backend/store/open-store.ts'))};
      const opened = openStore(${JSON.stringify(folder)});
      console.log(JSON.stringify(opened.ok ? 'opened' : opened.problems));`;
    const { stdout, stderr } = spawnSync(process.execPath, ['--input-type=module', '--eval', script], {
      encoding: 'utf8',
      ...(isRoot && { uid: OTHER, gid: OTHER }),
    });
    chmodSync(folder, 0o755);
    expect(stderr).not.toContain('Error');
    expect(JSON.parse(stdout)).toMatchObject([
      { path: 'library', message: expect.stringMatching(/cannot be opened for writing.*permissions/) },
    ]);
    expect(readFileSync(join(folder, LIBRARY_FILE)).equals(before)).toBe(true);
  });
});

describe('two at once', () => {
  it('another program that holds the library is waited for, then named; nothing is set aside', () => {
    const folder = temporaryFolder();
    const store = taken(openStore(folder));
    add(store, 1);
    store.close();
    const other = new Database(join(folder, LIBRARY_FILE));
    onTestFinished(() => void other.close());
    other.exec('BEGIN EXCLUSIVE');
    expect(openStore(folder)).toMatchObject({
      ok: false,
      problems: [{ path: 'library', message: expect.stringContaining('is in use') }],
    });
    expect(readdirSync(folder).filter(name => /damaged/.test(name))).toEqual([]);
    other.exec('ROLLBACK');
    other.close();
    const again = taken(openStore(folder));
    expect(again.tables.courses.where()).toHaveLength(1);
    again.close();
  });

  it('a second app on the same library is refused and leaves the first alone', async () => {
    const folder = temporaryFolder();
    const first = taken(openBackend({ folder }));
    onTestFinished(() => first.close());
    const second = openBackend({ folder });
    expect(second).toMatchObject({ ok: false, problems: [{ message: expect.stringContaining('in use') }] });
    expect((await first.call('listCourses', {})).ok).toBe(true);
  });
});

describe('a clock that jumps', () => {
  const NOW = Date.UTC(2026, 4, 1, 10, 15);
  const DAY_ms = 24 * 3600 * 1000;
  const backups = (folder: string) => readdirSync(folder).filter(name => /backup/.test(name));

  it('backwards: plans and changes keep the order they were made in', () => {
    let now_ms = NOW;
    const store = taken(openStore(temporaryFolder(), { now_ms: () => now_ms }));
    onTestFinished(() => store.close());
    add(store, 1);
    store.tables.players.put({ playerId: 'p', file: '{}', sample: 0, addedAt_ms: 1 });
    const plan = (planId: string) =>
      store.plans.put({
        planId,
        courseId: 'c1',
        playerId: 'p',
        planKey: 'k',
        remembered: 1,
        madeAt_ms: now_ms,
        state: '{}',
      });
    plan('first');
    now_ms = NOW - 400 * DAY_ms;
    plan('second');
    add(store, 2);
    expect(store.plans.remembered('c1', 'p')?.planId).toBe('second');
    expect(store.plans.byKey('k')?.planId).toBe('second');
    expect(store.changes.list().map(({ what }) => what)).toEqual(['Add 2', 'Add 1']);
    for (let k = 3; k < 20; k++) plan(`plan ${k}`);
    expect(store.plans.get('first')).toBeUndefined();
    expect(store.plans.get('plan 19')).toBeDefined();
  });

  it('far ahead and back: backups go on, and the ones with right dates outlive the wrong one', () => {
    const folder = temporaryFolder();
    const at = (now_ms: number) => taken(openStore(folder, { now_ms: () => now_ms })).close();
    at(NOW);
    for (let week = 0; week < 4; week++) at(NOW + week * 8 * DAY_ms);
    at(NOW + 70 * 365 * DAY_ms);
    expect(backups(folder)).toHaveLength(5);
    for (let week = 4; week < 6; week++) at(NOW + week * 8 * DAY_ms);
    // Five are kept: the one of 2096 went first, then the oldest.
    expect(backups(folder).map(name => name.slice('library.backup-'.length, 'library.backup-2026'.length))).toEqual(
      Array(5).fill('2026'),
    );
    expect(backups(folder).at(-1)).toContain('20260610');
  });

  it('to 1970: the copy made then does not push the real ones out', () => {
    const folder = temporaryFolder();
    const at = (now_ms: number) => taken(openStore(folder, { now_ms: () => now_ms })).close();
    at(NOW);
    for (let week = 0; week < 5; week++) at(NOW + week * 8 * DAY_ms);
    for (let start = 0; start < 6; start++) at(start * 1000);
    const names = backups(folder);
    expect(names.filter(name => name.includes('-2026'))).toHaveLength(4);
    expect(names.filter(name => name.includes('-1970'))).toHaveLength(1);
  });

  it('standing still: a second damaged library does not write over the first', () => {
    const folder = temporaryFolder();
    for (const what of ['first', 'second']) {
      writeFileSync(join(folder, LIBRARY_FILE), `${what} ${'no database at all '.repeat(500)}`);
      taken(openStore(folder, { now_ms: () => NOW })).close();
    }
    const damaged = readdirSync(folder)
      .filter(name => /damaged/.test(name))
      .sort();
    expect(damaged.map(name => readFileSync(join(folder, name), 'utf8').split(' ')[0]).sort()).toEqual([
      'first',
      'second',
    ]);
    expect(existsSync(join(folder, LIBRARY_FILE))).toBe(true);
  });
});

describe('summaries', () => {
  it('are forgotten by the database itself when what they sum up changes', () => {
    const store = taken(openStore(temporaryFolder()));
    onTestFinished(() => store.close());
    const { courses, players } = store.summaries;
    const known = () => [...courses.all('1').keys()];
    add(store, 1);
    const put = () => courses.put('c1', '1', { holes: 18 });
    put();
    expect(courses.all('1').get('c1')).toEqual({ holes: 18 });
    expect(courses.all('2').size).toBe(0);
    store.changes.change('Edit', editor => editor.put('courseFiles', { courseId: 'c1', text: 'other' }));
    expect(known()).toEqual([]);
    put();
    store.changes.change('Rename', editor => editor.put('courses', { ...courseRow(1), name: 'New name' }));
    expect(known()).toEqual(['c1']);
    const ground = store.changes.change('Ground', editor => {
      editor.put('grounds', { courseId: 'c1', digest: 'd' });
      editor.put('groundFiles', { courseId: 'c1', text: '{}' });
    });
    expect(known()).toEqual([]);
    put();
    taken(store.changes.undo(ground.changeId));
    expect(known()).toEqual([]);
    courses.put('none', '1', {});
    expect(known()).toEqual([]);
    store.tables.players.put({ playerId: 'p', file: '{}', sample: 0, addedAt_ms: 1 });
    players.put('p', '1', { name: 'P' });
    store.tables.players.put({ playerId: 'p', file: '{"a":1}', sample: 0, addedAt_ms: 1 });
    expect(players.all('1').size).toBe(0);
    expect(players.ids()).toEqual(['p']);
  });
});

it('large changes are forgotten sooner than small ones', () => {
  const store = taken(openStore(temporaryFolder()));
  onTestFinished(() => store.close());
  add(store, 0);
  for (let k = 1; k <= 4; k++) add(store, k, 30_000_000);
  // 100 MB are kept: three of 30 MB.
  expect(store.changes.list().map(({ what }) => what)).toEqual(['Add 4', 'Add 3', 'Add 2']);
});
