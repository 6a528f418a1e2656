import { number, type Place } from './svg.ts';

/** Rings of one area on paper; what lies in an odd number of them is inside. */
export type Rings = readonly (readonly Place[])[];

/** One set of parallel lines; `dot` marks places along them instead of drawing them. */
type Lines = Readonly<{ turn_deg: number; spacing_mm: number; dot_mm?: number }>;

/** Ground told apart by its hatching alone. */
export type Hatch = 'out' | 'hazard' | 'wood' | 'solid' | 'stems';

const HATCHES: Readonly<Record<Hatch, readonly Lines[]>> = {
  out: [{ turn_deg: -45, spacing_mm: 1.25 }],
  hazard: [
    { turn_deg: 45, spacing_mm: 1.6 },
    { turn_deg: -45, spacing_mm: 1.6 },
  ],
  wood: [{ turn_deg: 30, spacing_mm: 1.15, dot_mm: 1.15 }],
  solid: [
    { turn_deg: 20, spacing_mm: 0.62 },
    { turn_deg: 110, spacing_mm: 0.62 },
  ],
  stems: [{ turn_deg: 90, spacing_mm: 1.1 }],
};

const DEGREE = Math.PI / 180;

/**
 * The hatching of an area as path data: plain lines, cut to the area and to the frame, so that every printer draws them alike.
 * Lines of neighbouring areas meet: they count from the frame's corner.
 */
export function hatch(kind: Hatch, rings: Rings, width_mm: number, height_mm: number): string {
  return HATCHES[kind].map(lines => hatchLines(lines, rings, width_mm, height_mm)).join('');
}

function hatchLines(
  { turn_deg, spacing_mm, dot_mm }: Lines,
  rings: Rings,
  width_mm: number,
  height_mm: number,
): string {
  const [sin, cos] = [Math.sin(turn_deg * DEGREE), Math.cos(turn_deg * DEGREE)];
  const along = ([x, y]: Place) => x * cos + y * sin;
  const across = ([x, y]: Place) => y * cos - x * sin;
  const corners: Place[] = [
    [0, 0],
    [width_mm, 0],
    [width_mm, height_mm],
    [0, height_mm],
  ];
  const [left, right] = [Math.min(...corners.map(along)), Math.max(...corners.map(along))];
  const turned = rings.map(ring => ring.map((place): Place => [along(place), across(place)]));
  const heights = turned.flat().map(([, v]) => v);
  const from = Math.max(Math.min(...heights), Math.min(...corners.map(across)));
  const to = Math.min(Math.max(...heights), Math.max(...corners.map(across)));
  const back = (u: number, v: number) => `${number(u * cos - v * sin)} ${number(u * sin + v * cos)}`;
  let data = '';
  for (let row = Math.ceil(from / spacing_mm); row * spacing_mm <= to; row++) {
    const v = row * spacing_mm;
    const cuts = crossings(turned, v);
    for (let i = 1; i < cuts.length; i += 2) {
      const [a, b] = [Math.max(left, cuts[i - 1]!), Math.min(right, cuts[i]!)];
      if (a >= b) continue;
      if (dot_mm === undefined) {
        data += `M${back(a, v)}L${back(b, v)}`;
        continue;
      }
      const shift = (row % 2) * (dot_mm / 2);
      for (let k = Math.ceil((a - shift) / dot_mm); k * dot_mm + shift <= b; k++) {
        data += `M${back(k * dot_mm + shift, v)}h0`;
      }
    }
  }
  return data;
}

/** Where the rings cross the level line at `v`, left to right. */
function crossings(rings: Rings, v: number): number[] {
  const cuts: number[] = [];
  for (const ring of rings) {
    for (let i = 0; i < ring.length; i++) {
      const [a, b] = [ring[i]!, ring[(i + 1) % ring.length]!];
      if (a[1] > v !== b[1] > v) cuts.push(a[0] + ((v - a[1]) / (b[1] - a[1])) * (b[0] - a[0]));
    }
  }
  return cuts.sort((a, b) => a - b);
}
