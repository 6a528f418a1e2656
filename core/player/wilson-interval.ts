/** Two-sided normal quantile of 95 %. */
const Z_95 = 1.959963984540054;

/**
 * Where the true rate behind `makes` out of `attempts` plausibly lies.
 * @returns bounds in [0, 1], 95 % two-sided
 * @throws {RangeError} unless 0 ≤ makes ≤ attempts and attempts ≥ 1
 * @source Wilson, J. Am. Stat. Assoc. 22 (1927), 209–212
 */
export function wilsonInterval(makes: number, attempts: number): { low: number; high: number } {
  if (!(attempts >= 1 && makes >= 0 && makes <= attempts))
    throw new RangeError(
      `makes and attempts must satisfy 0 ≤ makes ≤ attempts, attempts ≥ 1, got ${makes} of ${attempts}`,
    );
  const rate = makes / attempts;
  const z2 = Z_95 * Z_95;
  const middle = (rate + z2 / (2 * attempts)) / (1 + z2 / attempts);
  const half =
    (Z_95 / (1 + z2 / attempts)) * Math.sqrt((rate * (1 - rate)) / attempts + z2 / (4 * attempts * attempts));
  return { low: makes === 0 ? 0 : middle - half, high: makes === attempts ? 1 : middle + half };
}
