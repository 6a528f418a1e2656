import type { Exposure } from './wind-profile.ts';

// Thresholds of our own, no source. The roughness classes describe landscapes in words: parkland has obstacles about ten
// heights apart (one 12 m tree each 120 m × 120 m is 0.7 a hectare; groves count more), forest a closed stand.
const WOOD_SHARE = 0.5;
const PARK_SHARE = 0.1;
const WOOD_TREES_PER_HECTARE = 150;
const PARK_TREES_PER_HECTARE = 5;

/**
 * The exposure of a hole from what is mapped along it.
 * @param woodShare - share 0…1 of the ground near the line of play that is wood
 * @param treesPerHectare - single trees mapped there, when counted
 * @throws {RangeError} for a share outside 0…1 or a negative count
 */
export function exposureFromWoodShare(woodShare: number, treesPerHectare = 0): Exposure {
  if (!(woodShare >= 0 && woodShare <= 1)) throw new RangeError(`woodShare must lie in 0…1, got ${woodShare}`);
  if (!(treesPerHectare >= 0)) throw new RangeError(`treesPerHectare must be 0 or more, got ${treesPerHectare}`);
  if (woodShare >= WOOD_SHARE || treesPerHectare >= WOOD_TREES_PER_HECTARE) return 'wood';
  if (woodShare >= PARK_SHARE || treesPerHectare >= PARK_TREES_PER_HECTARE) return 'park';
  return 'open';
}
