import { escaped } from '../markup.ts';

export type Place = readonly [x_mm: number, y_mm: number];

/** A number of millimetres as SVG wants it: hundredths, no "-0". */
export function number(value: number): string {
  const text = value.toFixed(2).replace(/\.?0+$/, '');
  return text === '-0' || text === '' ? '0' : text;
}

/** Path data through the places; `closed` joins the last to the first. */
export function pathData(places: readonly Place[], closed = false): string {
  if (places.length === 0) return '';
  const moves = places.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${number(x)} ${number(y)}`);
  return moves.join('') + (closed ? 'Z' : '');
}

export function path(kind: string, data: string): string {
  return data === '' ? '' : `<path class="${kind}" d="${data}"/>`;
}

/** A line twice: white under black, so that it stands out from any hatching. */
export function haloed(kind: string, data: string): string {
  return path('halo', data) + path(kind, data);
}

export function circle(kind: string, [x, y]: Place, radius_mm: number): string {
  return `<circle class="${kind}" cx="${number(x)}" cy="${number(y)}" r="${number(radius_mm)}"/>`;
}

/** A word on a white edge. */
export function word(text: string, [x, y]: Place, anchor: 'start' | 'middle' | 'end' = 'middle'): string {
  return `<text class="word" x="${number(x)}" y="${number(y)}" text-anchor="${anchor}">${escaped(text)}</text>`;
}

/** An arrowhead that ends at `tip`, flying `clockwise_deg` from up. */
export function arrowhead([x, y]: Place, clockwise_deg: number): string {
  const corner = (turn_deg: number, length_mm: number): string => {
    const angle = ((clockwise_deg + turn_deg) * Math.PI) / 180;
    return `${number(x + length_mm * Math.sin(angle))} ${number(y - length_mm * Math.cos(angle))}`;
  };
  return path('head', `M${corner(0, 0)}L${corner(158, 2.4)}L${corner(202, 2.4)}Z`);
}

/** The whole drawing, at its true size in millimetres, cut off at its frame. */
export function drawing(kind: string, title: string, width_mm: number, height_mm: number, inside: string): string {
  const [w, h] = [number(width_mm), number(height_mm)];
  return `<svg class="drawing ${kind}" role="img" aria-label="${escaped(title)}" width="${w}mm" height="${h}mm" viewBox="0 0 ${w} ${h}">${inside}</svg>`;
}
