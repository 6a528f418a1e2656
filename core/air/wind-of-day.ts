import type { Problem, Result } from '../units/result.ts';
import type { Day } from './day.ts';
import { type DayInput, STRONGEST_WIND_mps } from './day-input.ts';
import { assumedGust_mps } from './gust.ts';
import type { Metar } from './metar.ts';
import { ASSUMED_SPREAD_deg, directionSpread_deg } from './wind-direction-spread.ts';
import { windAt10m } from './wind-profile.ts';

type TypedWind = NonNullable<DayInput['wind']>;
type Measured = Readonly<{ speed_mps: number; gust_mps?: number; from_deg?: number; ofReport: boolean }>;

/**
 * The day's wind at 10 m over open ground. What the player typed stands above the report.
 * @param notes - what is assumed or converted is added here, in words
 */
export function windOfDay(given: DayInput, metar: Metar | undefined, notes: string[]): Result<Day['wind']> {
  const typed = given.wind ?? {};
  const measured = measuredWind(typed, metar);
  const problems = [...withoutSpeed(typed, metar, measured), ...(measured ? contradictions(typed, measured) : [])];
  if (problems.length > 0) return { ok: false, problems };
  if (measured === undefined) {
    notes.push('No wind given: planned for calm air.');
    return { ok: true, value: { speed_mps: 0, from_deg: 0, gust_mps: 0, directionSpread_deg: ASSUMED_SPREAD_deg } };
  }

  // The profile scales the whole wind, so mean and gust get one factor: the flight meets at that height what was measured there.
  const factor = measured.ofReport ? 1 : factorTo10m(typed, notes);
  const speed_mps = measured.speed_mps * factor;
  const gust_mps =
    measured.gust_mps === undefined ? assumedGust_mps(speed_mps, measured.ofReport) : measured.gust_mps * factor;
  const strength = `${speed_mps.toFixed(1)} m/s, gusts ${gust_mps.toFixed(1)} m/s`;
  if (speed_mps > STRONGEST_WIND_mps) {
    const message = `at 10 m over open ground the wind comes to ${strength}; the limit is ${STRONGEST_WIND_mps} m/s: check speed, unit, height_m and exposure`;
    return { ok: false, problems: [{ path: 'wind.speed_mps', message }] };
  }
  if (measured.gust_mps === undefined && speed_mps > 0) {
    notes.push(
      `No gust given: assumed ${gust_mps.toFixed(1)} m/s at 10 m, from the usual turbulence over open ground.`,
    );
  }
  const directionKnown = measured.from_deg !== undefined || gust_mps === 0;
  if (!directionKnown && !(measured.ofReport && metar?.wind?.variable)) {
    const message = 'say where the wind blows from, in degrees clockwise from north (270 is a west wind)';
    return { ok: false, problems: [{ path: 'wind.from_deg', message }] };
  }
  const spread_deg = typed.directionSpread_deg ?? reportedSpread_deg(metar, directionKnown, notes);
  return {
    ok: true,
    value: { speed_mps, from_deg: (measured.from_deg ?? 0) % 360, gust_mps, directionSpread_deg: spread_deg },
  };
}

function measuredWind(typed: TypedWind, metar: Metar | undefined): Measured | undefined {
  const from_deg = typed.from_deg ?? metar?.wind?.from_deg;
  // A gust reported beside another mean than the player's own says nothing about it.
  if (typed.speed_mps !== undefined)
    return { speed_mps: typed.speed_mps, gust_mps: typed.gust_mps, from_deg, ofReport: false };
  if (metar?.wind === undefined) return undefined;
  return { speed_mps: metar.wind.speed_mps, gust_mps: typed.gust_mps ?? metar.wind.gust_mps, from_deg, ofReport: true };
}

function withoutSpeed(typed: TypedWind, metar: Metar | undefined, measured: Measured | undefined): Problem[] {
  if (measured !== undefined) return [];
  if (metar)
    return [
      {
        path: 'wind.speed_mps',
        message: `the report of ${metar.station} has no wind; give speed and direction beside it`,
      },
    ];
  return (['from_deg', 'gust_mps'] as const)
    .filter(name => typed[name] !== undefined)
    .map(name => ({ path: 'wind.speed_mps', message: `wind.${name} is given without a speed; give both` }));
}

function contradictions(typed: TypedWind, { speed_mps, gust_mps, ofReport }: Measured): Problem[] {
  const problems: Problem[] = [];
  if (gust_mps !== undefined && gust_mps < speed_mps) {
    const message = `the gust (${gust_mps.toFixed(1)} m/s) is below the wind (${speed_mps.toFixed(1)} m/s); give the strongest few seconds`;
    problems.push({ path: 'wind.gust_mps', message });
  }
  if (ofReport && ((typed.height_m ?? 10) !== 10 || (typed.exposure ?? 'open') !== 'open')) {
    const message =
      'a METAR wind is at 10 m over open ground; leave height_m and exposure out, or give the speed measured there';
    problems.push({ path: 'wind.height_m', message });
  }
  return problems;
}

function factorTo10m({ height_m = 10, exposure = 'open' }: TypedWind, notes: string[]): number {
  if (height_m === 10 && exposure === 'open') return 1;
  const factor = windAt10m({ speed_mps: 1, height_m, exposure });
  const place = { open: 'over open ground', park: 'in parkland', wood: 'in woods (a rough estimate)' }[exposure];
  notes.push(
    `Wind measured at ${height_m} m ${place}: multiplied by ${factor.toFixed(2)} to stand for 10 m over open ground.`,
  );
  return factor;
}

function reportedSpread_deg(metar: Metar | undefined, directionKnown: boolean, notes: string[]): number {
  const spread_deg = directionSpread_deg(metar?.wind, directionKnown);
  if (!directionKnown)
    notes.push(
      'The report gives no direction (VRB): the plan knows only how strong the wind is, every direction is as likely.',
    );
  else if (spread_deg > ASSUMED_SPREAD_deg)
    notes.push(`The report says that the direction swings: spread ${spread_deg.toFixed(0)}°.`);
  else notes.push(`Spread of the wind's direction assumed: ${ASSUMED_SPREAD_deg}°.`);
  return spread_deg;
}
