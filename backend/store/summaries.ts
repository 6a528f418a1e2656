import type { Database } from 'better-sqlite3';

/** Count up when what is summed up, or how, changes: older summaries are then made anew. */
export const SUMMARY_VERSION = '1';

/**
 * What a list says of each row, kept beside it so that a large library is not read again for it. Not part of undo: the database
 * itself forgets a summary when what it sums up changes.
 */
export type Summaries = Readonly<{
  /** Of all rows, summed up or not, without reading them. */
  ids(): readonly string[];
  /** All there are for this version, by id. */
  all(version: string): ReadonlyMap<string, unknown>;
  /** Does nothing when the row was deleted meanwhile. */
  put(id: string, version: string, summary: unknown): void;
}>;

export function summaries(db: Database, kind: 'course' | 'player' | 'round'): Summaries {
  const [table, id, parent] = [`${kind}Summaries`, `${kind}Id`, `${kind}s`];
  const ids = db.prepare(`SELECT ${id} FROM ${parent}`).pluck();
  const all = db.prepare(`SELECT ${id} AS id, summary FROM ${table} WHERE version = ?`);
  const put = db.prepare(
    `INSERT INTO ${table} (${id}, version, summary)
     SELECT @id, @version, @summary WHERE EXISTS (SELECT 1 FROM ${parent} WHERE ${id} = @id)
     ON CONFLICT (${id}) DO UPDATE SET version = @version, summary = @summary`,
  );
  return {
    ids: () => ids.all() as string[],
    all: version =>
      new Map(
        (all.all(version) as { id: string; summary: string }[]).map(row => [
          row.id,
          JSON.parse(row.summary) as unknown,
        ]),
      ),
    put: (id, version, summary) => {
      put.run({ id, version, summary: JSON.stringify(summary) });
    },
  };
}
