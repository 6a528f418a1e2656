import { nearestStation } from '../../core/geometry/along-line.ts';
import type { LocalPoint } from '../../core/geometry/hole-map.ts';
import { lineLength_m } from '../../core/geometry/line-length.ts';
import { strip } from './beside-line.ts';
import { area, line, type MapItem, point, type Tags } from './map-item.ts';

/** A hole as drawn: tee first, basket last. */
export type HolePlan = Readonly<{ ref: string; name?: string; par?: number; line: readonly LocalPoint[] }>;

/** Line of play, tee and basket with the usual tags, lengths in whole metres along the line. */
export function holeItems(hole: HolePlan): MapItem[] {
  const tags = { disc_golf: 'hole', ref: hole.ref, ...given({ par: hole.par, name: hole.name }) };
  return [
    line(hole.line, { ...tags, dist: Math.round(lineLength_m(hole.line)) }),
    point(hole.line[0]!, { disc_golf: 'tee', ref: hole.ref }),
    point(hole.line.at(-1)!, { disc_golf: 'basket', ref: hole.ref }),
  ];
}

/** A tee pad 1.5 m wide and 3.6 m long whose middle is where the line begins. */
export function teePad(hole: HolePlan, tags: Tags): MapItem {
  const pad = strip(
    hole.line,
    [-1.8, 1.8],
    () => -0.75,
    () => 0.75,
  );
  return area(pad, { disc_golf: 'tee', ref: hole.ref, ...tags });
}

/** Distance from a point to the nearest line of play. */
export function clearOfHoles_m(p: LocalPoint, holes: readonly HolePlan[]): number {
  return Math.min(...holes.map(hole => nearestStation(hole.line, p).distance_m));
}

function given(tags: Readonly<Record<string, string | number | undefined>>): Tags {
  return Object.fromEntries(Object.entries(tags).filter(([, value]) => value !== undefined)) as Tags;
}
