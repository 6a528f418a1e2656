import type { Table } from './choose-shot.ts';
import type { Lie } from './march.ts';
import type { ShotSpec } from './shots.ts';
import { addPath, expectedOf, type ThrowValue } from './throw-value.ts';
import { valueAt } from './value-field.ts';

/** A shot along an aim. */
export type Line = Readonly<{ shot: ShotSpec; aim_deg: number }>;

/** A line with what the first `rows` of the search's samples came to; each sample's own part in `perRow`. */
export type RacedShot = Line & { rows: number; score: number; readonly value: ThrowValue; readonly perRow: number[] };

/** Flies lines from one lie on the search's samples, the same ones for all, as many as each is worth. */
export type Racer = Readonly<{
  /** A line that nothing was flown of yet. */
  start(line: Line): RacedShot;
  /** Flies those of the first `rows` samples that the shot has not had. @returns its expected throws so far */
  fly(shot: RacedShot, rows: number): number;
}>;

export function createRacer({ thrower, field, world, searchNormals }: Table, lie: Lie): Racer {
  const lieValue = valueAt(field, lie.east_m, lie.north_m);
  const [dropX, dropY] = world.dropZone ?? [Number.NaN, Number.NaN];
  return {
    start: ({ shot, aim_deg }) => ({
      shot,
      aim_deg,
      rows: 0,
      score: Number.POSITIVE_INFINITY,
      value: { paths: 0, sum: 0, replay: 0, lieValue },
      perRow: [],
    }),
    fly(raced, rows) {
      if (rows <= raced.rows) return raced.score;
      thrower.prepare(raced.shot, lie, raced.aim_deg);
      thrower.throwRows(searchNormals, raced.rows, rows - raced.rows, () => {
        raced.perRow.push(addPath(raced.value, thrower.ends, field, dropX, dropY, lieValue));
      });
      raced.rows = rows;
      raced.score = expectedOf(raced.value);
      return raced.score;
    },
  };
}

/** Expected throws by the first samples of those flown. */
export function scoreOfFirst({ perRow }: Pick<RacedShot, 'perRow'>, rows: number): number {
  let sum = 0;
  for (let i = 0; i < rows; i++) sum += perRow[i];
  return 1 + sum / rows;
}

/** Standard error of the difference of two scores on the samples both have had. */
export function pairedError(a: Pick<RacedShot, 'perRow'>, b: Pick<RacedShot, 'perRow'>): number {
  const n = Math.min(a.perRow.length, b.perRow.length);
  let sum = 0;
  let square = 0;
  for (let i = 0; i < n; i++) {
    const d = a.perRow[i] - b.perRow[i];
    sum += d;
    square += d * d;
  }
  return Math.sqrt(Math.max(0, square / n - (sum / n) ** 2) / Math.max(1, n - 1));
}
