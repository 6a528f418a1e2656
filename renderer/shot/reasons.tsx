import { inUnits } from '../../core/sheet/words/lengths.ts';
import type { HolePlan } from '../../core/strategy/plan-report.ts';
import { usePlanner } from '../state/planner.tsx';
import { aimWords } from '../words/aim-words.ts';
import { costWords } from '../words/number-words.ts';
import { percent } from '../words/percent.ts';
import { useUnits } from '../words/use-units.ts';

/** Why the choice and not the main alternatives, then what the next throws will be. */
export function Reasons({ plan }: Readonly<{ plan: HolePlan }>) {
  const { settings } = usePlanner();
  const units = useUnits();
  return (
    <div className="reasons">
      <h3>Why this and not…</h3>
      {plan.reasons.length === 0 ? (
        <p>Nothing else in the bag comes near it here.</p>
      ) : (
        <ul>
          {plan.reasons.map(reason => (
            <li key={`${reason.againstDiscId} ${reason.hand} ${reason.special ?? ''}`}>
              <strong>
                {reason.against}
                {reason.hand === 'forehand' ? ', forehand' : ''}
                {reason.special === undefined ? '' : `, ${reason.special}`}
              </strong>
              {' · '}
              <span className="cost">
                {costWords(
                  reason.costs,
                  reason.facts.some(fact => fact.kind === 'tie'),
                )}
              </span>
              <p>{inUnits(reason.text, settings)}</p>
            </li>
          ))}
        </ul>
      )}
      <h3>Then</h3>
      <ul>
        {plan.next.map(next => (
          <li key={next.after}>
            <strong>After {next.after}</strong> · <span className="cost">{percent(next.chance)}</span>
            <p>
              {next.shot === undefined
                ? `Putt from ${units.length(next.toBasket_m)}.`
                : `${units.length(next.toBasket_m)} left: ${next.shot.disc}, ${next.shot.title}, ${next.shot.power >= 0.995 ? 'full power' : `${percent(next.shot.power)} power`}, aim ${aimWords(next.shot.aimFromBasket_deg)}.`}
            </p>
          </li>
        ))}
      </ul>
      {plan.choice.notes.map(note => (
        <p key={note} className="soft">
          {inUnits(note, settings)}
        </p>
      ))}
    </div>
  );
}
