import { readNumberWithUnit, rounded, type Spelling, spellings } from './number-with-unit.ts';
import { finite } from './quantity.ts';
import type { Result } from './result.ts';
import type { UnitsChoice } from './units-choice.ts';

/**
 * Metres per second in one of each unit; all exact.
 * @source NIST SP 811 (2008), App. B.8 (mile per hour, kilometre per hour); the knot is 1852 m an hour (same, knot)
 */
export const MPS_PER: Readonly<Record<UnitsChoice['speed'], number>> = {
  mps: 1,
  mph: 0.44704,
  kmh: 1000 / 3600,
  kn: 1852 / 3600,
};

const SPEED: Spelling = {
  what: 'speed',
  factors: spellings({
    '|m/s|mps': MPS_PER.mps,
    'mph|mi/h': MPS_PER.mph,
    'km/h|kmh|kph|kmph': MPS_PER.kmh,
    'kn|kt|kts|kns|knot|knots': MPS_PER.kn,
    'ft/s|fps': 0.3048,
  }),
  examples: 'write 6, 6 m/s, 12mph, 20 km/h or 10kn (a plain number is metres per second)',
};

const WRITTEN: Readonly<Record<UnitsChoice['speed'], string>> = { mps: 'm/s', mph: 'mph', kmh: 'km/h', kn: 'kn' };

/**
 * A speed in metres per second from "6", "6 m/s", "12mph", "20 km/h", "10kn", "10 kt"; a plain number is metres per second.
 * @param path - where the text stands, for the problem
 * @returns metres per second, sign kept; a problem that lists the accepted forms otherwise
 */
export function parseSpeed_mps(text: string, path = 'speed'): Result<number> {
  return readNumberWithUnit(text, SPEED, path);
}

/**
 * "5.4 m/s", "12 mph", "19 km/h" or "10 kn". Without `digits`: one decimal for m/s, whole numbers for the finer units.
 * @throws {RangeError} for a speed that is not finite
 */
export function formatSpeed(speed_mps: number, units: Pick<UnitsChoice, 'speed'>, digits?: number): string {
  finite('speed_mps', speed_mps);
  const decimals = digits ?? (units.speed === 'mps' ? 1 : 0);
  return `${rounded(speed_mps / MPS_PER[units.speed], decimals)} ${WRITTEN[units.speed]}`;
}
