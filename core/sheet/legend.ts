import { type Hatch, hatch } from './drawing/hatch.ts';
import { arrowhead, drawing, haloed, path } from './drawing/svg.ts';

const WIDTH_MM = 6;
const HEIGHT_MM = 2.8;
const FLAT = `M0.4 ${HEIGHT_MM / 2}H${WIDTH_MM - 0.8}`;
const BOX = `M0.2 0.2H${WIDTH_MM - 0.2}V${HEIGHT_MM - 0.2}H0.2Z`;
const RING = [
  [0.2, 0.2],
  [WIDTH_MM - 0.2, 0.2],
  [WIDTH_MM - 0.2, HEIGHT_MM - 0.2],
  [0.2, HEIGHT_MM - 0.2],
] as const;

const swatch = (kind: Hatch, edge: string): string =>
  path(`hatch ${kind}`, hatch(kind, [RING], WIDTH_MM, HEIGHT_MM)) + path(edge, BOX);

const MARKS: readonly (readonly [words: string, inside: string])[] = [
  ['aim', haloed('aim', FLAT) + arrowhead([WIDTH_MM - 0.3, HEIGHT_MM / 2], 90)],
  ['flight', haloed('flight', FLAT)],
  ['half stop inside', haloed('half', 'M0.8 1.4a2.2 1.1 0 1 0 4.4 0a2.2 1.1 0 1 0 -4.4 0Z')],
  ['9 in 10 inside', haloed('most', 'M0.8 1.4a2.2 1.1 0 1 0 4.4 0a2.2 1.1 0 1 0 -4.4 0Z')],
  ['line of play', path('play', FLAT)],
  ['out-of-bounds', swatch('out', 'edge')],
  ['hazard', swatch('hazard', 'edge')],
  ['woods', swatch('wood', 'none')],
  ['hedge, wall, building', swatch('solid', 'thin')],
  ['overhead, from the side', swatch('wood', 'edge')],
  ['overhead, from above', path('ceiling', BOX)],
  ['tree', '<circle class="crown" cx="3" cy="1.4" r="1.1"/><circle class="trunk" cx="3" cy="1.4" r="0.3"/>'],
  ['people', path('people', FLAT)],
  ['mando: do not cross', haloed('mando', FLAT)],
  ['tee', '<rect class="tee" x="2.2" y="0.4" width="1.6" height="2"/>'],
  ['basket', '<circle class="ring" cx="3" cy="1.4" r="1.1"/><circle class="pole" cx="3" cy="1.4" r="0.45"/>'],
];

/** What the marks of the drawings mean. */
export function legend(): string {
  const items = MARKS.map(
    ([words, inside]) => `<li>${drawing('mark', words, WIDTH_MM, HEIGHT_MM, inside)} ${words}</li>`,
  );
  return `<ul class="legend">${items.join('')}</ul>`;
}
