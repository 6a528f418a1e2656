import type { LocalPoint } from '../../core/geometry/hole-map.ts';
import { type MapItem, point, type Tags } from './map-item.ts';
import type { SeededRandom } from './seeded-random.ts';

/** Size of a grown tree: height, crown diameter, underside of the crown, trunk circumference; each with its spread. */
type TreeSize = Readonly<{
  height_m: number;
  crown_m: number;
  base_m: number;
  girth_m: number;
  spread: number;
  tags: Tags;
}>;

/** Invented but ordinary sizes, no source. */
const sizes = {
  park: { height_m: 13, crown_m: 8, base_m: 2.4, girth_m: 1.4, spread: 0.22, tags: { leaf_type: 'broadleaved' } },
  slender: { height_m: 11, crown_m: 4, base_m: 2.2, girth_m: 0.7, spread: 0.2, tags: { leaf_type: 'broadleaved' } },
  conifer: { height_m: 16, crown_m: 5, base_m: 1.6, girth_m: 1.1, spread: 0.2, tags: { leaf_type: 'needleleaved' } },
  apple: { height_m: 4.6, crown_m: 4.2, base_m: 1.4, girth_m: 0.8, spread: 0.12, tags: { leaf_type: 'broadleaved' } },
} as const satisfies Record<string, TreeSize>;

export type TreeKind = keyof typeof sizes;

/** A tree of its kind, with every size of the map written down. */
export function tree(at: LocalPoint, kind: TreeKind, random: SeededRandom): MapItem {
  const size = sizes[kind];
  const vary = (value: number, decimals: number) =>
    Number((value * (1 + size.spread * Math.max(-2, Math.min(2, random.normal())))).toFixed(decimals));
  return point(at, {
    natural: 'tree',
    height: vary(size.height_m, 1),
    diameter_crown: vary(size.crown_m, 1),
    min_height: vary(size.base_m, 1),
    circumference: vary(size.girth_m, 2),
    ...size.tags,
  });
}

/** A tree nobody has measured. */
export const unmeasuredTree = (at: LocalPoint): MapItem => point(at, { natural: 'tree' });

/**
 * Places for trees in a rectangle, at least `apart_m` from one another, where `isFree` says yes.
 * @param tries - how often to throw a dart; fewer places come back
 */
export function scatter(
  corner: LocalPoint,
  opposite: LocalPoint,
  tries: number,
  apart_m: number,
  isFree: (p: LocalPoint) => boolean,
  random: SeededRandom,
): LocalPoint[] {
  const places: LocalPoint[] = [];
  for (let i = 0; i < tries; i++) {
    const p: LocalPoint = [random.between(corner[0], opposite[0]), random.between(corner[1], opposite[1])];
    if (isFree(p) && places.every(q => Math.hypot(p[0] - q[0], p[1] - q[1]) >= apart_m)) places.push(p);
  }
  return places;
}
