import type { Feature, Geometry } from 'geojson';
import { plainTags } from './plain-tags.ts';

/** Positions are written to seven decimals (about a centimetre) by some programs and to more by others. */
const samePlace_deg = 2e-7;
const sameHeight_m = 0.01;

/** Do both say the same of the same place, in whatever program they were written? */
export function sameFeature(a: Feature, b: Feature): boolean {
  return sameShape(a.geometry, b.geometry) && changedTags(a, b).length === 0;
}

export function sameShape(a: Geometry | null, b: Geometry | null): boolean {
  if (a === null || b === null) return a === b;
  if (a.type !== b.type) return false;
  const inside = (shape: Geometry): unknown =>
    shape.type === 'GeometryCollection' ? shape.geometries : shape.coordinates;
  if (a.type === 'GeometryCollection') return JSON.stringify(inside(a)) === JSON.stringify(inside(b));
  return sameNumbers(inside(a), inside(b));
}

function sameNumbers(a: unknown, b: unknown): boolean {
  if (!Array.isArray(a) || !Array.isArray(b) || a.length !== b.length) return false;
  return a.every((value: unknown, i) => {
    const other: unknown = b[i];
    if (typeof value !== 'number' || typeof other !== 'number') return sameNumbers(value, other);
    return Math.abs(value - other) <= (i < 2 ? samePlace_deg : sameHeight_m);
  });
}

/** Tags that differ, in the order of their keys. `null`: not there. */
export function changedTags(
  before: Feature,
  after: Feature,
): { key: string; before: string | null; after: string | null }[] {
  const [old, fresh] = [plainTags(before), plainTags(after)];
  return [...new Set([...old.keys(), ...fresh.keys()])]
    .filter(key => old.get(key) !== fresh.get(key))
    .sort()
    .map(key => ({ key, before: old.get(key) ?? null, after: fresh.get(key) ?? null }));
}
