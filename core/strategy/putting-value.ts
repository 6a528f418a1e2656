import type { PuttingCurve } from '../player/fitted-player.ts';
import { makeChance } from '../player/putting-curve.ts';

const STEP_M = 0.1;
const FARTHEST_M = 60;
// After a miss (assumed): six in ten stay within 1.5 m, the rest roll 2 m plus a quarter of the putt past.
const CLOSE_MISS_SHARE = 0.6;
const CLOSE_MISS_M = 1.5;

/** Expected throws when putting from a distance, tabulated every 0.1 m to 60 m; index = distance / 0.1. */
export type PuttingValue = Readonly<{ value: Float64Array; make: Float64Array }>;

/** @source fixed point of V(d) = 1 + (1 − p(d))·(0.6·V(1.5) + 0.4·V(2 + d/4)): Markov chain of putts (form: Fearing, Acimovic & Graves 2010) */
export function puttingValue(curve: PuttingCurve): PuttingValue {
  const cells = Math.round(FARTHEST_M / STEP_M) + 1;
  const make = Float64Array.from({ length: cells }, (_, i) => makeChance(curve, i * STEP_M));
  const value = new Float64Array(cells).fill(2);
  const at = (d: number) => value[Math.min(cells - 1, Math.round(d / STEP_M))];
  for (let sweep = 0; sweep < 200; sweep++) {
    let change = 0;
    for (let i = 0; i < cells; i++) {
      const back = CLOSE_MISS_SHARE * at(CLOSE_MISS_M) + (1 - CLOSE_MISS_SHARE) * at(longMiss_m(i * STEP_M));
      const next = 1 + (1 - make[i]) * back;
      change = Math.max(change, Math.abs(next - value[i]));
      value[i] = next;
    }
    if (change < 1e-12) break;
  }
  return { value, make };
}

/** Expected throws putting from `distance_m`; linear between table points. */
export function puttFrom(putting: PuttingValue, distance_m: number): number {
  const at = distance_m / STEP_M;
  const i = at | 0;
  if (i >= putting.value.length - 1) return putting.value[putting.value.length - 1];
  return putting.value[i] + (putting.value[i + 1] - putting.value[i]) * (at - i);
}

/**
 * Chance to be in after at most n putts, n = 1…most, by distance: `[n − 1][cell]`.
 */
export function puttingDistribution(putting: PuttingValue, most: number): Float64Array[] {
  const cells = putting.make.length;
  const layers: Float64Array[] = [];
  for (let n = 0; n < most; n++) {
    const layer = new Float64Array(cells);
    const before = layers[n - 1];
    for (let i = 0; i < cells; i++) {
      const p = putting.make[i];
      const later = before
        ? CLOSE_MISS_SHARE * before[Math.round(CLOSE_MISS_M / STEP_M)] +
          (1 - CLOSE_MISS_SHARE) * before[Math.min(cells - 1, Math.round(longMiss_m(i * STEP_M) / STEP_M))]
        : 0;
      layer[i] = p + (1 - p) * later;
    }
    layers.push(layer);
  }
  return layers;
}

/** Index into putting tables. */
export function puttingCell(putting: PuttingValue, distance_m: number): number {
  return Math.min(putting.value.length - 1, Math.round(distance_m / STEP_M));
}

function longMiss_m(distance_m: number): number {
  return 2 + 0.25 * distance_m;
}
