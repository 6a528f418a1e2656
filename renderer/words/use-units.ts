import { formatLength, METERS_PER_FOOT } from '../../core/units/length.ts';
import { formatSpeed } from '../../core/units/speed.ts';
import { formatTemperature } from '../../core/units/temperature.ts';
import { usePlanner } from '../state/planner.tsx';

export type ShowUnits = Readonly<{
  length: (length_m: number, digits?: number) => string;
  speed: (speed_mps: number, digits?: number) => string;
  temperature: (temperature_C: number) => string;
  /** Metres in one unit of length, for round numbers on a scale. */
  lengthUnit_m: number;
  /** "12 ft right", "straight". */
  side: (side_m: number) => string;
}>;

/** Writes quantities in the units the player chose. */
export function useUnits(): ShowUnits {
  const { settings } = usePlanner();
  return {
    length: (length_m, digits) => formatLength(length_m, settings, digits),
    speed: (speed_mps, digits) => formatSpeed(speed_mps, settings, digits),
    temperature: temperature_C => formatTemperature(temperature_C, settings.temperature),
    lengthUnit_m: settings.length === 'ft' ? METERS_PER_FOOT : 1,
    side: side_m =>
      Math.abs(side_m) < 0.5
        ? 'straight'
        : `${formatLength(Math.abs(side_m), settings, 0)} ${side_m > 0 ? 'right' : 'left'}`,
  };
}
