import type { HoleMap, LocalPoint } from '../geometry/hole-map.ts';
import { distance_m } from '../geometry/line-length.ts';
import { isInAny } from '../geometry/point-in-polygon.ts';
import { dropZoneFor } from '../strategy/world.ts';
import { placeOf } from './place-of.ts';
import type { RoundThrow } from './round-file.ts';

/** Where a throw was made from and what became of it, in the hole's local frame. */
export type LieToLie = Readonly<{
  from: LocalPoint;
  fromTee: boolean;
  /** Where it came to rest; null when holed or not written. */
  rest: LocalPoint | null;
  /** Where the next throw is made from; null when holed, or after the last throw of an unfinished hole when nothing was written. */
  next: LocalPoint | null;
  /** What had to be assumed about either place. */
  assumed: readonly string[];
}>;

/** What of a hole's map tells where play goes on. */
export type LieMap = Pick<HoleMap, 'origin' | 'line' | 'basket' | 'dropZones' | 'outOfBounds' | 'islands' | 'fairways'>;

const TEE: LocalPoint = [0, 0];
/** A lie this near the tee is the tee: a throw played again. */
const ON_TEE_M = 1;
/** Along the way to where a disc went out, the last place in bounds is looked for in steps of this. */
const STEP_M = 0.5;

/** The chain of lies of one hole; where the rules leave a choice and nothing was written, the plain one is assumed and said. */
export function holeLies(map: LieMap, throws: readonly RoundThrow[]): LieToLie[] {
  let from: LocalPoint = TEE;
  return throws.map(t => {
    const rest = t.rest === undefined || t.holed ? null : placeOf(map, t.rest);
    const next = t.holed ? null : nextLie(map, from, rest?.at ?? null, t);
    const assumed = [rest?.assumed, next?.assumed].filter(text => text !== null && text !== undefined);
    const own: LieToLie = {
      from,
      fromTee: distance_m(from, TEE) <= ON_TEE_M,
      rest: rest?.at ?? null,
      next: next?.at ?? null,
      assumed: [...new Set(assumed)],
    };
    from = next?.at ?? from;
    return own;
  });
}

type Next = Readonly<{ at: LocalPoint; assumed: string | null }>;

/** @source Official Rules of Disc Golf 804.01, 805.03, 806.02, 806.05 (texts of 2013–2025) */
function nextLie(map: LieMap, from: LocalPoint, rest: LocalPoint | null, t: RoundThrow): Next | null {
  if (t.lie !== undefined) return placeOf(map, t.lie);
  const kinds = (t.penalties ?? []).map(({ kind }) => kind);
  const drop = dropZoneFor(map, 'outOfBounds');
  const again = (why: string): Next => ({ at: from, assumed: `${why}: taken to be thrown again from the same lie` });
  const fromDrop = (at: LocalPoint, why: string): Next => ({
    at,
    assumed: `${why}: taken to go on from the drop zone`,
  });
  const [mandoDrop, lostDrop] = [dropZoneFor(map, 'mando'), dropZoneFor(map, 'lostDisc')];
  if (kinds.includes('mando')) return mandoDrop === null ? again('missed mando') : fromDrop(mandoDrop, 'missed mando');
  if (kinds.includes('lost')) return lostDrop === null ? again('lost disc') : fromDrop(lostDrop, 'lost disc');
  if (kinds.includes('unplayable')) return again('unplayable lie');
  if (!kinds.includes('out-of-bounds')) return rest === null ? null : { at: rest, assumed: null };
  if (rest !== null && !isOut(map, rest))
    return {
      at: rest,
      assumed: 'out-of-bounds: the place written lies in bounds, so play is taken to go on from there',
    };
  const lastIn = rest === null ? null : lastInBounds(map, from, rest);
  if (lastIn !== null)
    return { at: lastIn, assumed: 'out-of-bounds: taken to go on where the straight way there left bounds' };
  if (drop !== null) return fromDrop(drop, 'out-of-bounds');
  return again('out-of-bounds');
}

/** By the map's areas; islands make all else out-of-bounds. */
function isOut(map: LieMap, at: LocalPoint): boolean {
  if (map.outOfBounds.some(({ polygons }) => isInAny(at, polygons))) return true;
  if (map.islands.length === 0) return false;
  const own = map.fairways.filter(({ ownHole }) => ownHole);
  return ![...map.islands, ...own].some(({ polygons }) => isInAny(at, polygons));
}

function lastInBounds(map: LieMap, from: LocalPoint, rest: LocalPoint): LocalPoint | null {
  const steps = Math.max(1, Math.ceil(distance_m(from, rest) / STEP_M));
  for (let i = steps - 1; i > 0; i--) {
    const share = i / steps;
    const at: LocalPoint = [from[0] + share * (rest[0] - from[0]), from[1] + share * (rest[1] - from[1])];
    if (!isOut(map, at)) return at;
  }
  return null;
}
