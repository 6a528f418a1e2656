import type { HolePlan, PlanReport } from '../../strategy/plan-report.ts';
import { compassPoint } from '../../units/compass-point.ts';
import { formatSpeed, MPS_PER } from '../../units/speed.ts';
import type { UnitsChoice } from '../../units/units-choice.ts';
import { shortened } from '../markup.ts';

/** The hole's wind as the thrower meets it facing the basket, with its time where it has one: "09:20: 3 m/s headwind, 2 m/s from the right". */
export function holeWindWords(
  plan: Pick<HolePlan, 'headwind_mps' | 'windFromRight_mps' | 'wind'>,
  units: UnitsChoice,
): string {
  const at = plan.wind === undefined ? '' : `${plan.wind.at}: `;
  const parts = [
    { speed_mps: plan.headwind_mps, positive: 'headwind', negative: 'tailwind' },
    { speed_mps: plan.windFromRight_mps, positive: 'from the right', negative: 'from the left' },
  ]
    .map(part => ({ size_mps: Math.abs(part.speed_mps), word: part.speed_mps > 0 ? part.positive : part.negative }))
    .filter(({ size_mps }) => Math.round(size_mps / MPS_PER[units.speed]) > 0)
    .sort((a, b) => b.size_mps - a.size_mps);
  if (parts.length === 0) return `${at}calm`;
  return `${at}${parts.map(({ size_mps, word }) => `${formatSpeed(size_mps, units, 0)} ${word}`).join(', ')}`;
}

/** The wind a sheet is planned for: the day's, or how it goes from the first hole to the last by tee time. */
export function roundWindWords(
  air: PlanReport['air'],
  plans: readonly Pick<HolePlan, 'wind'>[],
  units: UnitsChoice,
): string {
  const winds = plans.flatMap(({ wind }) => (wind === undefined ? [] : [wind])).sort((a, b) => (a.at < b.at ? -1 : 1));
  const [first, last] = [winds[0], winds.at(-1)];
  if (first === undefined || last === undefined) return dayWindWords(air, units);
  const words = ({ at, speed_mps, from_deg }: typeof first) =>
    `${at} ${formatSpeed(speed_mps, units)} from ${compassPoint(from_deg)}`;
  return `wind by tee time, ${words(first)}${last === first ? '' : ` to ${words(last)}`}; each hole has its own`;
}

/** Air with the wind of one hole, where it has its own. */
export function airOfHole(air: PlanReport['air'], { wind }: Pick<HolePlan, 'wind'>): PlanReport['air'] {
  if (wind === undefined) return air;
  const { speed_mps, from_deg, gust_mps } = wind;
  return { ...air, windSpeed_mps: speed_mps, windFrom_deg: from_deg, gust_mps };
}

/** One wind for the whole sheet. */
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
