import { useEffect, useState } from 'react';
import { type Key, Tab, TabList, TabPanel, Tabs } from 'react-aria-components';
import { ImportButton } from '../shell/import-button.tsx';
import { useFieldwork } from '../state/fieldwork.ts';
import { usePlanner } from '../state/planner.tsx';
import { problemsOf } from '../state/problems-error.ts';
import { FieldworkCautions } from './fieldwork-cautions.tsx';
import { NewPlayer } from './new-player.tsx';
import { PuttingPanel } from './putting-panel.tsx';
import { ScatterPanel } from './scatter-panel.tsx';
import { SessionsPanel } from './sessions-panel.tsx';
import { useWaitingTable } from './waiting-table.ts';

/** Measured throws and putts: entering them, and what they show. */
export function FieldworkView() {
  const { settings } = usePlanner();
  const { playerId } = settings;
  const work = useFieldwork(playerId);
  const [tab, setTab] = useState<Key>('sessions');
  const isTableWaiting = useWaitingTable() !== null;
  useEffect(() => {
    if (isTableWaiting) setTab('sessions');
  }, [isTableWaiting]);
  if (playerId === null)
    return (
      <main className="first-steps">
        <h1>Fieldwork</h1>
        <p>
          Fieldwork is throws you measured: one disc, one hand, one way of throwing, again and again. It begins with who
          throws what.
        </p>
        <NewPlayer onDone={null} />
        <p>Or bring a player file along:</p>
        <span>
          <ImportButton kind="player" words="Import a player" />
        </span>
      </main>
    );
  if (work.data === undefined)
    return (
      <main className="first-steps" aria-busy={work.isFetching}>
        <h1>Fieldwork</h1>
        {work.isError ? (
          problemsOf(work.error).map(({ path, message }) => <p key={path}>{message}</p>)
        ) : (
          <p role="status">Reading the fieldwork …</p>
        )}
      </main>
    );
  return (
    <main className="fieldwork-view">
      <h1 className="unseen">Fieldwork of {work.data.name}</h1>
      <Tabs className="fieldwork-tabs" key={playerId} selectedKey={tab} onSelectionChange={setTab}>
        <TabList aria-label="Fieldwork" className="tab-list">
          <Tab id="sessions">Sessions</Tab>
          <Tab id="scatter">Where they land</Tab>
          <Tab id="putting">Putting log</Tab>
          <Tab id="care">Care</Tab>
        </TabList>
        <TabPanel id="sessions" className="fieldwork-panel">
          <SessionsPanel playerId={playerId} work={work.data} />
        </TabPanel>
        <TabPanel id="scatter" className="fieldwork-panel">
          <ScatterPanel playerId={playerId} work={work.data} />
        </TabPanel>
        <TabPanel id="putting" className="fieldwork-panel">
          <PuttingPanel playerId={playerId} />
        </TabPanel>
        <TabPanel id="care" className="fieldwork-panel">
          <FieldworkCautions />
        </TabPanel>
      </Tabs>
    </main>
  );
}
