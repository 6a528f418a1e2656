import type { ShotSpec } from './shots.ts';

// Peaks above the ground at the lie: common practice, no source.
const LOW_BELOW_M = 4;
const HIGH_FROM_M = 8;

/** How high a throw flies, in a word: told by its peak alone, so that none called high peaks below one called low. */
export type HeightWord = 'low' | 'middle' | 'high';

/** @param apex_m - highest point above the ground at the lie */
export function heightWord(apex_m: number): HeightWord {
  // as it is written beside the word
  const written_m = Math.round(apex_m * 10) / 10;
  if (written_m < LOW_BELOW_M) return 'low';
  return written_m < HIGH_FROM_M ? 'middle' : 'high';
}

/** The same where it belongs to the throw's name: launched lower or higher than this disc carries farthest, and seen to be so. */
export function namedHeight({
  height,
  apex_m,
}: Pick<ShotSpec, 'height'> & Readonly<{ apex_m: number }>): 'low' | 'high' | null {
  return height !== 'standard' && heightWord(apex_m) === height ? height : null;
}
