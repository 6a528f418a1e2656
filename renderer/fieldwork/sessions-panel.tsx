import { useState } from 'react';
import { Button } from 'react-aria-components';
import { offerFile } from '../shell/files.ts';
import type { Fieldwork } from '../state/fieldwork.ts';
import { usePlanner } from '../state/planner.tsx';
import { counted } from '../words/counted.ts';
import { useUnits } from '../words/use-units.ts';
import { CsvImport } from './csv-import.tsx';
import { NewPlayer } from './new-player.tsx';
import { SessionEditor } from './session-editor.tsx';
import { SessionForm } from './session-form.tsx';
import { conditionsWords, sessionName } from './session-words.ts';
import { today } from './today.ts';
import { doneWithTable, useWaitingTable } from './waiting-table.ts';

/** All sessions, newest last in the file and first here; one open for entering throws. */
export function SessionsPanel({ playerId, work }: Readonly<{ playerId: string; work: Fieldwork }>) {
  const { backend, settings, changeLibrary, tell } = usePlanner();
  const units = useUnits();
  const [chosen, setChosen] = useState<number | null>(null);
  const [isNew, setNew] = useState(false);
  const [isImporting, setImporting] = useState(false);
  const dropped = useWaitingTable();
  const [isStarting, setStarting] = useState(false);
  const last = work.sessions.length - 1;
  const open = isNew ? null : chosen !== null && chosen <= last ? chosen : last >= 0 ? last : null;

  const exportCsv = async () => {
    const answer = await backend.call.exportThrowsCsv({ playerId, length: settings.length, speed: settings.speed });
    if (answer.ok) await offerFile(backend, answer.value);
    else tell({ what: 'The throws could not be written', problems: answer.problems });
  };

  return (
    <div className="library-view fieldwork-sessions">
      <section className="library-list" aria-label="Sessions">
        <div className="list-buttons">
          <Button
            className="button"
            onPress={() => {
              setNew(true);
              setStarting(false);
            }}
          >
            New session
          </Button>
          <Button className="small-button" onPress={() => setImporting(true)}>
            Import CSV
          </Button>
          <Button
            className="small-button"
            isDisabled={work.sessions.every(({ throws }) => throws.length === 0)}
            onPress={() => void exportCsv()}
          >
            Export CSV
          </Button>
        </div>
        <ul>
          {work.sessions
            .map((session, place) => ({ session, place }))
            .reverse()
            .map(({ session, place }) => (
              <li key={place}>
                <Button
                  className="library-item"
                  aria-pressed={place === open}
                  data-chosen={place === open || undefined}
                  onPress={() => {
                    setChosen(place);
                    setNew(false);
                    setStarting(false);
                  }}
                >
                  <strong>{sessionName(session, place)}</strong>
                  <span>
                    {counted(session.throws.length, 'throw')}, {conditionsWords(session, units)}
                  </span>
                </Button>
              </li>
            ))}
        </ul>
        <Button className="quiet-button" onPress={() => setStarting(true)}>
          Another player
        </Button>
      </section>
      {isStarting ? (
        <section className="library-detail" aria-label="New player">
          <NewPlayer onDone={() => setStarting(false)} />
        </section>
      ) : isNew ? (
        <section className="library-detail" aria-label="New session">
          <SessionForm
            title="New session"
            session={{ date: today(), throws: [] }}
            saveWords="Start entering throws"
            onSave={async conditions => {
              const added = await changeLibrary(
                'The session could not be added',
                backend.call.addSession({ playerId, session: { ...conditions, throws: [] } }),
              );
              if (added === null) return;
              setChosen(added.session);
              setNew(false);
            }}
            onClose={() => setNew(false)}
          />
        </section>
      ) : open === null ? (
        <section className="library-detail empty-state" aria-label="Session">
          <h2>No session yet</h2>
          <p>
            Take one disc, stand on a line, throw it ten times the same way, and measure how far along the line and how
            far beside it each came to rest.
          </p>
        </section>
      ) : (
        work.sessions[open] !== undefined && (
          <SessionEditor key={open} playerId={playerId} work={work} place={open} session={work.sessions[open]} />
        )
      )}
      {(isImporting || dropped !== null) && (
        <CsvImport
          playerId={playerId}
          work={work}
          dropped={dropped}
          onAdded={() => {
            setChosen(null);
            setNew(false);
          }}
          onClose={() => {
            setImporting(false);
            doneWithTable();
          }}
        />
      )}
    </div>
  );
}
