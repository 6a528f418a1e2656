import { useState } from 'react';
import { Button } from 'react-aria-components';
import { loadCaution } from '../../core/player/session-load.ts';
import type { Fieldwork, Session } from '../state/fieldwork.ts';
import { usePlanner } from '../state/planner.tsx';
import { useUnits } from '../words/use-units.ts';
import { powerOf } from './pick.tsx';
import { SessionForm } from './session-form.tsx';
import { conditionsWords, sessionName } from './session-words.ts';
import { TapMap } from './tap-map.tsx';
import { ThrowEntry, type ThrowManner, useThrowManner } from './throw-entry.tsx';
import { ThrowTable } from './throw-table.tsx';

type SessionEditorProps = Readonly<{ playerId: string; work: Fieldwork; place: number; session: Session }>;

/** One session: what it met, entering its throws by tape or on a map, and the throws so far. */
export function SessionEditor({ playerId, work, place, session }: SessionEditorProps) {
  const { backend, changeLibrary, say } = usePlanner();
  const units = useUnits();
  const [isEditing, setEditing] = useState(false);
  const [way, setWay] = useState<'tape' | 'map'>('tape');
  const manner = useThrowManner(work.discs, session);
  const caution = loadCaution(session);
  const at = { playerId, session: place, throws: session.throws.length };

  const add = async (measured: Readonly<{ distance_m: number; side_m?: number }>): Promise<boolean> => {
    const thrown = { ...thrownBy(manner.manner), ...measured };
    const done = await changeLibrary(
      'The throw could not be added',
      backend.call.addThrows({ playerId, session: place, add: [thrown] }),
    );
    if (done !== null) say(`Added: ${units.length(measured.distance_m, 1)}`);
    return done !== null;
  };

  return (
    <section className="library-detail" aria-label="Session">
      {isEditing ? (
        <SessionForm
          title="Change the session"
          session={session}
          saveWords="Save"
          onSave={async conditions => {
            const done = await changeLibrary(
              'The session could not be changed',
              backend.call.updateSession({ ...at, conditions }),
            );
            if (done !== null) setEditing(false);
          }}
          onClose={() => setEditing(false)}
        />
      ) : (
        <div className="detail-head session-head">
          <h2>{sessionName(session, place)}</h2>
          <p className="soft">
            {conditionsWords(session, units)}
            {session.bearing_deg !== undefined && `, thrown towards ${Math.round(session.bearing_deg)}°`}
            {session.note !== undefined && session.note !== '' && `. ${session.note}`}
          </p>
          <span className="spring" />
          <Button className="small-button" onPress={() => setEditing(true)}>
            Edit conditions
          </Button>
          <Button
            className="small-button danger"
            onPress={() => void changeLibrary('The session could not be deleted', backend.call.removeSession(at))}
          >
            Delete session
          </Button>
        </div>
      )}
      {caution !== null && (
        <p className="care-note" role="status">
          {caution}
        </p>
      )}
      <ThrowEntry manner={manner} way={way} onWay={setWay} onThrow={add} />
      {way === 'map' && (
        <TapMap
          session={session}
          onRest={add}
          onBearing={bearing_deg => {
            const { throws: _, ...conditions } = session;
            return changeLibrary(
              'The line could not be kept',
              backend.call.updateSession({ ...at, conditions: { ...conditions, bearing_deg } }),
            );
          }}
        />
      )}
      <ThrowTable playerId={playerId} work={work} place={place} session={session} />
    </section>
  );
}

function thrownBy({ discId, hand, shape, power }: ThrowManner) {
  return { discId, hand, shape, power: powerOf(power) };
}
