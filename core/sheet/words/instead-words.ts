import { isSpecialShape } from '../../strategy/flown-as.ts';
import type { HolePlan, ShotReport } from '../../strategy/plan-report.ts';
import type { UnitsChoice } from '../../units/units-choice.ts';
import { briefShot } from './brief-shot.ts';
import { inUnits } from './lengths.ts';

const EQUAL = 0.005;

/** What else could be thrown, cheapest first, each with its cost and why it was not chosen; `why` false leaves that out. */
export function insteadWords(
  plan: HolePlan,
  pinned: ShotReport | undefined,
  units: UnitsChoice,
  why: boolean,
): string[] {
  if (pinned !== undefined) {
    const gain = pinned.expectedThrows - plan.choice.expectedThrows;
    return [
      `${briefShot(plan.choice)} (the plan’s choice; yours costs ${gain < EQUAL ? 'no more' : gain.toFixed(2)}).`,
    ];
  }
  return plan.alternatives.map(shot => {
    const reason = why
      ? plan.reasons.find(
          ({ againstDiscId, hand, special }) =>
            againstDiscId === shot.discId &&
            hand === shot.hand &&
            special === (isSpecialShape(shot.shape) ? shot.shape : undefined),
        )
      : undefined;
    return `${briefShot(shot)}: ${costWords(shot)}.${reason === undefined ? '' : ` ${inUnits(reason.text, units)}`}`;
  });
}

function costWords({ tie, regret }: ShotReport): string {
  if (tie || regret < EQUAL) return 'as good';
  return `costs ${regret.toFixed(2)} throws`;
}
