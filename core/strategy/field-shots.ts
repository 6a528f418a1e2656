import type { FittedPlayer } from '../player/fitted-player.ts';
import { isSpecialShape } from './flown-as.ts';
import type { ShotSpec } from './shots.ts';

/** What is known of a shot in calm air on level ground. */
export type ShotReach = Readonly<{ along_m: number; left_m: number; spread_m: number; apex_m: number }>;

const BUCKET_M = 7;
const WIDER = 1.1;

/**
 * The shots that stand for the bag when valuing later lies: in every 7 m of reach (more when they would be too many) the
 * tightest of each kind of line (bank to either side, height), and the lowest of all.
 * @returns indices into `shots`, ascending, at most `most`
 */
export function fieldShots(
  player: FittedPlayer,
  shots: readonly ShotSpec[],
  reach: readonly ShotReach[],
  most: number,
): number[] {
  for (let bucket_m = BUCKET_M; ; bucket_m *= WIDER) {
    const chosen = tightestOf(player, shots, reach, bucket_m);
    if (chosen.length <= most) return chosen;
  }
}

function tightestOf(
  player: FittedPlayer,
  shots: readonly ShotSpec[],
  reach: readonly ShotReach[],
  bucket_m: number,
): number[] {
  const tightest = new Map<string, number>();
  const lowest = new Map<number, number>();
  for (let i = 0; i < shots.length; i++) {
    if (reach[i].along_m < 4) continue;
    const bucket = Math.floor(reach[i].along_m / bucket_m);
    const { shape, height } = shots[i];
    const kind = `${bucket} ${isSpecialShape(shape) ? shape : `${bendsTo(player, shots[i])} ${height}`}`;
    const best = tightest.get(kind);
    if (best === undefined || reach[i].spread_m < reach[best].spread_m) tightest.set(kind, i);
    const low = lowest.get(bucket);
    if (low === undefined || reach[i].apex_m < reach[low].apex_m) lowest.set(bucket, i);
  }
  return [...new Set([...tightest.values(), ...lowest.values()])].sort((a, b) => a - b);
}

/** Which way the bank sends the disc at first: 0 flat, 1 and −1 the two sides. */
function bendsTo(player: FittedPlayer, shot: ShotSpec): number {
  const fadesLeft = player.throws[shot.throwIndex].spinPerSpeed < 0 ? 1 : -1;
  return Math.sign(shot.hyzer_deg) * fadesLeft;
}
