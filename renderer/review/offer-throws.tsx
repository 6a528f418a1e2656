import { useQuery } from '@tanstack/react-query';
import { useEffect, useState } from 'react';
import { Button } from 'react-aria-components';
import { ScrollTable } from '../shell/scroll-table.tsx';
import { valueIn } from '../state/library.ts';
import { usePlanner } from '../state/planner.tsx';
import { problemsOf } from '../state/problems-error.ts';
import { useOffer } from '../state/rounds.ts';
import { useUnits } from '../words/use-units.ts';
import { plural } from './cost-words.ts';

/** The round's throws as fieldwork: what they would change is shown before anything is added. */
export function OfferThrows({ roundId, isReviewed }: Readonly<{ roundId: string; isReviewed: boolean }>) {
  const { backend, changeLibrary, say } = usePlanner();
  const units = useUnits();
  const offer = useOffer(roundId);
  const throws = offer.data?.throws ?? [];
  const [chosen, setChosen] = useState<ReadonlySet<string> | null>(null);
  const [asked, setAsked] = useState<readonly string[] | null>(null);
  const plain = throws.filter(t => t.isPlain).map(({ key }) => key);
  const ticked = chosen ?? new Set(plain);
  const keys = throws.filter(t => t.distance_m !== null && ticked.has(t.key)).map(({ key }) => key);
  const wanted = keys.join(' ');
  // biome-ignore lint/correctness/useExhaustiveDependencies: what was shown is of other throws now
  useEffect(() => setAsked(null), [wanted]);
  const preview = useQuery({
    queryKey: ['players', 'fit of', roundId, asked],
    queryFn: () => valueIn(backend.call.previewFit({ roundId, keys: [...asked!] })),
    enabled: asked !== null && asked.length > 0,
    retry: false,
  });
  if (!isReviewed)
    return (
      <p className="review-state">
        Review the round first: the review says how sheltered each hole is, and so what wind its throws met.
      </p>
    );
  if (offer.isError)
    return (
      <p className="review-state">
        {problemsOf(offer.error)
          .map(({ message }) => message)
          .join('; ')}
      </p>
    );
  const toggle = (key: string) => {
    const next = new Set(ticked);
    if (!next.delete(key)) next.add(key);
    setChosen(next);
  };
  const accept = async () => {
    const done = await changeLibrary('The throws could not be added', backend.call.acceptFit({ roundId, keys }));
    if (done === null) return;
    setChosen(null);
    say(`${plural(done.added, 'throw')} added to the fieldwork`);
  };
  const usable = throws.filter(t => t.distance_m !== null);
  const left = throws.filter(t => t.distance_m === null && t.discId !== null);
  return (
    <div className="offer">
      <p>
        Full throws that nothing stopped say what your discs really do. Tick those that count; nothing is added before
        you say so, and it can be undone.
      </p>
      {usable.length === 0 ? (
        <p className="review-state">
          No throw of this round can be taken as a measurement: it needs the disc, a place of rest and nothing in the
          way.
        </p>
      ) : (
        <ScrollTable label="Throws to add">
          <table className="disc-table">
            <caption>Throws that can be taken as measurements</caption>
            <thead>
              <tr>
                <th scope="col">Take</th>
                <th scope="col">Hole, throw</th>
                <th scope="col">Disc</th>
                <th scope="col" className="number">
                  Distance
                </th>
                <th scope="col" className="number">
                  Aside
                </th>
                <th scope="col">Look at</th>
              </tr>
            </thead>
            <tbody>
              {usable.map(t => (
                <tr key={t.key}>
                  <td>
                    <input
                      type="checkbox"
                      aria-label={`Take throw ${t.number} of hole ${t.ref}`}
                      checked={ticked.has(t.key)}
                      onChange={() => toggle(t.key)}
                    />
                  </td>
                  <th scope="row">
                    {t.ref}, {t.number}
                  </th>
                  <td>
                    {t.disc}
                    {t.hand === 'forehand' ? ', forehand' : ''}
                  </td>
                  <td className="number">{units.length(t.distance_m!)}</td>
                  <td className="number">{t.side_m === null ? 'not known' : units.side(t.side_m)}</td>
                  <td className="soft">{t.why || 'a full throw'}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </ScrollTable>
      )}
      {left.length > 0 && (
        <details className="assumptions">
          <summary>{plural(left.length, 'throw')} left out</summary>
          <ul>
            {left.map(t => (
              <li key={t.key}>
                Hole {t.ref}, throw {t.number}, {t.disc}: {t.why}
              </li>
            ))}
          </ul>
        </details>
      )}
      <div className="form-buttons">
        <Button className="button" isDisabled={keys.length === 0} onPress={() => setAsked(keys)}>
          Show what {plural(keys.length, 'throw')} would change
        </Button>
        {preview.data !== undefined && asked !== null && (
          <Button className="button" onPress={() => void accept()}>
            Add {plural(keys.length, 'throw')} to the fieldwork
          </Button>
        )}
      </div>
      {asked !== null && preview.isFetching && (
        <p className="soft" role="status">
          Fitting with the new throws…
        </p>
      )}
      {preview.isError && (
        <p className="field-problem" role="alert">
          {problemsOf(preview.error)
            .map(({ message }) => message)
            .join('; ')}
        </p>
      )}
      {asked !== null && preview.data !== undefined && (
        <ScrollTable label="What would change">
          <table className="disc-table">
            <caption>Range table, before and after: mean distance of a flat full throw in calm air</caption>
            <thead>
              <tr>
                <th scope="col">Disc</th>
                <th scope="col" className="number">
                  New throws
                </th>
                <th scope="col" className="number">
                  Before
                </th>
                <th scope="col" className="number">
                  After
                </th>
                <th scope="col" className="number">
                  Change
                </th>
              </tr>
            </thead>
            <tbody>
              {preview.data.changes.map(({ discId, disc, hand, added, before, after }) => (
                <tr key={`${discId} ${hand}`} data-changed={added > 0 || undefined}>
                  <th scope="row">
                    {disc}
                    {hand === 'forehand' ? ', forehand' : ''}
                  </th>
                  <td className="number">{added === 0 ? '–' : added}</td>
                  {[before, after].map((fit, i) => (
                    <td key={i === 0 ? 'before' : 'after'} className="number">
                      {fit === null
                        ? 'not known'
                        : `${units.length(fit.averageDay_m, 1)} ± ${units.length(fit.averageDaySd_m, 1)}`}
                    </td>
                  ))}
                  <td className="number">
                    {before === null || after === null
                      ? '–'
                      : changeWords(after.averageDay_m - before.averageDay_m, units.length)}
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </ScrollTable>
      )}
    </div>
  );
}

function changeWords(change_m: number, length: (length_m: number, digits?: number) => string): string {
  if (Math.abs(change_m) < 0.05) return 'none';
  return `${change_m < 0 ? '−' : '+'}${length(Math.abs(change_m), 1)}`;
}
