import { MPS_PER } from '../units/speed.ts';

/**
 * Wind chill: the calm-air temperature at which bare skin would lose as much heat. Undefined where the formula does not hold:
 * above 10 °C, or in winds up to 4.8 km/h.
 * @param speed_mps - at 10 m over open ground
 * @returns degrees Celsius
 * @source from memory, the joint US and Canadian formula of 2001 (Environment Canada)
 */
export function windChill_C(temperature_C: number, speed_mps: number): number | undefined {
  const speed_kmh = speed_mps / MPS_PER.kmh;
  if (!(temperature_C <= 10 && speed_kmh > 4.8)) return undefined;
  const power = speed_kmh ** 0.16;
  return 13.12 + 0.6215 * temperature_C - 11.37 * power + 0.3965 * temperature_C * power;
}
