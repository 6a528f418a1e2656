import { type Fahrenheit, fahrenheit } from '../units/temperature.ts';

/**
 * Heat index: how hot moist air feels in the shade. Full sun adds up to 15 °F.
 * Below 80 °F the simple form holds; above, the regression with its two corrections.
 * @param relativeHumidity - share 0…1
 * @throws {RangeError} for a humidity outside 0…1
 * @source US National Weather Service, Weather Prediction Center, "The heat index equation" (Rothfusz 1990, SR 90-23)
 */
export function heatIndex(temperature: Fahrenheit, relativeHumidity: number): Fahrenheit {
  if (!(relativeHumidity >= 0 && relativeHumidity <= 1))
    throw new RangeError(`relativeHumidity must lie in 0…1, got ${relativeHumidity}`);
  const [t, r] = [temperature as number, relativeHumidity * 100];
  const simple = (0.5 * (t + 61 + (t - 68) * 1.2 + r * 0.094) + t) / 2;
  if (simple < 80) return fahrenheit(simple);
  const regression =
    -42.379 +
    2.04901523 * t +
    10.14333127 * r -
    0.22475541 * t * r -
    0.00683783 * t * t -
    0.05481717 * r * r +
    0.00122874 * t * t * r +
    0.00085282 * t * r * r -
    0.00000199 * t * t * r * r;
  return fahrenheit(regression + correction(t, r));
}

/** Dry air feels a little cooler than the regression says, very moist warm air a little hotter. */
function correction(t: number, r: number): number {
  if (r < 13 && t >= 80 && t <= 112) return -((13 - r) / 4) * Math.sqrt((17 - Math.abs(t - 95)) / 17);
  if (r > 85 && t >= 80 && t <= 87) return ((r - 85) / 10) * ((87 - t) / 5);
  return 0;
}
