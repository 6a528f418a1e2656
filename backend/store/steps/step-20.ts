import type { Step } from '../migrate.ts';

/** Rounds that were played, and what the review last made of each; a review can be made anew, so it goes with its round. */
export const step20: Step = {
  version: 20,
  up: db =>
    db.exec(`
      CREATE TABLE rounds (
        roundId TEXT PRIMARY KEY,
        courseId TEXT NOT NULL REFERENCES courses (courseId) DEFERRABLE INITIALLY DEFERRED,
        playerId TEXT NOT NULL REFERENCES players (playerId) DEFERRABLE INITIALLY DEFERRED,
        date TEXT NOT NULL CHECK (date GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
        file TEXT NOT NULL CHECK (json_valid(file)),
        addedAt_ms INTEGER NOT NULL CHECK (addedAt_ms >= 0)
      ) STRICT;
      CREATE INDEX roundsByPlayer ON rounds (playerId, date);
      CREATE INDEX roundsByCourse ON rounds (courseId);
      CREATE TABLE reviews (
        roundId TEXT PRIMARY KEY REFERENCES rounds (roundId) ON DELETE CASCADE,
        reviewKey TEXT NOT NULL,
        madeAt_ms INTEGER NOT NULL CHECK (madeAt_ms >= 0),
        report TEXT NOT NULL CHECK (json_valid(report))
      ) STRICT;
    `),
};
