import { randomUUID } from 'node:crypto';
import { parsePlayer } from '../../../core/player/player-file.ts';
import { checkRound } from '../../../core/review/check-round.ts';
import { fitChange } from '../../../core/review/fit-change.ts';
import { parseRoundText, type RoundFile } from '../../../core/review/round-file.ts';
import { season } from '../../../core/review/season.ts';
import type { Problem, Result } from '../../../core/units/result.ts';
import { roundLines } from '../../library/round-lines.ts';
import { offeredThrows, withThrows } from '../../library/round-to-fieldwork.ts';
import { readRoundCsv } from '../../rounds/read-round-csv.ts';
import { writeRoundCsv } from '../../rounds/write-round-csv.ts';
import { type AppContext, sayChanged } from '../app-context.ts';
import type { rounds } from '../contract/rounds.ts';
import type { Undo } from '../contract/values.ts';
import type { Handlers } from '../dispatch.ts';
import { fileNameOf } from '../file-name.ts';

export function roundHandlers(app: AppContext): Pick<Handlers, keyof typeof rounds> {
  const { store, courses, players, rounds: book, reviews, threads } = app;
  const { tables, changes } = store;

  const linesOf = (playerId: string) => roundLines(app, playerId);

  /** Only a round that fits its course and player is kept. */
  async function fitting(courseId: string, playerId: string, round: RoundFile): Promise<Result<RoundFile>> {
    const course = courses.get(courseId, round.layout);
    const player = players.get(playerId);
    if (!course.ok) return course;
    if (!player.ok) return player;
    const maps = await courses.maps(courseId, round.layout);
    if (!maps.ok) return maps;
    const problems = checkRound(round, maps.value, player.value);
    return problems.length > 0
      ? { ok: false, problems }
      : { ok: true, value: { ...round, course: course.value.name, player: player.value.name } };
  }

  /** A file that names another course or player would be judged on the wrong one. */
  function ofOthers(courseId: string, player: string, round: RoundFile): Problem[] {
    const course = courses.get(courseId, round.layout);
    const chosen = { course: course.ok ? course.value.name : undefined, player };
    return (['course', 'player'] as const).flatMap(path => {
      const [written, own] = [round[path], chosen[path]];
      if (written === undefined || own === undefined || sameName(written, own)) return [];
      const message = `is "${written}", but "${own}" is chosen: choose "${written}", or take this line out of the file`;
      return [{ path, message }];
    });
  }

  async function read(courseId: string, playerId: string, text: string): Promise<Result<RoundFile>> {
    const player = players.get(playerId);
    if (!player.ok) return player;
    const isJson = /^\s*\uFEFF?\s*[{[]/.test(text);
    const round = isJson ? parseRoundText(text) : readRoundCsv(text, player.value.discs);
    if (!round.ok) return round;
    const other = ofOthers(courseId, player.value.name, round.value);
    return other.length > 0 ? { ok: false, problems: other } : fitting(courseId, playerId, round.value);
  }

  function keep(what: string, roundId: string, courseId: string, playerId: string, round: RoundFile): Undo {
    const before = tables.rounds.get({ roundId });
    const undo = changes.change(what, editor =>
      editor.put('rounds', {
        roundId,
        courseId,
        playerId,
        date: round.date,
        file: JSON.stringify(round),
        addedAt_ms: before?.addedAt_ms ?? app.now_ms(),
      }),
    );
    sayChanged(app, ['rounds']);
    return undo;
  }

  const nameOf = ({ course, date }: RoundFile) => `the round of ${date}${course === undefined ? '' : ` on ${course}`}`;

  return {
    listRounds: ({ playerId }) => {
      // A player who is there was read before: that one is, is enough.
      const isKnown = tables.players.get({ playerId }) !== undefined;
      return isKnown ? { ok: true, value: linesOf(playerId) } : noPlayer;
    },
    getRound: ({ roundId }) => {
      const entry = book.get(roundId);
      return entry.ok ? { ok: true, value: { ...entry.value } } : entry;
    },
    previewRound: async ({ courseId, playerId, text }) => {
      const round = await read(courseId, playerId, text);
      return round.ok ? { ok: true, value: { round: round.value } } : round;
    },
    importRound: async ({ courseId, playerId, text }) => {
      const round = await read(courseId, playerId, text);
      if (!round.ok) return round;
      const roundId = randomUUID();
      const undo = keep(`Add ${nameOf(round.value)}`, roundId, courseId, playerId, round.value);
      return { ok: true, value: { undo, roundId } };
    },
    saveRound: async ({ roundId, courseId, playerId, round, what }) => {
      const before = roundId === undefined ? undefined : book.get(roundId);
      if (before?.ok === false) return before;
      if (before !== undefined && (before.value.courseId !== courseId || before.value.playerId !== playerId))
        return refused('roundId', 'is a round of another course or player: enter a new round for this one');
      const fits = await fitting(courseId, playerId, round);
      if (!fits.ok) return { ok: false, problems: fits.problems.map(p => ({ ...p, path: inRound(p.path) })) };
      const id = roundId ?? randomUUID();
      const words = what ?? (roundId === undefined ? `Add ${nameOf(fits.value)}` : `Change ${nameOf(fits.value)}`);
      return { ok: true, value: { undo: keep(words, id, courseId, playerId, fits.value), roundId: id } };
    },
    removeRound: ({ roundId }) => {
      const entry = book.get(roundId);
      if (!entry.ok) return entry;
      reviews.cancel(roundId);
      const undo = changes.change(`Delete ${nameOf(entry.value.round)}`, editor =>
        editor.remove('rounds', { roundId }),
      );
      sayChanged(app, ['rounds']);
      return { ok: true, value: { undo } };
    },
    exportRound: ({ roundId, format }) => {
      const entry = book.get(roundId);
      if (!entry.ok) return entry;
      const { round } = entry.value;
      const text = format === 'csv' ? writeRoundCsv(round) : `${JSON.stringify(round, null, 2)}\n`;
      return { ok: true, value: { fileName: fileNameOf(`${round.course ?? 'round'} ${round.date}`, format), text } };
    },
    startReview: ({ roundId }) => {
      const total = reviews.start(roundId);
      return total.ok ? { ok: true, value: { total: total.value } } : total;
    },
    cancelReview: ({ roundId }) => ({ ok: true, value: { cancelled: reviews.cancel(roundId) } }),
    getReview: ({ roundId }) => reviews.get(roundId),
    offerRound: async ({ roundId }) => {
      const offered = await offeredThrows(app, roundId);
      if (!offered.ok) return offered;
      const { throws, file } = offered.value;
      const value = throws.map(({ session, ...rest }) => {
        const own = session?.throws[0];
        return {
          ...rest,
          disc: file.discs.find(({ id }) => id === rest.discId)?.name ?? rest.discId,
          hand: own?.hand ?? null,
          distance_m: own?.distance_m ?? null,
          side_m: own?.side_m ?? null,
          power: own?.power ?? null,
        };
      });
      return { ok: true, value: { throws: value } };
    },
    previewFit: async ({ roundId, keys }) => {
      const added = await withThrows(app, roundId, keys);
      if (!added.ok) return added;
      const { playerId, file, throws } = added.value;
      const before = await players.fitted(playerId);
      if (!before.ok) return before;
      return { ok: true, value: { changes: fitChange(before.value, await threads.fit(file), throws) } };
    },
    acceptFit: async ({ roundId, keys }) => {
      const added = await withThrows(app, roundId, keys);
      if (!added.ok) return added;
      const { playerId, file, throws } = added.value;
      const checked = parsePlayer(file);
      if (!checked.ok) return checked;
      const row = tables.players.get({ playerId })!;
      const undo = changes.change(`Add ${throws.length} throws of a round to the fieldwork`, editor =>
        editor.put('players', { ...row, file: JSON.stringify(checked.value) }),
      );
      sayChanged(app, ['players', 'rounds']);
      return { ok: true, value: { undo, added: throws.length } };
    },
    getSeason: ({ playerId }) => {
      const player = players.get(playerId);
      if (!player.ok) return player;
      const kept = book.ofPlayer(playerId);
      const reviewed = kept.flatMap(({ roundId }) => {
        const made = reviews.report(roundId);
        return made === undefined ? [] : [{ roundId, report: made.report }];
      });
      const waiting = linesOf(playerId).filter(line => line.finished > 0 && line.reviewed !== 'yes');
      return { ok: true, value: { ...season(reviewed), waiting } };
    },
  };
}

const sameName = (a: string, b: string) => a.trim().toLowerCase() === b.trim().toLowerCase();

/** Problems of the entered round are those of the field `round`. */
const inRound = (path: string) => (path.startsWith('holes[') ? `round.${path}` : path);

const noPlayer = refused('playerId', 'is no player of the library: it may have been deleted');

function refused(path: string, message: string): Result<never> {
  return { ok: false, problems: [{ path, message }] };
}
