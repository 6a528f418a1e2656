import type { Step } from '../migrate.ts';

/**
 * Ground beside the courses (`groundFiles` apart, as with courses), summaries for lists, and an order for plans and reviews that
 * no clock can turn round. A trigger forgets a summary when what it sums up changes: nobody has to remember to.
 */
export const step30: Step = {
  version: 30,
  up: db =>
    db.exec(`
      CREATE TABLE grounds (
        courseId TEXT PRIMARY KEY REFERENCES courses (courseId) DEFERRABLE INITIALLY DEFERRED,
        digest TEXT NOT NULL
      ) STRICT;
      CREATE TABLE groundFiles (
        courseId TEXT PRIMARY KEY REFERENCES grounds (courseId) DEFERRABLE INITIALLY DEFERRED,
        text TEXT NOT NULL CHECK (json_valid(text))
      ) STRICT;

      CREATE TABLE courseSummaries (
        courseId TEXT PRIMARY KEY REFERENCES courses (courseId) ON DELETE CASCADE,
        version TEXT NOT NULL,
        summary TEXT NOT NULL CHECK (json_valid(summary))
      ) STRICT;
      CREATE TABLE playerSummaries (
        playerId TEXT PRIMARY KEY REFERENCES players (playerId) ON DELETE CASCADE,
        version TEXT NOT NULL,
        summary TEXT NOT NULL CHECK (json_valid(summary))
      ) STRICT;
      CREATE TABLE roundSummaries (
        roundId TEXT PRIMARY KEY REFERENCES rounds (roundId) ON DELETE CASCADE,
        version TEXT NOT NULL,
        summary TEXT NOT NULL CHECK (json_valid(summary))
      ) STRICT;
      CREATE TRIGGER courseFileChanged AFTER UPDATE OF text ON courseFiles BEGIN
        DELETE FROM courseSummaries WHERE courseId = new.courseId;
        DELETE FROM roundSummaries WHERE roundId IN (SELECT roundId FROM rounds WHERE courseId = new.courseId);
      END;
      CREATE TRIGGER courseFileAdded AFTER INSERT ON courseFiles BEGIN
        DELETE FROM courseSummaries WHERE courseId = new.courseId;
        DELETE FROM roundSummaries WHERE roundId IN (SELECT roundId FROM rounds WHERE courseId = new.courseId);
      END;
      CREATE TRIGGER courseFileRemoved AFTER DELETE ON courseFiles BEGIN
        DELETE FROM courseSummaries WHERE courseId = old.courseId;
        DELETE FROM roundSummaries WHERE roundId IN (SELECT roundId FROM rounds WHERE courseId = old.courseId);
      END;
      CREATE TRIGGER groundChanged AFTER UPDATE OF digest ON grounds BEGIN
        DELETE FROM courseSummaries WHERE courseId = new.courseId;
        DELETE FROM roundSummaries WHERE roundId IN (SELECT roundId FROM rounds WHERE courseId = new.courseId);
      END;
      CREATE TRIGGER groundAdded AFTER INSERT ON grounds BEGIN
        DELETE FROM courseSummaries WHERE courseId = new.courseId;
        DELETE FROM roundSummaries WHERE roundId IN (SELECT roundId FROM rounds WHERE courseId = new.courseId);
      END;
      CREATE TRIGGER groundRemoved AFTER DELETE ON grounds BEGIN
        DELETE FROM courseSummaries WHERE courseId = old.courseId;
        DELETE FROM roundSummaries WHERE roundId IN (SELECT roundId FROM rounds WHERE courseId = old.courseId);
      END;
      CREATE TRIGGER playerFileChanged AFTER UPDATE OF file ON players BEGIN
        DELETE FROM playerSummaries WHERE playerId = new.playerId;
      END;

      CREATE TRIGGER roundChanged AFTER UPDATE OF file, courseId ON rounds BEGIN
        DELETE FROM roundSummaries WHERE roundId = new.roundId;
      END;

      ALTER TABLE plans RENAME TO plansByClock;
      CREATE TABLE plans (
        number INTEGER PRIMARY KEY AUTOINCREMENT,
        planId TEXT NOT NULL UNIQUE,
        courseId TEXT NOT NULL REFERENCES courses (courseId) ON DELETE CASCADE,
        playerId TEXT NOT NULL REFERENCES players (playerId) ON DELETE CASCADE,
        planKey TEXT NOT NULL,
        remembered INTEGER NOT NULL CHECK (remembered IN (0, 1)),
        madeAt_ms INTEGER NOT NULL CHECK (madeAt_ms >= 0),
        state TEXT NOT NULL CHECK (json_valid(state))
      ) STRICT;
      INSERT INTO plans (planId, courseId, playerId, planKey, remembered, madeAt_ms, state)
        SELECT planId, courseId, playerId, planKey, remembered, madeAt_ms, state FROM plansByClock ORDER BY madeAt_ms;
      DROP TABLE plansByClock;
      CREATE INDEX plansByKey ON plans (planKey, number);
      CREATE INDEX plansOfPair ON plans (courseId, playerId, number);
      CREATE INDEX plansByPlayer ON plans (playerId);
    `),
};
