import type { Result } from '../units/result.ts';
import type { Day } from './day.ts';
import type { DayInput } from './day-input.ts';
import { airDensity } from './density.ts';
import type { Metar } from './metar.ts';
import { relativeHumidity } from './relative-humidity.ts';
import { pressureFromQnh_Pa, standardAtmosphere } from './standard-atmosphere.ts';

const ASSUMED_HUMIDITY = 0.5;

type Air = Pick<Day, 'density_kgpm3' | 'temperature_C' | 'relativeHumidity'>;

/**
 * Density, temperature and humidity of the day. What the player typed stands above the report, the report above the standard atmosphere.
 * @param notes - what is assumed is added here, in words
 */
export function airOfDay(given: DayInput, metar: Metar | undefined, notes: string[]): Result<Air> {
  const problem = faultInPressureOrTemperature(given, metar);
  if (problem !== undefined) return { ok: false, problems: [problem] };
  const temperature_C = given.temperature_C ?? metar?.temperature_C;
  const humidity = humidityOfDay(given, metar);
  const standard_C = standardAtmosphere(given.altitude_m ?? 0).temperature_C;
  if (given.altitude_m === undefined && given.stationPressure_hPa === undefined)
    notes.push('No altitude given: density as at sea level.');
  if (temperature_C === undefined)
    notes.push(`No temperature given: ${standard_C.toFixed(0)} °C assumed, from the standard atmosphere.`);
  if (humidity === undefined)
    notes.push('No humidity given: 50 % assumed (up to 30 °C it moves the density by less than 1 %).');
  const density_kgpm3 = airDensity({
    pressure_Pa: stationPressure_Pa(given, metar),
    temperature_C: temperature_C ?? standard_C,
    relativeHumidity: humidity ?? ASSUMED_HUMIDITY,
  });
  return {
    ok: true,
    value: {
      density_kgpm3,
      ...(temperature_C === undefined ? {} : { temperature_C }),
      ...(humidity === undefined ? {} : { relativeHumidity: humidity }),
    },
  };
}

/** The schema guards what is typed; this is for what a report says and for the two pressures together. */
function faultInPressureOrTemperature(given: DayInput, metar: Metar | undefined) {
  if (given.stationPressure_hPa !== undefined && given.qnh_hPa !== undefined) {
    return { path: 'qnh_hPa', message: 'give either stationPressure_hPa or qnh_hPa, not both' };
  }
  const { qnh_hPa, temperature_C } = metar ?? {};
  if (qnh_hPa !== undefined && !(qnh_hPa >= 850 && qnh_hPa <= 1100)) {
    return { path: 'metar', message: `a pressure of ${qnh_hPa.toFixed(0)} hPa does not occur; check the Q or A group` };
  }
  if (temperature_C !== undefined && !(temperature_C >= -50 && temperature_C <= 55)) {
    return { path: 'metar', message: `${temperature_C} °C is outside −50…55 °C; check the temperature group` };
  }
  return undefined;
}

function stationPressure_Pa(given: DayInput, metar: Metar | undefined): number {
  if (given.stationPressure_hPa !== undefined) return given.stationPressure_hPa * 100;
  const qnh_hPa = given.qnh_hPa ?? metar?.qnh_hPa;
  const altitude_m = given.altitude_m ?? 0;
  return qnh_hPa === undefined ? standardAtmosphere(altitude_m).pressure_Pa : pressureFromQnh_Pa(qnh_hPa, altitude_m);
}

/** Beside a temperature of the player's own, the report's dew point still holds; its relative humidity does not. */
function humidityOfDay(given: DayInput, metar: Metar | undefined): number | undefined {
  if (given.relativeHumidity !== undefined) return given.relativeHumidity;
  if (given.temperature_C === undefined || metar?.dewPoint_C === undefined)
    return given.temperature_C === undefined ? metar?.relativeHumidity : undefined;
  return relativeHumidity(given.temperature_C, metar.dewPoint_C);
}
