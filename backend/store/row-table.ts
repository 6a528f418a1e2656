import type { Database } from 'better-sqlite3';
import type { z } from 'zod';
import { type KeyOf, type RowOf, TABLES, type TableName } from './tables.ts';

/** One table's statements, prepared once; rows are checked on the way out. */
export type RowTable<T extends TableName> = Readonly<{
  get(key: KeyOf<T>): RowOf<T> | undefined;
  /** Every row, or those whose columns have these values, in key order. */
  where(values?: Readonly<Partial<Record<keyof RowOf<T>, string>>>): RowOf<T>[];
  put(row: RowOf<T>): void;
  remove(key: KeyOf<T>): void;
}>;

export function rowTable<T extends TableName>(db: Database, name: T): RowTable<T> {
  const { key, row } = TABLES[name];
  const schema = row as unknown as z.ZodType<RowOf<T>> & { shape: Record<string, unknown> };
  const columns = Object.keys(schema.shape);
  const isKey = key.map(column => `${column} = @${column}`).join(' AND ');
  const kept = columns.filter(column => !(key as readonly string[]).includes(column));
  const get = db.prepare(`SELECT ${columns.join(', ')} FROM ${name} WHERE ${isKey}`);
  // An upsert, not a replacement: deleting the old row first would take its plans along.
  const put = db.prepare(
    `INSERT INTO ${name} (${columns.join(', ')}) VALUES (${columns.map(column => `@${column}`).join(', ')})
     ON CONFLICT (${key.join(', ')}) DO UPDATE SET ${kept.map(column => `${column} = @${column}`).join(', ')}`,
  );
  const remove = db.prepare(`DELETE FROM ${name} WHERE ${isKey}`);
  const queries = new Map<string, ReturnType<Database['prepare']>>();

  return {
    get: id => {
      const found = get.get(id);
      return found === undefined ? undefined : schema.parse(found);
    },
    where: values => {
      const given = (values ?? {}) as Readonly<Record<string, string>>;
      const names = Object.keys(given).filter(column => columns.includes(column));
      const condition =
        names.length === 0 ? '' : `WHERE ${names.map(column => `${column} = @${column}`).join(' AND ')}`;
      const sql = `SELECT ${columns.join(', ')} FROM ${name} ${condition} ORDER BY ${key.join(', ')}`;
      const query = queries.get(sql) ?? db.prepare(sql);
      queries.set(sql, query);
      return query.all(given).map(found => schema.parse(found));
    },
    put: row => {
      put.run(row);
    },
    remove: id => {
      remove.run(id);
    },
  };
}
