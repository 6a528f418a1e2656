import type { FlightBatch } from '../flight/flight-batch.ts';
import { type AnhyzerSign, anhyzerSign } from './anhyzer-sign.ts';
import type { FittedPlayer, FittedThrow } from './fitted-player.ts';
import type { PlayerFile } from './player-file.ts';
import { type StabilityDrift, stabilityDrift } from './stability-drift.ts';

/** What the fieldwork shows of one disc from one hand beyond its range. */
export type DiscSigns = Readonly<{
  discId: string;
  hand: FittedThrow['hand'];
  /** Null for discs that suit any arm. */
  anhyzer: AnhyzerSign | null;
  /** Null while fewer than two dated sessions a week apart measured its side. */
  drift: StabilityDrift | null;
}>;

/**
 * Some milliseconds a disc.
 * @param t - one of the player's throws, fitted from `file`
 * @param flier - its disc, air and ground are set here
 */
export function discSigns(file: PlayerFile, player: FittedPlayer, t: FittedThrow, flier: FlightBatch): DiscSigns {
  return {
    discId: t.discId,
    hand: t.hand,
    anhyzer: anhyzerSign(file, t, flier),
    drift: stabilityDrift(file, player, t, flier),
  };
}
