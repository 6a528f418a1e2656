import { headerOfColumn } from '../../../core/player/csv-columns.ts';
import { discScatter } from '../../../core/player/disc-scatter.ts';
import { fileNotes } from '../../../core/player/file-notes.ts';
import type { FieldSession, PlayerFile } from '../../../core/player/player-file.ts';
import type { Result } from '../../../core/units/result.ts';
import { type CsvPlan, planCsvImport, throwsIn } from '../../fieldwork/plan-csv-import.ts';
import { rowProblems } from '../../fieldwork/row-problems.ts';
import { throwsCsv } from '../../fieldwork/throws-csv.ts';
import type { AppContext } from '../app-context.ts';
import { changePlayer, type PlayerChange } from '../change-player.ts';
import type { Output } from '../contract/api.ts';
import type { fieldwork, SessionConditions, SessionShown, ThrowEntry } from '../contract/fieldwork.ts';
import type { Handlers } from '../dispatch.ts';
import { fileNameOf } from '../file-name.ts';

/** Rows shown of a long table; every bad one up to here, then good ones. */
const MOST_BAD_SHOWN = 200;
const MOST_GOOD_SHOWN = 40;

export function fieldworkHandlers(app: AppContext): Pick<Handlers, keyof typeof fieldwork> {
  const { players: book } = app;

  /** Changes one session that must still hold as many throws as the window saw. */
  function changeSession(
    at: Readonly<{ playerId: string; session: number; throws: number }>,
    change: (session: FieldSession, file: PlayerFile) => Result<Readonly<{ what: string; to: FieldSession | null }>>,
    pathOf?: (path: string) => string,
  ) {
    return changePlayer(
      app,
      at.playerId,
      file => {
        const session = file.sessions[at.session];
        if (session === undefined) return refused('session', 'is not there any more: it was deleted meanwhile');
        if (session.throws.length !== at.throws)
          return refused(
            'session',
            `holds ${session.throws.length} throws by now, not ${at.throws}: look again, then change it`,
          );
        const changed = change(session, file);
        if (!changed.ok) return changed;
        const { to, what } = changed.value;
        const sessions = file.sessions.flatMap((old, i) => (i === at.session ? (to === null ? [] : [to]) : [old]));
        return done({ ...file, sessions }, what);
      },
      pathOf,
    );
  }

  return {
    getFieldwork: ({ playerId }) => {
      const file = book.get(playerId);
      if (!file.ok) return file;
      const { name, handedness, discs, sessions } = file.value;
      return {
        ok: true,
        value: {
          name,
          handedness,
          discs: discs.map(({ id, name, speed, role }) => ({ id, name, speed, role })),
          sessions: sessions.map(sessionShown),
          notes: fileNotes(file.value),
        },
      };
    },
    addSession: ({ playerId, session }) => {
      let place = 0;
      const changed = changePlayer(
        app,
        playerId,
        file => {
          place = file.sessions.length;
          return done({ ...file, sessions: [...file.sessions, sessionOf(session, session.throws)] }, 'Add a session');
        },
        path => path.replace(`sessions[${place}]`, 'session'),
      );
      return changed.ok ? { ok: true, value: { ...changed.value, session: place } } : changed;
    },
    updateSession: ({ conditions, ...at }) =>
      changeSession(
        at,
        ({ throws }) => ({ ok: true, value: { what: 'Change a session', to: sessionOf(conditions, throws) } }),
        path => path.replace(`sessions[${at.session}]`, 'conditions'),
      ),
    removeSession: at =>
      changeSession(at, ({ date, throws }) => ({
        ok: true,
        value: {
          what: `Delete the session${date === undefined ? '' : ` of ${date}`} (${throws.length} throws)`,
          to: null,
        },
      })),
    addThrows: ({ playerId, session: at, add }) => {
      let before = 0;
      return changePlayer(
        app,
        playerId,
        file => {
          const session = file.sessions[at];
          if (session === undefined) return refused('session', 'is not there any more: it was deleted meanwhile');
          before = session.throws.length;
          const longer = { ...session, throws: [...session.throws, ...add.map(throwOf)] };
          const what =
            add.length === 1 ? `Add a throw of ${discName(file, add[0]!.discId)}` : `Add ${add.length} throws`;
          return done({ ...file, sessions: file.sessions.with(at, longer) }, what);
        },
        path =>
          path.replace(/^sessions\[(\d+)\]\.throws\[(\d+)\]/, (whole, session, place) =>
            Number(session) === at && Number(place) >= before ? `add[${Number(place) - before}]` : whole,
          ),
      );
    },
    updateThrow: ({ place, to, ...at }) =>
      changeSession(
        at,
        (session, file) =>
          session.throws[place] === undefined
            ? noThrow
            : {
                ok: true,
                value: {
                  what: `Change a throw of ${discName(file, to.discId)}`,
                  to: { ...session, throws: session.throws.with(place, throwOf(to)) },
                },
              },
        path => path.replace(`sessions[${at.session}].throws[${place}]`, 'to'),
      ),
    removeThrow: ({ place, ...at }) =>
      changeSession(at, (session, file) => {
        const thrown = session.throws[place];
        if (thrown === undefined) return noThrow;
        return {
          ok: true,
          value: {
            what: `Delete a throw of ${discName(file, thrown.discId)}`,
            to: { ...session, throws: session.throws.toSpliced(place, 1) },
          },
        };
      }),
    previewThrowsCsv: ({ playerId, text, options }) => {
      const file = book.get(playerId);
      if (!file.ok) return file;
      const plan = planCsvImport(file.value, text, options);
      return plan.ok ? { ok: true, value: previewOf(plan.value) } : plan;
    },
    importThrowsCsv: ({ playerId, text, options, dropBad }) => {
      let added: CsvPlan | undefined;
      const changed = changePlayer(app, playerId, (file): Result<PlayerChange> => {
        const plan = planCsvImport(file, text, options);
        if (!plan.ok) return plan;
        if (plan.value.problems.length > 0) return { ok: false, problems: plan.value.problems };
        const bad = plan.value.rows.filter(({ problems }) => problems.length > 0);
        if (bad.length !== dropBad)
          return {
            ok: false,
            problems: bad.length === 0 ? [stale(0)] : [stale(bad.length), ...rowProblems(plan.value).slice(0, 200)],
          };
        if (plan.value.sessions.length === 0)
          return refused(
            'file',
            plan.value.known > 0 ? 'holds only throws the player has already' : 'holds no row that can be used',
          );
        added = plan.value;
        return done(
          { ...file, sessions: [...file.sessions, ...plan.value.sessions] },
          `Import ${throwsIn(plan.value.sessions)} throws`,
        );
      });
      if (!changed.ok) return changed;
      return {
        ok: true,
        value: { ...changed.value, throws: throwsIn(added!.sessions), sessions: added!.sessions.length },
      };
    },
    exportThrowsCsv: ({ playerId, length, speed }) => {
      const file = book.get(playerId);
      if (!file.ok) return file;
      const text = throwsCsv(file.value, { length, speed });
      return { ok: true, value: { fileName: fileNameOf(`${file.value.name} throws`, 'csv'), text } };
    },
    getDiscScatter: async ({ playerId, discId, hand }) => {
      const file = book.get(playerId);
      if (!file.ok) return file;
      if (!file.value.discs.some(({ id }) => id === discId))
        return refused('discId', `"${discId}" is no disc of ${file.value.name}`);
      const fitted = await book.fitted(playerId);
      if (!fitted.ok) return fitted;
      if (!fitted.value.throws.some(t => t.discId === discId && t.hand === hand))
        return refused('hand', `no ${hand} throw at full power is measured yet, of any disc`);
      return { ok: true, value: discScatter(file.value, fitted.value, discId, hand) };
    },
  };
}

const done = (file: PlayerFile, what: string): Result<PlayerChange> => ({ ok: true, value: { file, what } });

function refused(path: string, message: string): Result<never> {
  return { ok: false, problems: [{ path, message }] };
}
const noThrow = refused('place', 'holds no throw any more: it was deleted meanwhile');

const stale = (bad: number) => ({
  path: 'dropBad',
  message:
    bad === 0
      ? 'no row is bad: nothing has to be left out'
      : `${bad} rows are bad: mend them, or agree to leave out exactly ${bad}. Nothing was imported`,
});

const discName = ({ discs }: PlayerFile, discId: string) => discs.find(({ id }) => id === discId)?.name ?? discId;

function sessionOf(
  conditions: SessionConditions,
  throws: readonly (ThrowEntry | FieldSession['throws'][number])[],
): FieldSession {
  const { date, wind, bearing_deg, rise_m, surface, note } = conditions;
  return { date, wind, bearing_deg, rise_m, surface, note, throws: throws.map(throwOf) };
}

function throwOf({ discId, hand, shape, power, distance_m, side_m }: ThrowEntry | FieldSession['throws'][number]) {
  return { discId, hand, shape, power, distance_m, side_m };
}

function sessionShown({ date, wind, bearing_deg, rise_m, surface, note, throws }: FieldSession): SessionShown {
  return {
    ...(date === undefined ? {} : { date }),
    ...(wind === undefined
      ? {}
      : { wind: { speed_mps: wind.speed_mps, from_deg: wind.from_deg, height_m: wind.height_m } }),
    ...(bearing_deg === undefined ? {} : { bearing_deg }),
    ...(rise_m === undefined ? {} : { rise_m }),
    ...(surface === undefined ? {} : { surface }),
    ...(note === undefined ? {} : { note }),
    throws: throws.map(({ discId, hand, shape, power, distance_m, side_m }) => ({
      discId,
      hand,
      shape,
      power,
      distance_m,
      ...(side_m === undefined ? {} : { side_m }),
    })),
  };
}

function previewOf(plan: CsvPlan): Output<'previewThrowsCsv'> {
  const { delimiter, hasHeader, decimal, dates, columns, problems, rows, sessions, known } = plan;
  const bad = rows.filter(row => row.problems.length > 0);
  const good = rows.filter(row => row.problems.length === 0);
  const shown = new Set([...bad.slice(0, MOST_BAD_SHOWN), ...good.slice(0, MOST_GOOD_SHOWN)]);
  return {
    delimiter,
    hasHeader,
    decimal,
    dates,
    columns: columns.map(({ name, meaning }) => ({ name, meaning: meaning && headerOfColumn(meaning) })),
    problems: [...problems],
    rows: rows
      .filter(row => shown.has(row))
      .map(({ line, cells, problems }) => ({ line, cells: [...cells], problems: [...problems] })),
    good: problems.length > 0 ? 0 : good.length,
    bad: bad.length,
    known,
    throws: throwsIn(sessions),
    sessions: sessions.length,
  };
}
