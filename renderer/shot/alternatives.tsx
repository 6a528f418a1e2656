import { useState } from 'react';
import { Button } from 'react-aria-components';
import type { HolePlan, ShotReport } from '../../core/strategy/plan-report.ts';
import { aimWords } from '../words/aim-words.ts';
import { capital, costWords } from '../words/number-words.ts';
import { percent } from '../words/percent.ts';
import { useUnits } from '../words/use-units.ts';
import { LEAST_PENALTY } from './least-penalty.ts';
import { isSameShot, shotKey } from './shot-choice.ts';

type AlternativesProps = Readonly<{
  plan: HolePlan;
  shown: ShotReport;
  onPick: (shot: ShotReport) => void;
}>;

const FIRST_SHOWN = 8;

/** Every other disc and hand with what it gives up; picking one shows it on the card, the map and the side view. */
export function Alternatives({ plan, shown, onPick }: AlternativesProps) {
  const units = useUnits();
  const [isAll, setAll] = useState(false);
  const shots = [plan.choice, ...plan.alternatives];
  const listed = isAll ? shots : shots.slice(0, FIRST_SHOWN);
  return (
    <div className="alternatives">
      <h3>Instead</h3>
      <ul>
        {listed.map(shot => (
          <li key={shotKey(shot)}>
            <Button
              className="alternative"
              aria-pressed={isSameShot(shot, shown)}
              data-chosen={isSameShot(shot, shown) || undefined}
              onPress={() => onPick(shot)}
            >
              <span className="alternative-disc">
                {shot.disc}
                {shot.hand === 'forehand' ? ', forehand' : ''}
              </span>
              <span className="cost">{shot === plan.choice ? 'the choice' : costWords(shot.regret, shot.tie)}</span>
              <span className="alternative-how">
                {capital(shot.title)}; aim {aimWords(shot.aimFromBasket_deg)}
              </span>
              <span className="alternative-odds">
                clean {percent(shot.cleanChance)} · inside {units.length(10, 0)} {percent(shot.within10mChance)}
                {shot.penaltyChance >= LEAST_PENALTY && ` · penalty ${percent(shot.penaltyChance)}`}
              </span>
            </Button>
          </li>
        ))}
      </ul>
      {shots.length > FIRST_SHOWN && (
        <Button className="quiet-button" onPress={() => setAll(!isAll)}>
          {isAll ? 'Show fewer' : `Show all ${shots.length}`}
        </Button>
      )}
    </div>
  );
}
