/** The longitude, whole turns added or taken away, that lies within half a turn of another: 179.9 beside −179.9 is −180.1. */
export function besideLongitude(lon_deg: number, reference_deg: number): number {
  return lon_deg - 360 * Math.round((lon_deg - reference_deg) / 360);
}
