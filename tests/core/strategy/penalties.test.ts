import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { LocalPolygon } from '../../../core/geometry/hole-map.ts';
import { ZONE_HAZARD, ZONE_OUT_OF_BOUNDS } from '../../../core/geometry/obstacle-raster.ts';
import { rasterize } from '../../../core/geometry/rasterize.ts';
import { createMarcher, RESULT } from '../../../core/strategy/march.ts';
import { type MandoPlane, makeWorld } from '../../../core/strategy/world.ts';
import { bareHole, march, polyline, rasterOf, worldOf } from './small-world.ts';

// Official Rules of Disc Golf (texts of 2013–2025): one penalty throw each for out-of-bounds (806.02), a hazard (806.05) and a missed
// mandatory (804.01); a throw is penalised once, for the most severe or first breach (QA-APP-1).
const MODES = ['search', 'exact'] as const;
/** Steps of the walk, and so how closely it sees a line crossed. */
const STEP_M = { search: 1.5, exact: 1 } as const;
const total = (ends: readonly { weight: number }[]) => ends.reduce((sum, end) => sum + end.weight, 0);
/** From a lie straight to a touchdown, 3 m high on the way. */
const throwTo = (along_m: number, left_m = 0) =>
  polyline([
    [0, 0, 1.2],
    [along_m * 0.7, left_m * 0.7, 3],
    [along_m, left_m, 0],
  ]);
const areaOf = (polygons: readonly LocalPolygon[]) => ({ source: 'features[0]', assumed: [], polygons });
const box = (west: number, south: number, east: number, north: number): LocalPolygon => [
  [
    [west, south],
    [east, south],
    [east, north],
    [west, north],
    [west, south],
  ],
];

describe('out-of-bounds', () => {
  /** Out is x ≤ 0, the line with it (the [S] example of the rules reference, 806.02). */
  const map = bareHole({ basket: [20, 100], outOfBounds: [areaOf([box(-300, -300, 0, 400)])] });
  const leftOfLine = makeWorld(map, rasterize(map));
  const at = (x_m: number, mode: (typeof MODES)[number] = 'exact') => {
    const path = throwTo(20, 20 - x_m);
    return march(createMarcher(leftOfLine), path, { mode, from: [20, 0] }).ends;
  };

  it.each([-30, -5, -1, -0.2, -0.105])('at rest centred at x = %d is out: +1', x_m => {
    const ends = at(x_m);
    expect(ends).toHaveLength(1);
    expect(ends[0]).toMatchObject({ kind: RESULT.outOfBounds, penalty: 1, weight: 1 });
  });

  it('at rest centred at x = 0.4 is in, and may be played from 1 m in, straight from the line (806.02; [S] example: any x to 1)', () => {
    const ends = at(0.4);
    expect(ends[0]).toMatchObject({ kind: RESULT.rest, penalty: 0, restX: expect.closeTo(0.4, 5) });
    expect(ends[0].x).toBeCloseTo(1, 5);
    expect(ends[0].y).toBeCloseTo(ends[0].restY, 9);
  });

  it.each([1.3, 5, 19])('at rest centred at x = %d is in: no penalty, played where it lies', x_m => {
    const ends = at(x_m);
    expect(ends[0]).toMatchObject({ kind: RESULT.rest, penalty: 0 });
    expect(ends[0].x).toBeCloseTo(x_m, 5);
  });

  it('sees no disc radius: a disc that touches the ground in bounds from outside is called out, a limit of 0.105 m', () => {
    // the rules call centre −0.100 in (edge at +0.005); the walk knows the centre and cells of 1 m only
    expect(at(-0.1)[0].kind).toBe(RESULT.outOfBounds);
  });

  it('calls a line that runs through cells to half a cell diagonal: every disc further than 0.71 m from it rightly', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -60, max: 60, noNaN: true }),
        fc.double({ min: -8, max: 8, noNaN: true }),
        fc.double({ min: -15, max: 15, noNaN: true }),
        (turn_deg, off_m, along_m) => {
          const [sin, cos] = [Math.sin((turn_deg * Math.PI) / 180), Math.cos((turn_deg * Math.PI) / 180)];
          const corner = (right: number, ahead: number) =>
            [right * cos + ahead * sin, 40 + ahead * cos - right * sin] as const;
          const ring = [corner(0, -80), corner(0, 80), corner(-80, 80), corner(-80, -80), corner(0, -80)];
          const hole = bareHole({ basket: [0, 90], outOfBounds: [areaOf([[ring]])] });
          const [x, y] = corner(off_m, along_m);
          const { ends } = march(createMarcher(makeWorld(hole, rasterize(hole))), throwTo(2), {
            mode: 'exact',
            from: [x, y - 2],
          });
          if (Math.abs(off_m) > Math.SQRT1_2 + 1e-6) expect(ends[0].penalty).toBe(off_m < 0 ? 1 : 0);
        },
      ),
      { seed: 11, numRuns: 60 },
    );
  });

  it.each(MODES)('is played from in bounds, within a step of where it last crossed the line (%s)', mode => {
    fc.assert(
      fc.property(
        fc.double({ min: 5, max: 40, noNaN: true }),
        fc.double({ min: -40, max: 40, noNaN: true }),
        fc.double({ min: 1, max: 30, noNaN: true }),
        (start_m, ahead_m, over_m) => {
          // last crossed at (0, 35): 806.02.D, 1 m in from the line at right angles to it; the walk sees the crossing to a step
          const from = [start_m, 35 - ahead_m] as const;
          const [along, left] = [(ahead_m * (start_m + over_m)) / start_m, start_m + over_m];
          const { ends } = march(createMarcher(leftOfLine), throwTo(along, left), { mode, from });
          expect(ends[0].kind).toBe(RESULT.outOfBounds);
          expect(ends[0].x).toBeGreaterThanOrEqual(1 - 1e-6);
          expect(ends[0].x).toBeLessThanOrEqual(STEP_M[mode] + 1e-6);
          expect(Math.abs(ends[0].y - 35)).toBeLessThanOrEqual(STEP_M[mode] + 1e-6);
        },
      ),
      { seed: 12, numRuns: 150 },
    );
  });

  it.each(MODES)('counts when it skids over the line, and is played from where it slid over (%s)', mode => {
    const { ends } = march(createMarcher(leftOfLine), throwTo(20, 17), { mode, from: [20.5, 15], skid: [0, 6] });
    // by hand: down at x = 3.5, slides to −2.5 over the line at (0, 35)
    expect(ends[0]).toMatchObject({ kind: RESULT.outOfBounds, penalty: 1 });
    expect(ends[0].x).toBeCloseTo(1, 6);
    expect(Math.abs(ends[0].y - 35)).toBeLessThan(1e-6);
    expect(ends[0].restX).toBeCloseTo(-2.5, 9);
  });

  it('crossed and come back over is in bounds: only where it rests counts', () => {
    const path = polyline([
      [0, 0, 1.2],
      [20, 8, 3],
      [40, 0, 0],
    ]);
    const { ends } = march(createMarcher(leftOfLine), path, { mode: 'exact', from: [5, 0] });
    expect(ends).toHaveLength(1);
    expect(ends[0]).toMatchObject({ kind: RESULT.rest, penalty: 0 });
  });

  it('never in bounds on the way is played again from the lie', () => {
    const { ends } = march(createMarcher(leftOfLine), throwTo(20), { mode: 'exact', from: [-30, 0] });
    expect(ends[0]).toMatchObject({ kind: RESULT.outOfBounds, penalty: 1 });
    expect(ends[0].x).toBeNaN();
  });

  it('knocked down over out-of-bounds is out, in front of it is not', () => {
    const trees = rasterOf((_, north) => ({
      ...(north > 40 && { zone: ZONE_OUT_OF_BOUNDS }),
      ...(north > 35 && north < 45 && { lowTop_m: 8, lowDensity: 0.3 }),
    }));
    const { ends } = march(createMarcher(worldOf(trees)), throwTo(80), { mode: 'exact' });
    for (const end of ends) expect(end.penalty).toBe(end.restY > 40 ? 1 : 0);
    expect(ends.some(end => end.kind === RESULT.hit && end.penalty === 0)).toBe(true);
    expect(ends.some(end => end.kind === RESULT.outOfBounds && end.restY < 45)).toBe(true);
    for (const end of ends) expect(end.y).toBeLessThan(40 + 1e-9);
    expect(total(ends)).toBeCloseTo(1, 9);
  });

  it('asks nothing for a disc stopped in a tree: the two-metre rule is off unless the director declares it (805.02 A)', () => {
    const crowns = rasterOf((_, north) =>
      north > 20 && north < 40 ? { highBase_m: 2.2, highTop_m: 9, highDensity: 0.4 } : {},
    );
    const { ends } = march(createMarcher(worldOf(crowns)), throwTo(60), { mode: 'exact' });
    const hits = ends.filter(end => end.kind === RESULT.hit);
    expect(total(hits)).toBeGreaterThan(0.5);
    for (const end of hits) expect(end).toMatchObject({ penalty: 0, x: end.restX, y: end.restY });
  });
});

describe('a hazard', () => {
  it.each(MODES)('costs one throw and the lie is not moved (806.05, %s)', mode => {
    const swamp = rasterOf((_, north) => (north > 30 && north < 50 ? { zone: ZONE_HAZARD } : {}));
    const { ends } = march(createMarcher(worldOf(swamp)), throwTo(40), { mode, skid: [2, 0] });
    expect(ends).toHaveLength(1);
    expect(ends[0]).toMatchObject({ kind: RESULT.hazard, penalty: 1 });
    expect([ends[0].x, ends[0].y]).toEqual([ends[0].restX, ends[0].restY]);
    expect(ends[0].y).toBeCloseTo(42, 6);
  });

  it('flown over costs nothing', () => {
    const swamp = rasterOf((_, north) => (north > 30 && north < 50 ? { zone: ZONE_HAZARD } : {}));
    expect(march(createMarcher(worldOf(swamp)), throwTo(60), { mode: 'exact' }).ends[0].penalty).toBe(0);
  });
});

describe('a mandatory', () => {
  /** Everything left of an object at (0, 30): a plane from it to the west, all heights. */
  const PLANE: MandoPlane = { ax: 0, ay: 30, bx: -60, by: 30, low_m: 0, high_m: Number.POSITIVE_INFINITY };
  const left = throwTo(60, 10);
  const right = throwTo(60, -10);

  it.each(MODES)(
    'passed on its good side costs nothing, missed costs one throw and is played from the drop zone (%s)',
    mode => {
      const world = worldOf(
        rasterOf(() => ({})),
        { mandos: [PLANE], dropZone: [4, 22] },
      );
      expect(march(createMarcher(world), right, { mode }).ends[0]).toMatchObject({ kind: RESULT.rest, penalty: 0 });
      const { ends } = march(createMarcher(world), left, { mode });
      expect(ends).toHaveLength(1);
      expect(ends[0]).toMatchObject({ kind: RESULT.mando, penalty: 1, weight: 1, x: 4, y: 22 });
      // entered the plane by hand at half the way: (−5, 30)
      expect(ends[0].restX).toBeCloseTo(-5, 6);
      expect(ends[0].restY).toBeCloseTo(30, 6);
    },
  );

  it.each(MODES)('without a drop zone is played again from the same lie (804.01 C, %s)', mode => {
    const world = worldOf(
      rasterOf(() => ({})),
      { mandos: [PLANE] },
    );
    const { ends } = march(createMarcher(world), left, { mode });
    expect(ends[0]).toMatchObject({ kind: RESULT.mando, penalty: 1 });
    expect(ends[0].x).toBeNaN();
  });

  it.each(MODES)(
    'missed on the way to out-of-bounds costs 1, not 2, and goes to its drop zone (QA-APP-2, %s)',
    mode => {
      const water = rasterOf((_, north) => (north > 40 ? { zone: ZONE_OUT_OF_BOUNDS } : {}));
      const world = worldOf(water, { mandos: [PLANE], dropZone: [4, 22] });
      const { ends } = march(createMarcher(world), left, { mode });
      expect(ends).toHaveLength(1);
      expect(ends[0]).toMatchObject({ kind: RESULT.mando, penalty: 1, x: 4, y: 22 });
    },
  );

  it.each(MODES)('is not missed by the part of a throw that a tree stops before it (%s)', mode => {
    const trees = rasterOf((_, north) => (north > 10 && north < 20 ? { lowTop_m: 6, lowDensity: 0.1 } : {}));
    const world = worldOf(trees, { mandos: [PLANE], dropZone: [4, 22] });
    const { ends, clear } = march(createMarcher(world), left, { mode });
    const missed = ends.filter(end => end.kind === RESULT.mando);
    expect(total(missed)).toBeCloseTo(clear, 6);
    // Beer–Lambert law over 10 m, stepped along the slant
    expect(Math.abs(Math.log(clear) + 1)).toBeLessThan(0.16);
    expect(total(ends)).toBeCloseTo(1, 9);
  });

  it.each([
    { what: 'to be passed above, flown below', low_m: 0, high_m: 5, height_m: 3, missed: true },
    { what: 'to be passed above, flown above', low_m: 0, high_m: 5, height_m: 6, missed: false },
    { what: 'to be passed below, flown above', low_m: 5, high_m: Number.POSITIVE_INFINITY, height_m: 6, missed: true },
    { what: 'to be passed below, flown below', low_m: 5, high_m: Number.POSITIVE_INFINITY, height_m: 3, missed: false },
  ])('$what: missed $missed', ({ low_m, high_m, height_m, missed }) => {
    // on ground 2 m above the tee's: heights of the plane are above the ground under it
    const raised = rasterOf((_, north) => ({ ground_m: north > 20 ? 2 : 0 }));
    const plane: MandoPlane = { ax: -60, ay: 30, bx: 60, by: 30, low_m, high_m };
    const path = polyline([
      [0, 0, height_m + 2],
      [50, 0, height_m + 2],
      [55, 0, 0],
    ]);
    for (const mode of MODES) {
      const { ends } = march(createMarcher(worldOf(raised, { mandos: [plane] })), path, { mode });
      expect(ends.some(end => end.kind === RESULT.mando)).toBe(missed);
    }
  });

  it.each(MODES)(
    'entered along the ground is missed too: any part of the disc entering the plane counts (804.01 C, %s)',
    mode => {
      const world = worldOf(
        rasterOf(() => ({})),
        { mandos: [PLANE], dropZone: [4, 22] },
      );
      const { ends } = march(createMarcher(world), throwTo(28, 5), { mode, skid: [6, 1] });
      // by hand: down 2 m before the plane on its wrong side, slides 4 m through it
      expect(ends[0]).toMatchObject({ kind: RESULT.mando, penalty: 1, x: 4, y: 22 });
    },
  );

  it('is taken at the first plane entered', () => {
    const near: MandoPlane = { ...PLANE, ay: 20, by: 20 };
    const world = worldOf(
      rasterOf(() => ({})),
      { mandos: [PLANE, near], dropZone: [4, 12] },
    );
    // one straight piece through both planes
    const { ends } = march(createMarcher(world), Float64Array.from([0, 5, 2, 50, 5, 2]), { mode: 'exact' });
    expect(ends[0].restY).toBeCloseTo(20, 6);
    expect(ends).toHaveLength(1);
  });
});
