import type { FittedPlayer } from '../../core/player/fitted-player.ts';
import { type PlayerFile, parsePlayer } from '../../core/player/player-file.ts';
import type { Result } from '../../core/units/result.ts';
import type { PlanningDesk } from '../planning/planning-desk.ts';
import type { Store } from '../store/open-store.ts';
import { lru } from './lru.ts';

const KEPT_FITS = 8;

/** The library's players, and their fitted throws, each fitted once. */
export type PlayerBook = Readonly<{
  get(playerId: string): Result<PlayerFile>;
  fitted(playerId: string): Promise<Result<FittedPlayer>>;
}>;

export function playerBook({ tables }: Store, desk: PlanningDesk): PlayerBook {
  const fits = lru<Promise<FittedPlayer>>(KEPT_FITS);

  function get(playerId: string): Result<PlayerFile> {
    const row = tables.players.get({ playerId });
    return row === undefined ? noPlayer : parsePlayer(JSON.parse(row.file));
  }

  return {
    get,
    fitted: async playerId => {
      const file = get(playerId);
      if (!file.ok) return file;
      const key = JSON.stringify(file.value);
      let fit = fits.get(key);
      if (fit === undefined) {
        fit = desk.fit(file.value);
        fits.set(key, fit);
      }
      return { ok: true, value: await fit };
    },
  };
}

const noPlayer: Result<never> = {
  ok: false,
  problems: [{ path: 'playerId', message: 'is no player of the library: it may have been deleted' }],
};
