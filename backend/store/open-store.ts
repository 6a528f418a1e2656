import { accessSync, constants, existsSync, mkdirSync, readdirSync, renameSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import type { Result } from '../../core/units/result.ts';
import { allTables, type ChangeLog, changeLog, type Tables } from './changes.ts';
import { migrate, newestOf, type Step, versionOf } from './migrate.ts';
import { type PlansTable, plansTable } from './plans-table.ts';
import { type ReviewsTable, reviewsTable } from './reviews-table.ts';
import { type SettingsTable, settingsTable } from './settings-table.ts';
import { ALL_STEPS } from './steps/all-steps.ts';
import { type Summaries, summaries } from './summaries.ts';

export const LIBRARY_FILE = 'library.sqlite';
/** Another window of the app that is just closing lets go within this time. */
const WAIT_FOR_LOCK_ms = 2000;
const KEPT_BACKUPS = 5;
/** A library that no step has changed for long is copied all the same, against a damaged disk. */
const BACKUP_AFTER_ms = 7 * 24 * 3600 * 1000;

export type Store = Readonly<{
  tables: Tables;
  plans: PlansTable;
  settings: SettingsTable;
  summaries: Readonly<{ courses: Summaries; players: Summaries; rounds: Summaries }>;
  reviews: ReviewsTable;
  changes: ChangeLog;
  /** What the user must hear: a damaged library was set aside, a backup was made. */
  notes: readonly string[];
  transaction<T>(work: () => T): T;
  close(): void;
}>;

export type StoreOptions = Readonly<{ now_ms?: () => number; steps?: readonly Step[] }>;

/**
 * Opens the library in a folder, making it when there is none. One process at a time: SQLite's own lock says so, and a
 * killed process lets go of it.
 * @returns the store, or one problem with path `library`: in use, newer than this app, folder not writable
 */
export function openStore(folder: string, options: StoreOptions = {}): Result<Store> {
  const { now_ms = Date.now, steps = ALL_STEPS } = options;
  const file = join(folder, LIBRARY_FILE);
  try {
    mkdirSync(folder, { recursive: true });
    // SQLite would say "disk I/O error".
    for (const path of [folder, file]) if (existsSync(path)) accessSync(path, constants.W_OK);
    const notes: string[] = [];
    let opened = openSound(file, steps);
    if (opened === 'damaged') {
      notes.push(setAside(folder, now_ms()));
      opened = openSound(file, steps);
    }
    if (opened === 'damaged') return refused(`${file} can be neither read nor set aside: free the disk or the folder`);
    if ('newer' in opened)
      return refused(
        `${file} was written by a newer version of the app (${opened.newer}, this one knows ${newestOf(steps)}): install the newer version. Nothing was changed`,
      );
    const { db } = opened;
    try {
      const before = versionOf(db);
      migrate(db, steps, version => {
        const file = backUp(db, folder, version, now_ms());
        notes.push(`The library was brought up to this version of the app; the old one is kept as ${file}.`);
      });
      const isDue = backupsIn(folder, now_ms()).every(name => !isWithinWeek(name, now_ms()));
      if (before > 0 && isDue) backUp(db, folder, versionOf(db), now_ms());
      return { ok: true, value: storeOf(db, notes, now_ms) };
    } catch (error) {
      db.close();
      throw error;
    }
  } catch (error) {
    return refused(inWords(file, error));
  }
}

function storeOf(db: Database.Database, notes: readonly string[], now_ms: () => number): Store {
  const tables = allTables(db);
  return {
    tables,
    plans: plansTable(db),
    settings: settingsTable(db),
    summaries: { courses: summaries(db, 'course'), players: summaries(db, 'player'), rounds: summaries(db, 'round') },
    reviews: reviewsTable(db),
    changes: changeLog(db, tables, now_ms),
    notes,
    transaction: work => db.transaction(work).immediate(),
    close: () => {
      db.close();
    },
  };
}

type Opened = Readonly<{ db: Database.Database }> | Readonly<{ newer: number }> | 'damaged';

/** Opens and looks the whole file over; a library is some megabytes. Changes nothing in a file it refuses. */
function openSound(file: string, steps: readonly Step[]): Opened {
  const db = new Database(file, { timeout: WAIT_FOR_LOCK_ms });
  try {
    db.pragma('locking_mode = EXCLUSIVE');
    const version = versionOf(db);
    if (version > newestOf(steps)) {
      db.close();
      return { newer: version };
    }
    db.pragma('journal_mode = WAL');
    // FULL: what was confirmed is on the disk, also when the power goes.
    db.pragma('synchronous = FULL');
    db.pragma('foreign_keys = ON');
    // The exclusive lock is taken by the first write; an empty transaction is one.
    db.exec('BEGIN IMMEDIATE; COMMIT');
    const check = db.pragma('integrity_check(1)', { simple: true });
    if (check === 'ok') return { db };
    db.close();
    return 'damaged';
  } catch (error) {
    db.close();
    if (DAMAGE.has((error as { code?: string }).code ?? '')) return 'damaged';
    throw error;
  }
}

const DAMAGE = new Set(['SQLITE_CORRUPT', 'SQLITE_NOTADB', 'SQLITE_CORRUPT_INDEX', 'SQLITE_CORRUPT_SEQUENCE']);

function setAside(folder: string, at_ms: number): string {
  const name = freeName(folder, `library.damaged-${stamp(at_ms)}`);
  for (const end of ['-wal', '-shm', '']) {
    if (existsSync(join(folder, LIBRARY_FILE + end)))
      renameSync(join(folder, LIBRARY_FILE + end), join(folder, name + end));
  }
  const backups = backupsIn(folder, at_ms);
  const last = backups.at(-1);
  return `The library was damaged. It was set aside as ${join(folder, name)} and a new one begun${last === undefined ? '' : `; the last backup is ${join(folder, last)}`}.`;
}

/** @returns the copy's place */
function backUp(db: Database.Database, folder: string, version: number, at_ms: number): string {
  const file = join(folder, backupName(at_ms, version));
  // VACUUM INTO refuses to write over a file; one of the same millisecond is from a start that was killed half way.
  rmSync(file, { force: true });
  db.prepare('VACUUM INTO ?').run(file);
  for (const old of backupsIn(folder, at_ms).slice(0, -KEPT_BACKUPS)) rmSync(join(folder, old), { force: true });
  return file;
}

const backupName = (at_ms: number, version: number) => `library.backup-${stamp(at_ms)}-v${version}.sqlite`;

/** Oldest first. One from after now was made while the clock was wrong: it goes first, and holds nothing back. */
function backupsIn(folder: string, now_ms: number): string[] {
  const end = backupName(now_ms, Number.MAX_SAFE_INTEGER);
  const names = readdirSync(folder)
    .filter(name => /^library\.backup-.*\.sqlite$/.test(name))
    .sort();
  return [...names.filter(name => name > end), ...names.filter(name => name <= end)];
}

function isWithinWeek(name: string, now_ms: number): boolean {
  return name >= backupName(now_ms - BACKUP_AFTER_ms, 0) && name <= backupName(now_ms, Number.MAX_SAFE_INTEGER);
}

/** A damaged library is never written over, not even by another of the same moment. */
function freeName(folder: string, stem: string): string {
  for (let k = 1; ; k++) {
    const name = `${stem}${k === 1 ? '' : `-${k}`}.sqlite`;
    if (!existsSync(join(folder, name))) return name;
  }
}

/** Sorts by time and suits every file system: 20260501-101500-123. */
function stamp(at_ms: number): string {
  return new Date(at_ms).toISOString().replace(/[-:Z]/g, '').replace('T', '-').replace('.', '-');
}

function refused(message: string): Result<never> {
  return { ok: false, problems: [{ path: 'library', message }] };
}

function inWords(file: string, error: unknown): string {
  const { code = '', message = String(error) } = error as { code?: string; message?: string };
  if (code.startsWith('SQLITE_BUSY') || code === 'SQLITE_LOCKED')
    return `${file} is in use: another window of the app has it open. Close that one first`;
  if (code === 'SQLITE_FULL' || code === 'ENOSPC') return `${file} cannot be written: the disk is full`;
  if (['SQLITE_CANTOPEN', 'SQLITE_READONLY', 'EACCES', 'EPERM', 'EROFS', 'ENOTDIR', 'EEXIST'].includes(code))
    return `${file} cannot be opened for writing (${code}): check the folder and its permissions`;
  return `${file} cannot be opened: ${message}`;
}
