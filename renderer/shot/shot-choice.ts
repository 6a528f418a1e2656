import type { ShotChoice } from '../../backend/api/contract/values.ts';
import type { ShotReport } from '../../core/strategy/plan-report.ts';

/** The part of a shot that says how it is thrown. */
export function choiceOf(shot: ShotReport | ShotChoice): ShotChoice {
  const { discId, hand, shape, height, hyzer_deg, launch_deg, power, aimBearing_deg } = shot;
  return { discId, hand, shape, height, hyzer_deg, launch_deg, power, aimBearing_deg };
}

export const shotKey = (shot: ShotReport | ShotChoice): string => JSON.stringify(choiceOf(shot));

export const isSameShot = (a: ShotReport | ShotChoice, b: ShotReport | ShotChoice): boolean =>
  shotKey(a) === shotKey(b);
