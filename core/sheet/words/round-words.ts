import type { PlanReport } from '../../strategy/plan-report.ts';
import { percent } from '../../units/percent.ts';
import { shortened } from '../markup.ts';

const ON_PAR = 0.05;

/** What the round is expected to come to. */
export function roundWords({ round, attitude }: Pick<PlanReport, 'round' | 'attitude'>): string {
  const over = round.expectedThrows - round.par;
  const against =
    Math.abs(over) < ON_PAR ? 'on par' : `${Math.abs(over).toFixed(1)} ${over > 0 ? 'over' : 'under'} par`;
  const target =
    round.target === undefined ? '' : ` for ${round.target.throws} (chance ${percent(round.target.chance)})`;
  return `${round.expectedThrows.toFixed(1)} throws expected, give or take ${round.sd.toFixed(1)}; par ${round.par}, ${against}${ATTITUDES[attitude]}${target}`;
}

const ATTITUDES = { even: '', guard: '; guarding against bad scores', push: '; pushing' } as const;

const LONGEST_DISC = 26;

/** What to put in the bag, when the plan chose it. */
export function carryWords({ bag }: Pick<PlanReport, 'bag'>): string[] {
  return bag === undefined ? [] : [`${bag.carried.map(({ disc }) => shortened(disc, LONGEST_DISC)).join(', ')}.`];
}
