import type { UnitsChoice } from '../../units/units-choice.ts';
import { far } from './lengths.ts';

/** Past this the metres at the basket grow out of all use. */
const WIDEST_DEG = 60;
const STRAIGHT_M = 1;

/**
 * Where to aim, as seen from the lie: degrees from the basket, and metres beside it at its distance.
 * @param aimFromBasket_deg - right positive
 */
export function aimWords(aimFromBasket_deg: number, toBasket_m: number, units: UnitsChoice): string {
  const size_deg = Math.abs(aimFromBasket_deg);
  const beside_m = Math.tan((size_deg * Math.PI) / 180) * toBasket_m;
  if (Math.round(size_deg) === 0 && beside_m < STRAIGHT_M) return 'straight at the basket';
  const side = aimFromBasket_deg > 0 ? 'right' : 'left';
  const angle = `${size_deg < 0.95 ? size_deg.toFixed(1) : Math.round(size_deg)}°`;
  return size_deg > WIDEST_DEG
    ? `${angle} ${side} of the basket`
    : `${angle} = ${far(beside_m, units)} ${side.toUpperCase()} of the basket`;
}

/** In few letters: "16° left", "straight". */
export function shortAim(aimFromBasket_deg: number): string {
  const size_deg = Math.round(Math.abs(aimFromBasket_deg));
  return size_deg === 0 ? 'straight' : `${size_deg}° ${aimFromBasket_deg > 0 ? 'right' : 'left'}`;
}
