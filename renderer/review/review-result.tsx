import { useState } from 'react';
import { Button, Label, Radio, RadioGroup } from 'react-aria-components';
import type { HoleReview, ReviewReport, WindReview } from '../../core/review/review-report.ts';
import { ScrollTable } from '../shell/scroll-table.tsx';
import { useRoundHole } from '../state/rounds.ts';
import { capital } from '../words/number-words.ts';
import { useUnits } from '../words/use-units.ts';
import { compassPoint } from '../words/wind-words.ts';
import { signed, wonWords } from './cost-words.ts';
import { HoleThrows } from './hole-throws.tsx';
import { ReviewMap } from './review-map.tsx';
import { SumCells, SumHeads, SumsTable } from './sums-table.tsx';

type ResultProps = Readonly<{ report: ReviewReport; courseId: string; layout: string | undefined }>;

/** What a round won and lost, from the whole to the single throw. */
export function ReviewResult({ report, courseId, layout }: ResultProps) {
  const units = useUnits();
  const [wind, setWind] = useState<'asItWas' | 'asPlanned'>('asItWas');
  const shown = (wind === 'asItWas' ? report.asItWas : null) ?? report.asPlanned;
  const [ref, setRef] = useState<string | null>(null);
  const hole = shown.holes.find(own => own.ref === ref) ?? costliest(shown);
  const { total, air } = shown;
  const { gain, choiceCost, executionCost } = total.sum;
  const windWords =
    air.windSpeed_mps === 0
      ? 'calm air'
      : `${units.speed(air.windSpeed_mps)} from the ${compassPoint(air.windFrom_deg)}`;
  return (
    <div className="review-result">
      {report.asItWas !== null && (
        <RadioGroup className="radio-group" value={wind} onChange={value => setWind(value as typeof wind)}>
          <Label>Judged in</Label>
          <Radio className="radio" value="asItWas">
            the wind that blew
          </Radio>
          <Radio className="radio" value="asPlanned">
            the wind it was planned for
          </Radio>
        </RadioGroup>
      )}
      <p className="review-headline">
        <strong>{capital(wonWords(gain.throws))}</strong> in {windWords}: {total.score} throws where{' '}
        {total.startValue.toFixed(1)} were expected (par {total.par}).
      </p>
      <dl className="review-parts">
        <Part
          name="Choices cost"
          value={choiceCost.throws === 0 ? 'nothing' : choiceCost.throws.toFixed(2)}
          error={choiceCost.standardError}
          words="what another throw from the same lie would have saved"
        />
        <Part
          name="Execution cost"
          value={signed(executionCost.throws)}
          error={executionCost.standardError}
          words="what throws lost against your own average with them; minus is better than average"
        />
      </dl>
      <div className="review-columns">
        <HolesTable shown={shown} chosen={hole?.ref ?? null} onChoose={setRef} />
        {hole !== undefined && <HoleInDetail hole={hole} courseId={courseId} layout={layout} />}
      </div>
      <h2>Where it was won and lost</h2>
      <div className="sums-grid">
        <SumsTable caption="By distance" groups={shown.byPhase} />
        <SumsTable caption="By disc" groups={shown.byDisc} />
        <SumsTable caption="By line" groups={shown.byShape} />
        <SumsTable caption="By hand" groups={shown.byHand} />
      </div>
      <ul className="soft review-notes">
        <li>
          Won is counted against the expected score from the same place. Choices that cost less than 0.03 throws count
          as none: no better one is known. ± is one standard error of the simulated throws.
        </li>
        {report.notes.map(note => (
          <li key={note}>{note}</li>
        ))}
      </ul>
    </div>
  );
}

type PartProps = Readonly<{ name: string; value: string; error: number; words: string }>;

function Part({ name, value, error, words }: PartProps) {
  return (
    <div>
      <dt>{name}</dt>
      <dd>
        <strong>{value}</strong> <span className="soft">± {error.toFixed(2)}</span>
        <span className="soft part-words">{words}</span>
      </dd>
    </div>
  );
}

const costliest = ({ holes }: WindReview): HoleReview | undefined =>
  [...holes].sort((a, b) => a.sum.gain.throws - b.sum.gain.throws)[0];

type HolesTableProps = Readonly<{ shown: WindReview; chosen: string | null; onChoose: (ref: string) => void }>;

function HolesTable({ shown, chosen, onChoose }: HolesTableProps) {
  const { holes, total } = shown;
  return (
    <ScrollTable label="Holes">
      <table className="disc-table sums-table">
        <caption>By hole</caption>
        <thead>
          <tr>
            <th scope="col">Hole</th>
            <th scope="col" className="number">
              Par
            </th>
            <th scope="col" className="number">
              Score
            </th>
            <th scope="col" className="number">
              Expected
            </th>
            <SumHeads />
          </tr>
        </thead>
        <tbody>
          {holes.map(hole => (
            <tr key={hole.ref} data-changed={hole.ref === chosen || undefined}>
              <th scope="row">
                <Button
                  className="small-button"
                  aria-label={`Throws of hole ${hole.ref}`}
                  aria-pressed={hole.ref === chosen}
                  onPress={() => onChoose(hole.ref)}
                >
                  {hole.ref}
                </Button>
              </th>
              <td className="number">{hole.par}</td>
              <td className="number">{hole.score}</td>
              <td className="number">{hole.startValue.throws.toFixed(2)}</td>
              <SumCells sum={hole.sum} />
            </tr>
          ))}
        </tbody>
        <tfoot>
          <tr>
            <th scope="row">All</th>
            <td className="number">{total.par}</td>
            <td className="number">{total.score}</td>
            <td className="number">{total.startValue.toFixed(2)}</td>
            <SumCells sum={total.sum} />
          </tr>
        </tfoot>
      </table>
    </ScrollTable>
  );
}

type DetailProps = Readonly<{ hole: HoleReview; courseId: string; layout: string | undefined }>;

function HoleInDetail({ hole, courseId, layout }: DetailProps) {
  const read = useRoundHole(courseId, hole.ref, layout);
  return (
    <section className="hole-detail" aria-label={`Hole ${hole.ref}`}>
      <h2>
        Hole {hole.ref}: {hole.score} throws, {wonWords(hole.sum.gain.throws)}
      </h2>
      {read.data !== undefined && (
        <ReviewMap
          map={read.data.map}
          throws={hole.throws.map(t => ({ ...t, words: `Throw ${t.number}: ${t.disc ?? 'disc not written'}` }))}
        />
      )}
      <HoleThrows hole={hole} />
    </section>
  );
}
