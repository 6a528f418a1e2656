import { type Command, Option } from 'commander';
import { type Day, makeDay } from '../../../core/air/day.ts';
import type { DayInput } from '../../../core/air/day-input.ts';
import type { Result } from '../../../core/units/result.ts';
import { direction_deg, length_m, speed_mps, temperature_C } from './reading.ts';

export type AirOptions = Readonly<{
  wind?: number;
  windFrom?: number;
  gust?: number;
  windHeight?: number;
  metar?: string;
  temperature?: number;
  altitude?: number;
}>;

export const AIR_OPTION_OF: Readonly<Record<string, string>> = {
  'wind.speed_mps': '--wind',
  'wind.from_deg': '--wind-from',
  'wind.gust_mps': '--gust',
  'wind.height_m': '--wind-height',
  metar: '--metar',
  temperature_C: '--temperature',
  altitude_m: '--altitude',
};

export function addAirOptions(command: Command): Command {
  return command
    .addOption(new Option('--wind <speed>', 'mean wind: 6 (m/s), 12mph, 20kmh, 10kn').argParser(speed_mps))
    .addOption(
      new Option('--wind-from <direction>', 'where it blows from: degrees clockwise from north, or W').argParser(
        direction_deg,
      ),
    )
    .addOption(new Option('--gust <speed>', 'strongest few seconds').argParser(speed_mps))
    .addOption(
      new Option('--wind-height <height>', 'height the wind is given at (default: 10 m, as forecasts)').argParser(
        length_m,
      ),
    )
    .option('--metar <text>', 'an airport weather report; the options beside it stand above it')
    .addOption(new Option('--temperature <degrees>', '18 (°C) or 65F').argParser(temperature_C))
    .addOption(new Option('--altitude <height>', 'above sea level: 300 (m) or 1000ft').argParser(length_m));
}

/** The day of these options; problems carry paths that `AIR_OPTION_OF` knows. */
export function dayOf(options: AirOptions): Result<Day> {
  return makeDay(dayInputOf(options));
}

/** What these options say of the day, unchecked. */
export function dayInputOf({ wind, windFrom, gust, windHeight, metar, temperature, altitude }: AirOptions): DayInput {
  const given = { speed_mps: wind, from_deg: windFrom, gust_mps: gust, height_m: windHeight };
  const windy = Object.values(given).some(value => value !== undefined);
  return { wind: windy ? given : undefined, metar, temperature_C: temperature, altitude_m: altitude };
}
