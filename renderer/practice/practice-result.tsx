import { useState } from 'react';
import { inUnits } from '../../core/sheet/words/lengths.ts';
import { plainSource } from '../../core/sheet/words/plain-source.ts';
import { ScrollTable } from '../shell/scroll-table.tsx';
import { usePlanner } from '../state/planner.tsx';
import type { PracticeReport, PracticeRound } from '../state/practice.ts';
import { counted } from '../words/counted.ts';
import { percent } from '../words/percent.ts';
import { useUnits } from '../words/use-units.ts';
import { PracticeCourses } from './practice-courses.tsx';
import { PracticeSheet } from './practice-sheet.tsx';
import { TargetCard } from './target-card.tsx';

/** Where the limit suits, what to throw, the score to beat, what to practise, what to be careful about. */
export function PracticeResult({ practiceId, report }: Readonly<{ practiceId: string; report: PracticeReport }>) {
  const { settings } = usePlanner();
  const [key, setKey] = useState<string | null>(null);
  const say = (text: string) => inUnits(text, settings);
  const round = report.rounds.find(one => one.key === key) ?? report.rounds[0];
  return (
    <>
      <h2 className="practice-limit">{capital(report.limitWords)}</h2>
      {round === undefined ? (
        <p role="status">{say(report.text)}</p>
      ) : (
        <>
          {report.rounds.length > 1 && (
            <fieldset className="radio-group">
              <legend className="unseen">Round</legend>
              {report.rounds.map(one => (
                <label key={one.key} className="pick">
                  <input
                    type="radio"
                    name="practice-round"
                    checked={one.key === round.key}
                    onChange={() => setKey(one.key)}
                  />
                  <span>{one.course}</span>
                </label>
              ))}
            </fieldset>
          )}
          <TargetCard round={round} />
          <HolesTable round={round} />
          <Drills round={round} say={say} />
          <section className="practice-careful" aria-label="Careful">
            <h3>Careful</h3>
            <ul className="practice-list">
              {cautionsOf(round).map(text => (
                <li key={text}>{say(text)}</li>
              ))}
            </ul>
          </section>
          {round.skip.length > 0 && (
            <details>
              <summary>{counted(round.skip.length, 'hole')} of this course to leave out, and why</summary>
              <ul className="practice-list">
                {round.skip.map(({ ref, text }) => (
                  <li key={ref}>
                    <strong>{ref}</strong> {say(text)}
                  </li>
                ))}
              </ul>
            </details>
          )}
          <PracticeSheet key={round.key} practiceId={practiceId} courseId={round.key} />
        </>
      )}
      <PracticeCourses courses={report.courses} say={say} />
      <details>
        <summary>How this is worked out</summary>
        <ul className="practice-list">
          {report.notes.map(text => (
            <li key={text}>{say(text)}</li>
          ))}
        </ul>
      </details>
    </>
  );
}

function HolesTable({ round }: Readonly<{ round: PracticeRound }>) {
  const units = useUnits();
  const hasCosts = round.holes.some(hole => hole.limitCosts !== null);
  return (
    <ScrollTable label="Holes of the practice round">
      <table className="disc-table">
        <caption>
          {counted(round.holes.length, 'hole')} of {round.course}. Reached: within {units.length(20, 0)} in the throws
          par allows before two putts. Clean: throws that touch nothing and cost no penalty.
        </caption>
        <thead>
          <tr>
            <th scope="col">Hole</th>
            <th scope="col">Tee</th>
            <th scope="col">Long</th>
            <th scope="col">Par</th>
            <th scope="col">Throw</th>
            <th scope="col">Reached</th>
            <th scope="col">Clean</th>
            <th scope="col">Expected</th>
            {hasCosts && <th scope="col">The limit costs</th>}
          </tr>
        </thead>
        <tbody>
          {round.holes.map(hole => (
            <tr key={hole.ref}>
              <th scope="row">{hole.ref}</th>
              <td>{hole.tee}</td>
              <td>{units.length(hole.playLength_m, 0)}</td>
              <td>{hole.par}</td>
              <td>
                <strong>{hole.shot.disc}</strong> <span className="soft">{hole.shot.title}</span>
              </td>
              <td>{percent(hole.reach20Chance)}</td>
              <td>{percent(hole.cleanShare)}</td>
              <td>{hole.expectedThrows.toFixed(1)}</td>
              {hasCosts && <td>{hole.limitCosts === null ? '' : costWords(hole.limitCosts)}</td>}
            </tr>
          ))}
        </tbody>
      </table>
    </ScrollTable>
  );
}

function Drills({ round, say }: Readonly<{ round: PracticeRound; say: (text: string) => string }>) {
  if (round.drills.length === 0) return null;
  return (
    <section aria-label="To practise">
      <h3>To practise, most worth first</h3>
      <ol className="practice-drills">
        {round.drills.map(({ title, text, why }) => (
          <li key={title}>
            <strong>{say(title)}</strong>
            <p>{say(text)}</p>
            <p className="soft">{say(why)}</p>
          </li>
        ))}
      </ol>
    </section>
  );
}

function cautionsOf(round: PracticeRound): string[] {
  return [
    ...round.cautions,
    ...round.holes.flatMap(({ ref, cautions }) => cautions.map(text => `Hole ${ref}: ${plainSource(text)}`)),
  ];
}

/** Below the sampling error of two plans nothing is told apart. */
const LEAST_COST = 0.05;
const costWords = (cost: number) => (cost < LEAST_COST ? 'nothing' : `${cost.toFixed(1)} throws`);
const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);
