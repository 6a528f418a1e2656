import type { Database } from 'better-sqlite3';

/** One JSON value: what it holds is the API's business. */
export type SettingsTable = Readonly<{ get(): unknown; set(value: unknown): void }>;

export function settingsTable(db: Database): SettingsTable {
  const get = db.prepare('SELECT value FROM settings WHERE one = 1').pluck();
  const set = db.prepare(
    'INSERT INTO settings (one, value) VALUES (1, @value) ON CONFLICT (one) DO UPDATE SET value = @value',
  );
  return {
    get: () => {
      const text = get.get() as string | undefined;
      return text === undefined ? undefined : (JSON.parse(text) as unknown);
    },
    set: value => {
      set.run({ value: JSON.stringify(value) });
    },
  };
}
