import type { FittedPlayer } from '../player/fitted-player.ts';
import type { ShotSpec } from './shots.ts';

/** What is known of a shot in calm air on level ground. */
export type ShotReach = Readonly<{ along_m: number; left_m: number; spread_m: number; apex_m: number }>;

const BUCKET_M = 7;
const A_BUCKET = 5;

/**
 * The few dozen shots that stand for the bag when valuing later lies: in every 7 m of reach the tightest one, the lowest, and
 * the tightest that bends each way. (A brute-force policy was measured to use that many: 63–64 shots cover 90 % of lies.)
 * @returns indices into `shots`, ascending
 */
export function fieldShots(player: FittedPlayer, shots: readonly ShotSpec[], reach: readonly ShotReach[]): number[] {
  const buckets = new Map<number, number[]>();
  for (let i = 0; i < shots.length; i++) {
    if (reach[i].along_m < 4) continue;
    const key = Math.floor(reach[i].along_m / BUCKET_M);
    buckets.set(key, [...(buckets.get(key) ?? []), i]);
  }
  const kept = new Set<number>();
  for (const bucket of buckets.values()) {
    // a left bend and a right bend of the path matter as much as the tightest pattern
    const picks = [
      best(bucket, i => reach[i].spread_m),
      best(bucket, i => reach[i].apex_m + 0.1 * reach[i].spread_m),
      best(bucket, i => reach[i].spread_m - bend(player, shots[i], 1)),
      best(bucket, i => reach[i].spread_m - bend(player, shots[i], -1)),
    ];
    const rest = bucket.filter(i => !picks.includes(i)).sort((a, b) => reach[a].spread_m - reach[b].spread_m || a - b);
    for (const i of [...picks, ...rest].slice(0, A_BUCKET)) kept.add(i);
  }
  return [...kept].sort((a, b) => a - b);
}

/** Bonus in metres of spread for a line that swings out and back on the wanted side (side 1: starts right of the aim). */
function bend(player: FittedPlayer, shot: ShotSpec, side: 1 | -1): number {
  const fadesLeft = player.throws[shot.throwIndex].spinPerSpeed < 0 ? 1 : -1;
  return shot.hyzer_deg * fadesLeft * side > 0 ? 6 : 0;
}

function best(indices: readonly number[], score: (index: number) => number): number {
  let pick = indices[0];
  for (const i of indices) if (score(i) < score(pick)) pick = i;
  return pick;
}
