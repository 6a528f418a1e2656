import { formatLength } from '../../units/length.ts';
import { formatSpeed } from '../../units/speed.ts';
import type { UnitsChoice } from '../../units/units-choice.ts';

type Length = Pick<UnitsChoice, 'length'>;

/** Distances on the ground: whole metres or feet. */
export const far = (length_m: number, units: Length): string => formatLength(length_m, units, 0);

/** Heights and widths: a tenth of a metre, or feet. */
export const fine = (length_m: number, units: Length): string =>
  formatLength(length_m, units, units.length === 'm' ? 1 : 0);

/** "38–42 m", or "at 38 m" where both ends read the same. */
export function stretch(from_m: number, to_m: number, units: Length): string {
  const [from, to] = [far(from_m, units), far(to_m, units)];
  return from === to ? `at ${to}` : `${from.slice(0, from.indexOf(' '))}–${to}`;
}

/** A sentence of the plan ("comes up 3.5 m short in 4.0 m/s"), which is written in metres, in the units chosen. */
export function inUnits(sentence: string, units: UnitsChoice): string {
  return sentence.replace(/(\d+(?:\.\d+)?) m(\/s)?(?![\p{L}\p{N}/])/gu, (text, value: string, perSecond?: string) => {
    if (perSecond !== undefined) return units.speed === 'mps' ? text : formatSpeed(Number(value), units);
    return units.length === 'm' ? text : formatLength(Number(value), units, 0);
  });
}
