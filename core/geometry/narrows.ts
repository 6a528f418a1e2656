import type { CorridorSample, Edge } from './corridor.ts';

/** Wider than this is open ground: wooded fairways run from 4.57 m at pinch points to 12.19 m (PDGA course design elements). */
const WIDEST_GAP_m = 12;
/** A narrowing counts apart when the corridor widens by this much before the next. */
const PROMINENCE_m = 1;
/** Narrowings of one width with no more than this between them are one corridor (an avenue of trees). */
const ONE_CORRIDOR_m = 12;

/** A narrowing of the corridor: narrowest (or, at one width, first) at `station_m`, about that narrow from `from_m` to `to_m`. */
export type Narrows = Readonly<{
  station_m: number;
  from_m: number;
  to_m: number;
  width_m: number;
  left: Edge;
  right: Edge;
}>;

type Sided = Readonly<{ station_m: number; width_m: number; left: Edge; right: Edge }>;

/** Narrowings under 12 m, from the tee on; a long corridor of one width is one. */
export function findNarrows(samples: readonly CorridorSample[]): Narrows[] {
  const found = runsOf(samples).flatMap(narrowsIn);
  const merged: Narrows[] = [];
  for (const next of found) {
    const last = merged.at(-1);
    const isOne =
      last !== undefined &&
      next.from_m - last.to_m <= ONE_CORRIDOR_m &&
      Math.abs(next.width_m - last.width_m) <= PROMINENCE_m;
    if (!isOne) merged.push(next);
    else {
      const narrower = next.width_m < last.width_m - 0.05 ? next : last;
      merged[merged.length - 1] = { ...narrower, from_m: last.from_m, to_m: Math.max(last.to_m, next.to_m) };
    }
  }
  return merged;
}

function runsOf(samples: readonly CorridorSample[]): Sided[][] {
  const runs: Sided[][] = [];
  let isOpen = false;
  for (const { station_m, isBlocked, left, right } of samples) {
    const width_m = (left?.away_m ?? Number.POSITIVE_INFINITY) + (right?.away_m ?? Number.POSITIVE_INFINITY);
    const isNarrow = !isBlocked && left !== undefined && right !== undefined && width_m < WIDEST_GAP_m;
    if (isNarrow) {
      const here = { station_m, width_m, left, right };
      if (isOpen) runs.at(-1)!.push(here);
      else runs.push([here]);
    }
    isOpen = isNarrow;
  }
  return runs;
}

/** Local minima of a run that stand out by the prominence; ends of the run count as wide. */
function narrowsIn(run: readonly Sided[]): Narrows[] {
  const found: Narrows[] = [];
  let k = 0;
  while (k < run.length) {
    // Walk down to a minimum: the lowest before the corridor widens by the prominence.
    let low = k;
    let end = k;
    while (end < run.length && run[end]!.width_m < run[low]!.width_m + PROMINENCE_m) {
      if (run[end]!.width_m < run[low]!.width_m - 1e-6) low = end;
      end++;
    }
    const width_m = run[low]!.width_m;
    const isNear = (i: number): boolean => i >= k && i < end && run[i]!.width_m <= width_m + PROMINENCE_m;
    let from = low;
    while (isNear(from - 1)) from--;
    const first = firstAt(run, from, low);
    found.push({ ...run[first]!, width_m, from_m: run[from]!.station_m, to_m: run[end - 1]!.station_m });
    // Walk up to the next maximum: until it has narrowed by the prominence from the widest since.
    let high = end;
    while (end < run.length && run[end]!.width_m > (run[high]?.width_m ?? 0) - PROMINENCE_m) {
      if (run[end]!.width_m > run[high]!.width_m) high = end;
      end++;
    }
    k = end;
  }
  return found;
}

/** The first of the samples that is as narrow as the narrowest to the centimetre. */
function firstAt(run: readonly Sided[], from: number, low: number): number {
  for (let i = from; i < low; i++) if (run[i]!.width_m <= run[low]!.width_m + 0.01) return i;
  return low;
}
