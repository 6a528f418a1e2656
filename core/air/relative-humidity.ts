/**
 * Relative humidity as a share 0…1 from air temperature and dew point, over water.
 * A dew point above the temperature (both are rounded in reports) counts as saturated.
 * @throws {RangeError} naming the values, outside −100…100 °C
 * @source Magnus formula with 17.62 and 243.12 °C (WMO-No. 8, Guide to instruments, annex on humidity formulas)
 */
export function relativeHumidity(temperature_C: number, dewPoint_C: number): number {
  for (const value of [temperature_C, dewPoint_C]) {
    if (!(Math.abs(value) <= 100))
      throw new RangeError(`temperature and dew point must lie in −100…100 °C, got ${temperature_C} and ${dewPoint_C}`);
  }
  return Math.min(1, Math.exp(magnus(dewPoint_C) - magnus(temperature_C)));
}

const magnus = (t_C: number) => (17.62 * t_C) / (243.12 + t_C);
