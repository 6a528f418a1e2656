import { describe, expect, it } from 'vitest';
import { rasterize } from '../../../core/geometry/rasterize.ts';
import { createMarcher, RESULT } from '../../../core/strategy/march.ts';
import { makeWorld } from '../../../core/strategy/world.ts';
import { area, boxRing } from './sketched-holes.ts';
import { bareHole, march, polyline } from './small-world.ts';

// Official Rules of Disc Golf 806.02: out-of-bounds costs one throw; where the disc was last in bounds, the previous lie, or a drop zone.
describe('an island green', () => {
  const map = bareHole({
    basket: [0, 60],
    islands: [area(boxRing(-12, 48, 12, 72))],
    dropZones: [{ source: 'features[3]', assumed: [], at: [-20, 40] }],
  });
  const world = makeWorld(map, rasterize(map));
  const throwTo = (
    along_m: number,
    left_m: number,
    mode: 'search' | 'exact' = 'exact',
    from?: readonly [number, number],
  ) =>
    march(
      createMarcher(world),
      polyline([
        [0, 0, 1.2],
        [0.7 * along_m, 0.7 * left_m, 4],
        [along_m, left_m, 0],
      ]),
      { mode, ...(from && { from }) },
    ).ends;

  it.each(['search', 'exact'] as const)('holds a throw that comes to rest on it: no penalty (%s)', mode => {
    const ends = throwTo(60, 3, mode);
    expect(ends).toHaveLength(1);
    expect(ends[0]).toMatchObject({ kind: RESULT.rest, penalty: 0 });
  });

  it.each([
    { name: 'short of it', along_m: 40, left_m: 0 },
    { name: 'beside it', along_m: 60, left_m: 20 },
    { name: 'beyond it', along_m: 85, left_m: 0 },
  ])('costs one throw for one that ends $name', ({ along_m, left_m }) => {
    const ends = throwTo(along_m, left_m);
    expect(ends).toHaveLength(1);
    expect(ends[0]).toMatchObject({ kind: RESULT.outOfBounds, penalty: 1 });
  });

  it('gives a throw that crossed the island the far edge it went out over, one that never reached it the tee’s ground', () => {
    const [over] = throwTo(85, 0);
    expect(Math.abs(over.y - 72)).toBeLessThanOrEqual(1); // the edge, to a step of the walk
    const [short] = throwTo(40, 0);
    // tee pads are in bounds (within 3 m, as rasterize marks them)
    expect(Math.hypot(short.x, short.y)).toBeLessThanOrEqual(3 + 1);
  });

  it('lets the drop zone be played from: it is in bounds', () => {
    const ends = throwTo(1, 0, 'exact', [-20, 40]);
    expect(ends[0]).toMatchObject({ kind: RESULT.rest, penalty: 0 });
  });
});
