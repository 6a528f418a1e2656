import { type Ends, RESULT } from './march.ts';
import { RELIEF, relief } from './relief.ts';
import { MOST_THROWS, type ValueField, valueAt } from './value-field.ts';

/** A lie whose best shot comes back to it more often than this is not solved but refused. */
const MOST_REPLAY = 0.9;

/**
 * Running expectation of throws over sampled paths of one shot: add the ends of each, then read `expected`.
 * Throws played again from the same lie are solved in closed form.
 * @source stochastic shortest path with a self-loop: Q = (1 + Σ w·pen + Σ_other w·V) / (1 − w_self)
 */
export type ThrowValue = {
  paths: number;
  sum: number;
  replay: number;
  /**
   * Value of the lie thrown from, where known: after out-of-bounds the thrower may play from there again instead of where the disc
   * was last in bounds (806.02, previous lie), and does when that is better.
   */
  lieValue?: number;
};

export function resetThrowValue(value: ThrowValue): void {
  value.paths = 0;
  value.sum = 0;
  value.replay = 0;
}

/** @returns this path's own part: Σ w·(penalty + value), replays counted at `replayValue` */
export function addPath(
  value: ThrowValue,
  ends: Ends,
  field: ValueField,
  dropX: number,
  dropY: number,
  replayValue: number,
): number {
  let sum = 0;
  let replay = 0;
  for (let i = 0; i < ends.count; i++) {
    const weight = ends.weight[i];
    const kind = ends.kind[i];
    sum += weight * ends.penalty[i];
    if (kind === RESULT.holed) continue;
    const next =
      kind === RESULT.outOfBounds
        ? reliefValue(ends, i, field, dropX, dropY, value.lieValue)
        : Number.isNaN(ends.x[i])
          ? Number.NaN
          : valueAt(field, ends.x[i], ends.y[i]);
    if (!Number.isNaN(next)) sum += weight * next;
    else replay += weight;
  }
  value.paths++;
  value.sum += sum;
  value.replay += replay;
  return sum + replay * replayValue;
}

/** Value of the lie played from after out-of-bounds; NaN when that is the previous one. */
function reliefValue(
  ends: Ends,
  i: number,
  field: ValueField,
  dropX: number,
  dropY: number,
  lieValue: number | undefined,
): number {
  switch (relief(ends, i, field, dropX, dropY, lieValue)) {
    case RELIEF.line:
      return valueAt(field, ends.x[i], ends.y[i]);
    case RELIEF.dropZone:
      return valueAt(field, dropX, dropY);
    default:
      return Number.NaN;
  }
}

export function expectedOf(value: ThrowValue): number {
  const replay = value.replay / value.paths;
  if (replay > MOST_REPLAY) return MOST_THROWS;
  return Math.min(MOST_THROWS, (1 + value.sum / value.paths) / (1 - replay));
}
