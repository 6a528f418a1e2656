import { isSpecialShape } from '../../strategy/flown-as.ts';
import { heightWord } from '../../strategy/height-word.ts';
import type { ShotReport } from '../../strategy/plan-report.ts';
import { specialRelease } from '../../strategy/special-words.ts';
import type { UnitsChoice } from '../../units/units-choice.ts';
import { far, fine } from './lengths.ts';

/** Hand, tilt and power: "backhand, flat, 76 % power", "forehand, hyzer: outer edge down 12°, full power". */
export function throwWords(shot: ShotReport): string {
  const { hand, shape, hyzer_deg } = shot;
  if (isSpecialShape(shape)) {
    const from = shape === 'overhead' ? '' : `${hand} `;
    return `${from}${shape}: ${specialRelease({ shape, hyzer_deg })}, ${powerWords(shot)}`;
  }
  const tilt_deg = Math.round(Math.abs(hyzer_deg));
  const tilt = tilt_deg === 0 ? shape : `${shape}: outer edge ${hyzer_deg > 0 ? 'down' : 'up'} ${tilt_deg}°`;
  return `${hand}, ${tilt}, ${powerWords(shot)}`;
}

const FULL = 0.985;

export function powerWords({ power }: Pick<ShotReport, 'power'>): string {
  return power >= FULL ? 'full power' : `${Math.round(100 * power)} % power`;
}

/** Launches up to these angles, in words of our own. */
const LAUNCHES = [
  [2.5, 'level'],
  [6, 'a touch up'],
  [10, 'slightly up'],
  [15, 'up'],
  [Number.POSITIVE_INFINITY, 'well up'],
] as const;

/** "low, level (2°), top 2.0 m". */
export function heightWords({ shape, launch_deg, apex_m }: ShotReport, units: UnitsChoice): string {
  if (shape === 'roller') return 'to the ground a few steps ahead, then it rolls';
  const word = LAUNCHES.find(([upTo_deg]) => launch_deg <= upTo_deg)![1];
  return `${heightWord(apex_m)}, ${word} (${Math.round(launch_deg)}°), top ${fine(apex_m, units)}`;
}

const ON_LINE_M = 0.5;

/** How far it goes and where that leaves the player. */
export function reachWords(shot: ShotReport, toBasket_m: number, units: UnitsChoice): string {
  const { distance_m, finish_m, aimFromBasket_deg } = shot;
  const side =
    Math.abs(finish_m) < ON_LINE_M
      ? 'ends on the aim'
      : `ends ${far(Math.abs(finish_m), units)} ${finish_m > 0 ? 'right' : 'left'} of the aim`;
  const aim = (aimFromBasket_deg * Math.PI) / 180;
  const along_m = distance_m * Math.cos(aim) - finish_m * Math.sin(aim);
  const right_m = distance_m * Math.sin(aim) + finish_m * Math.cos(aim);
  const left_m = Math.hypot(toBasket_m - along_m, right_m);
  return `${far(distance_m, units)}, ${side}; leaves ${far(left_m, units)}`;
}
