import type { HolePlan } from '../../strategy/plan-report.ts';
import { percent } from '../../units/percent.ts';
import type { UnitsChoice } from '../../units/units-choice.ts';
import { briefShot } from './brief-shot.ts';
import { far } from './lengths.ts';

const AFTER = { 'a clean flight': 'Clean', 'a hit on the way': 'If it hits', 'a penalty': 'After a penalty' } as const;

/** The throw after this one, from each likely lie, the likeliest first. */
export function nextWords({ next }: HolePlan, units: UnitsChoice): string[] {
  return [...next]
    .sort((a, b) => b.chance - a.chance)
    .map(({ after, chance, toBasket_m, shot }) => {
      const where = `${AFTER[after]} (${percent(chance)}), ${far(toBasket_m, units)} to go`;
      return `${where}: ${shot === undefined ? 'putt' : briefShot(shot)}.`;
    });
}
