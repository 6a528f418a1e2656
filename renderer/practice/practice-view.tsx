import { ProgressBar } from 'react-aria-components';
import { useCourses, usePlayer } from '../state/library.ts';
import { usePlanner } from '../state/planner.tsx';
import { type PracticeSearch, usePractice } from '../state/practice.ts';
import { limitOf, usePracticeForm } from '../state/practice-form.ts';
import { counted } from '../words/counted.ts';
import { PracticeFormPanel } from './practice-form.tsx';
import { PracticeResult } from './practice-result.tsx';

/** Practice rounds: pick a limit, see where it suits, what to throw, and a score to beat. */
export function PracticeView() {
  const { settings } = usePlanner();
  const [form, change] = usePracticeForm();
  const player = usePlayer(settings.playerId);
  const courses = useCourses();
  const throwing = player.data?.discs.filter(({ role }) => role === 'throwing').map(({ id }) => id) ?? [];
  const courseIds = courses.data?.map(({ courseId }) => courseId).filter(id => !form.without.includes(id)) ?? [];
  const limit = limitOf(form, throwing);
  const { playerId, day } = settings;
  const { holes, rounds, compare } = form;
  const canAsk = playerId !== null && limit !== null && throwing.length > 0 && courseIds.length > 0;
  const asking = usePractice(canAsk ? { playerId, courseIds, limit, holes, rounds, compare, day } : null);
  const { state } = asking;
  return (
    <main className="library-view practice-view">
      <PracticeFormPanel form={form} change={change} asking={asking} canAsk={canAsk} />
      <section
        className="library-detail practice-detail"
        aria-label="What was found"
        aria-busy={state?.state === 'running'}
      >
        {state === null ? (
          <Teaching />
        ) : state.state === 'running' ? (
          <Progress state={state} />
        ) : state.report === null ? (
          <Ended state={state} />
        ) : (
          <>
            {!asking.isCurrent && (
              <p className="care-word">From before: what you ask for, the player or the day has changed since.</p>
            )}
            <PracticeResult practiceId={asking.practiceId!} report={state.report} />
          </>
        )}
      </section>
    </main>
  );
}

function Teaching() {
  return (
    <div className="practice-teach">
      <h2>A round with fewer choices teaches more</h2>
      <p>
        Pick a limit: putters only, one disc, the hand you use less. The app looks through your courses for holes and
        tees that are short enough for it, plans them with what is left in the bag, and plays them thousands of times
        with your own scatter. You get a score that you reach about one round in three, and what to practise to reach it
        more often.
      </p>
      <p>Choose on the left, then “Find a practice round”. It takes a few seconds a hole.</p>
    </div>
  );
}

const STAGES: Readonly<Record<PracticeSearch['stage'], string>> = {
  looking: 'Looking at lengths and ceilings',
  playing: 'Planning and playing the best holes',
  comparing: 'Planning them with your whole bag',
};

function Progress({ state }: Readonly<{ state: PracticeSearch }>) {
  const { stage, done, total, what } = state;
  return (
    <div className="practice-progress">
      <h2>{STAGES[stage]}</h2>
      <ProgressBar
        aria-label={STAGES[stage]}
        value={done}
        maxValue={Math.max(1, total)}
        valueLabel={`${done} of ${counted(total, 'hole')}`}
      >
        {({ percentage, valueText }) => (
          <>
            <svg className="progress" viewBox="0 0 100 4" preserveAspectRatio="none" aria-hidden="true">
              <rect className="progress-room" width="100" height="4" />
              <rect className="progress-done" width={percentage ?? 0} height="4" />
            </svg>
            <span className="progress-text">
              {valueText}
              {what === '' ? '' : `: ${what}`}
            </span>
          </>
        )}
      </ProgressBar>
    </div>
  );
}

function Ended({ state }: Readonly<{ state: PracticeSearch }>) {
  if (state.state === 'cancelled') return <p role="status">Stopped: nothing was found out.</p>;
  return (
    <div role="alert">
      <h2>The practice round could not be worked out</h2>
      <ul className="practice-list">
        {state.problems.map(({ path, message }) => (
          <li key={path + message}>
            <code>{path}</code> {message}
          </li>
        ))}
      </ul>
    </div>
  );
}
