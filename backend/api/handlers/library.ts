import type { Result } from '../../../core/units/result.ts';
import { removeGround } from '../../library/ground-book.ts';
import { exportLibraryText, type LibraryRows, readLibraryText } from '../../library/library-file.ts';
import type { Editor, Tables } from '../../store/changes.ts';
import { TABLE_NAMES, type TableName } from '../../store/tables.ts';
import { type AppContext, sayChanged } from '../app-context.ts';
import type { library } from '../contract/library.ts';
import { LONGEST_LIBRARY } from '../contract/values.ts';
import type { Handlers } from '../dispatch.ts';

export function libraryHandlers(app: AppContext): Pick<Handlers, keyof typeof library> {
  const { store } = app;
  const { tables, changes } = store;
  return {
    exportLibrary: () => {
      const date = new Date(app.now_ms()).toISOString().slice(0, 10);
      const text = exportLibraryText(store);
      if (text.length > LONGEST_LIBRARY) return tooLarge(text.length);
      return { ok: true, value: { fileName: `roundwright-library-${date}.json`, text } };
    },
    importLibrary: ({ text, how }) => {
      const rows = readLibraryText(text);
      if (!rows.ok) return rows;
      const added: Record<TableName, number> = {
        courses: 0,
        courseFiles: 0,
        courseOrigins: 0,
        courseDrafts: 0,
        grounds: 0,
        groundFiles: 0,
        players: 0,
        pins: 0,
        notes: 0,
        rounds: 0,
      };
      const undo = changes.change(how === 'merge' ? 'Add a library file' : 'Replace the library', editor => {
        if (how === 'replace') removeAll(editor, tables);
        // Parents before what points at them is not needed: foreign keys are looked at when the change ends.
        for (const table of TABLE_NAMES) added[table] = addNew(editor, tables, rows.value, table);
      });
      sayChanged(app, TABLE_NAMES);
      const { courses, players, pins, notes, rounds } = added;
      return { ok: true, value: { undo, courses, players, pins, notes, rounds } };
    },
    undo: ({ changeId }) => {
      const done = changes.undo(changeId);
      if (!done.ok) return done;
      sayChanged(app, done.value.tables);
      return { ok: true, value: { undo: done.value.change } };
    },
    listChanges: () => ({ ok: true, value: [...changes.list()] }),
    getStartNotes: () => ({ ok: true, value: { version: app.version, notes: [...store.notes] } }),
  };
}

/** A file that could not be read back is none. */
function tooLarge(length: number): Result<never> {
  const message = `is ${(length / 1e6).toFixed(0)} million characters with its terrain, and no more than ${LONGEST_LIBRARY / 1e6} million can be read back: share the courses with the largest terrain one by one and remove it from them first`;
  return { ok: false, problems: [{ path: 'library', message }] };
}

function removeAll(editor: Editor, tables: Tables): void {
  for (const pin of tables.pins.where()) editor.remove('pins', pin);
  for (const round of tables.rounds.where()) editor.remove('rounds', round);
  for (const note of tables.notes.where()) editor.remove('notes', note);
  for (const { courseId } of tables.grounds.where()) removeGround(editor, courseId);
  for (const origin of tables.courseOrigins.where()) editor.remove('courseOrigins', origin);
  for (const file of tables.courseFiles.where()) editor.remove('courseFiles', file);
  for (const draft of tables.courseDrafts.where()) editor.remove('courseDrafts', draft);
  for (const course of tables.courses.where()) editor.remove('courses', course);
  for (const player of tables.players.where()) editor.remove('players', player);
}

/** @returns how many were not there yet */
function addNew<T extends TableName>(editor: Editor, tables: Tables, rows: LibraryRows, table: T): number {
  const fresh = (rows[table] as readonly Parameters<Tables[T]['put']>[0][]).filter(
    row => (tables[table] as { get(key: unknown): unknown }).get(row) === undefined,
  );
  for (const row of fresh) editor.put(table, row as never);
  return fresh.length;
}
