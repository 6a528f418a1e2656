import { formatLength } from '../units/length.ts';
import type { UnitsChoice } from '../units/units-choice.ts';
import { FEWEST_SPECIAL_THROWS, type SpecialStatus, type SpecialThrow } from './fitted-player.ts';

/** What the words need of a status: reports carry no more of a fit. */
type Told = Omit<SpecialStatus, 'fit'> &
  Readonly<{ fit: Pick<SpecialThrow, 'averageDay_m' | 'averageDaySd_m' | 'finish_m' | 'finishSd_m'> | null }>;

const NORMAL_90 = 1.6448536269514722; // Φ⁻¹(0.95)
const MANY = { roller: 'rollers', overhead: 'overhead throws' } as const;

/** What is known of a player's rollers or overhead throws with a disc, or how many more are needed; no full stop. ± holds nine times in ten. */
export function specialText({ shape, counted, needed, unusable, fit, problem }: Told, units: UnitsChoice): string {
  const many = MANY[shape];
  const left = unusable > 0 ? `; ${unusable} more can’t be used: no sideways finish, or power not known` : '';
  if (problem !== null) return `${counted} ${many} not used: ${problem}${left}`;
  if (fit === null)
    return `${counted} of ${FEWEST_SPECIAL_THROWS} ${many} measured: ${needed} more, with distance and sideways finish, and the plan may use them${left}`;
  const far = (m: number) => formatLength(m, units, 0);
  const side = `${far(Math.abs(fit.finish_m))} ${fit.finish_m < 0 ? 'left' : 'right'}`;
  return `${counted} ${many} fitted on their own: ${far(fit.averageDay_m)} on average ± ${far(NORMAL_90 * fit.averageDaySd_m)}, ending ${side} ± ${far(NORMAL_90 * fit.finishSd_m)}${left}`;
}
