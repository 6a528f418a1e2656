import { exportLibraryText, type LibraryRows, readLibraryText } from '../../library/library-file.ts';
import type { Editor, Tables } from '../../store/changes.ts';
import { TABLE_NAMES, type TableName } from '../../store/tables.ts';
import { type AppContext, sayChanged } from '../app-context.ts';
import type { library } from '../contract/library.ts';
import type { Handlers } from '../dispatch.ts';

export function libraryHandlers(app: AppContext): Pick<Handlers, keyof typeof library> {
  const { store } = app;
  const { tables, changes } = store;
  return {
    exportLibrary: () => {
      const date = new Date(app.now_ms()).toISOString().slice(0, 10);
      return { ok: true, value: { fileName: `roundwright-library-${date}.json`, text: exportLibraryText(store) } };
    },
    importLibrary: ({ text, how }) => {
      const rows = readLibraryText(text);
      if (!rows.ok) return rows;
      const added: Record<TableName, number> = { courses: 0, courseFiles: 0, players: 0, pins: 0, notes: 0 };
      const undo = changes.change(how === 'merge' ? 'Add a library file' : 'Replace the library', editor => {
        if (how === 'replace') removeAll(editor, tables);
        // Parents before what points at them is not needed: foreign keys are looked at when the change ends.
        for (const table of TABLE_NAMES) added[table] = addNew(editor, tables, rows.value, table);
      });
      sayChanged(app, TABLE_NAMES);
      const { courses, players, pins, notes } = added;
      return { ok: true, value: { undo, courses, players, pins, notes } };
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

function removeAll(editor: Editor, tables: Tables): void {
  for (const pin of tables.pins.where()) editor.remove('pins', pin);
  for (const note of tables.notes.where()) editor.remove('notes', note);
  for (const file of tables.courseFiles.where()) editor.remove('courseFiles', file);
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
