import { useState } from 'react';
import { Button } from 'react-aria-components';
import { ScrollTable } from '../shell/scroll-table.tsx';
import type { Fieldwork, Session } from '../state/fieldwork.ts';
import { usePlanner } from '../state/planner.tsx';
import { counted } from '../words/counted.ts';
import { useUnits } from '../words/use-units.ts';
import { mannerWords, sideWords } from './session-words.ts';
import { ThrowForm } from './throw-form.tsx';

type ThrowTableProps = Readonly<{ playerId: string; work: Fieldwork; place: number; session: Session }>;

/** An imported session may hold thousands. */
const FIRST_SHOWN = 100;

/** The throws of a session, the last one first. */
export function ThrowTable({ playerId, work, place, session }: ThrowTableProps) {
  const { backend, changeLibrary } = usePlanner();
  const units = useUnits();
  const [edited, setEdited] = useState<number | null>(null);
  const [isWhole, setWhole] = useState(false);
  const names = new Map(work.discs.map(({ id, name }) => [id, name]));
  const at = { playerId, session: place, throws: session.throws.length };
  const shown = edited === null ? undefined : session.throws[edited];
  if (session.throws.length === 0)
    return (
      <p className="empty-note">
        No throws yet. Write how far the first one went and press Enter, then how far beside the line and Enter again.
      </p>
    );
  return (
    <>
      {shown !== undefined && edited !== null && (
        <ThrowForm
          key={edited}
          number={edited + 1}
          discs={work.discs}
          thrown={shown}
          onSave={async to => {
            const done = await changeLibrary(
              'The throw could not be changed',
              backend.call.updateThrow({ ...at, place: edited, to }),
            );
            if (done !== null) setEdited(null);
          }}
          onClose={() => setEdited(null)}
        />
      )}
      <ScrollTable label="Throws of this session">
        <table className="disc-table throw-table">
          <caption>{counted(session.throws.length, 'throw')}, the last one first</caption>
          <thead>
            <tr>
              <th scope="col">No.</th>
              <th scope="col">Disc</th>
              <th scope="col">Thrown</th>
              <th scope="col">Distance</th>
              <th scope="col">Side</th>
              <th scope="col">
                <span className="unseen">Change</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {session.throws
              .map((thrown, i) => ({ thrown, i }))
              .slice(isWhole ? 0 : -FIRST_SHOWN)
              .reverse()
              .map(({ thrown, i }) => (
                <tr key={i} data-changed={i === edited || undefined}>
                  <th scope="row">{i + 1}</th>
                  <td>{names.get(thrown.discId) ?? thrown.discId}</td>
                  <td>{mannerWords(thrown)}</td>
                  <td>{units.length(thrown.distance_m, 1)}</td>
                  <td>{sideWords(thrown.side_m, units)}</td>
                  <td>
                    <div className="row-buttons">
                      <Button className="small-button" aria-label={`Edit throw ${i + 1}`} onPress={() => setEdited(i)}>
                        Edit
                      </Button>
                      <Button
                        className="small-button danger"
                        aria-label={`Delete throw ${i + 1}`}
                        onPress={() => {
                          setEdited(null);
                          void changeLibrary(
                            'The throw could not be deleted',
                            backend.call.removeThrow({ ...at, place: i }),
                          );
                        }}
                      >
                        Delete
                      </Button>
                    </div>
                  </td>
                </tr>
              ))}
          </tbody>
        </table>
      </ScrollTable>
      {!isWhole && session.throws.length > FIRST_SHOWN && (
        <Button className="small-button show-all" onPress={() => setWhole(true)}>
          Show all {session.throws.length}
        </Button>
      )}
    </>
  );
}
