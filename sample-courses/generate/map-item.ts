import type { LocalPoint } from '../../core/geometry/hole-map.ts';

export type Tags = Readonly<Record<string, string | number>>;

/** One thing on an invented map, in the course's own flat frame: x towards the drawing's right, y towards its top, metres. */
export type MapItem = Readonly<{
  form: 'point' | 'line' | 'area';
  /** One point, the line's points, or the outer ring (not closed). */
  points: readonly LocalPoint[];
  /** Rings cut out of an area (not closed). */
  cutouts?: readonly (readonly LocalPoint[])[];
  tags: Tags;
  /** Write the height of the ground as third coordinate. */
  withHeight?: boolean;
  /** Write the tags under `properties.tags`, as converters of OpenStreetMap data do. */
  nested?: boolean;
}>;

export const point = (at: LocalPoint, tags: Tags): MapItem => ({ form: 'point', points: [at], tags });
export const line = (points: readonly LocalPoint[], tags: Tags): MapItem => ({ form: 'line', points, tags });
export const area = (points: readonly LocalPoint[], tags: Tags): MapItem => ({ form: 'area', points, tags });
export const withHeight = (item: MapItem): MapItem => ({ ...item, withHeight: true });
export const nested = (item: MapItem): MapItem => ({ ...item, nested: true });

export function rectangle(from: LocalPoint, to: LocalPoint): LocalPoint[] {
  return [from, [to[0], from[1]], to, [from[0], to[1]]];
}

/** A ring of `corners` points round a middle; `uneven` gives each corner what to add to its radius, as a share of it. */
export function blob(
  middle: LocalPoint,
  radii_m: readonly [x: number, y: number],
  corners: number,
  uneven: (corner: number) => number,
): LocalPoint[] {
  return Array.from({ length: corners }, (_, i) => {
    const angle = (2 * Math.PI * i) / corners;
    const scale = 1 + uneven(i);
    return [middle[0] + radii_m[0] * scale * Math.cos(angle), middle[1] + radii_m[1] * scale * Math.sin(angle)];
  });
}
