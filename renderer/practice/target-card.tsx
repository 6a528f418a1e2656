import type { PracticeRound } from '../state/practice.ts';
import { percent } from '../words/percent.ts';

/** The score to beat, with its chance, and the scores beside it. */
export function TargetCard({ round }: Readonly<{ round: PracticeRound }>) {
  const { target, par, expectedThrows, sd, ownThrows, course } = round;
  return (
    <section className="target-card" aria-label="A fair target">
      <p className="target-score">
        <span>Target</span> <strong>{target.throws}</strong>
      </p>
      <div className="target-words">
        <p role="status">
          <strong>
            {course}: {againstPar(target.overPar, par)}, reached in {percent(target.chance)} of simulated rounds.
          </strong>
        </p>
        <p>
          {expectedThrows.toFixed(1)} throws expected, give or take {sd.toFixed(1)}
          {ownThrows === null ? '' : `; ${ownThrows.toFixed(1)} with your whole bag`}.
        </p>
        {isFarFromFair(target.chance) && (
          <p>No whole score lies near one round in three here: with more holes there is one.</p>
        )}
        <p className="soft">
          {percent(target.chanceSameDay)} when what is not known of your discs is the same all round. The simulation is
          sure to ±{(100 * target.standardError).toFixed(1)} points.
        </p>
      </div>
      <table className="target-beside">
        <caption className="unseen">Chances of the scores round the target</caption>
        <thead>
          <tr>
            <th scope="col">In</th>
            {target.beside.map(({ throws }) => (
              <th key={throws} scope="col" data-chosen={throws === target.throws || undefined}>
                {throws}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          <tr>
            <th scope="row">Chance</th>
            {target.beside.map(({ throws, chance }) => (
              <td key={throws} data-chosen={throws === target.throws || undefined}>
                {percent(chance)}
              </td>
            ))}
          </tr>
        </tbody>
      </table>
    </section>
  );
}

/** So far off one in three that it should be said. */
const FAR_OFF = 0.12;
const isFarFromFair = (chance: number) => Math.abs(chance - 1 / 3) > FAR_OFF;

function againstPar(over: number, par: number): string {
  return over === 0 ? `par ${par}` : `${Math.abs(over)} ${over > 0 ? 'over' : 'under'} par ${par}`;
}
