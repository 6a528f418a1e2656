import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { windProfile } from '../../../core/air/wind-profile.ts';
import { discModel } from '../../../core/flight/disc-model.ts';
import { createFlier, LANDING } from '../../../core/flight/flier.ts';
import { groundPlay, SURFACE_FRICTION } from '../../../core/flight/ground-play.ts';
import type { SurfaceName } from '../../../core/geometry/hole-map.ts';
import { type ObstacleRaster, SURFACES } from '../../../core/geometry/obstacle-raster.ts';
import { createMarcher, RESULT } from '../../../core/strategy/march.ts';
import { march, polyline, rasterOf, worldOf } from './small-world.ts';

const total = (ends: readonly { weight: number }[]) => ends.reduce((sum, end) => sum + end.weight, 0);
const marcherOver = (raster: ObstacleRaster) => createMarcher(worldOf(raster));
const NOTHING = rasterOf(() => ({}));
const MODES = ['search', 'exact'] as const;
/** Level at 2 m for 50 m, then steeply down to the ground at 52 m. */
const LEVEL_FLIGHT = polyline([
  [0, 0, 2],
  [50, 0, 2],
  [52, 0, 0],
]);
const woodFrom = (from: number, to: number, density: number) =>
  rasterOf((_, north) => (north > from && north < to ? { lowTop_m: 10, lowDensity: density } : {}));

describe('a march through the air', () => {
  it.each(MODES)('over nothing has one end, where it landed and skidded to (%s)', mode => {
    const { clear, ends } = march(marcherOver(NOTHING), LEVEL_FLIGHT, { mode, skid: [3, 1] });
    expect(clear).toBe(1);
    expect(ends).toHaveLength(1);
    expect(ends[0]).toMatchObject({ weight: 1, penalty: 0, kind: RESULT.rest });
    // by hand: 52 + 3 ahead, 1 left of an aim north is west
    expect(ends[0].x).toBeCloseTo(-1, 9);
    expect(ends[0].y).toBeCloseTo(55, 9);
  });

  it('turns with the aim: along the aim and to its left', () => {
    const { ends } = march(marcherOver(NOTHING), LEVEL_FLIGHT, {
      mode: 'exact',
      aim_deg: 90,
      from: [5, 7],
      skid: [3, 1],
    });
    // by hand: aim east from (5, 7); left of it is north
    expect(ends[0].x).toBeCloseTo(60, 9);
    expect(ends[0].y).toBeCloseTo(8, 9);
  });

  it('through 10 m of stems meets nothing with chance exp(−density·10), to the last digit where steps fall on cells', () => {
    // Beer–Lambert law; 50 pieces of 1 m, ten of them in the wood
    const whole = Float64Array.from([0, 0, 2, 50, 0, 2]);
    for (const density of [0.02, 0.1, 0.3]) {
      const { clear } = march(marcherOver(woodFrom(20, 30, density)), whole, { mode: 'exact' });
      expect(clear).toBeCloseTo(Math.exp(-Math.fround(density) * 10), 12);
    }
  });

  it.each([
    { mode: 'exact' as const, step_m: 1 },
    { mode: 'search' as const, step_m: 1.5 },
  ])('is right to one step of $step_m m at any angle, density and depth ($mode)', ({ mode, step_m }) => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 0.3, noNaN: true }),
        fc.integer({ min: 1, max: 25 }),
        fc.double({ min: -40, max: 40, noNaN: true }),
        fc.double({ min: 0.8, max: 2.5, noNaN: true }),
        (density, depth, aim_deg, piece_m) => {
          const raster = woodFrom(20, 20 + depth, density);
          const path = polyline(
            [
              [0, 0, 2],
              [75, 0, 2],
            ],
            piece_m,
          );
          const { clear, ends } = march(marcherOver(raster), path, { mode, aim_deg });
          const through_m = depth / Math.cos((aim_deg * Math.PI) / 180);
          // Beer–Lambert law; entry and exit are each seen to half a step
          const seen = clear > 0 ? -Math.log(clear) : Number.POSITIVE_INFINITY;
          if (Math.exp(-density * (through_m + step_m)) > 0.01)
            expect(Math.abs(seen - density * through_m)).toBeLessThanOrEqual(density * step_m + 1e-5);
          expect(total(ends)).toBeCloseTo(1, 9);
        },
      ),
      { seed: 7, numRuns: 150 },
    );
  });

  it.each(MODES)('puts the hits where the law of the free path puts them, less the 0.7 m it falls back (%s)', mode => {
    for (const density of [0.05, 0.2]) {
      const depth = 20;
      const { ends } = march(marcherOver(woodFrom(20, 40, density)), LEVEL_FLIGHT, { mode });
      const hits = ends.filter(end => end.kind === RESULT.hit);
      const chance = total(hits);
      const mean = hits.reduce((sum, end) => sum + end.weight * end.y, 0) / chance;
      // own derivation: mean of an exponential cut off at the depth, 1/σ − L·e^(−σL)/(1 − e^(−σL))
      const gone = Math.exp(-density * depth);
      const want = 20 + 1 / density - (depth * gone) / (1 - gone) - 0.7;
      expect(Math.abs(mean - want)).toBeLessThan(0.5);
      expect(hits.every(end => end.penalty === 0 && Math.abs(end.x) < 1e-9)).toBe(true);
      for (const end of hits) expect(end.y).toBeGreaterThan(18.5);
      for (const end of hits) expect(end.y).toBeLessThan(40);
    }
  });

  it.each(MODES)('meets crowns between their base and top only (%s)', mode => {
    const crowns = rasterOf((_, north) =>
      north > 20 && north < 30 ? { highBase_m: 3, highTop_m: 8, highDensity: 0.2 } : {},
    );
    const at = (height_m: number) =>
      march(
        marcherOver(crowns),
        polyline([
          [0, 0, height_m],
          [60, 0, height_m],
        ]),
        { mode },
      ).clear;
    expect(at(2.9)).toBe(1);
    expect(at(8.1)).toBe(1);
    // Beer–Lambert law, 10 m at 0.2 a metre, to a step of 1.5 m
    for (const height_m of [3.1, 7.9]) expect(Math.abs(Math.log(at(height_m)) + 2)).toBeLessThan(0.31);
  });

  it.each(MODES)('counts heights above the ground that is there, not above the tee (%s)', mode => {
    const raised = rasterOf((_, north) =>
      north > 15 && north < 35
        ? { ground_m: 4, ...(north > 20 && north < 30 && { lowTop_m: 3, lowDensity: 0.2 }) }
        : {},
    );
    const at = (height_m: number) =>
      march(
        marcherOver(raised),
        polyline([
          [0, 0, height_m],
          [60, 0, height_m],
        ]),
        { mode },
      ).clear;
    expect(at(7.2)).toBe(1);
    expect(Math.abs(Math.log(at(6.8)) + 2)).toBeLessThan(0.31);
  });

  it.each(MODES)('leaves the lie freely: nothing in the first metre counts, the third metre does (%s)', mode => {
    const path = polyline(
      [
        [0, 0, 2],
        [10, 0, 2],
      ],
      1,
    );
    expect(march(marcherOver(woodFrom(-20, 1, 2)), path, { mode }).clear).toBe(1);
    expect(march(marcherOver(woodFrom(2, 3, 0.5)), path, { mode }).clear).toBeCloseTo(Math.exp(-0.5), 12);
  });

  it('is stopped for good by something solid, and the ends still sum to 1', () => {
    const wall = rasterOf((_, north) => (north > 30 && north < 33 ? { lowTop_m: 5, lowDensity: 3 } : {}));
    for (const mode of MODES) {
      const { clear, ends } = march(marcherOver(wall), LEVEL_FLIGHT, { mode });
      expect(clear).toBeLessThan(0.01);
      expect(total(ends)).toBeCloseTo(1, 12);
      for (const end of ends.filter(e => e.weight > 0.02)) expect(end.y).toBeLessThan(31);
    }
  });
});

describe('a march to the ground', () => {
  it('lands where the path meets level ground', () => {
    const path = polyline([
      [0, 0, 1.2],
      [30, 0, 6],
      [50, 0, 2],
      [70, 0, -18],
    ]);
    const { ends } = march(marcherOver(NOTHING), path, { mode: 'search' });
    // by hand: the last leg falls 1 m a metre from 2 m up at 50 m
    expect(ends[0].y).toBeCloseTo(52, 9);
  });

  it.each([-0.15, -0.05, 0.05, 0.15])('lands where the path meets a slope of %d, to the size of a cell', slope => {
    const hill = rasterOf((_, north) => ({ ground_m: slope * north }));
    const fall = 0.5;
    const path = polyline([
      [0, 0, 1.2],
      [30, 0, 10],
      [90, 0, 10 - 60 * fall],
    ]);
    const { ends } = march(marcherOver(hill), path, { mode: 'search' });
    // by hand: 10 − fall·(y − 30) = slope·y
    const want = (10 + 30 * fall) / (slope + fall);
    expect(Math.abs(ends[0].y - want)).toBeLessThan(1);
  });

  it.each([
    { surface: 'turf', factor: 1 },
    { surface: 'longGrass', factor: 0.55 },
    { surface: 'hardpan', factor: 1.9 },
  ] as const)('skids $factor of the turf skid on $surface (assumed in march.ts)', ({ surface, factor }) => {
    const ground = rasterOf(() => ({ surface: SURFACES.indexOf(surface) }));
    const { ends } = march(marcherOver(ground), LEVEL_FLIGHT, { mode: 'search', skid: [4, -2] });
    expect(ends[0].y).toBeCloseTo(52 + 4 * factor, 6);
    expect(ends[0].x).toBeCloseTo(2 * factor, 6);
  });

  it.each([-0.2, -0.1, 0.1, 0.2])('skids μ/(μ + slope) of the level skid on a slope of %d', slope => {
    const hill = rasterOf((_, north) => ({ ground_m: slope * (north - 52) }));
    const { ends } = march(marcherOver(hill), LEVEL_FLIGHT, { mode: 'search', skid: [5, 0] });
    // own derivation: sliding friction, v²/2g(μ + slope), μ = 0.9 on turf (assumed in ground-play)
    const landing = march(marcherOver(hill), LEVEL_FLIGHT, { mode: 'search' }).ends[0].y;
    expect(ends[0].y - landing).toBeCloseTo((5 * 0.9) / (0.9 + slope), 4);
  });

  it('never skids further than 40 m, and leaves an exact skid alone', () => {
    const slick = rasterOf((_, north) => ({ ground_m: -0.8 * north, surface: SURFACES.indexOf('hardpan') }), 60, 250);
    const path = polyline([
      [0, 0, 1.2],
      [20, 0, -30],
    ]);
    const far = march(marcherOver(slick), path, { mode: 'search', skid: [30, 0] }).ends[0].y;
    const near = march(marcherOver(slick), path, { mode: 'search' }).ends[0].y;
    expect(far - near).toBeCloseTo(40, 6);
    const exact = march(marcherOver(slick), LEVEL_FLIGHT, { mode: 'exact', skid: [30, 0] }).ends[0].y;
    expect(exact).toBeCloseTo(82, 9);
  });

  it('stops a skid in undergrowth with chance 1 − exp(−density·length)', () => {
    const grass = rasterOf((_, north) => (north > 55 && north < 60 ? { lowTop_m: 1, lowDensity: 0.2 } : {}));
    const { ends } = march(marcherOver(grass), LEVEL_FLIGHT, { mode: 'exact', skid: [10, 0] });
    const through = ends.find(end => Math.abs(end.y - 62) < 1e-6);
    // Beer–Lambert law over 5 m
    expect(through?.weight).toBeCloseTo(Math.exp(-1), 3);
    expect(total(ends)).toBeCloseTo(1, 12);
  });

  // regression: means measured 0.43, 0.00 and 0.66 m level; 1.6, 2.7 and 4.7 m on 5 % (the level skid knows nothing of the
  // faster touchdown uphill). A hint for a search: answers use the ground model itself.
  it.each([
    { surface: 'longGrass', level_m: 0.6, sloped_m: 2 },
    { surface: 'turf', level_m: 0.02, sloped_m: 3.3 },
    { surface: 'hardpan', level_m: 0.9, sloped_m: 5.6 },
  ] as const)('by look-up rests near where ground play puts it on $surface', ({ surface, level_m, sloped_m }) => {
    expect(meanRestError_m(surface, 0)).toBeLessThan(level_m);
    for (const slope of [-0.05, 0.05]) expect(meanRestError_m(surface, slope)).toBeLessThan(sloped_m);
  });
});

/** Two methods against each other: the search's scaled turf skid, and a flight over the slope with its own ground play. */
function meanRestError_m(surface: SurfaceName, slope: number): number {
  const flier = createFlier();
  flier.setAir(1.2, 0, 0, windProfile('open'));
  const play = new Float64Array(2);
  const hill = rasterOf((_, north) => ({ ground_m: slope * north, surface: SURFACES.indexOf(surface) }));
  const marcher = marcherOver(hill);
  let sum = 0;
  let flights = 0;
  for (const [speed, number] of [
    [17, 3],
    [21, 5],
    [25, 9],
  ]) {
    flier.setDisc(discModel({ speed: number, glide: 4, turn: -0.5, fade: 2 }));
    for (const hyzer of [-10, 0, 15]) {
      for (const launch of [4, 8, 14]) {
        flier.setPlane(0, slope, 0);
        flier.fly(speed, 0, launch, 0, hyzer, -4.4 * speed, 1.2);
        groundPlay(flier.landing, 0.106, SURFACE_FRICTION[surface], slope, 0, play);
        const along = flier.landing[LANDING.x] + play[0];
        const left = flier.landing[LANDING.y] + play[1];
        flier.setPlane(0, 0, 0);
        flier.fly(speed, 0, launch, 0, hyzer, -4.4 * speed, 1.2);
        groundPlay(flier.landing, 0.106, SURFACE_FRICTION.turf, 0, 0, play);
        flier.extend(15);
        const path = flier.path.slice(0, 3 * flier.pathPoints());
        const { ends } = march(marcher, path, { mode: 'search', skid: [play[0], play[1]] });
        sum += Math.hypot(ends[0].x + left, ends[0].y - along);
        flights++;
      }
    }
  }
  return sum / flights;
}
