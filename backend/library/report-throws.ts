import { setImmediate } from 'node:timers/promises';
import { createFlightBatch } from '../../core/flight/flight-batch.ts';
import { type DiscSigns, discSigns } from '../../core/player/disc-signs.ts';
import type { FittedPlayer } from '../../core/player/fitted-player.ts';
import type { PlayerFile } from '../../core/player/player-file.ts';
import { type ThrowsReport, throwsReport } from '../../core/player/throws-report.ts';

/** One report a fit: it costs some tenths of a second. */
const made = new WeakMap<FittedPlayer, Promise<ThrowsReport>>();

/**
 * The range table with everything the fieldwork shows of each disc; lets other work through between two discs.
 * @param player - fitted from `file`
 */
export function reportThrows(file: PlayerFile, player: FittedPlayer): Promise<ThrowsReport> {
  const known = made.get(player);
  if (known !== undefined) return known;
  const report = make(file, player);
  made.set(player, report);
  return report;
}

async function make(file: PlayerFile, player: FittedPlayer): Promise<ThrowsReport> {
  const flier = createFlightBatch();
  const signs: DiscSigns[] = [];
  for (const t of player.throws) {
    signs.push(discSigns(file, player, t, flier));
    await setImmediate();
  }
  return throwsReport(player, signs);
}
