import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { orientation } from '../../../core/course/orientation.ts';
import { findCrossing, type RingPoint } from '../../../core/course/ring-crossing.ts';

const close = (...corners: RingPoint[]): RingPoint[] => [...corners, corners[0]!];

describe('orientation', () => {
  it('is exact where plain arithmetic is not', () => {
    // 0.1·k in doubles is not on one line; by hand in exact arithmetic: 0.1 + 0.2 rounds up to above 0.3.
    expect(orientation([0, 0], [0.3, 0.3], [0.1 + 0.2, 0.3])).toBe(-1);
    expect(orientation([0, 0], [0.3, 0.3], [0.3, 0.1 + 0.2])).toBe(1);
    expect(orientation([0.5, 0.5], [12, 12], [24, 24])).toBe(0);
    // Kettner et al. (2008), "Classroom examples of robustness problems", fig. 2: one step of 2^-53 off the diagonal.
    expect(orientation([0.5 + 2 ** -53, 0.5], [12, 12], [24, 24])).toBe(-1);
    expect(orientation([0.5, 0.5 + 2 ** -53], [12, 12], [24, 24])).toBe(1);
  });
  it('changes sign when two points change places', () => {
    const p = fc.tuple(
      fc.double({ min: -180, max: 180, noNaN: true }),
      fc.double({ min: -1e-300, max: 90, noNaN: true }),
    );
    fc.assert(
      fc.property(p, p, p, (a, b, c) => {
        expect(orientation(a, b, c) + orientation(b, a, c)).toBe(0);
        expect(orientation(a, b, c)).toBe(orientation(b, c, a));
      }),
      { seed: 2 },
    );
  });
});

describe('findCrossing', () => {
  it('finds a bow tie and says where', () => {
    expect(findCrossing([close([0, 0], [2, 2], [2, 0], [0, 2])])).toEqual({
      first: { ring: 0, index: 0 },
      second: { ring: 0, index: 2 },
      at: [1, 1],
      how: 'crosses',
    });
  });
  it.each<[string, RingPoint[][], 'crosses' | 'overlaps' | undefined]>([
    ['a square', [close([0, 0], [1, 0], [1, 1], [0, 1])], undefined],
    ['a square with a corner in the middle of a side', [close([0, 0], [0.5, 0], [1, 0], [1, 1], [0, 1])], undefined],
    ['a square with a position written twice', [close([0, 0], [1, 0], [1, 0], [1, 1], [0, 1])], undefined],
    [
      'a bow tie whose crossing is a position of both strands',
      [close([0, 0], [1, 1], [2, 2], [2, 0], [1, 1], [0, 2])],
      'crosses',
    ],
    ['a strand through the position of another', [close([0, 0], [2, 2], [2, 0], [1, 1], [0, 2])], 'crosses'],
    ['two lobes that touch at a position', [close([0, 0], [1, 1], [2, 0], [2, 2], [1, 1], [0, 2])], undefined],
    ['a position that touches a side from inside', [close([0, 0], [2, 0], [2, 2], [1, 0], [0, 2])], undefined],
    ['a spike', [close([0, 0], [2, 0], [2, 1], [2, 0], [3, -1])], 'overlaps'],
    ['no area', [close([0, 0], [1, 0], [2, 0])], 'overlaps'],
    [
      'a hole that crosses the outer ring',
      [close([0, 0], [2, 0], [2, 2], [0, 2]), close([1, 1], [3, 1], [1, 1.5])],
      'crosses',
    ],
    ['a hole inside', [close([0, 0], [3, 0], [3, 3], [0, 3]), close([1, 1], [2, 1], [1, 2])], undefined],
    ['vertical sides that overlap', [close([0, 0], [0, 3], [1, 3], [0, 2], [0, 1], [1, 0])], 'overlaps'],
  ])('%s', (_, rings, how) => expect(findCrossing(rings)?.how).toBe(how));

  it('lets every star-shaped outline pass', () => {
    const radii = fc.array(fc.double({ min: 0.5, max: 2, noNaN: true }), { minLength: 4, maxLength: 40 });
    fc.assert(
      fc.property(radii, rs => {
        const turn = (2 * Math.PI) / rs.length;
        const corners = rs.map((r, i): RingPoint => [r * Math.cos(turn * i), r * Math.sin(turn * i)]);
        expect(findCrossing([close(...corners)])).toBeUndefined();
      }),
      { seed: 3 },
    );
  });

  it('agrees with winding numbers on random outlines over a small grid, where touches and overlaps abound', () => {
    const corner = fc.tuple(fc.integer({ min: 0, max: 4 }), fc.integer({ min: 0, max: 4 }));
    let clean = 0;
    fc.assert(
      fc.property(fc.uniqueArray(corner, { minLength: 3, maxLength: 7, selector: String }), corners => {
        const ring = close(...corners);
        const crossing = findCrossing([ring]);
        if (somePairCrosses(ring)) expect(crossing).toBeDefined();
        if (crossing !== undefined) return;
        clean += 1;
        // An outline that does not cross itself goes round every point once at most, and always the same way.
        const rounds = new Set(gridPoints.map(p => winding(ring, p)));
        expect([...rounds].filter(round => round !== 0).length).toBeLessThanOrEqual(1);
        expect(Math.max(...[...rounds].map(Math.abs))).toBeLessThanOrEqual(1);
      }),
      { seed: 4, numRuns: 4000 },
    );
    expect(clean).toBeGreaterThan(400);
  });

  it('takes under a second for ten thousand corners', () => {
    const n = 10_000;
    const corners = Array.from(
      { length: n },
      (_, i): RingPoint => [Math.cos((2 * Math.PI * i) / n), Math.sin((2 * Math.PI * i) / n)],
    );
    expect(findCrossing([close(...corners)])).toBeUndefined();
  }, 1000);
});

/** Points off every line through grid corners that an outline can have. */
const gridPoints = Array.from(
  { length: 64 },
  (_, i): RingPoint => [(i % 8) * 0.5 + 0.2713, Math.floor(i / 8) * 0.5 + 0.1931],
);

/** Turns of the ring round p, by summing angles. */
function winding(ring: readonly RingPoint[], p: RingPoint): number {
  const angles = ring.map(([x, y]) => Math.atan2(y - p[1], x - p[0]));
  const sum = angles.slice(1).reduce((total, angle, i) => {
    const step = angle - angles[i]!;
    return total + step - 2 * Math.PI * Math.round(step / (2 * Math.PI));
  }, 0);
  return Math.round(sum / (2 * Math.PI));
}

/** Does any pair of sides cross away from their ends? By solving for the crossing, not by signs of turns. */
function somePairCrosses(ring: readonly RingPoint[]): boolean {
  const sides = ring.slice(1).map((b, i) => [ring[i]!, b] as const);
  return sides.some(([a, b], i) =>
    sides.slice(i + 1).some(([c, d]) => {
      const [rx, ry, qx, qy] = [b[0] - a[0], b[1] - a[1], d[0] - c[0], d[1] - c[1]];
      const det = rx * qy - ry * qx;
      if (det === 0) return false;
      const t = ((c[0] - a[0]) * qy - (c[1] - a[1]) * qx) / det;
      const u = ((c[0] - a[0]) * ry - (c[1] - a[1]) * rx) / det;
      return t > 1e-9 && t < 1 - 1e-9 && u > 1e-9 && u < 1 - 1e-9;
    }),
  );
}
