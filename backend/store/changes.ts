import { randomUUID } from 'node:crypto';
import type { Database } from 'better-sqlite3';
import { z } from 'zod';
import type { Result } from '../../core/units/result.ts';
import { type RowTable, rowTable } from './row-table.ts';
import { type KeyOf, type RowOf, TABLE_NAMES, TABLES, type TableName } from './tables.ts';

/** As many can be taken back; older ones are forgotten, sooner when they carry much (elevation models). */
const KEPT_CHANGES = 200;
const KEPT_BYTES = 100_000_000;

type AnyRow = Readonly<Record<string, string | number>>;
const EditSchema = z.strictObject({
  table: z.enum(TABLE_NAMES),
  before: z.record(z.string(), z.union([z.string(), z.number()])).nullable(),
  after: z.record(z.string(), z.union([z.string(), z.number()])).nullable(),
});
type Edit = z.output<typeof EditSchema>;

type Change = Readonly<{ changeId: string; what: string }>;
/** Changes rows inside one `change`, remembering what stood there. */
export type Editor = Readonly<{
  put<T extends TableName>(table: T, row: RowOf<T>): void;
  remove<T extends TableName>(table: T, key: KeyOf<T>): void;
}>;
export type Tables = { readonly [T in TableName]: RowTable<T> };

/** All changes a user can take back go through here; each is one transaction with its own record. */
export type ChangeLog = Readonly<{
  /** @param what - e.g. `Delete Old Orchard`, for the undo entry */
  change(what: string, edit: (editor: Editor) => void): Change;
  /** Puts back what stood before. @returns the change that does it again */
  undo(changeId: string): Result<Readonly<{ change: Change; tables: readonly TableName[] }>>;
  list(): readonly Readonly<{ changeId: string; what: string; at_ms: number }>[];
}>;

const REDO = 'Redo: ';
const UNDO = 'Undo: ';

export function changeLog(db: Database, tables: Tables, now_ms: () => number): ChangeLog {
  const insert = db.prepare('INSERT INTO changes (changeId, at_ms, what, edits) VALUES (?, ?, ?, ?)');
  const forgetOld = db.prepare('DELETE FROM changes WHERE number <= (SELECT max(number) FROM changes) - ?');
  const forgetLarge = db.prepare(
    `DELETE FROM changes WHERE number IN (
       SELECT number FROM (SELECT number, sum(octet_length(edits)) OVER (ORDER BY number DESC) AS upTo FROM changes)
       WHERE upTo > ? AND number < (SELECT max(number) FROM changes))`,
  );
  const find = db.prepare('SELECT what, edits FROM changes WHERE changeId = ?');
  const all = db.prepare('SELECT changeId, what, at_ms FROM changes ORDER BY number DESC');

  function record(what: string, edits: readonly Edit[]): Change {
    const changeId = randomUUID();
    insert.run(changeId, now_ms(), what, JSON.stringify(edits));
    forgetOld.run(KEPT_CHANGES);
    forgetLarge.run(KEPT_BYTES);
    return { changeId, what };
  }

  function stands(table: TableName, key: AnyRow): AnyRow | null {
    const rows = tables[table] as unknown as { get(key: AnyRow): AnyRow | undefined };
    return rows.get(keyOf(table, key)) ?? null;
  }

  function write(table: TableName, from: AnyRow | null, to: AnyRow | null): void {
    const rows = tables[table] as unknown as { put(row: AnyRow): void; remove(key: AnyRow): void };
    if (to !== null) rows.put(to);
    else if (from !== null) rows.remove(keyOf(table, from));
  }

  const change = db.transaction((what: string, edit: (editor: Editor) => void): Change => {
    const edits: Edit[] = [];
    const apply = (table: TableName, key: AnyRow, after: AnyRow | null) => {
      const before = stands(table, key);
      if (before === null && after === null) return;
      write(table, before, after);
      edits.push({ table, before, after });
    };
    edit({
      put: (table, row) => apply(table, row, row),
      remove: (table, key) => apply(table, key, null),
    });
    return record(what, edits);
  });

  function takeBack(changeId: string): { change: Change; tables: TableName[] } {
    const found = find.get(changeId) as { what: string; edits: string } | undefined;
    if (found === undefined)
      throw new Refused(`there is no such change any more: the last ${KEPT_CHANGES} can be taken back`);
    const edits = z.array(EditSchema).parse(JSON.parse(found.edits));
    // Backwards: one change may have written a row twice.
    const back = edits.toReversed().map(({ table, before, after }): Edit => ({ table, before: after, after: before }));
    for (const { table, before, after } of back) {
      if (!sameRow(stands(table, (before ?? after)!), before))
        throw new Refused(
          `"${found.what}" cannot be taken back: the same thing was changed again since. Take that back first`,
        );
      write(table, before, after);
    }
    const what = found.what.startsWith(UNDO)
      ? found.what.replace(UNDO, REDO)
      : `${UNDO}${found.what.replace(REDO, '')}`;
    return { change: record(what, back), tables: [...new Set(back.map(({ table }) => table))] };
  }
  const undo = db.transaction(takeBack);

  return {
    change: (what, edit) => change.immediate(what, edit),
    undo: changeId => {
      try {
        return { ok: true, value: undo.immediate(changeId) };
      } catch (error) {
        if (error instanceof Refused) return refused(error.message);
        if ((error as { code?: string }).code !== 'SQLITE_CONSTRAINT_FOREIGNKEY') throw error;
        return refused('its course or player is gone by now: take that back first');
      }
    },
    list: () => all.all() as { changeId: string; what: string; at_ms: number }[],
  };
}

/** Rolls the transaction back; never leaves this file. */
class Refused extends Error {}

const refused = (message: string): Result<never> => ({ ok: false, problems: [{ path: 'changeId', message }] });

function keyOf(table: TableName, row: AnyRow): AnyRow {
  return Object.fromEntries(TABLES[table].key.map(column => [column, row[column]!]));
}

function sameRow(a: AnyRow | null, b: AnyRow | null): boolean {
  if (a === null || b === null) return a === b;
  const columns = Object.keys(a);
  return columns.length === Object.keys(b).length && columns.every(column => a[column] === b[column]);
}

export function allTables(db: Database): Tables {
  return {
    courses: rowTable(db, 'courses'),
    courseFiles: rowTable(db, 'courseFiles'),
    courseOrigins: rowTable(db, 'courseOrigins'),
    courseDrafts: rowTable(db, 'courseDrafts'),
    players: rowTable(db, 'players'),
    pins: rowTable(db, 'pins'),
    notes: rowTable(db, 'notes'),
    grounds: rowTable(db, 'grounds'),
    groundFiles: rowTable(db, 'groundFiles'),
    rounds: rowTable(db, 'rounds'),
  };
}
