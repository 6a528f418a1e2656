import type { PlayerFile } from '../../../core/player/player-file.ts';
import { puttingReport } from '../../../core/player/putting-report.ts';
import type { Result } from '../../../core/units/result.ts';
import type { AppContext } from '../app-context.ts';
import { changePlayer, type PlayerChange } from '../change-player.ts';
import type { PuttEntry, putting } from '../contract/putting.ts';
import type { Handlers } from '../dispatch.ts';

type PuttingRow = NonNullable<PlayerFile['putting']>[number];

export function puttingHandlers(app: AppContext): Pick<Handlers, keyof typeof putting> {
  /** Changes one row that must still be what the window saw. */
  function changeRow(
    at: Readonly<{ playerId: string; place: number; was: PuttEntry }>,
    to: PuttEntry | null,
    what: string,
  ) {
    return changePlayer(
      app,
      at.playerId,
      (file): Result<PlayerChange> => {
        const log = file.putting ?? [];
        const row = log[at.place];
        if (row === undefined || !same(row, at.was))
          return {
            ok: false,
            problems: [{ path: 'place', message: 'holds another row by now: look again, then change it' }],
          };
        const rows = to === null ? log.toSpliced(at.place, 1) : log.with(at.place, rowOf(to));
        return { ok: true, value: { file: { ...file, putting: rows }, what } };
      },
      path => path.replace(`putting[${at.place}]`, 'to'),
    );
  }

  return {
    getPutting: ({ playerId }) => {
      const file = app.players.get(playerId);
      return file.ok ? { ok: true, value: puttingReport(file.value.name, file.value.putting ?? []) } : file;
    },
    addPutts: ({ playerId, putts }) => {
      let place = 0;
      return changePlayer(
        app,
        playerId,
        file => {
          const log = file.putting ?? [];
          place = log.length;
          return {
            ok: true,
            value: { file: { ...file, putting: [...log, rowOf(putts)] }, what: `Add ${putts.attempts} putts` },
          };
        },
        path => path.replace(`putting[${place}]`, 'putts'),
      );
    },
    updatePutts: ({ to, ...at }) => changeRow(at, to, 'Change a row of putts'),
    removePutts: at => changeRow(at, null, `Delete ${at.was.attempts} putts`),
  };
}

const rowOf = ({ distance_m, attempts, makes, date }: PuttEntry): PuttingRow => ({ distance_m, attempts, makes, date });

function same(a: PuttingRow, b: PuttEntry): boolean {
  return a.distance_m === b.distance_m && a.attempts === b.attempts && a.makes === b.makes && a.date === b.date;
}
