import { Option } from 'commander';
import { METERS_PER_FOOT } from '../../core/units/length.ts';
import { rounded } from '../../core/units/number-with-unit.ts';
import type { UnitsChoice } from '../../core/units/units-choice.ts';

/** The units tables are written in. JSON is always SI. */
export type Units = 'metric' | 'feet';

export const unitsOption = () =>
  new Option('--units <units>', 'units of the tables').choices(['metric', 'feet']).default('metric');

export const CHOSEN: Readonly<Record<Units, UnitsChoice>> = {
  metric: { length: 'm', speed: 'mps' },
  feet: { length: 'ft', speed: 'mph' },
};

/** A length without its unit, for columns whose head names it. */
export function lengthIn(units: Units, length_m: number, digits = 0): string {
  return rounded(units === 'feet' ? length_m / METERS_PER_FOOT : length_m, digits);
}

/** "3.2 left", "on the line", "1.0 right"; `right_m` is right positive. */
export function sideIn(units: Units, right_m: number, digits = 0): string {
  const size = lengthIn(units, Math.abs(right_m), digits);
  if (Number(size) === 0) return 'straight';
  return `${size} ${right_m > 0 ? 'right' : 'left'}`;
}
