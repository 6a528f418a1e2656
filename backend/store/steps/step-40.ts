import type { Step } from '../migrate.ts';

/** Maps being drawn. One may be of a course that is not there yet, so nothing points at `courses`. */
export const step40: Step = {
  version: 40,
  up: db =>
    db.exec(`
      CREATE TABLE courseDrafts (
        courseId TEXT PRIMARY KEY,
        name TEXT NOT NULL CHECK (name <> ''),
        text TEXT NOT NULL CHECK (json_valid(text)),
        changedAt_ms INTEGER NOT NULL CHECK (changedAt_ms >= 0)
      ) STRICT;
    `),
};
