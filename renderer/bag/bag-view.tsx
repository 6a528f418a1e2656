import { useState } from 'react';
import { Button, Tab, TabList, TabPanel, Tabs } from 'react-aria-components';
import type { DiscEntry } from '../../backend/api/contract/players.ts';
import { offerFile } from '../shell/files.ts';
import { ImportButton } from '../shell/import-button.tsx';
import { RenameField } from '../shell/rename-field.tsx';
import { usePlayer, usePlayers, useThrows } from '../state/library.ts';
import { useMeasuring } from '../state/measuring.ts';
import { usePlanner } from '../state/planner.tsx';
import { ArmPanel } from './arm-panel.tsx';
import { DiscForm } from './disc-form.tsx';
import { DiscTable } from './disc-table.tsx';
import { LayoutPanel } from './layout-panel.tsx';
import { MeasurePanel } from './measure-panel.tsx';
import { RangePanel } from './range-panel.tsx';

const NEW_DISC: DiscEntry = { id: '', name: '', speed: 5, glide: 5, turn: -1, fade: 1 };
/** Whose bag, which discs, and what the fieldwork says they do. */
export function BagView() {
  const { settings, change, changeLibrary, backend, tell } = usePlanner();
  const { playerId } = settings;
  const players = usePlayers();
  const player = usePlayer(playerId);
  const throws = useThrows(playerId);
  const [edited, setEdited] = useState<string | null>(null);
  const [isAdding, setAdding] = useState(false);
  const waiting = throws.isPending ? '…' : '–';
  const measuring = useMeasuring();

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
                void backend.call.exportPlayer({ playerId }).then(async answer => {
                  const kept = answer.ok ? await offerFile(backend, answer.value) : answer;
                  if (!kept.ok) tell({ what: 'The player could not be written', problems: kept.problems });
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
          <Tabs className="bag-tabs">
            <TabList aria-label="About the bag" className="tab-list">
              <Tab id="discs">Discs</Tab>
              <Tab id="range">Range</Tab>
              <Tab id="layout">Gaps and doubles</Tab>
              <Tab id="arm">Arm and wear</Tab>
              <Tab id="measure">Measure next</Tab>
            </TabList>
            <TabPanel id="discs" className="bag-panel">
              <DiscTable
                discs={player.data.discs}
                throws={throws.data?.throws}
                waiting={waiting}
                edited={edited}
                onEdit={setEdited}
                onRemove={discId =>
                  void changeLibrary('The disc could not be deleted', backend.call.removeDisc({ playerId, discId }))
                }
              />
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
            </TabPanel>
            <TabPanel id="range" className="bag-panel">
              {throws.data === undefined ? <Waiting /> : <RangePanel report={throws.data} />}
            </TabPanel>
            <TabPanel id="layout" className="bag-panel">
              {throws.data === undefined ? <Waiting /> : <LayoutPanel report={throws.data} />}
            </TabPanel>
            <TabPanel id="arm" className="bag-panel">
              {throws.data === undefined ? <Waiting /> : <ArmPanel report={throws.data} />}
            </TabPanel>
            <TabPanel id="measure" className="bag-panel">
              <MeasurePanel asking={measuring} />
            </TabPanel>
          </Tabs>
        </section>
      )}
    </main>
  );
}

function Waiting() {
  return <p>Known as soon as the measured throws are worked out.</p>;
}

/** Only what the player entered: a class or role that followed from the numbers follows them again. */
function entryOf(disc: DiscEntry): DiscEntry {
  const { class: _, ...entry } = disc;
  return entry;
}
