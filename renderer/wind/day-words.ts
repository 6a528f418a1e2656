import type { DayInput } from '../../core/air/day-input.ts';

/** The wind a day means to the planner: calm where nothing was said, a METAR line apart. */
export type PlainWind = Readonly<{ speed_mps: number; from_deg: number; gust_mps: number | null }>;

export function windOf(day: DayInput): PlainWind {
  return {
    speed_mps: day.wind?.speed_mps ?? 0,
    from_deg: day.wind?.from_deg ?? 0,
    gust_mps: day.wind?.gust_mps ?? null,
  };
}

/** The day with another wind; a gust that the mean wind has overtaken is dropped. */
export function withWind(day: DayInput, wind: Partial<PlainWind>): DayInput {
  const next = { ...windOf(day), ...wind };
  const { gust_mps: _, ...rest } = day.wind ?? {};
  const gust = next.gust_mps !== null && next.gust_mps > next.speed_mps ? { gust_mps: next.gust_mps } : {};
  return { ...day, wind: { ...rest, speed_mps: next.speed_mps, from_deg: next.from_deg, ...gust } };
}

/**
 * The day as it was understood: where only a METAR line gives the wind, the wind the plan read from it.
 * @param air - of the plan for this day; null while there is none
 */
export function dayUnderstood(
  day: DayInput,
  air: Readonly<{ windSpeed_mps: number; windFrom_deg: number; gust_mps: number }> | null,
): DayInput {
  if (day.wind !== undefined || day.metar === undefined || air === null) return day;
  return withWind(day, { speed_mps: air.windSpeed_mps, from_deg: air.windFrom_deg, gust_mps: air.gust_mps });
}
