import type { FeatureCollection, Position } from 'geojson';
import { tagOf } from '../../../core/course/edit/edit-tags.ts';
import { kindOf } from '../../../core/course/edit/kinds.ts';
import { verticesOf } from '../../../core/course/edit/vertices.ts';
import { compareRefs, refKey, refKeys } from '../../../core/course/hole-ref.ts';
import type { Drawn } from './drawn.ts';

/** The holes there are: those that hold together, and those only begun. */
export function refsOf(file: FeatureCollection, drawn: Drawn | null): string[] {
  const refs = new Map((drawn?.holes ?? []).map(({ ref }) => [refKey(ref), ref]));
  for (const feature of file.features) {
    const kind = kindOf(feature);
    if (kind !== 'tee' && kind !== 'basket' && kind !== 'line') continue;
    for (const part of (tagOf(feature, 'ref') ?? '').split(';')) {
      const key = refKey(part);
      if (key !== '' && !refs.has(key)) refs.set(key, part.trim());
    }
  }
  return [...refs.values()].sort(compareRefs);
}

/** The next free whole number. */
export function nextRef(refs: readonly string[]): string {
  const numbers = refs.map(ref => Number(/^\d+$/.exec(refKey(ref))?.[0] ?? 0));
  return String(Math.max(0, ...numbers) + 1);
}

/** Places in the file of the hole's line, tees and baskets. */
export function indexesOfHole(file: FeatureCollection, ref: string | null): number[] {
  if (ref === null) return [];
  return file.features.flatMap((feature, index) => {
    const kind = kindOf(feature);
    const isPart = kind === 'tee' || kind === 'basket' || kind === 'line';
    return isPart && refKeys(tagOf(feature, 'ref')).includes(refKey(ref)) ? [index] : [];
  });
}

/** Where the hole begins: distances on the map are told from there. */
export function teeOf(file: FeatureCollection, drawn: Drawn | null, ref: string | null): Position | null {
  if (ref === null) return null;
  const mapped = drawn?.holes.find(hole => refKey(hole.ref) === refKey(ref))?.tees[0]?.featureIndex ?? -1;
  const index = mapped >= 0 ? mapped : indexesOfHole(file, ref).find(i => kindOf(file.features[i]!) === 'tee');
  return index === undefined ? null : (verticesOf(file.features[index]?.geometry ?? null)[0]?.position ?? null);
}

/** Where the cross stands when a map is put on the table: at its first tee, else at anything it has. */
export function startOf(file: FeatureCollection): Position {
  const tee = file.features.find(feature => kindOf(feature) === 'tee');
  const placed = [tee, ...file.features].flatMap(feature => verticesOf(feature?.geometry ?? null).slice(0, 1));
  const start = placed[0]?.position ?? startMember(file) ?? [0, 0];
  return [start[0]!, start[1]!];
}

/** A map drawn from nothing has a member that says where it begins, and whether that is a real place. */
function startMember(file: FeatureCollection): Position | null {
  const { start } = file as { start?: unknown };
  return Array.isArray(start) && start.length === 2 && start.every(Number.isFinite) ? (start as Position) : null;
}

/** Drawn without knowing where on Earth: lines of play then say so. */
export function isNowhere(file: FeatureCollection): boolean {
  return (file as { placed?: unknown }).placed === 'no';
}
