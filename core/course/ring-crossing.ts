import { orientation } from './orientation.ts';

export type RingPoint = readonly [x: number, y: number];
/** Segment `i` runs from position `i` to position `i + 1`. `ring` counts in the polygon, outer ring 0. */
type Segment = Readonly<{ a: RingPoint; b: RingPoint; ring: number; index: number; previous: RingPoint }>;
export type Crossing = Readonly<{
  first: Readonly<{ ring: number; index: number }>;
  second: Readonly<{ ring: number; index: number }>;
  at: RingPoint;
  how: 'crosses' | 'overlaps';
}>;

/**
 * The first place where a polygon's outline crosses itself or runs back along itself, or where two of its rings cross.
 * Rings that only touch at a point are let pass: the area is still plain.
 * @param rings - closed rings in one plane (longitudes already unwrapped)
 * @returns undefined when the outline is clean
 * @source own derivation: sweep over the west ends, exact orientation signs
 */
export function findCrossing(rings: readonly (readonly RingPoint[])[]): Crossing | undefined {
  const segments = rings.flatMap(ringSegments).sort((s, t) => west(s) - west(t));
  for (const [i, s] of segments.entries()) {
    for (let j = i + 1; j < segments.length && west(segments[j]!) <= east(s); j++) {
      const how = meeting(s, segments[j]!);
      if (how !== undefined) {
        const t = segments[j]!;
        return {
          first: { ring: s.ring, index: s.index },
          second: { ring: t.ring, index: t.index },
          at: how.at,
          how: how.how,
        };
      }
    }
  }
  return undefined;
}

/** Segments of a ring without those of zero length. */
function ringSegments(ring: readonly RingPoint[], ringIndex: number): Segment[] {
  const kept = ring.slice(1).flatMap((b, index) => (same(ring[index]!, b) ? [] : [{ a: ring[index]!, b, index }]));
  return kept.map((segment, i) => ({ ...segment, ring: ringIndex, previous: kept.at(i - 1)!.a }));
}

function meeting(s: Segment, t: Segment): Pick<Crossing, 'at' | 'how'> | undefined {
  if (Math.min(s.a[1], s.b[1]) > Math.max(t.a[1], t.b[1]) || Math.min(t.a[1], t.b[1]) > Math.max(s.a[1], s.b[1]))
    return undefined;
  const [ta, tb] = [orientation(s.a, s.b, t.a), orientation(s.a, s.b, t.b)];
  if (ta === 0 && tb === 0) {
    const shared = overlap(s, t);
    if (shared !== undefined) return { at: shared, how: 'overlaps' };
  }
  const [sa, sb] = [orientation(t.a, t.b, s.a), orientation(t.a, t.b, s.b)];
  if (ta * tb < 0 && sa * sb < 0) return { at: crossingPoint(s, t), how: 'crosses' };
  // A vertex on the other line: it crosses when the outline goes on to the other side. Each start vertex is looked at once.
  if (sa === 0 && within(s.a, t) && crossesAt(s, t)) return { at: s.a, how: 'crosses' };
  if (ta === 0 && within(t.a, s) && crossesAt(t, s)) return { at: t.a, how: 'crosses' };
  return undefined;
}

/** Does the outline through the start vertex of `through` pass from one side of the outline at `other` to the other? */
function crossesAt(through: Segment, other: Segment): boolean {
  const vertex = through.a;
  if (same(vertex, other.b)) return false; // seen again as the start of the next segment
  if (!same(vertex, other.a)) {
    return orientation(other.a, other.b, through.previous) * orientation(other.a, other.b, through.b) < 0;
  }
  if (through.ring === other.ring && through.index === other.index) return false;
  const inside = (p: RingPoint) => inSector(vertex, other.b, other.previous, p);
  const [back, ahead] = [inside(through.previous), inside(through.b)];
  return back !== 'edge' && ahead !== 'edge' && back !== ahead;
}

/** Is p in the sector that turns left from `from` to `to` round the vertex? */
function inSector(vertex: RingPoint, from: RingPoint, to: RingPoint, p: RingPoint): boolean | 'edge' {
  const [left, right] = [orientation(vertex, from, p), orientation(vertex, to, p)];
  if ((left === 0 && ahead(vertex, from, p)) || (right === 0 && ahead(vertex, to, p))) return 'edge';
  const turn = orientation(vertex, from, to);
  if (turn === 0 && !ahead(vertex, from, to)) return left > 0;
  return turn > 0 ? left > 0 && right < 0 : left > 0 || right < 0;
}

function ahead(vertex: RingPoint, a: RingPoint, b: RingPoint): boolean {
  return (a[0] - vertex[0]) * (b[0] - vertex[0]) + (a[1] - vertex[1]) * (b[1] - vertex[1]) > 0;
}

/** A point inside the stretch two collinear segments share, if it has any length. */
function overlap(s: Segment, t: Segment): RingPoint | undefined {
  const axis = s.a[0] === s.b[0] ? 1 : 0;
  const ends = [s.a, s.b, t.a, t.b];
  const low = Math.max(Math.min(s.a[axis], s.b[axis]), Math.min(t.a[axis], t.b[axis]));
  const high = Math.min(Math.max(s.a[axis], s.b[axis]), Math.max(t.a[axis], t.b[axis]));
  return low < high ? ends.find(end => end[axis] === low) : undefined;
}

function crossingPoint(s: Segment, t: Segment): RingPoint {
  const [dx, dy, ex, ey] = [s.b[0] - s.a[0], s.b[1] - s.a[1], t.b[0] - t.a[0], t.b[1] - t.a[1]];
  const along = ((t.a[0] - s.a[0]) * ey - (t.a[1] - s.a[1]) * ex) / (dx * ey - dy * ex);
  // The signs are exact but this quotient is not: two nearly parallel segments can make it 0/0.
  return Number.isFinite(along) ? [s.a[0] + along * dx, s.a[1] + along * dy] : s.a;
}

function within(p: RingPoint, s: Segment): boolean {
  return p[0] >= west(s) && p[0] <= east(s) && p[1] >= Math.min(s.a[1], s.b[1]) && p[1] <= Math.max(s.a[1], s.b[1]);
}

const same = (a: RingPoint, b: RingPoint): boolean => a[0] === b[0] && a[1] === b[1];
const west = (s: Segment): number => Math.min(s.a[0], s.b[0]);
const east = (s: Segment): number => Math.max(s.a[0], s.b[0]);
