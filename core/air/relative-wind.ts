/** The wind as a thrower feels it. `head_mps`: positive into the face, negative from behind. `right_mps`: positive blowing from the right. */
export type RelativeWind = Readonly<{ head_mps: number; right_mps: number }>;

/**
 * The day's 10 m wind split along and across an aim.
 * @param aim_bearing_deg - clockwise from true north, any turn
 * @throws {RangeError} for a bearing that is not finite
 */
export function relativeWind(
  { wind }: Readonly<{ wind: Readonly<{ speed_mps: number; from_deg: number }> }>,
  aim_bearing_deg: number,
): RelativeWind {
  if (!Number.isFinite(aim_bearing_deg))
    throw new RangeError(`aim_bearing_deg must be a finite number, got ${aim_bearing_deg}`);
  const angle = ((wind.from_deg - aim_bearing_deg) * Math.PI) / 180;
  return { head_mps: wind.speed_mps * Math.cos(angle), right_mps: wind.speed_mps * Math.sin(angle) };
}
