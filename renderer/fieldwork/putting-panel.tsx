import { useState } from 'react';
import { Button } from 'react-aria-components';
import type { PuttEntry } from '../../backend/api/contract/putting.ts';
import { ScrollTable } from '../shell/scroll-table.tsx';
import { usePutting } from '../state/fieldwork.ts';
import { usePlanner } from '../state/planner.tsx';
import { counted } from '../words/counted.ts';
import { capital } from '../words/number-words.ts';
import { percent } from '../words/percent.ts';
import { useUnits } from '../words/use-units.ts';
import { PuttForm } from './putt-form.tsx';
import { PuttingChart } from './putting-chart.tsx';

type Rate = Readonly<{ low: number; high: number }>;
const between = ({ low, high }: Rate) => `${percent(low)} to ${percent(high)}`;

/** The putting log: entering tries and makes, what they show by distance and circle, and the fitted curve. */
export function PuttingPanel({ playerId }: Readonly<{ playerId: string }>) {
  const { backend, changeLibrary, say } = usePlanner();
  const units = useUnits();
  const putting = usePutting(playerId);
  const [edited, setEdited] = useState<number | null>(null);
  const report = putting.data;
  if (report === undefined) return <p role="status">Reading the log …</p>;
  const shown = edited === null ? undefined : report.rows[edited];
  const add = async (putts: PuttEntry) => {
    const done = await changeLibrary('The putts could not be added', backend.call.addPutts({ playerId, putts }));
    if (done !== null) say(`Added: ${putts.makes} of ${putts.attempts} from ${units.length(putts.distance_m, 1)}`);
    return done !== null;
  };
  return (
    <div className="putting-panel">
      <section className="putting-log" aria-label="Putting log">
        <PuttForm title="Next putts" saveWords="Add putts" row={null} onSave={add} />
        <dl className="circles">
          {report.circles
            .filter(({ name, attempts }) => name !== 'beyond' || attempts > 0)
            .map(({ name, from_m, to_m, attempts, makes, measured }) => (
              <div key={name}>
                <dt>
                  {name === 'beyond' ? 'Beyond' : name}
                  <span className="soft">
                    {to_m === null
                      ? ` over ${units.length(from_m, 0)}`
                      : from_m === 0
                        ? ` up to ${units.length(to_m, 0)}`
                        : ` over ${units.length(from_m, 0)}, to ${units.length(to_m, 0)}`}
                  </span>
                </dt>
                <dd>
                  {measured === null ? (
                    'none tried'
                  ) : (
                    <>
                      <strong>{percent(measured.rate)}</strong> {makes} of {attempts}
                      <span className="soft"> ({between(measured)})</span>
                    </>
                  )}
                </dd>
              </div>
            ))}
        </dl>
        {shown !== undefined && edited !== null && (
          <PuttForm
            key={edited}
            title={`Putts, row ${edited + 1}`}
            saveWords="Save"
            row={shown}
            onSave={async to => {
              const done = await changeLibrary(
                'The putts could not be changed',
                backend.call.updatePutts({ playerId, place: edited, was: shown, to }),
              );
              if (done !== null) setEdited(null);
              return done !== null;
            }}
            onClose={() => setEdited(null)}
          />
        )}
        {report.rows.length === 0 ? (
          <p className="empty-note">
            No putts yet. Take ten from one distance, write how many went in, move, and go on: five distances of twenty
            make a curve worth trusting.
          </p>
        ) : (
          <ScrollTable label="Putts logged">
            <table className="disc-table">
              <caption>{counted(report.curve.attempts, 'putt')}, the last row first</caption>
              <thead>
                <tr>
                  <th scope="col">From</th>
                  <th scope="col">Made</th>
                  <th scope="col">Date</th>
                  <th scope="col">
                    <span className="unseen">Change</span>
                  </th>
                </tr>
              </thead>
              <tbody>
                {report.rows
                  .map((row, place) => ({ row, place }))
                  .reverse()
                  .map(({ row, place }) => (
                    <tr key={place} data-changed={place === edited || undefined}>
                      <th scope="row">{units.length(row.distance_m, 1)}</th>
                      <td>
                        {row.makes} of {row.attempts}
                      </td>
                      <td>{row.date ?? ''}</td>
                      <td>
                        <div className="row-buttons">
                          <Button
                            className="small-button"
                            aria-label={`Edit row ${place + 1}`}
                            onPress={() => setEdited(place)}
                          >
                            Edit
                          </Button>
                          <Button
                            className="small-button danger"
                            aria-label={`Delete row ${place + 1}`}
                            onPress={() => {
                              setEdited(null);
                              void changeLibrary(
                                'The putts could not be deleted',
                                backend.call.removePutts({ playerId, place, was: row }),
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
        )}
      </section>
      <section className="putting-shown" aria-label="Make chance by distance">
        <PuttingChart report={report} />
        {report.notes.map(note => (
          <p key={note} className="care-note">
            {capital(note)}.
          </p>
        ))}
        {report.byDistance.length > 0 && (
          <ScrollTable label="By distance">
            <table className="disc-table">
              <caption>By distance, with 95 % intervals</caption>
              <thead>
                <tr>
                  <th scope="col">From</th>
                  <th scope="col">Made</th>
                  <th scope="col">Rate</th>
                  <th scope="col">Fitted</th>
                </tr>
              </thead>
              <tbody>
                {report.byDistance.map(({ distance_m, attempts, makes, measured, fitted }) => (
                  <tr key={distance_m}>
                    <th scope="row">{units.length(distance_m, 1)}</th>
                    <td>
                      {makes} of {attempts}
                    </td>
                    <td>
                      {percent(measured.rate)} <span className="soft">({between(measured)})</span>
                    </td>
                    <td>
                      {percent(fitted.chance)} <span className="soft">({between(fitted)})</span>
                    </td>
                  </tr>
                ))}
              </tbody>
            </table>
          </ScrollTable>
        )}
        <p className="soft">
          C1 is the rule book’s putting distance; C2 is a convention of statistics. Calm air; wind lowers every chance.
        </p>
      </section>
    </div>
  );
}
