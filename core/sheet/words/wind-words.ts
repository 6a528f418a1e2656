import type { HolePlan, PlanReport } from '../../strategy/plan-report.ts';
import { compassPoint } from '../../units/compass-point.ts';
import { formatSpeed, MPS_PER } from '../../units/speed.ts';
import type { UnitsChoice } from '../../units/units-choice.ts';
import { shortened } from '../markup.ts';

/** The day's wind as the thrower meets it facing the basket: "3 m/s headwind, 2 m/s from the right". */
export function holeWindWords(plan: Pick<HolePlan, 'headwind_mps' | 'windFromRight_mps'>, units: UnitsChoice): string {
  const parts = [
    { speed_mps: plan.headwind_mps, positive: 'headwind', negative: 'tailwind' },
    { speed_mps: plan.windFromRight_mps, positive: 'from the right', negative: 'from the left' },
  ]
    .map(part => ({ size_mps: Math.abs(part.speed_mps), word: part.speed_mps > 0 ? part.positive : part.negative }))
    .filter(({ size_mps }) => Math.round(size_mps / MPS_PER[units.speed]) > 0)
    .sort((a, b) => b.size_mps - a.size_mps);
  if (parts.length === 0) return 'calm';
  return `${parts.map(({ size_mps, word }) => `${formatSpeed(size_mps, units, 0)} ${word}`).join(', ')}`;
}

/** The wind the whole sheet is planned for. */
export function dayWindWords({ windSpeed_mps, windFrom_deg, gust_mps }: PlanReport['air'], units: UnitsChoice): string {
  if (windSpeed_mps === 0) return 'calm air';
  const from = `${Math.round(windFrom_deg) % 360}° (${compassPoint(windFrom_deg)})`;
  return `wind ${formatSpeed(windSpeed_mps, units)} from ${from}, gusts ${formatSpeed(gust_mps, units)}`;
}

const LONGEST_DISC = 40;

/** What the least change of wind that matters would change: "In 8 m/s from W (270°): Distance driver, forehand hyzer." */
export function flipWords({ nearestFlip }: Pick<HolePlan, 'nearestFlip'>, units: UnitsChoice): string[] {
  if (nearestFlip === null) return [];
  const { windFrom_deg, wind_mps, choice } = nearestFlip;
  const hand = choice.hand === 'forehand' ? 'forehand ' : '';
  const wind =
    wind_mps === 0
      ? 'In calm air'
      : `In ${formatSpeed(wind_mps, units, 0)} from ${compassPoint(windFrom_deg)} (${Math.round(windFrom_deg) % 360}°)`;
  return [`${wind}: ${shortened(choice.disc, LONGEST_DISC)}, ${hand}${choice.shape}.`];
}
