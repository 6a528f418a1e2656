import type { Database } from 'better-sqlite3';
import type { Step } from '../migrate.ts';

/** Pins and notes belong to a layout: "hole 3" of another one has other tees and baskets. Those there are belong to the course as mapped. */
export const step70: Step = {
  version: 70,
  up: db => {
    db.exec(`
      CREATE TABLE pinsByLayout (
        courseId TEXT NOT NULL REFERENCES courses (courseId) DEFERRABLE INITIALLY DEFERRED,
        playerId TEXT NOT NULL REFERENCES players (playerId) DEFERRABLE INITIALLY DEFERRED,
        layout TEXT NOT NULL,
        ref TEXT NOT NULL,
        shot TEXT NOT NULL CHECK (json_valid(shot)),
        title TEXT NOT NULL,
        PRIMARY KEY (courseId, playerId, layout, ref)
      ) STRICT, WITHOUT ROWID;
      INSERT INTO pinsByLayout SELECT courseId, playerId, '', ref, shot, title FROM pins;
      DROP TABLE pins;
      ALTER TABLE pinsByLayout RENAME TO pins;
      CREATE INDEX pinsByPlayer ON pins (playerId);

      CREATE TABLE notesByLayout (
        courseId TEXT NOT NULL REFERENCES courses (courseId) DEFERRABLE INITIALLY DEFERRED,
        layout TEXT NOT NULL,
        ref TEXT NOT NULL,
        text TEXT NOT NULL CHECK (text <> ''),
        PRIMARY KEY (courseId, layout, ref)
      ) STRICT, WITHOUT ROWID;
      INSERT INTO notesByLayout SELECT courseId, '', ref, text FROM notes;
      DROP TABLE notes;
      ALTER TABLE notesByLayout RENAME TO notes;
    `);
    bringUpChanges(db);
  },
};

type Edit = { table: string; before: Record<string, unknown> | null; after: Record<string, unknown> | null };

/** What can still be taken back holds rows as they were. */
function bringUpChanges(db: Database): void {
  const update = db.prepare('UPDATE changes SET edits = ? WHERE number = ?');
  const rows = db
    .prepare(`SELECT number, edits FROM changes WHERE instr(edits, '"pins"') OR instr(edits, '"notes"')`)
    .all() as { number: number; edits: string }[];
  for (const { number, edits } of rows) {
    const list = (JSON.parse(edits) as Edit[]).map(edit =>
      edit.table === 'pins' || edit.table === 'notes'
        ? { ...edit, before: ofMapped(edit.before), after: ofMapped(edit.after) }
        : edit,
    );
    update.run(JSON.stringify(list), number);
  }
}

const ofMapped = (row: Edit['before']): Edit['before'] => (row === null ? null : { ...row, layout: '' });
