import { Button, ProgressBar } from 'react-aria-components';
import { ScrollTable } from '../shell/scroll-table.tsx';
import { useCourse } from '../state/library.ts';
import type { AskMeasuring, MeasureNext } from '../state/measuring.ts';
import { usePlanner } from '../state/planner.tsx';
import { counted } from '../words/counted.ts';
import { percent } from '../words/percent.ts';
import { useUnits } from '../words/use-units.ts';
import { BASIS_WORDS } from './basis-words.ts';

const MOST_ROWS = 8;
const MOST_HOLES = 4;
const NORMAL_90 = 1.6448536269514722; // Φ⁻¹(0.95)

/** Which disc to take to the field next: where one session would change this course's plans most. */
export function MeasurePanel({ asking }: Readonly<{ asking: AskMeasuring }>) {
  const { settings } = usePlanner();
  const course = useCourse(settings.courseId);
  const { state, isCurrent, canAsk, ask, cancel } = asking;
  const isRunning = state?.state === 'running';
  const name = course.data?.name ?? 'the course';
  return (
    <section className="measure-next" aria-label="What to measure next" aria-busy={isRunning}>
      <p>
        Ten more throws of which disc would save the most throws on <strong>{name}</strong>, in the wind and with the
        limits set for the round? The holes are planned, results of such a session are imagined, and the plan is chosen
        anew under each.
      </p>
      {!canAsk && <p>Choose a course first.</p>}
      {isRunning ? (
        <div className="round-progress measure-progress">
          <ProgressBar
            aria-label="Holes looked at"
            value={state.done}
            maxValue={Math.max(1, state.total)}
            valueLabel={`${state.done} of ${state.total} holes`}
          >
            {({ percentage, valueText }) => (
              <>
                <svg className="progress" viewBox="0 0 100 4" preserveAspectRatio="none" aria-hidden="true">
                  <rect className="progress-room" width="100" height="4" />
                  <rect className="progress-done" width={percentage ?? 0} height="4" />
                </svg>
                <span className="progress-text">Planning and imagining, {valueText}</span>
              </>
            )}
          </ProgressBar>
          <Button className="small-button" onPress={cancel}>
            Cancel
          </Button>
        </div>
      ) : (
        <Button className="button" isDisabled={!canAsk} onPress={ask}>
          {state === null ? 'Find out what to measure' : 'Ask again'}
        </Button>
      )}
      {state?.state === 'cancelled' && <p role="status">Stopped: nothing was found out.</p>}
      {state?.state === 'failed' && (
        <ul className="plain-list" role="alert">
          {state.problems.map(({ path, message }) => (
            <li key={path}>
              {path} {message}
            </li>
          ))}
        </ul>
      )}
      {state?.answer != null && (
        <>
          {!isCurrent && (
            <p className="care-word">From before: the course, the day, the limits or your throws have changed since.</p>
          )}
          <Answer answer={state.answer} />
        </>
      )}
    </section>
  );
}

function Answer({ answer }: Readonly<{ answer: MeasureNext }>) {
  const units = useUnits();
  const worthwhile = answer.rows.filter(row => row.isClear);
  const others = answer.rows.length - worthwhile.length;
  const give = (sd_m: number) => `±\u00a0${units.length(NORMAL_90 * sd_m, 1).replace(' ', '\u00a0')}`;
  return (
    <>
      <h2>{answer.course}</h2>
      {worthwhile.length === 0 ? (
        <p role="status">
          No session would change these plans by more than the sampling error: they hardly depend on what is not known
          yet. Measure what you like best, or throw a hand you have never measured.
        </p>
      ) : (
        <>
          <p role="status">{headline(worthwhile, answer)}</p>
          <ScrollTable label="Discs to measure">
            <table className="disc-table">
              <caption>
                One session of {answer.throws} throws, most worth first. Throws saved over{' '}
                {counted(answer.holes.length, 'hole')}; ± holds the truth nine times in ten.
              </caption>
              <thead>
                <tr>
                  <th scope="col">Disc</th>
                  <th scope="col">Throws saved</th>
                  <th scope="col">Rank</th>
                  <th scope="col">Average day known to</th>
                  <th scope="col">May change the throw on</th>
                </tr>
              </thead>
              <tbody>
                {worthwhile.slice(0, MOST_ROWS).map((row, i) => (
                  <tr key={`${row.discId} ${row.hand}`}>
                    <th scope="row">
                      {row.disc}
                      <span className="soft">
                        {' '}
                        {row.hand}, {BASIS_WORDS[row.basis]}
                      </span>
                    </th>
                    <td>
                      <strong>{row.worth.toFixed(2)}</strong> ± {(NORMAL_90 * row.standardError).toFixed(2)}
                    </td>
                    <td>{i === 0 ? 'first' : row.isAsGoodAsFirst ? 'as good as the first' : 'less'}</td>
                    <td>
                      {give(row.averageDaySd_m.before)} now, then {give(row.averageDaySd_m.after)}
                    </td>
                    <td>
                      {row.holes
                        .slice(0, MOST_HOLES)
                        .map(({ ref, chance }) => `hole\u00a0${ref} (${percent(chance).replace(' ', '\u00a0')})`)
                        .join(', ')}
                    </td>
                  </tr>
                ))}
              </tbody>
            </table>
          </ScrollTable>
        </>
      )}
      {others > 0 && worthwhile.length > 0 && (
        <p className="soft">{others} more are not clearly worth anything on this course.</p>
      )}
      <details>
        <summary>How this is worked out</summary>
        <p>{answer.method}</p>
        <p>
          {answer.draws} imagined results of each session. A hand without a single measured throw is not offered:
          measure ten throws of a midrange with it first.
        </p>
      </details>
    </>
  );
}

function headline(worthwhile: MeasureNext['rows'], { throws }: MeasureNext): string {
  const level = worthwhile.filter(row => row.isAsGoodAsFirst);
  const named = (level.length > 0 ? level : worthwhile.slice(0, 1)).slice(0, 3).map(row => `${row.disc} (${row.hand})`);
  const list = named.length === 1 ? named[0] : `${named.slice(0, -1).join(', ')} or ${named.at(-1)}`;
  return `Take ${list} to the field: ${throws} throws, flat, full power, distance and side written down.${named.length > 1 ? ' The error cannot tell these apart.' : ''}`;
}
