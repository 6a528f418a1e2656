import type { Step } from '../migrate.ts';

/** The map as it last came in, kept of a course that was changed since: what an update compares with. */
export const step60: Step = {
  version: 60,
  up: db =>
    db.exec(`
      CREATE TABLE courseOrigins (
        courseId TEXT PRIMARY KEY REFERENCES courses (courseId) DEFERRABLE INITIALLY DEFERRED,
        text TEXT NOT NULL CHECK (json_valid(text))
      ) STRICT;
    `),
};
