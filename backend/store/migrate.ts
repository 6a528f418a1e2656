import type { Database } from 'better-sqlite3';

export type Step = Readonly<{ version: number; up: (db: Database) => void }>;

export const versionOf = (db: Database): number => db.pragma('user_version', { simple: true }) as number;
export const newestOf = (steps: readonly Step[]): number => steps.at(-1)?.version ?? 0;

/**
 * Brings the tables up to the newest step, each in one transaction with its version.
 * @param backUp - called before each step, with the version the file still has; not for a new file
 * @throws {RangeError} when the file is newer than these steps
 */
export function migrate(db: Database, steps: readonly Step[], backUp: (version: number) => void): void {
  const current = versionOf(db);
  const newest = newestOf(steps);
  if (current > newest) throw new RangeError(`version ${current} is newer than ${newest}`);
  for (const { version, up } of steps) {
    if (version <= current) continue;
    // A new file has nothing to keep, however many steps it takes.
    if (current > 0) backUp(versionOf(db));
    db.transaction(() => {
      up(db);
      db.pragma(`user_version = ${version}`);
    }).immediate();
  }
}
