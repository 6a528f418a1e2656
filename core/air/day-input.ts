import { z } from 'zod';

const between = (low: number, high: number, unit: string, hint = '') =>
  z
    .number(`must be a number of ${unit}`)
    .min(low, `must lie in ${low}…${high} ${unit}${hint}`)
    .max(high, `must lie in ${low}…${high} ${unit}${hint}`);

export const STRONGEST_WIND_mps = 40;
export const STRONGEST_GUST_mps = 70;

/** What a player can say about the day. Everything is optional; what is given beside a METAR stands above it. */
export const dayInputSchema = z.strictObject({
  wind: z
    .strictObject({
      speed_mps: between(0, STRONGEST_WIND_mps, 'm/s', '; nobody throws in more').optional(),
      from_deg: between(0, 360, 'degrees', ', where the wind blows from, clockwise from north').optional(),
      gust_mps: between(0, STRONGEST_GUST_mps, 'm/s').optional(),
      /** Height of the measurement or forecast. Forecasts are for 10 m. */
      height_m: between(0.5, 60, 'm', '; forecasts are for 10 m, a hand-held meter reads at about 1.5 m').optional(),
      /** What lies round the place of a measurement. */
      exposure: z
        .enum(['open', 'park', 'wood'], 'must be open, park or wood: what lies round the place of the measurement')
        .optional(),
      directionSpread_deg: between(0, 110, 'degrees').optional(),
    })
    .optional(),
  temperature_C: between(-50, 55, '°C').optional(),
  altitude_m: between(-500, 6000, 'm above sea level').optional(),
  /** As a barometer on the spot shows it before any reduction to sea level. */
  stationPressure_hPa: between(450, 1100, 'hPa').optional(),
  /** Reduced to sea level, as forecasts and reports give it. */
  qnh_hPa: between(850, 1100, 'hPa').optional(),
  relativeHumidity: between(0, 1, '', ', a share (write 0.55 for 55 %)').optional(),
  metar: z.string('must be the text of a METAR line').optional(),
});
export type DayInput = z.infer<typeof dayInputSchema>;
