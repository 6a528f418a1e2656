import { useState } from 'react';
import { Button } from 'react-aria-components';
import type { DayInput } from '../../core/air/day-input.ts';
import type { ReviewReport } from '../../core/review/review-report.ts';
import { ScrollTable } from '../shell/scroll-table.tsx';
import { useCourse } from '../state/library.ts';
import { usePlanner } from '../state/planner.tsx';
import type { KeptRound } from '../state/rounds.ts';
import { windOf } from '../wind/day-words.ts';
import { roundDay } from '../wind/round-day.ts';
import { WindSetter } from '../wind/wind-setter.tsx';
import { useUnits } from '../words/use-units.ts';
import { compassPoint } from '../words/wind-words.ts';
import { signed } from './cost-words.ts';

type Round = KeptRound['round'];
type WindWasProps = Readonly<{
  round: Round;
  report: ReviewReport | null;
  onSave: (round: Round, what: string) => Promise<boolean>;
}>;

/** The wind that was planned for, the one that blew, and what that would have changed. */
export function WindWas({ round, report, onSave }: WindWasProps) {
  const { settings } = usePlanner();
  const refs = useCourse(settings.courseId).data?.holes.map(hole => hole.ref) ?? [];
  const today = roundDay(settings, refs);
  const units = useUnits();
  const [dragged, setDragged] = useState<DayInput | null>(null);
  const planned = round.day ?? {};
  const real = dragged ?? round.realDay ?? planned;
  const words = (day: DayInput) => {
    const wind = windOf(day);
    return wind.speed_mps === 0 ? 'calm' : `${units.speed(wind.speed_mps)} from the ${compassPoint(wind.from_deg)}`;
  };
  const save = (change: Partial<Round>, what: string) => {
    setDragged(null);
    void onSave({ ...round, ...change }, what);
  };
  return (
    <div className="wind-was">
      <div>
        <h2>It was planned for</h2>
        <p>
          {words(planned)}{' '}
          {JSON.stringify(today) !== JSON.stringify(planned) && (
            <Button
              className="small-button"
              onPress={() => save({ day: today }, 'Change the wind the round was planned for')}
            >
              Take {settings.isByTeeTime ? 'the middle of the winds' : 'the wind'} of the Round view ({words(today)})
            </Button>
          )}
        </p>
      </div>
      <div>
        <h2>What the wind really was</h2>
        <WindSetter
          label="Wind that blew"
          day={real}
          holeBearing_deg={null}
          onDrag={setDragged}
          onSet={day => save({ realDay: day }, 'Change the wind that blew')}
        />
        {round.realDay === undefined ? (
          <p className="soft">Not given yet: the review judges the round in the planned wind.</p>
        ) : (
          <Button
            className="small-button"
            onPress={() => {
              const { realDay: _, ...rest } = round;
              setDragged(null);
              void onSave(rest, 'Forget the wind that blew');
            }}
          >
            It was as planned
          </Button>
        )}
      </div>
      <div className="wind-changed">
        <h2>What it changed</h2>
        {report === null || report.asItWas === null ? (
          <p className="soft">
            Set the wind that blew and review the round: then the plan made for it stands here beside the one you had.
          </p>
        ) : (
          <WindHoles report={report} />
        )}
      </div>
    </div>
  );
}

function WindHoles({ report }: Readonly<{ report: ReviewReport }>) {
  const { asPlanned, asItWas, windHoles } = report;
  if (asItWas === null) return null;
  const others = windHoles.filter(hole => hole.isOtherDisc).length;
  return (
    <>
      <p>
        Expected {asPlanned.total.startValue.toFixed(1)} in the planned wind, {asItWas.total.startValue.toFixed(1)} in
        the one that blew. Your choices cost {asPlanned.total.sum.choiceCost.throws.toFixed(2)} by the planned wind,{' '}
        {asItWas.total.sum.choiceCost.throws.toFixed(2)} by the one that blew.{' '}
        {others === 0
          ? 'The plan asks for the same discs from every tee.'
          : `The plan asks for another disc from ${others === 1 ? 'one tee' : `${others} tees`}.`}
      </p>
      <ScrollTable label="The plan in both winds">
        <table className="disc-table">
          <caption>From the tee: the plan you had, and the plan remade for the wind that blew</caption>
          <thead>
            <tr>
              <th scope="col">Hole</th>
              <th scope="col">Planned</th>
              <th scope="col">In the wind that blew</th>
              <th scope="col" className="number">
                Staying with it costs
              </th>
            </tr>
          </thead>
          <tbody>
            {windHoles.map(hole => (
              <tr key={hole.ref} data-changed={hole.isOtherDisc || undefined}>
                <th scope="row">{hole.ref}</th>
                <td>
                  {hole.planned.title}, {hole.planned.disc}
                </td>
                <td>
                  {hole.isOtherDisc && <strong>other disc: </strong>}
                  {hole.real.title}, {hole.real.disc}
                </td>
                <td className="number">
                  {hole.stayingCost === null ? '?' : hole.stayingCost === 0 ? '–' : signed(hole.stayingCost)}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollTable>
    </>
  );
}
