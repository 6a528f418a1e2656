/**
 * Turbulence intensity (standard deviation over mean) at 10 m over open ground: 1/ln(10/0.03).
 * @source EN 1991-1-4:2005, 4.4, with turbulence factor and orography factor 1 and roughness length 0.03 m
 */
const OPEN_TURBULENCE_INTENSITY = 1 / Math.log(10 / 0.03);

/** How many standard deviations the strongest 3 s gust of ten minutes stands above the mean. @source from memory, Wieringa 1973 (3.0–3.2); taken as 3 */
const GUST_PEAK_FACTOR = 3;

/** A station writes a gust only when it exceeds the mean by 10 kt or more. @source ICAO Annex 3, 4.1.5.2 */
const REPORTED_EXCESS_mps = (10 * 1852) / 3600;

/** How far the eddies at 10 m over open ground reach along the wind. @source from memory, EN 1991-1-4:2005, B.1: 300·(10/200)^(0.67 + 0.05·ln 0.03) */
const EDDY_LENGTH_m = 68;

/** How long a throw is in the air: the time over which it averages the wind. Assumed: 3 to 7 s. */
const THROW_TIME_s = 5;

/**
 * The gust that goes with a mean wind when none is given: mean·(1 + 3·0.172) = 1.52 × the mean over open ground.
 * `fromReport`: a METAR without a gust says that none stood 10 kt above the mean, so the assumption stops there.
 */
export function assumedGust_mps(speed_mps: number, fromReport: boolean): number {
  const gust_mps = speed_mps * (1 + GUST_PEAK_FACTOR * OPEN_TURBULENCE_INTENSITY);
  return fromReport ? Math.min(gust_mps, speed_mps + REPORTED_EXCESS_mps) : gust_mps;
}

/**
 * Standard deviation, from throw to throw, of the wind averaged over one throw, at 10 m over open ground.
 *
 * The gust gives the standard deviation of the wind itself: (gust − mean)/3. A throw feels the mean over about 5 s, which
 * is steadier. With eddies that forget themselves as exp(−t/T), the variance of a mean over t is
 * 2(T/t)²(t/T − 1 + exp(−t/T)) of the whole (Taylor 1921), where T = eddy length over wind speed. In 5 m/s that leaves 94 % of
 * the standard deviation, in 10 m/s 89 %. Own derivation; the numbers that go in are assumptions.
 * @throws {RangeError} for a wind that is negative or not finite, or a gust below the mean
 */
export function windSd_mps({ wind }: Readonly<{ wind: Readonly<{ speed_mps: number; gust_mps: number }> }>): number {
  const { speed_mps, gust_mps } = wind;
  if (!(speed_mps >= 0 && gust_mps >= speed_mps && gust_mps < Number.POSITIVE_INFINITY)) {
    throw new RangeError(`need 0 ≤ speed_mps ≤ gust_mps, got ${speed_mps} and ${gust_mps}`);
  }
  return ((gust_mps - speed_mps) / GUST_PEAK_FACTOR) * Math.sqrt(shareOfVariance(speed_mps));
}

function shareOfVariance(speed_mps: number): number {
  const ratio = (THROW_TIME_s * speed_mps) / EDDY_LENGTH_m;
  if (ratio < 1e-3) return 1 - ratio / 3; // the formula below loses its digits here
  return (2 / (ratio * ratio)) * (ratio - 1 + Math.exp(-ratio));
}
