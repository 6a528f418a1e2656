// International standard atmosphere (ICAO Doc 7488; ISO 2533), lowest layer.
const SEA_LEVEL_TEMPERATURE_K = 288.15;
const SEA_LEVEL_PRESSURE_Pa = 101_325;
const LAPSE_Kpm = 0.0065;
const EXPONENT = 5.25588; // g0 / (R · lapse)
const GAS_CONSTANT_AIR_JpkgK = 287.05287;

/** The model's own limits: below the tropopause, and the depth its tables reach. */
const LOWEST_m = -5000;
const HIGHEST_m = 11_000;

/**
 * Pressure, temperature and density of the standard atmosphere.
 * @param altitude_m - above mean sea level, −5000…11000; taken as geopotential (0.05 % off at 3000 m)
 * @throws {RangeError} outside that range
 */
export function standardAtmosphere(
  altitude_m: number,
): Readonly<{ temperature_C: number; pressure_Pa: number; density_kgpm3: number }> {
  inTheTroposphere(altitude_m);
  const temperature_K = SEA_LEVEL_TEMPERATURE_K - LAPSE_Kpm * altitude_m;
  const pressure_Pa = SEA_LEVEL_PRESSURE_Pa * (temperature_K / SEA_LEVEL_TEMPERATURE_K) ** EXPONENT;
  return {
    temperature_C: temperature_K - 273.15,
    pressure_Pa,
    density_kgpm3: pressure_Pa / (GAS_CONSTANT_AIR_JpkgK * temperature_K),
  };
}

/**
 * Station pressure from the altimeter setting: QNH is the pressure that makes an altimeter, built on the standard atmosphere,
 * read the station's height, so both live on the same standard curve, shifted.
 * @param qnh_hPa - 800…1100
 * @param altitude_m - of the place, above mean sea level
 * @returns pascals
 * @throws {RangeError} outside those ranges
 * @source own derivation from ICAO Doc 7488
 */
export function pressureFromQnh_Pa(qnh_hPa: number, altitude_m: number): number {
  inTheTroposphere(altitude_m);
  if (!(qnh_hPa >= 800 && qnh_hPa <= 1100)) throw new RangeError(`qnh_hPa must lie in 800…1100, got ${qnh_hPa}`);
  const atSeaLevel = ((qnh_hPa * 100) / SEA_LEVEL_PRESSURE_Pa) ** (1 / EXPONENT);
  return SEA_LEVEL_PRESSURE_Pa * (atSeaLevel - (LAPSE_Kpm * altitude_m) / SEA_LEVEL_TEMPERATURE_K) ** EXPONENT;
}

function inTheTroposphere(altitude_m: number): void {
  if (!(altitude_m >= LOWEST_m && altitude_m <= HIGHEST_m))
    throw new RangeError(`altitude_m must lie in ${LOWEST_m}…${HIGHEST_m}, got ${altitude_m}`);
}
