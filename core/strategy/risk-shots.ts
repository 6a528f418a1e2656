import { type Attitude, costOf } from './attitude.ts';
import type { Candidate, Table } from './choose-shot.ts';
import type { Lie } from './march.ts';
import { neighbourLines } from './race-shots.ts';
import type { Line } from './raced-shot.ts';
import { shotOutcome } from './shot-outcome.ts';
import { valueAt } from './value-field.ts';

/** Lines to start from, each of another disc and hand. */
const STARTS = 5;
const SEARCH_ROWS = 40;
const ANSWER_ROWS = 256;
/** Answered on fresh samples, of every attitude's search. */
const ANSWERED = 2;
const SIZES = [1, 0.5] as const;

/**
 * Shots for those who want something else than the fewest expected throws: the best lines of the first few discs, moved in aim,
 * power and launch to where the attitude has them. Searched and answered on separate samples.
 * @param from - where to start, fewest expected throws first
 * @param scoresOf - chance of each score with a shot: `[i]` for i + 1 throws
 */
export function riskShots(
  table: Table,
  lie: Lie,
  from: readonly Candidate[],
  attitudes: readonly Attitude[],
  scoresOf: (candidate: Candidate) => readonly number[],
): Candidate[] {
  const { thrower, field, world, searchNormals, answerNormals } = table;
  const replayValue = valueAt(field, lie.east_m, lie.north_m);
  const flown = ({ shot, aim_deg }: Line, normals: Float64Array, rows: number): Candidate => ({
    shot,
    aim_deg,
    outcome: shotOutcome(thrower, field, shot, lie, aim_deg, normals, 0, rows, world.dropZone, replayValue),
  });
  const cost = (attitude: Attitude, candidate: Candidate) =>
    costOf(attitude, scoresOf(candidate), candidate.outcome.expectedThrows);

  return attitudes.flatMap(attitude => {
    const improved = firstOfEachDisc(from).map(start => {
      let best = flown(start, searchNormals, SEARCH_ROWS);
      let least = cost(attitude, best);
      for (const size of SIZES) {
        for (const change of neighbourLines(best, size)) {
          const candidate = flown(change, searchNormals, SEARCH_ROWS);
          const its = cost(attitude, candidate);
          if (its >= least) continue;
          best = candidate;
          least = its;
        }
      }
      return { best, least };
    });
    improved.sort((a, b) => a.least - b.least);
    return improved.slice(0, ANSWERED).map(({ best }) => flown(best, answerNormals, ANSWER_ROWS));
  });
}

/**
 * The attitudes a round's target may come to ask of one hole: to finish within the throws that are most in doubt, and within one
 * more; and to keep bad scores away.
 * @param scores - of the even choice
 */
export function attitudesInDoubt(scores: readonly number[], roundSd: number): Attitude[] {
  let within = 0;
  let inDoubt = 1;
  let nearest = Number.POSITIVE_INFINITY;
  scores.forEach((chance, i) => {
    within += chance;
    if (Math.abs(within - 0.5) >= nearest) return;
    nearest = Math.abs(within - 0.5);
    inDoubt = i + 1;
  });
  const finishing = (most: number): Attitude => ({
    kind: 'push',
    after: Array.from({ length: scores.length + 1 }, (_, s) => (s <= most ? 1 : 0)),
  });
  return [finishing(inDoubt), finishing(inDoubt + 1), { kind: 'guard', roundSd }];
}

function firstOfEachDisc(from: readonly Candidate[]): Candidate[] {
  const seen = new Set<number>();
  return from
    .filter(({ shot }) => {
      if (seen.has(shot.throwIndex)) return false;
      seen.add(shot.throwIndex);
      return true;
    })
    .slice(0, STARTS);
}
