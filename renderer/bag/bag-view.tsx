import { useState } from 'react';
import { Button } from 'react-aria-components';
import type { DiscEntry } from '../../backend/api/contract/players.ts';
import { offerFile } from '../shell/files.ts';
import { ImportButton } from '../shell/import-button.tsx';
import { RenameField } from '../shell/rename-field.tsx';
import { ScrollTable } from '../shell/scroll-table.tsx';
import { usePlayer, usePlayers, useThrows } from '../state/library.ts';
import { usePlanner } from '../state/planner.tsx';
import { useUnits } from '../words/use-units.ts';
import { DiscForm } from './disc-form.tsx';

const NEW_DISC: DiscEntry = { id: '', name: '', speed: 5, glide: 5, turn: -1, fade: 1 };
const BASIS = {
  measured: 'measured',
  borrowed: 'from your other discs',
  predicted: 'a guess: never measured',
} as const;

/** Whose bag, which discs, and what the fieldwork says they do. */
export function BagView() {
  const { settings, change, changeLibrary, backend, tell } = usePlanner();
  const { playerId } = settings;
  const units = useUnits();
  const players = usePlayers();
  const player = usePlayer(playerId);
  const throws = useThrows(playerId);
  const [edited, setEdited] = useState<string | null>(null);
  const [isAdding, setAdding] = useState(false);
  const waiting = throws.isPending ? '…' : '–';
  const fitted = new Map(throws.data?.throws.map(row => [`${row.discId} ${row.hand}`, row]));

  const save = async (discId: string | null, disc: DiscEntry): Promise<boolean> => {
    const done =
      discId === null
        ? await changeLibrary('The disc could not be added', backend.call.addDisc({ playerId: playerId!, disc }))
        : await changeLibrary(
            'The disc could not be changed',
            backend.call.updateDisc({ playerId: playerId!, discId, disc }),
          );
    return done !== null;
  };

  return (
    <main className="library-view">
      <section className="library-list" aria-label="Players">
        <h1>Players</h1>
        <ul>
          {players.data?.map(line => (
            <li key={line.playerId}>
              <Button
                className="library-item"
                aria-pressed={line.playerId === playerId}
                data-chosen={line.playerId === playerId || undefined}
                onPress={() => change({ playerId: line.playerId }, 'change the player')}
              >
                <strong>{line.name}</strong>
                <span>
                  {line.discs} discs, {line.throws} throws measured{line.sample ? ', sample' : ''}
                </span>
              </Button>
            </li>
          ))}
        </ul>
        <ImportButton kind="player" words="Import a player" />
        <p className="soft">
          A player file holds your discs and the throws you measured. You can drop it on the window.
        </p>
      </section>

      {player.data === undefined || playerId === null ? (
        <section className="library-detail empty-state" aria-label="The bag">
          <h2>No bag yet</h2>
          <p>
            Import a player file: discs with their numbers, and ten or more measured throws of at least one of them.
          </p>
        </section>
      ) : (
        <section className="library-detail" aria-label="The bag">
          <div className="detail-head">
            <RenameField
              key={playerId}
              label="Player"
              name={player.data.name}
              onRename={name =>
                void changeLibrary('The player could not be renamed', backend.call.renamePlayer({ playerId, name }))
              }
            />
            <Button
              className="small-button"
              onPress={() =>
                void backend.call.exportPlayer({ playerId }).then(answer => {
                  if (answer.ok) return offerFile(backend, answer.value);
                  tell({ what: 'The player could not be written', problems: answer.problems });
                })
              }
            >
              Export
            </Button>
            <Button
              className="small-button danger"
              onPress={() =>
                void changeLibrary('The player could not be deleted', backend.call.removePlayer({ playerId }))
              }
            >
              Delete player
            </Button>
          </div>
          <p className="soft">
            {player.data.handedness === 'right' ? 'Right-handed' : 'Left-handed'}, {player.data.sessions.length}{' '}
            {player.data.sessions.length === 1 ? 'session' : 'sessions'} of fieldwork,{' '}
            {player.data.putting.reduce((n, row) => n + row.attempts, 0)} putts.
          </p>
          {throws.isPending && <p className="soft">Working out what the measured throws say…</p>}
          <ScrollTable label="Discs">
            <table className="disc-table">
              <caption>Discs: what is printed on them, and what they do when you throw them on an average day</caption>
              <thead>
                <tr>
                  <th scope="col">Disc</th>
                  <th scope="col">Speed</th>
                  <th scope="col">Glide</th>
                  <th scope="col">Turn</th>
                  <th scope="col">Fade</th>
                  <th scope="col">Backhand</th>
                  <th scope="col">Forehand</th>
                  <th scope="col">Known how</th>
                  <th scope="col">
                    <span className="unseen">Change</span>
                  </th>
                </tr>
              </thead>
              <tbody>
                {player.data.discs.map(disc => {
                  const [back, fore] = [fitted.get(`${disc.id} backhand`), fitted.get(`${disc.id} forehand`)];
                  return (
                    <tr key={disc.id} data-edited={edited === disc.id || undefined}>
                      <th scope="row">
                        {disc.name}
                        <span className="soft">
                          {' '}
                          {disc.class}
                          {disc.role === 'putting' ? ', for putting' : ''}
                        </span>
                        {back?.readiness.verdict === 'too fast for now' && (
                          <span className="care-word"> too fast for now</span>
                        )}
                      </th>
                      <td>{signed(disc.speed)}</td>
                      <td>{signed(disc.glide)}</td>
                      <td>{signed(disc.turn)}</td>
                      <td>{signed(disc.fade)}</td>
                      <td>
                        {back === undefined
                          ? waiting
                          : `${units.length(back.averageDay_m, 0)}, ${units.side(back.finish_m)}`}
                      </td>
                      <td>
                        {fore === undefined
                          ? waiting
                          : `${units.length(fore.averageDay_m, 0)}, ${units.side(fore.finish_m)}`}
                      </td>
                      <td>{back === undefined ? '' : BASIS[back.basis]}</td>
                      <td>
                        <div className="row-buttons">
                          <Button
                            className="small-button"
                            aria-label={`Edit ${disc.name}`}
                            onPress={() => setEdited(disc.id)}
                          >
                            Edit
                          </Button>
                          <Button
                            className="small-button danger"
                            aria-label={`Delete ${disc.name}`}
                            onPress={() =>
                              void changeLibrary(
                                'The disc could not be deleted',
                                backend.call.removeDisc({ playerId, discId: disc.id }),
                              )
                            }
                          >
                            Delete
                          </Button>
                        </div>
                      </td>
                    </tr>
                  );
                })}
              </tbody>
            </table>
          </ScrollTable>
          {edited !== null && (
            <DiscForm
              key={edited}
              title="Change the disc"
              disc={entryOf(player.data.discs.find(disc => disc.id === edited) ?? NEW_DISC)}
              onSave={async disc => (await save(edited, disc)) && setEdited(null)}
              onClose={() => setEdited(null)}
            />
          )}
          {isAdding ? (
            <DiscForm
              title="A new disc"
              disc={NEW_DISC}
              onSave={async disc => (await save(null, { ...disc, id: crypto.randomUUID() })) && setAdding(false)}
              onClose={() => setAdding(false)}
            />
          ) : (
            <Button className="button" onPress={() => setAdding(true)}>
              Add a disc
            </Button>
          )}
          {throws.data?.notes.map(note => (
            <p key={note} className="soft">
              {note}
            </p>
          ))}
        </section>
      )}
    </main>
  );
}

const signed = (value: number): string => String(value).replace('-', '−');

/** Only what the player entered: a class or role that followed from the numbers follows them again. */
function entryOf(disc: DiscEntry): DiscEntry {
  const { class: _, ...entry } = disc;
  return entry;
}
