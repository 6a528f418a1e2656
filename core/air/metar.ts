import { type IMetar, parseMetar as readMetar } from 'metar-taf-parser';
import type { Problem, Result } from '../units/result.ts';
import { MPS_PER } from '../units/speed.ts';
import { relativeHumidity } from './relative-humidity.ts';

/** Wind of a report: at 10 m over open ground, the mean of the last minutes; directions are where it blows from, true. */
export type MetarWind = Readonly<{
  speed_mps: number;
  /** Absent when variable (VRB), calm or not reported. */
  from_deg?: number;
  gust_mps?: number;
  /** VRB: no direction stands out. */
  variable: boolean;
  /** dnVdx: the direction swung between these, clockwise. */
  swing_deg?: readonly [from: number, to: number];
  /** The speed or gust was written with P: it was that or more. */
  atLeast: boolean;
}>;

export type Metar = Readonly<{
  station: string;
  /** Day of the month and time, UTC, as written: 230853Z. */
  issued: string;
  wind?: MetarWind;
  temperature_C?: number;
  dewPoint_C?: number;
  /** 0…1, from temperature and dew point. */
  relativeHumidity?: number;
  /** Altimeter setting, reduced to sea level. */
  qnh_hPa?: number;
  seaLevelPressure_hPa?: number;
  /** Thunderstorm at the station or in its vicinity. */
  thunder: boolean;
  /** In words: what the report leaves out. */
  missing: readonly string[];
}>;

const HPA_PER_INCH_OF_MERCURY = 33.86389; // conventional inch of mercury, NIST SP 811 (2008), App. B.8
const MPS_PER_UNIT = { KT: MPS_PER.kn, MPS: 1, KMH: MPS_PER.kmh } as const;

const HEADER = /^(?:(?:METAR|SPECI) )?(?:COR )?[A-Z][A-Z0-9]{3} \d{6}Z( |$)/;
const WIND = /^(VRB|\d{3}|\/{3})(P?\d{2,3}|\/\/)(?:G(P?\d{2,3}|\/\/))?(KT|MPS|KMH)?$/;
const SWING = /^(\d{3})V(\d{3})$/;
/** Temperature with the dew point left out, which the library drops whole. */
const TEMPERATURE_ALONE = /^(M?)(\d{2})\/(?:\/\/)?$/;
/** Remarks and the trend forecast repeat the shapes of the groups before them. */
const AFTER_THE_OBSERVATION = /^(RMK|TEMPO|BECMG|INTER|NOSIG)$/;

/**
 * Reads one METAR or SPECI line. The library metar-taf-parser reads station, temperatures, pressure, weather and remarks; the wind
 * groups are read here, because it takes KMH for knots, cuts speeds of three digits to two, drops P49MPS, and accepts any direction.
 * @param path - where the text stands, for the problems
 * @returns the report with what is absent named in `missing`, or problems when the text is no METAR or contradicts itself
 * @source WMO-No. 306, FM 15 METAR; ICAO Annex 3, app. 3
 */
export function parseMetar(text: string, path = 'metar'): Result<Metar> {
  const line = text.trim().toUpperCase().replace(/\s+/g, ' ').replace(/ ?=$/, '');
  if (line.startsWith('TAF '))
    return refused(path, 'this is a TAF (a forecast); paste the METAR line (the observation)');
  if (!HEADER.test(line)) {
    return refused(
      path,
      'this is not a METAR line; it begins with the station and the time, such as "EGXX 171120Z 27010KT 9999 FEW020 18/09 Q1016"',
    );
  }
  let report: IMetar;
  try {
    report = readMetar(line);
  } catch (error) {
    return refused(
      path,
      `the METAR line cannot be read (${error instanceof Error ? error.message : String(error)}); paste it whole, one report only`,
    );
  }
  if (report.nil)
    return refused(path, `${report.station} sent no observation (NIL); use another station or type the wind`);

  const words = line.split(' ');
  const end = words.findIndex(word => AFTER_THE_OBSERVATION.test(word));
  const groups = end < 0 ? words : words.slice(0, end);
  const { wind, problems } = readWind(groups, path);
  if (problems.length > 0) return { ok: false, problems };

  const tenths = report.remarks.find(remark => remark.type === 'HourlyTemperatureDewPoint');
  const temperature_C = tenths?.temperature ?? report.temperature ?? temperatureAlone(groups);
  const dewPoint_C = tenths?.dewPoint ?? report.dewPoint;
  const seaLevelPressure_hPa = report.remarks.find(remark => remark.type === 'SeaLevelPressure')?.pressure;
  const { altimeter } = report;
  const missing = [
    ...(wind === undefined ? ['wind'] : []),
    ...(wind !== undefined && wind.from_deg === undefined && !wind.variable && wind.speed_mps > 0
      ? ['wind direction']
      : []),
    ...(temperature_C === undefined ? ['temperature'] : []),
    ...(dewPoint_C === undefined ? ['dew point'] : []),
    ...(altimeter === undefined ? ['pressure'] : []),
  ];
  return {
    ok: true,
    value: {
      station: report.station,
      issued: words.find(word => /^\d{6}Z$/.test(word))!,
      thunder: report.weatherConditions.some(weather => weather.descriptive === 'TS'),
      missing,
      ...(wind === undefined ? {} : { wind }),
      ...(temperature_C === undefined ? {} : { temperature_C }),
      ...(dewPoint_C === undefined ? {} : { dewPoint_C }),
      ...(temperature_C === undefined || dewPoint_C === undefined
        ? {}
        : { relativeHumidity: relativeHumidity(temperature_C, dewPoint_C) }),
      ...(altimeter === undefined
        ? {}
        : { qnh_hPa: altimeter.value * (altimeter.unit === 'inHg' ? HPA_PER_INCH_OF_MERCURY : 1) }),
      ...(seaLevelPressure_hPa === undefined ? {} : { seaLevelPressure_hPa }),
    },
  };
}

function refused(path: string, message: string): Result<never> {
  return { ok: false, problems: [{ path, message }] };
}

function readWind(groups: readonly string[], path: string): { wind?: MetarWind; problems: readonly Problem[] } {
  const match = groups
    .map(group => WIND.exec(group))
    .find(found => found !== null && (found[4] !== undefined || found[1] === '///'));
  if (match === null || match === undefined) return { problems: [] };
  const [group, from, mean, gust, unit] = match;
  if (mean === '//' || unit === undefined) return { problems: [] };
  const problems: Problem[] = [];
  const faulty = (message: string) =>
    problems.push({ path, message: `wind group "${group}": ${message}; check it against the report` });
  const factor = MPS_PER_UNIT[unit as keyof typeof MPS_PER_UNIT];
  const [speed_mps, gust_mps] = [
    speed(mean!) * factor,
    gust === undefined || gust === '//' ? undefined : speed(gust) * factor,
  ];
  if (from !== 'VRB' && Number(from) > 360) faulty(`a direction of ${from}° is past 360`);
  if (gust_mps !== undefined && gust_mps < speed_mps) faulty('the gust is below the mean');
  const swing = groups.map(word => SWING.exec(word)).find(found => found !== null);
  if (swing && (Number(swing[1]) > 360 || Number(swing[2]) > 360)) faulty(`the swing ${swing[0]} is past 360`);
  const hasDirection = from !== 'VRB' && from !== '///' && speed_mps > 0;
  return {
    problems,
    wind: {
      speed_mps,
      variable: from === 'VRB',
      atLeast: mean!.startsWith('P') || (gust?.startsWith('P') ?? false),
      ...(hasDirection ? { from_deg: Number(from) % 360 } : {}),
      ...(gust_mps === undefined ? {} : { gust_mps }),
      ...(swing ? { swing_deg: [Number(swing[1]) % 360, Number(swing[2]) % 360] as const } : {}),
    },
  };
}

/** P99 and P49 stand for 100 and 50 "or more": the first value past the written one. */
function speed(digits: string): number {
  return digits.startsWith('P') ? Number(digits.slice(1)) + 1 : Number(digits);
}

function temperatureAlone(groups: readonly string[]): number | undefined {
  const match = groups.map(group => TEMPERATURE_ALONE.exec(group)).find(found => found !== null);
  return match ? Number(match[2]) * (match[1] === 'M' ? -1 : 1) : undefined;
}
