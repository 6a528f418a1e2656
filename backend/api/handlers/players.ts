import { randomUUID } from 'node:crypto';
import { fileNotes } from '../../../core/player/file-notes.ts';
import { type PlayerFile, parsePlayer, parsePlayerText } from '../../../core/player/player-file.ts';
import type { Problem, Result } from '../../../core/units/result.ts';
import { reportThrows } from '../../library/report-throws.ts';
import { SUMMARY_VERSION } from '../../store/summaries.ts';
import { type AppContext, sayChanged } from '../app-context.ts';
import type { Output } from '../contract/api.ts';
import type { DiscEntry, players } from '../contract/players.ts';
import type { Undo } from '../contract/values.ts';
import type { Handlers } from '../dispatch.ts';
import { fileNameOf } from '../file-name.ts';

export function playerHandlers(app: AppContext): Pick<Handlers, keyof typeof players> {
  const { store, players: book } = app;
  const { tables, changes } = store;

  /** Writes a changed player file, checked as a whole; problems of one disc are given as those of `disc`. */
  function edit(
    playerId: string,
    what: (file: PlayerFile) => string,
    changed: (file: PlayerFile) => Result<unknown>,
    discIndex?: (file: PlayerFile) => number,
  ): Result<{ undo: Undo }> {
    const file = book.get(playerId);
    const row = tables.players.get({ playerId });
    if (!file.ok) return file;
    const wanted = changed(file.value);
    if (!wanted.ok) return wanted;
    const checked = parsePlayer(wanted.value);
    if (!checked.ok) return { ok: false, problems: renamedPaths(checked.problems, discIndex?.(file.value)) };
    const undo = changes.change(what(file.value), editor =>
      editor.put('players', { ...row!, file: JSON.stringify(checked.value) }),
    );
    sayChanged(app, ['players']);
    return { ok: true, value: { undo } };
  }

  return {
    listPlayers: () => {
      const lines: Output<'listPlayers'> = [];
      const { players } = app.store.summaries;
      const known = players.all(SUMMARY_VERSION);
      for (const playerId of players.ids()) {
        let line = known.get(playerId) as Omit<Output<'listPlayers'>[number], 'playerId'> | undefined;
        if (line === undefined) {
          const file = book.get(playerId);
          if (!file.ok) return file;
          line = lineOf(file.value, tables.players.get({ playerId })!.sample === 1);
          players.put(playerId, SUMMARY_VERSION, line);
        }
        lines.push({ playerId, ...line });
      }
      return { ok: true, value: lines.sort((a, b) => a.name.localeCompare(b.name, 'en')) };
    },
    getPlayer: ({ playerId }) => {
      const file = book.get(playerId);
      if (!file.ok) return file;
      const { sample } = tables.players.get({ playerId })!;
      return { ok: true, value: { ...summaryOf(file.value), playerId, sample: sample === 1 } };
    },
    getThrows: async ({ playerId }) => {
      const file = book.get(playerId);
      const fitted = await book.fitted(playerId);
      if (!file.ok) return file;
      return fitted.ok ? { ok: true, value: await reportThrows(file.value, fitted.value) } : fitted;
    },
    previewPlayer: ({ text }) => {
      const file = parsePlayerText(text);
      return file.ok ? { ok: true, value: summaryOf(file.value) } : file;
    },
    importPlayer: ({ text }) => {
      const file = parsePlayerText(text);
      if (!file.ok) return file;
      const playerId = randomUUID();
      const undo = changes.change(`Add ${file.value.name}`, editor =>
        editor.put('players', { playerId, file: JSON.stringify(file.value), sample: 0, addedAt_ms: app.now_ms() }),
      );
      sayChanged(app, ['players']);
      return { ok: true, value: { undo, playerId } };
    },
    renamePlayer: ({ playerId, name }) =>
      edit(
        playerId,
        file => `Rename ${file.name}`,
        file => ({ ok: true, value: { ...file, name } }),
      ),
    removePlayer: ({ playerId }) => {
      const file = book.get(playerId);
      if (!file.ok) return file;
      const undo = changes.change(`Delete ${file.value.name}`, editor => {
        for (const pin of tables.pins.where({ playerId })) editor.remove('pins', pin);
        for (const { roundId } of tables.rounds.where({ playerId })) editor.remove('rounds', { roundId });
        editor.remove('players', { playerId });
      });
      sayChanged(app, ['players', 'pins', 'rounds']);
      return { ok: true, value: { undo } };
    },
    exportPlayer: ({ playerId }) => {
      const file = book.get(playerId);
      if (!file.ok) return file;
      const text = `${JSON.stringify({ schema: 'roundwright/player@1', ...file.value }, null, 2)}\n`;
      return { ok: true, value: { fileName: fileNameOf(file.value.name, 'json'), text } };
    },
    addDisc: ({ playerId, disc }) =>
      edit(
        playerId,
        () => `Add ${disc.name}`,
        file => ({ ok: true, value: { ...file, discs: [...file.discs, disc] } }),
        file => file.discs.length,
      ),
    updateDisc: ({ playerId, discId, disc }) =>
      edit(
        playerId,
        file => `Change ${nameOfDisc(file, discId)}`,
        file => withDisc(file, discId, disc),
        file => file.discs.findIndex(({ id }) => id === discId),
      ),
    removeDisc: ({ playerId, discId }) =>
      edit(
        playerId,
        file => `Delete ${nameOfDisc(file, discId)}`,
        file => withoutDisc(file, discId),
      ),
  };
}

function lineOf({ name, handedness, discs, sessions }: PlayerFile, sample: boolean) {
  const throws = sessions.reduce((sum, session) => sum + session.throws.length, 0);
  return { name, handedness, discs: discs.length, throws, sample };
}

const nameOfDisc = (file: PlayerFile, discId: string) => file.discs.find(({ id }) => id === discId)?.name ?? discId;

function withDisc(file: PlayerFile, discId: string, disc: DiscEntry): Result<unknown> {
  if (!file.discs.some(({ id }) => id === discId)) return noDisc(file, discId);
  return {
    ok: true,
    value: {
      ...file,
      discs: file.discs.map(old => (old.id === discId ? disc : old)),
      sessions: mapThrows(file, t => [t.discId === discId ? { ...t, discId: disc.id } : t]),
    },
  };
}

function withoutDisc(file: PlayerFile, discId: string): Result<unknown> {
  if (!file.discs.some(({ id }) => id === discId)) return noDisc(file, discId);
  const sessions = mapThrows(file, t => (t.discId === discId ? [] : [t]));
  if (sessions.every(({ throws }) => throws.length === 0))
    return refused('discId', 'is the only disc with measured throws: measure another one first, then delete it');
  return { ok: true, value: { ...file, discs: file.discs.filter(({ id }) => id !== discId), sessions } };
}

type FileThrow = PlayerFile['sessions'][number]['throws'][number];

function mapThrows(file: PlayerFile, to: (t: FileThrow) => FileThrow[]): PlayerFile['sessions'] {
  return file.sessions.map(session => ({ ...session, throws: session.throws.flatMap(to) }));
}

function noDisc(file: PlayerFile, discId: string): Result<never> {
  return refused('discId', `"${discId}" is no disc of ${file.name}`);
}

function refused(path: string, message: string): Result<never> {
  return { ok: false, problems: [{ path, message }] };
}

function renamedPaths(problems: readonly Problem[], discIndex: number | undefined): Problem[] {
  const start = `discs[${discIndex}]`;
  return problems.map(({ path, message }) => ({
    path: discIndex !== undefined && path.startsWith(start) ? `disc${path.slice(start.length)}` : path,
    message,
  }));
}

function summaryOf(file: PlayerFile): Output<'previewPlayer'> {
  return {
    name: file.name,
    handedness: file.handedness,
    discs: file.discs.map(
      ({ id, name, class: discClass, speed, glide, turn, fade, mass_g, diameter_mm, rimWidth_mm, wear, role }) => ({
        id,
        name,
        class: discClass,
        speed,
        glide,
        turn,
        fade,
        ...(mass_g === undefined ? {} : { mass_g }),
        ...(diameter_mm === undefined ? {} : { diameter_mm }),
        ...(rimWidth_mm === undefined ? {} : { rimWidth_mm }),
        ...(wear === undefined ? {} : { wear }),
        role,
      }),
    ),
    sessions: file.sessions.map(({ date, throws, wind, note }) => ({
      ...(date === undefined ? {} : { date }),
      throws: throws.length,
      ...(wind === undefined ? {} : { wind_mps: wind.speed_mps }),
      ...(note === undefined ? {} : { note }),
    })),
    putting: (file.putting ?? []).map(({ distance_m, attempts, makes }) => ({ distance_m, attempts, makes })),
    notes: fileNotes(file),
  };
}
