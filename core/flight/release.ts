export type Hand = 'backhand' | 'forehand';
export type Handedness = 'right' | 'left';

/**
 * How a disc leaves the hand. Azimuth is positive to the left of the aim, launch is the elevation of the velocity, nose the
 * pitch of the disc above it, hyzer tilts the outer edge down (towards the fade side); negative hyzer is anhyzer.
 */
export type Release = Readonly<{
  speed_mps: number;
  azimuth_deg: number;
  launch_deg: number;
  nose_deg: number;
  hyzer_deg: number;
  /** About the disc's normal, counter-clockwise from above positive. */
  spin_radps: number;
  /** Above the ground under the thrower. */
  height_m: number;
}>;

/** Assumed, no measurement of golf discs behind it. */
export const RELEASE_HEIGHT_M = 1.2;

// Advance ratio ωR/V: assumed 0.46 backhand; forehand spins less (direction: Winograd & Engsberg 2012, size from memory).
const ADVANCE_RATIO: Record<Hand, number> = { backhand: 0.46, forehand: 0.37 };

/** +1 when the disc spins counter-clockwise seen from above. */
export function spinSign(hand: Hand, handedness: Handedness): 1 | -1 {
  return (hand === 'backhand') === (handedness === 'right') ? -1 : 1;
}

export function releaseSpin_radps(hand: Hand, handedness: Handedness, speed_mps: number, diameter_m: number): number {
  return (spinSign(hand, handedness) * ADVANCE_RATIO[hand] * speed_mps) / (diameter_m / 2);
}
