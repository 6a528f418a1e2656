import type { HolePlan } from '../../core/strategy/plan-report.ts';
import { throwsWords } from '../words/number-words.ts';
import { percent } from '../words/percent.ts';

const LEAST_SHOWN = 0.005;

/** The chance of each score on the hole, as columns with their numbers. */
export function ScoreOdds({ plan }: Readonly<{ plan: HolePlan }>) {
  const shown = plan.scoreDistribution.filter(({ chance }) => chance >= LEAST_SHOWN);
  const most = Math.max(...shown.map(({ chance }) => chance));
  return (
    <figure className="score-odds" aria-label="Chances of each score">
      <figcaption>
        Score <strong>{throwsWords(plan.expectedThrows)}</strong> expected, par {plan.par}
      </figcaption>
      <ol>
        {shown.map(({ throws, chance }) => (
          <li key={throws} data-par={throws === plan.par || undefined}>
            <span className="score-chance">{percent(chance)}</span>
            <svg className="score-column" viewBox="0 0 10 40" preserveAspectRatio="none" aria-hidden="true">
              <rect width="10" y={40 - 40 * (chance / most)} height={40 * (chance / most)} />
            </svg>
            <span className="score-throws">
              {throws}
              {throws === plan.par && <span className="score-par"> par</span>}
            </span>
          </li>
        ))}
      </ol>
    </figure>
  );
}
