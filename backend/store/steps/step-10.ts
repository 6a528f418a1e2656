import type { Step } from '../migrate.ts';

/**
 * Times are Unix milliseconds. `courseFiles` stands apart from `courses` so that renaming does not copy a whole file, and
 * `changes` holds the rows before and after each change the user can take back.
 */
export const step10: Step = {
  version: 10,
  up: db =>
    db.exec(`
      CREATE TABLE courses (
        courseId TEXT PRIMARY KEY,
        name TEXT NOT NULL CHECK (name <> ''),
        fileName TEXT NOT NULL,
        sample INTEGER NOT NULL CHECK (sample IN (0, 1)),
        addedAt_ms INTEGER NOT NULL CHECK (addedAt_ms >= 0)
      ) STRICT;
      CREATE TABLE courseFiles (
        courseId TEXT PRIMARY KEY REFERENCES courses (courseId) DEFERRABLE INITIALLY DEFERRED,
        text TEXT NOT NULL
      ) STRICT;
      CREATE TABLE players (
        playerId TEXT PRIMARY KEY,
        file TEXT NOT NULL CHECK (json_valid(file)),
        sample INTEGER NOT NULL CHECK (sample IN (0, 1)),
        addedAt_ms INTEGER NOT NULL CHECK (addedAt_ms >= 0)
      ) STRICT;
      CREATE TABLE pins (
        courseId TEXT NOT NULL REFERENCES courses (courseId) DEFERRABLE INITIALLY DEFERRED,
        playerId TEXT NOT NULL REFERENCES players (playerId) DEFERRABLE INITIALLY DEFERRED,
        ref TEXT NOT NULL,
        shot TEXT NOT NULL CHECK (json_valid(shot)),
        title TEXT NOT NULL,
        PRIMARY KEY (courseId, playerId, ref)
      ) STRICT, WITHOUT ROWID;
      CREATE INDEX pinsByPlayer ON pins (playerId);
      CREATE TABLE notes (
        courseId TEXT NOT NULL REFERENCES courses (courseId) DEFERRABLE INITIALLY DEFERRED,
        ref TEXT NOT NULL,
        text TEXT NOT NULL CHECK (text <> ''),
        PRIMARY KEY (courseId, ref)
      ) STRICT, WITHOUT ROWID;
      CREATE TABLE plans (
        planId TEXT PRIMARY KEY,
        courseId TEXT NOT NULL REFERENCES courses (courseId) ON DELETE CASCADE,
        playerId TEXT NOT NULL REFERENCES players (playerId) ON DELETE CASCADE,
        planKey TEXT NOT NULL,
        remembered INTEGER NOT NULL CHECK (remembered IN (0, 1)),
        madeAt_ms INTEGER NOT NULL CHECK (madeAt_ms >= 0),
        state TEXT NOT NULL CHECK (json_valid(state))
      ) STRICT;
      CREATE INDEX plansByKey ON plans (planKey);
      CREATE INDEX plansOfPair ON plans (courseId, playerId, madeAt_ms);
      CREATE INDEX plansByPlayer ON plans (playerId);
      CREATE TABLE settings (
        one INTEGER PRIMARY KEY CHECK (one = 1),
        value TEXT NOT NULL CHECK (json_valid(value))
      ) STRICT;
      CREATE TABLE changes (
        number INTEGER PRIMARY KEY AUTOINCREMENT,
        changeId TEXT NOT NULL UNIQUE,
        at_ms INTEGER NOT NULL CHECK (at_ms >= 0),
        what TEXT NOT NULL,
        edits TEXT NOT NULL CHECK (json_valid(edits))
      ) STRICT;
    `),
};
