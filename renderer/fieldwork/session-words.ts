import { turn_deg } from '../../core/geometry/bearing.ts';
import type { Session, Thrown } from '../state/fieldwork.ts';
import type { ShowUnits } from '../words/use-units.ts';
import { feltWind } from '../words/wind-words.ts';

/** "2026-05-30", or where a session without a date stands. */
export const sessionName = (session: Pick<Session, 'date'>, place: number): string =>
  session.date ?? `Session ${place + 1}, no date`;

/** "headwind 4.0 m/s, uphill": what the throws of a session met. */
export function conditionsWords({ wind, bearing_deg, rise_m, surface }: Session, units: ShowUnits): string {
  const air =
    wind === undefined || wind.speed_mps === 0
      ? 'calm'
      : bearing_deg === undefined
        ? units.speed(wind.speed_mps)
        : `${feltWind(wind.speed_mps, wind.from_deg, bearing_deg)} ${units.speed(wind.speed_mps)}`;
  const slope =
    rise_m === undefined || rise_m === 0
      ? []
      : [`${units.length(Math.abs(rise_m), 1)} ${rise_m > 0 ? 'uphill' : 'downhill'}`];
  const ground = surface === 'longGrass' ? ['long grass'] : surface === 'hardpan' ? ['hard ground'] : [];
  return [air, ...slope, ...ground].join(', ');
}

/** The wind against the throwing line in words, from an angle clockwise from the line. */
export const windAgainstLine = (wind_mps: number, windFrom_deg: number, units: ShowUnits): string =>
  wind_mps < 0.3 ? 'calm' : `${feltWind(wind_mps, turn_deg(0, windFrom_deg), 0)} ${units.speed(wind_mps)}`;

/** "full", "80 %", "part". */
export const powerWords = (power: 'full' | 'part' | number): string =>
  typeof power === 'number' ? `${Math.round(power * 100)} %` : power;

/** "forehand, flat, 80 %"; full power goes without saying. */
export const mannerWords = ({ hand, shape, power }: Pick<Thrown, 'hand' | 'shape' | 'power'>): string =>
  [hand, shape, ...(power === 'full' || power === 1 ? [] : [powerWords(power)])].join(', ');

/** "4.2 m right", "on the line", "not measured". */
export function sideWords(side_m: number | null | undefined, units: ShowUnits): string {
  if (side_m === null || side_m === undefined) return 'not measured';
  if (side_m === 0) return 'on the line';
  return `${units.length(Math.abs(side_m), 1)} ${side_m > 0 ? 'right' : 'left'}`;
}
