import type { Hand } from '../flight/release.ts';
import type { DiscClass } from '../player/fitted-player.ts';
import { isSpecialShape } from './flown-as.ts';
import { namedHeight } from './height-word.ts';
import type { ShotSpec } from './shots.ts';

const NOUN: Record<DiscClass, string> = {
  putter: 'putter',
  midrange: 'midrange',
  fairway: 'low-speed driver',
  control: 'control driver',
  distance: 'distance driver',
};
const LAY_UP_SHORT_M = 25;
const UPSHOT_POWER = 0.85;
const UPSHOT_M = 70;

/**
 * What to throw, in the trade's words, made from the shot's parts: "putter upshot, flat", "midrange off the tee, hyzer",
 * "low driver line, flat, forehand".
 */
export function shotTitle(
  shot: ShotSpec,
  discClass: DiscClass,
  hand: Hand,
  where: Readonly<{ fromTee: boolean; toBasket_m: number; distance_m: number; apex_m: number }>,
): string {
  const noun = NOUN[discClass];
  if (isSpecialShape(shot.shape)) {
    const short = where.distance_m < where.toBasket_m - LAY_UP_SHORT_M;
    const end = hand === 'forehand' && shot.shape === 'roller' ? ', forehand' : '';
    return `${noun} ${shot.shape}${short ? (where.fromTee ? ' placed short of the green' : ', lay-up') : ''}${end}`;
  }
  const isLow = namedHeight({ height: shot.height, apex_m: where.apex_m }) === 'low';
  // "low low-speed driver" reads badly
  const low = isLow ? `low ${discClass === 'fairway' ? 'driver' : noun}` : noun;
  const shape = hand === 'forehand' ? `${shot.shape}, forehand` : shot.shape;
  if (where.distance_m < where.toBasket_m - LAY_UP_SHORT_M) {
    return `${low} ${where.fromTee ? 'placed short of the green' : 'lay-up'}, ${shape}`;
  }
  if (isLow) return `${low} line, ${shape}`;
  const soft = shot.power < UPSHOT_POWER || where.toBasket_m < UPSHOT_M;
  if (soft && (!where.fromTee || discClass === 'putter' || discClass === 'midrange')) return `${noun} upshot, ${shape}`;
  return `${noun} ${where.fromTee ? 'off the tee' : 'approach'}, ${shape}`;
}
