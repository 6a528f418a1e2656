import type { Database } from 'better-sqlite3';
import { z } from 'zod';

const ReviewRow = z.strictObject({
  roundId: z.string(),
  reviewKey: z.string().describe('the same while nothing it depends on changes'),
  madeAt_ms: z.int().min(0),
  report: z.string().describe('ReviewReport as JSON'),
});
type ReviewRow = z.output<typeof ReviewRow>;

/** The last review of each round. It can be made anew, so it is no part of undo or of the exported library. */
export type ReviewsTable = Readonly<{
  get(roundId: string): ReviewRow | undefined;
  /** Its `reviewKey` alone: the report is large. */
  key(roundId: string): string | undefined;
  /** Does nothing when the round was deleted meanwhile. */
  put(row: ReviewRow): void;
}>;

const COLUMNS = 'roundId, reviewKey, madeAt_ms, report';

export function reviewsTable(db: Database): ReviewsTable {
  const get = db.prepare(`SELECT ${COLUMNS} FROM reviews WHERE roundId = ?`);
  const key = db.prepare('SELECT reviewKey FROM reviews WHERE roundId = ?').pluck();
  const put = db.prepare(
    `INSERT OR REPLACE INTO reviews (${COLUMNS})
     SELECT @roundId, @reviewKey, @madeAt_ms, @report
     WHERE EXISTS (SELECT 1 FROM rounds WHERE roundId = @roundId)`,
  );
  return {
    get: roundId => {
      const found = get.get(roundId);
      return found === undefined ? undefined : ReviewRow.parse(found);
    },
    key: roundId => key.get(roundId) as string | undefined,
    put: row => {
      put.run(row);
    },
  };
}
