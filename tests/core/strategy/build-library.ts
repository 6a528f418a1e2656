import type { WindProfile } from '../../../core/air/wind-profile.ts';
import type { FlightBatch } from '../../../core/flight/flight-batch.ts';
import type { FittedPlayer } from '../../../core/player/fitted-player.ts';
import type { ShotSpec } from '../../../core/strategy/shots.ts';
import type { WindScatter } from '../../../core/strategy/throw-samples.ts';
import { flyLibrary, layOutLibrary, type TrajectoryLibrary } from '../../../core/strategy/trajectory-library.ts';

/** A library laid out and flown at once; the ring of stored winds is exactly the wind with one deviation of its gusts. */
export function buildLibrary(
  player: FittedPlayer,
  shots: readonly ShotSpec[],
  normals: Float64Array,
  rows: number,
  density_kgpm3: number,
  profile: WindProfile,
  wind: WindScatter,
  drop_m: number,
  flier: FlightBatch,
): TrajectoryLibrary {
  const air = { player, normals, density_kgpm3, profile, drop_m };
  const ring_mps = wind.speed_mps > 0 ? wind.speed_mps + wind.speedSd_mps : 0;
  const library = layOutLibrary(shots, air, rows, wind, ring_mps);
  flyLibrary(library, air, flier, 0, shots.length);
  return library;
}
