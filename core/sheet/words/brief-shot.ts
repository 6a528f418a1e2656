import type { ShotReport } from '../../strategy/plan-report.ts';
import { shortened } from '../markup.ts';
import { shortAim } from './aim-words.ts';
import { powerWords } from './release-words.ts';

const LONGEST_DISC = 40;

/** A shot in a line: "Throwing putter, forehand, low flat, 80 % power, aim 3° left". */
export function briefShot({ disc, hand, height, shape, power, aimFromBasket_deg }: ShotReport): string {
  return [
    shortened(disc, LONGEST_DISC),
    ...(hand === 'forehand' ? [hand] : []),
    height === 'standard' ? shape : `${height} ${shape}`,
    powerWords({ power }),
    `aim ${shortAim(aimFromBasket_deg)}`,
  ].join(', ');
}
