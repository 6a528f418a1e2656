/** Air at one place: station pressure (not reduced to sea level), temperature, and humidity as a share 0…1. */
export type AirState = Readonly<{ pressure_Pa: number; temperature_C: number; relativeHumidity: number }>;

// Constants of CIPM-2007 with 400 ppm carbon dioxide.
const MOLAR_MASS_DRY_AIR_kgpmol = 0.02896546;
const MOLAR_MASS_WATER_kgpmol = 0.01801528;
const GAS_CONSTANT_JpmolK = 8.314472;

/**
 * Density of moist air, kg/m³.
 * The formula is stated for 600–1100 hPa and 15–27 °C, where it is good to parts in 100,000. Outside (it is used here from
 * −60 to 60 °C) it is an extrapolation: it stays within 0.1 % of the simple mixture of ideal gases, far below what a throw can feel.
 * @throws {RangeError} naming the value, outside 30,000–120,000 Pa, −60…60 °C, humidity 0…1
 * @source Picard, Davis, Gläser, Fujii 2008, Metrologia 45, 149–155 (CIPM-2007)
 */
export function airDensity({ pressure_Pa, temperature_C, relativeHumidity }: AirState): number {
  within('pressure_Pa', pressure_Pa, 30_000, 120_000);
  within('temperature_C', temperature_C, -60, 60);
  within('relativeHumidity', relativeHumidity, 0, 1);
  const [p, t, T] = [pressure_Pa, temperature_C, temperature_C + 273.15];
  const saturation_Pa = Math.exp(1.2378847e-5 * T * T - 1.9121316e-2 * T + 33.93711047 - 6.3431645e3 / T);
  const enhancement = 1.00062 + 3.14e-8 * p + 5.6e-7 * t * t;
  const vapour = (relativeHumidity * enhancement * saturation_Pa) / p; // mole fraction of water
  const compressibility =
    1 -
    (p / T) *
      (1.58123e-6 -
        2.9331e-8 * t +
        1.1043e-10 * t * t +
        (5.707e-6 - 2.051e-8 * t) * vapour +
        (1.9898e-4 - 2.376e-6 * t) * vapour * vapour) +
    (p / T) ** 2 * (1.83e-11 - 0.765e-8 * vapour * vapour);
  const lighterByVapour = 1 - vapour * (1 - MOLAR_MASS_WATER_kgpmol / MOLAR_MASS_DRY_AIR_kgpmol);
  return ((p * MOLAR_MASS_DRY_AIR_kgpmol) / (compressibility * GAS_CONSTANT_JpmolK * T)) * lighterByVapour;
}

function within(name: string, value: number, low: number, high: number): void {
  if (!(value >= low && value <= high)) throw new RangeError(`${name} must lie in ${low}…${high}, got ${value}`);
}
