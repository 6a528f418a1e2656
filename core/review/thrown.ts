/** Lines a throw can be written down with; the first three are those the plan knows. */
export const THROWN_SHAPES = ['flat', 'hyzer', 'anhyzer', 'roller', 'overhead', 'putt'] as const;

/** Why a throw cost a penalty throw. */
export const PENALTY_KINDS = ['out-of-bounds', 'mando', 'lost', 'unplayable', 'hazard'] as const;
export type PenaltyKind = (typeof PENALTY_KINDS)[number];

/**
 * Where on the hole a throw is made from. `c1`: within 10 m of the basket, `c2`: from there to 20 m.
 * @source Official Rules of Disc Golf 806.01 (a putt is a throw from within 10 m); the ring to 20 m is a statistics convention
 */
export const PHASES = ['tee', 'approach', 'c2', 'c1'] as const;
export type Phase = (typeof PHASES)[number];

export const CIRCLE_M = 10;
const OUTER_CIRCLE_M = 20;

/** @param fromTee - the throw is made from the tee, first or again */
export function phaseOf(fromTee: boolean, toBasket_m: number): Phase {
  if (fromTee) return 'tee';
  if (toBasket_m <= CIRCLE_M) return 'c1';
  return toBasket_m <= OUTER_CIRCLE_M ? 'c2' : 'approach';
}
