import type { HolePlan, ShotReport } from '../../strategy/plan-report.ts';
import { percent } from '../../units/percent.ts';
import type { UnitsChoice } from '../../units/units-choice.ts';
import { far } from './lengths.ts';

const WORTH_SAYING = 0.005;

const BASIS = {
  measured: '',
  borrowed: 'Few own throws: less sure.',
  predicted: 'Never measured: a guess from other discs.',
} as const;

/** How sure the throw is, most useful first. */
export function oddsWords(plan: HolePlan, shot: ShotReport, units: UnitsChoice): string[] {
  return [
    [`Clean flight ${percent(shot.cleanChance)}.`, ...penaltyWords(shot)].join(' '),
    `Inside ${far(10, units)} ${percent(shot.within10mChance)}, ${far(20, units)} ${percent(shot.within20mChance)}.`,
    `2 in 3: ±${far(shot.distanceSd_m, units)} long, ±${far(shot.sideSd_m, units)} wide.`,
    ...(BASIS[shot.basis] ? [BASIS[shot.basis]] : []),
    ...(shot === plan.choice ? [scoreWords(plan)] : [`${shot.expectedThrows.toFixed(1)} throws expected.`]),
  ];
}

/** "Penalty 4 %: out-of-bounds 3 %, mando 1 %."; nothing where there is next to none. */
function penaltyWords(shot: ShotReport): string[] {
  const kinds = (
    [
      ['out-of-bounds', shot.outOfBoundsChance],
      ['hazard', shot.hazardChance],
      ['missed mando', shot.mandoChance],
      ['lost disc', shot.lostChance ?? 0],
    ] as const
  ).filter(([, chance]) => chance >= WORTH_SAYING);
  if (shot.penaltyChance < WORTH_SAYING) return [];
  if (kinds.length === 0) return [`Penalty ${percent(shot.penaltyChance)}.`];
  const named = kinds.map(([what, chance]) => `${what} ${percent(chance)}`);
  return [
    named.length === 1 ? `Penalty: ${named[0]}.` : `Penalty ${percent(shot.penaltyChance)}: ${named.join(', ')}.`,
  ];
}

/** Chances to beat par and to make it; what is left is over. */
function scoreWords({ scoreDistribution, par, expectedThrows }: HolePlan): string {
  const share = (is: (throws: number) => boolean) =>
    Math.min(
      1,
      scoreDistribution.reduce((sum, { throws, chance }) => (is(throws) ? sum + chance : sum), 0),
    );
  const under = percent(share(throws => throws < par));
  const level = percent(share(throws => throws === par));
  return `${expectedThrows.toFixed(1)} throws; under par ${under}, par ${level}.`;
}
