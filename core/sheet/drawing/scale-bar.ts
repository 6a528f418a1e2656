import { METERS_PER_FOOT } from '../../units/length.ts';
import type { UnitsChoice } from '../../units/units-choice.ts';
import { placeAtOneOf, type Taken } from './label-places.ts';
import { number, path, word } from './svg.ts';
import type { ViewFrame } from './view-frame.ts';

const ROUND = [5, 10, 20, 25, 50, 100, 200, 500, 1000];
const LONGEST_SHARE = 0.38;
const EDGE_MM = 0.8;

/** A round length at the lower left. */
export function scaleBar(frame: ViewFrame, units: UnitsChoice, taken: Taken): string {
  const metresPer = units.length === 'ft' ? METERS_PER_FOOT : 1;
  const fits = ROUND.filter(size => size * metresPer * frame.mmPerMetre <= LONGEST_SHARE * frame.width_mm);
  const size = fits.at(-1) ?? ROUND[0]!;
  const bar_mm = size * metresPer * frame.mmPerMetre;
  const y = frame.height_mm - EDGE_MM;
  const text = `${size} ${units.length}`;
  const place = placeAtOneOf(text, [[EDGE_MM + Math.max(bar_mm, text.length * 1.15) / 2, y - 0.9]], frame, taken);
  const bar = `M${number(EDGE_MM)} ${number(y - 0.7)}V${number(y)}H${number(EDGE_MM + bar_mm)}V${number(y - 0.7)}`;
  return path('halo', bar) + path('scale', bar) + (place === null ? '' : word(text, place));
}
