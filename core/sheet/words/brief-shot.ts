import { isSpecialShape } from '../../strategy/flown-as.ts';
import { namedHeight } from '../../strategy/height-word.ts';
import type { ShotReport } from '../../strategy/plan-report.ts';
import { shortened } from '../markup.ts';
import { shortAim } from './aim-words.ts';
import { powerWords } from './release-words.ts';

const LONGEST_DISC = 40;

/** A shot in a line: "Throwing putter, forehand, low flat, 80 % power, aim 3° left". */
export function briefShot(shot: ShotReport): string {
  const { disc, hand, power, aimFromBasket_deg } = shot;
  return [
    shortened(disc, LONGEST_DISC),
    ...(hand === 'forehand' ? [hand] : []),
    lineWord(shot),
    powerWords({ power }),
    `aim ${shortAim(aimFromBasket_deg)}`,
  ].join(', ');
}

/** "flat", "low hyzer". */
export function lineWord(shot: Pick<ShotReport, 'height' | 'apex_m' | 'shape'>): string {
  const height = isSpecialShape(shot.shape) ? null : namedHeight(shot);
  return height === null ? shot.shape : `${height} ${shot.shape}`;
}
