import type { MetarWind } from './metar.ts';

/**
 * Standard deviation of the wind's direction within some minutes, when nothing is known: the middle of the neutral
 * stability class (7.5–12.5°). Assumed; from memory, US EPA-454/R-99-005, table 6-8a. Sun on a light wind makes it larger.
 */
export const ASSUMED_SPREAD_deg = 10;

/** The extremes of some minutes stand about three standard deviations to each side, so their range is six. From memory: Slade, Meteorology and Atomic Energy (1968). */
const DEVIATIONS_IN_A_RANGE = 6;

/** VRB in a wind that is not light means a range of 180° or more. @source ICAO Annex 3, 4.1.5.2 */
const VARIABLE_RANGE_deg = 180;

/** No direction known at all: the standard deviation of a direction spread evenly round the circle. */
const ANY_DIRECTION_SPREAD_deg = 360 / Math.sqrt(12);

/**
 * Standard deviation of direction that a report's wind implies; never below the assumed one.
 * @param directionKnown - true when the report or the player names a direction
 */
export function directionSpread_deg(wind: MetarWind | undefined, directionKnown: boolean): number {
  if (!directionKnown) return ANY_DIRECTION_SPREAD_deg;
  const swing = wind?.swing_deg;
  const range_deg = wind?.variable ? VARIABLE_RANGE_deg : swing ? (swing[1] - swing[0] + 360) % 360 : 0;
  return Math.max(ASSUMED_SPREAD_deg, range_deg / DEVIATIONS_IN_A_RANGE);
}
