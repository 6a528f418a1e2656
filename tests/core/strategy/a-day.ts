import { type Day, makeDay } from '../../../core/air/day.ts';

/** A day as a player would type it. */
export function aDay(speed_mps: number, from_deg = 0, rest: object = {}): Day {
  const day = makeDay({ wind: { speed_mps, from_deg: ((from_deg % 360) + 360) % 360, ...rest } });
  if (!day.ok) throw new Error(JSON.stringify(day.problems));
  return day.value;
}
