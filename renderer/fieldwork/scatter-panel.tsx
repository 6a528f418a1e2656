import { useState } from 'react';
import { Button } from 'react-aria-components';
import type { Output } from '../../backend/api/contract/api.ts';
import { SpecialList } from '../bag/special-list.tsx';
import { type Fieldwork, type Hand, useDiscScatter } from '../state/fieldwork.ts';
import { problemsOf } from '../state/problems-error.ts';
import { counted } from '../words/counted.ts';
import { capital } from '../words/number-words.ts';
import { type ShowUnits, useUnits } from '../words/use-units.ts';
import { DriftCharts } from './drift-chart.tsx';
import { Pick } from './pick.tsx';
import { ScatterPlots } from './scatter-plots.tsx';
import { ScatterTable } from './scatter-table.tsx';
import { powerWords, sessionName, windAgainstLine } from './session-words.ts';

export type Scatter = Output<'getDiscScatter'>;
type View = Scatter['views'][number];
type Chosen = Readonly<{ discId: string; hand: Hand }>;

/** Every disc from every hand that was thrown; the chosen one seen from above with the fit over it. */
export function ScatterPanel({ playerId, work }: Readonly<{ playerId: string; work: Fieldwork }>) {
  const lines = thrownLines(work);
  const [chosen, setChosen] = useState<Chosen | null>(null);
  const shown = lines.find(line => line.discId === chosen?.discId && line.hand === chosen.hand) ?? lines[0];
  return (
    <div className="library-view fieldwork-scatter">
      <section className="library-list" aria-label="Discs thrown">
        <ul>
          {lines.map(({ discId, hand, name, throws }) => {
            const isShown = shown !== undefined && shown.discId === discId && shown.hand === hand;
            return (
              <li key={`${discId} ${hand}`}>
                <Button
                  className="library-item"
                  aria-pressed={isShown}
                  data-chosen={isShown || undefined}
                  onPress={() => setChosen({ discId, hand })}
                >
                  <strong>{name}</strong>
                  <span>
                    {hand}, {counted(throws, 'throw')}
                  </span>
                </Button>
              </li>
            );
          })}
        </ul>
      </section>
      {shown === undefined ? (
        <section className="library-detail empty-state" aria-label="Where it lands">
          <h2>No throws yet</h2>
          <p>
            Measure some throws under Sessions; here you then see where each disc lands and how far that can be trusted.
          </p>
        </section>
      ) : (
        <DiscDetail key={`${shown.discId} ${shown.hand}`} playerId={playerId} work={work} {...shown} />
      )}
    </div>
  );
}

function thrownLines({ discs, sessions }: Fieldwork) {
  const all = sessions.flatMap(({ throws }) => throws);
  return discs.flatMap(({ id, name }) =>
    (['backhand', 'forehand'] as const).flatMap(hand => {
      const throws = all.filter(t => t.discId === id && t.hand === hand).length;
      return throws === 0 ? [] : [{ discId: id, hand, name, throws }];
    }),
  );
}

type DetailProps = Readonly<{ playerId: string; work: Fieldwork; discId: string; hand: Hand; name: string }>;

function DiscDetail({ playerId, work, discId, hand, name }: DetailProps) {
  const units = useUnits();
  const scatter = useDiscScatter(playerId, discId, hand);
  const [wanted, setWanted] = useState(0);
  const title = `${name}, ${hand}`;
  if (scatter.isError)
    return (
      <section className="library-detail empty-state" aria-label={title}>
        <h2>{title}</h2>
        {problemsOf(scatter.error).map(({ path, message }) => (
          <p key={path}>{message}</p>
        ))}
      </section>
    );
  if (scatter.data === undefined)
    return (
      <section className="library-detail" aria-label={title} aria-busy="true">
        <h2>{title}</h2>
        <p role="status">Fitting the throws …</p>
      </section>
    );
  const { views, averageDay_m, averageDaySd_m, finish_m, finishSd_m, unused } = scatter.data;
  const at = Math.min(wanted, views.length - 1);
  const view = views[at]!;
  return (
    <section className="library-detail" aria-label={title}>
      <div className="detail-head scatter-head">
        <h2>{title}</h2>
        <p>
          Average day <strong>{units.length(averageDay_m, 0)}</strong> ± {units.length(averageDaySd_m, 1)}, ends{' '}
          <strong>{units.side(finish_m)}</strong> ± {units.length(finishSd_m, 1)}
          <span className="soft"> in calm air, flat, full power</span>
        </p>
        <span className="spring" />
        <Pick
          label="Throws"
          value={String(at)}
          options={Object.fromEntries(views.map((one, i) => [String(i), viewWords(one, work, units)]))}
          onPick={place => setWanted(Number(place))}
        />
      </div>
      {scatter.isFetching && <p role="status">Fitting the throws anew …</p>}
      <ScatterPlots view={view} words={viewWords(view, work, units)} />
      <p className="soft">
        {view.conditions === null
          ? 'Flat throws of all sessions, each moved by what the fit says its wind, slope and power did to it.'
          : 'As measured, with the fitted flight in the wind and on the slope of that day.'}{' '}
        A throw that is set aside stays in the file: it only counts next to nothing.
      </p>
      <SpecialList rows={[scatter.data]} />
      <ScatterTable view={view} unused={unused} work={work} />
      <DriftCharts scatter={scatter.data} />
      {work.notes.map(note => (
        <p key={note} className="soft">
          {capital(note)}.
        </p>
      ))}
    </section>
  );
}

/** "2026-05-30: hyzer, 80 %, headwind 4.0 m/s" */
function viewWords({ conditions, sessions }: View, work: Fieldwork, units: ShowUnits): string {
  if (conditions === null) return 'all flat throws, wind taken out';
  const { shape, power, wind_mps, windFrom_deg, grade } = conditions;
  const names = sessions.map(place => {
    const session = work.sessions[place];
    return session === undefined ? `session ${place + 1}` : sessionName(session, place);
  });
  const slope = Math.abs(grade) < 0.005 ? [] : [grade > 0 ? 'uphill' : 'downhill'];
  const power_ = power === 1 ? [] : [powerWords(power)];
  const met = [shape, ...power_, windAgainstLine(wind_mps, windFrom_deg, units), ...slope];
  return `${names.slice(0, 2).join(', ')}${names.length > 2 ? ' …' : ''}: ${met.join(', ')}`;
}
