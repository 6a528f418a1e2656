import type { DiscClass } from './fitted-player.ts';

export const DISC_CLASSES = [
  'putter',
  'midrange',
  'fairway',
  'control',
  'distance',
] as const satisfies readonly DiscClass[];

/** Highest speed number of each class but the last (common practice, no source). */
const HIGHEST_SPEED: readonly (readonly [DiscClass, number])[] = [
  ['putter', 3],
  ['midrange', 6],
  ['fairway', 8],
  ['control', 11],
];

/** Class a trade speed number belongs to: up to 3 putter, up to 6 midrange, up to 8 fairway, up to 11 control, then distance. */
export function classOfSpeed(speed: number): DiscClass {
  return HIGHEST_SPEED.find(([, highest]) => Math.floor(speed) <= highest)?.[0] ?? 'distance';
}
