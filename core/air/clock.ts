import type { Result } from '../units/result.ts';

const CLOCK = /^(\d{1,2})[:.](\d{2})$/;
const DAY_MIN = 24 * 60;

/**
 * A time of the day: "9:00", "09:05", "17.30".
 * @param path - where the text stands, for the problem
 * @returns minutes after midnight
 */
export function parseClock_min(text: string, path: string): Result<number> {
  const [, hours, minutes] = CLOCK.exec(text.trim()) ?? [];
  if (hours === undefined || minutes === undefined || Number(hours) > 23 || Number(minutes) > 59)
    return {
      ok: false,
      problems: [{ path, message: `"${text}" is no time of the day: write hours and minutes, 09:00` }],
    };
  return { ok: true, value: 60 * Number(hours) + Number(minutes) };
}

/** "09:05"; after midnight it starts again. */
export function clockText(at_min: number): string {
  const minutes = ((Math.round(at_min) % DAY_MIN) + DAY_MIN) % DAY_MIN;
  return `${String(Math.floor(minutes / 60)).padStart(2, '0')}:${String(minutes % 60).padStart(2, '0')}`;
}
