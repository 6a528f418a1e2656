import type { Database } from 'better-sqlite3';
import { z } from 'zod';

const PlanRow = z.strictObject({
  planId: z.string(),
  courseId: z.string(),
  playerId: z.string(),
  planKey: z.string().describe('the same for the same question'),
  remembered: z.union([z.literal(0), z.literal(1)]),
  madeAt_ms: z.int().min(0),
  state: z.string().describe('PlanState as JSON'),
});
type PlanRow = z.output<typeof PlanRow>;

/** Finished plans of one course and player that are kept: enough to step back through the winds just tried. */
const KEPT_PLANS = 12;

/** Finished plans. They can be made anew, so they are no part of undo or of the exported library. */
export type PlansTable = Readonly<{
  get(planId: string): PlanRow | undefined;
  byKey(planKey: string): PlanRow | undefined;
  /** The one kept last, whatever the clock said. */
  remembered(courseId: string, playerId: string): PlanRow | undefined;
  /** Does nothing when the course or player was deleted meanwhile. */
  put(row: PlanRow): void;
}>;

const COLUMNS = 'planId, courseId, playerId, planKey, remembered, madeAt_ms, state';

export function plansTable(db: Database): PlansTable {
  const get = db.prepare(`SELECT ${COLUMNS} FROM plans WHERE planId = ?`);
  const byKey = db.prepare(`SELECT ${COLUMNS} FROM plans WHERE planKey = ? ORDER BY number DESC LIMIT 1`);
  const newest = db.prepare(
    `SELECT ${COLUMNS} FROM plans WHERE courseId = ? AND playerId = ? AND remembered = 1 ORDER BY number DESC LIMIT 1`,
  );
  const insert = db.prepare(
    `INSERT INTO plans (${COLUMNS})
     SELECT @planId, @courseId, @playerId, @planKey, @remembered, @madeAt_ms, @state
     WHERE EXISTS (SELECT 1 FROM courses WHERE courseId = @courseId)
       AND EXISTS (SELECT 1 FROM players WHERE playerId = @playerId)`,
  );
  const forgetOld = db.prepare(
    `DELETE FROM plans WHERE courseId = @courseId AND playerId = @playerId AND planId NOT IN (
       SELECT planId FROM plans WHERE courseId = @courseId AND playerId = @playerId ORDER BY number DESC LIMIT ${KEPT_PLANS})`,
  );
  const put = db.transaction((row: PlanRow) => {
    insert.run(row);
    forgetOld.run({ courseId: row.courseId, playerId: row.playerId });
  });
  const checked = (found: unknown) => (found === undefined ? undefined : PlanRow.parse(found));
  return {
    get: planId => checked(get.get(planId)),
    byKey: planKey => checked(byKey.get(planKey)),
    remembered: (courseId, playerId) => checked(newest.get(courseId, playerId)),
    put: row => put.immediate(row),
  };
}
