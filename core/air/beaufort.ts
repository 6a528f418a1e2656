/** Lowest 10 m wind of each force from 1 to 12, m/s. @source WMO-No. 306, code table 1100 (Beaufort scale) */
const LOWEST_mps = [0.3, 1.6, 3.4, 5.5, 8, 10.8, 13.9, 17.2, 20.8, 24.5, 28.5, 32.7];

/**
 * Beaufort force 0…12 of a 10 m mean wind. The scale is written to 0.1 m/s, so the speed is rounded to that first.
 * @throws {RangeError} for a speed that is negative or not finite
 */
export function beaufort(speed_mps: number): number {
  if (!(speed_mps >= 0 && speed_mps < Number.POSITIVE_INFINITY))
    throw new RangeError(`speed_mps must be 0 or more, got ${speed_mps}`);
  const written = Math.round(speed_mps * 10) / 10;
  return LOWEST_mps.filter(lowest => written >= lowest).length;
}
