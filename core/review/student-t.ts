/** 0.95 quantiles of Student's t by degrees of freedom, 1…30. @source any published t table (e.g. NIST/SEMATECH e-Handbook, 1.3.6.7.2) */
const T95 = [
  6.314, 2.92, 2.353, 2.132, 2.015, 1.943, 1.895, 1.86, 1.833, 1.812, 1.796, 1.782, 1.771, 1.761, 1.753, 1.746, 1.74,
  1.734, 1.729, 1.725, 1.721, 1.717, 1.714, 1.711, 1.708, 1.706, 1.703, 1.701, 1.699, 1.697,
] as const;
const NORMAL_95 = 1.645;

/**
 * Half width of a 90 % interval in standard errors.
 * @param degrees - of freedom, at least 1
 * @throws {RangeError} when there are none
 */
export function intervalFactor90(degrees: number): number {
  if (!(degrees >= 1)) throw new RangeError(`degrees of freedom must be 1 or more, got ${degrees}`);
  return T95[Math.floor(degrees) - 1] ?? NORMAL_95;
}
