/** The 16 points of the compass, clockwise from north. */
export const COMPASS_POINTS = [
  'N',
  'NNE',
  'NE',
  'ENE',
  'E',
  'ESE',
  'SE',
  'SSE',
  'S',
  'SSW',
  'SW',
  'WSW',
  'W',
  'WNW',
  'NW',
  'NNW',
] as const;

/** The nearest of the 16 points, for reading. */
export function compassPoint(bearing_deg: number): string {
  const turn = ((bearing_deg % 360) + 360) % 360;
  return COMPASS_POINTS[Math.round(turn / (360 / COMPASS_POINTS.length)) % COMPASS_POINTS.length]!;
}
