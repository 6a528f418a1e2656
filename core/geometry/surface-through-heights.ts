import type { LocalPoint } from './hole-map.ts';
import { distance_m } from './line-length.ts';

/** A mapped height, metres above any datum the others share. */
export type KnownHeight = Readonly<{ at: LocalPoint; height_m: number }>;

/** Nearer than this two heights are one place, and their mean counts. */
const SAME_PLACE_m = 1;
/** More would make the dense solve slow; the earliest in the list are kept, then those farthest from the kept. */
const MOST_HEIGHTS = 300;
/** How far past the known range the surface may swing, as a share of that range. */
const OVERSHOOT_SHARE = 0.2;

/**
 * A smooth surface through known heights: a least-squares plane (a ramp along the line when they lie on one) plus what is
 * left over, spread by a Matérn 5/2 kernel, so it is exact at the data and falls back to the plane far from them.
 * Inside the known range it is untouched; beyond, it levels off within 20 % of the range.
 * @returns undefined when fewer than two places are known
 * @source Rasmussen & Williams, Gaussian Processes for Machine Learning (2006), eq. 4.17 (kernel) and algorithm 2.1 (solve)
 */
export function surfaceThrough(heights: readonly KnownHeight[]): ((at: LocalPoint) => number) | undefined {
  const known = thinned(heights);
  if (known.length < 2) return undefined;
  const plane = fitPlane(known);
  const reach_m = Math.min(200, Math.max(40, 2 * meanNearest_m(known)));
  const residuals = known.map(({ at, height_m }) => height_m - plane(at));
  const weights = solve(known, residuals, reach_m);
  const low_m = Math.min(...known.map(k => k.height_m));
  const high_m = Math.max(...known.map(k => k.height_m));
  const slack_m = OVERSHOOT_SHARE * (high_m - low_m);
  if (slack_m === 0) return () => low_m;
  const east_m = Float64Array.from(known, k => k.at[0]);
  const north_m = Float64Array.from(known, k => k.at[1]);
  return at => {
    let z = plane(at);
    const [x, y] = at;
    // asked at every node of a grid: plain loops over typed arrays
    for (let i = 0; i < weights.length; i++) {
      const [dx, dy] = [x - east_m[i]!, y - north_m[i]!];
      z += weights[i]! * kernel(Math.sqrt(dx * dx + dy * dy), reach_m);
    }
    if (z > high_m) return high_m + slack_m * (1 - Math.exp((high_m - z) / slack_m));
    return z < low_m ? low_m - slack_m * (1 - Math.exp((z - low_m) / slack_m)) : z;
  };
}

function thinned(heights: readonly KnownHeight[]): KnownHeight[] {
  const groups: { at: LocalPoint; sum_m: number; count: number }[] = [];
  for (const { at, height_m } of heights) {
    const same = groups.find(group => distance_m(group.at, at) < SAME_PLACE_m);
    if (same === undefined) groups.push({ at, sum_m: height_m, count: 1 });
    else {
      same.sum_m += height_m;
      same.count++;
    }
  }
  const places = groups.map(({ at, sum_m, count }) => ({ at, height_m: sum_m / count }));
  if (places.length <= MOST_HEIGHTS) return places;
  const kept = places.slice(0, MOST_HEIGHTS / 10);
  const away = places.map(place => Math.min(...kept.map(k => distance_m(k.at, place.at))));
  while (kept.length < MOST_HEIGHTS) {
    const next = places[away.indexOf(Math.max(...away))]!;
    kept.push(next);
    for (const [i, place] of places.entries()) away[i] = Math.min(away[i]!, distance_m(next.at, place.at));
  }
  return kept;
}

/** Least-squares plane of least slope: across a line of heights, where the data say nothing, it stays level. */
function fitPlane(known: readonly KnownHeight[]): (at: LocalPoint) => number {
  const mean = (pick: (k: KnownHeight) => number): number => known.reduce((sum, k) => sum + pick(k), 0) / known.length;
  const [x0, y0, z0] = [mean(k => k.at[0]), mean(k => k.at[1]), mean(k => k.height_m)];
  let [xx, xy, yy, xz, yz] = [0, 0, 0, 0, 0];
  for (const { at, height_m } of known) {
    const [x, y, z] = [at[0] - x0, at[1] - y0, height_m - z0];
    xx += x * x;
    xy += x * y;
    yy += y * y;
    xz += x * z;
    yz += y * z;
  }
  const angle = Math.atan2(2 * xy, xx - yy) / 2;
  let [slopeX, slopeY] = [0, 0];
  let strongest = 0;
  for (const turn of [0, Math.PI / 2]) {
    const [ux, uy] = [Math.cos(angle + turn), Math.sin(angle + turn)];
    const spread = xx * ux * ux + 2 * xy * ux * uy + yy * uy * uy;
    strongest = Math.max(strongest, spread);
    // Heights within a tenth of their length of one line: a slope across it would be guesswork.
    if (spread < 0.01 * strongest || spread === 0) continue;
    const slope = (xz * ux + yz * uy) / spread;
    slopeX += slope * ux;
    slopeY += slope * uy;
  }
  return ([x, y]) => z0 + slopeX * (x - x0) + slopeY * (y - y0);
}

function kernel(r_m: number, reach_m: number): number {
  const s = (Math.sqrt(5) * r_m) / reach_m;
  return (1 + s + (s * s) / 3) * Math.exp(-s);
}

function meanNearest_m(known: readonly KnownHeight[]): number {
  let total_m = 0;
  for (const a of known) {
    let nearest_m = Number.POSITIVE_INFINITY;
    for (const b of known) if (b !== a) nearest_m = Math.min(nearest_m, distance_m(a.at, b.at));
    total_m += nearest_m;
  }
  return total_m / known.length;
}

/** Kernel weights that give back the residuals, by Cholesky; a trace on the diagonal keeps close pairs solvable. */
function solve(known: readonly KnownHeight[], residuals: readonly number[], reach_m: number): Float64Array {
  const n = known.length;
  const lower = new Float64Array(n * n);
  for (let i = 0; i < n; i++)
    for (let j = 0; j <= i; j++) {
      let sum = kernel(distance_m(known[i]!.at, known[j]!.at), reach_m) + (i === j ? 1e-9 : 0);
      for (let k = 0; k < j; k++) sum -= lower[i * n + k]! * lower[j * n + k]!;
      lower[i * n + j] = i === j ? Math.sqrt(Math.max(sum, 1e-12)) : sum / lower[j * n + j]!;
    }
  const x = Float64Array.from(residuals);
  for (let i = 0; i < n; i++) {
    for (let k = 0; k < i; k++) x[i] = x[i]! - lower[i * n + k]! * x[k]!;
    x[i] = x[i]! / lower[i * n + i]!;
  }
  for (let i = n - 1; i >= 0; i--) {
    for (let k = i + 1; k < n; k++) x[i] = x[i]! - lower[k * n + i]! * x[k]!;
    x[i] = x[i]! / lower[i * n + i]!;
  }
  return x;
}
