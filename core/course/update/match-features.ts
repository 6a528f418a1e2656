import type { Feature, Position } from 'geojson';
import type { LonLat } from '../course.ts';
import { groundDistance_m } from '../ground-distance.ts';
import { refKeys } from '../hole-ref.ts';
import { positionsOf } from '../positions.ts';
import { kindOf, plainTags } from './plain-tags.ts';

/** Two unnamed things of one kind nearer to each other than this are the same one, mapped again. */
const sameThing_m = 5;

/**
 * Which feature of one file is which of another: by id, then by what it is of which hole, then by name, then by place.
 * @returns for each feature of `fresh` the index of its partner in `old`; none for what is new. No partner is given twice.
 */
export function matchFeatures(old: readonly Feature[], fresh: readonly Feature[]): ReadonlyMap<number, number> {
  const partners = new Map<number, number>();
  const taken = new Set<number>();
  for (const keyOf of [byId, byGolfAndName, byGolf, byPlace, byName]) {
    const open = Map.groupBy(
      [...old.keys()].filter(index => !taken.has(index)),
      index => keyOf(old[index]!),
    );
    const asking = Map.groupBy(
      [...fresh.keys()].filter(index => !partners.has(index)),
      index => keyOf(fresh[index]!),
    );
    for (const [key, indices] of asking) {
      const candidates = key === undefined ? undefined : open.get(key);
      // Two of a kind on either side cannot be told apart by this key.
      if (candidates === undefined || candidates.length !== indices.length || indices.length !== 1) continue;
      partners.set(indices[0]!, candidates[0]!);
      taken.add(candidates[0]!);
    }
  }
  matchNearest(old, fresh, partners, taken);
  return partners;
}

const byId = (feature: Feature) => (feature.id === undefined ? undefined : `${kindOf(feature)} ${String(feature.id)}`);

const GOLF = new Set(['tee', 'basket', 'hole', 'drop_zone', 'fairway', 'mando', 'layout', 'course']);

function byGolf(feature: Feature): string | undefined {
  const kind = kindOf(feature);
  const refs = refKeys(plainTags(feature).get('ref'));
  if (!GOLF.has(kind) || (refs.length === 0 && kind !== 'course')) return undefined;
  return JSON.stringify([kind, refs]);
}

function byGolfAndName(feature: Feature): string | undefined {
  const golf = byGolf(feature);
  return golf === undefined ? undefined : `${golf} ${(plainTags(feature).get('name') ?? '').toLowerCase()}`;
}

function byPlace(feature: Feature): string | undefined {
  const positions = positionsOf(feature.geometry);
  if (positions.length === 0) return undefined;
  const rounded = positions.map(position => position.slice(0, 2).map(degrees => Math.round(degrees * 1e6)));
  return JSON.stringify([kindOf(feature), feature.geometry.type, rounded]);
}

function byName(feature: Feature): string | undefined {
  const own: unknown = feature.properties?.['@name'];
  const name = typeof own === 'string' ? own : plainTags(feature).get('name');
  return name === undefined || name === '' ? undefined : `${kindOf(feature)} ${name.toLowerCase()}`;
}

/** Nearest of the same kind within a few metres, nearest pairs first; looked for in cells, as woods hold thousands of trees. */
function matchNearest(
  old: readonly Feature[],
  fresh: readonly Feature[],
  partners: Map<number, number>,
  taken: Set<number>,
): void {
  // A cell is at least as high as the reach (0.0001° is 11 m) and, short of the poles, wider.
  const cell = ([lon, lat]: Position) => [Math.floor(lon! / 0.0004), Math.floor(lat! / 0.0001)] as const;
  const cells = new Map<string, number[]>();
  const keyAt = (kind: string, x: number, y: number) => `${kind} ${x} ${y}`;
  for (const [index, feature] of old.entries()) {
    const at = positionsOf(feature.geometry)[0];
    if (taken.has(index) || at === undefined) continue;
    const [x, y] = cell(at);
    const key = keyAt(kindOf(feature), x, y);
    cells.set(key, [...(cells.get(key) ?? []), index]);
  }
  const pairs: { fresh: number; old: number; distance_m: number }[] = [];
  for (const [index, feature] of fresh.entries()) {
    const at = positionsOf(feature.geometry)[0];
    if (partners.has(index) || at === undefined) continue;
    const [kind, [x, y]] = [kindOf(feature), cell(at)];
    for (const dx of [-1, 0, 1])
      for (const dy of [-1, 0, 1])
        for (const other of cells.get(keyAt(kind, x + dx, y + dy)) ?? []) {
          const place = positionsOf(old[other]!.geometry)[0]!;
          const distance_m = groundDistance_m(at as unknown as LonLat, place as unknown as LonLat);
          if (distance_m <= sameThing_m) pairs.push({ fresh: index, old: other, distance_m });
        }
  }
  for (const pair of pairs.sort((a, b) => a.distance_m - b.distance_m || a.fresh - b.fresh || a.old - b.old)) {
    if (partners.has(pair.fresh) || taken.has(pair.old)) continue;
    partners.set(pair.fresh, pair.old);
    taken.add(pair.old);
  }
}
