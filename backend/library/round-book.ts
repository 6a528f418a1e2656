import { parseRound, type RoundFile } from '../../core/review/round-file.ts';
import type { Result } from '../../core/units/result.ts';
import type { Store } from '../store/open-store.ts';

type KeptRound = Readonly<{ roundId: string; courseId: string; playerId: string; round: RoundFile }>;

/** The library's rounds. */
export type RoundBook = Readonly<{
  get(roundId: string): Result<KeptRound>;
  /** Oldest first. */
  ofPlayer(playerId: string): readonly KeptRound[];
}>;

export function roundBook({ tables }: Store): RoundBook {
  return {
    get: roundId => {
      const row = tables.rounds.get({ roundId });
      if (row === undefined) return noRound;
      const round = parseRound(JSON.parse(row.file));
      return round.ok
        ? { ok: true, value: { roundId, courseId: row.courseId, playerId: row.playerId, round: round.value } }
        : round;
    },
    ofPlayer: playerId =>
      tables.rounds
        .where({ playerId })
        .flatMap(({ roundId, courseId, file }) => {
          const round = parseRound(JSON.parse(file));
          return round.ok ? [{ roundId, courseId, playerId, round: round.value }] : [];
        })
        .sort((a, b) => a.round.date.localeCompare(b.round.date) || a.roundId.localeCompare(b.roundId)),
  };
}

const noRound: Result<never> = {
  ok: false,
  problems: [{ path: 'roundId', message: 'is no round of the library: it may have been deleted' }],
};
