import { describe, expect, it } from 'vitest';
import { LANDING } from '../../../core/flight/flier.ts';
import { roll } from '../../../core/flight/rolling.ts';
import { ZONE_OUT_OF_BOUNDS } from '../../../core/geometry/obstacle-raster.ts';
import { createMarcher, type Ends, RESULT } from '../../../core/strategy/march.ts';
import { createRollPath, type RollOff } from '../../../core/strategy/roll-path.ts';
import { rasterOf, worldOf } from './small-world.ts';

const TEE = { east_m: 0, north_m: 0, ground_m: 0 };
const STRAIGHT: RollOff = { vx_mps: 15, vy_mps: 0, bend_mps2: 0, resistance: 0.2 };
/** How far that goes on turf: (15² − 1.5²)/2μg, by hand. */
const FULL_M = (15 ** 2 - 1.5 ** 2) / (2 * 0.2 * 9.80665);
/** From the hand to the ground 8 m ahead, going north. */
const FLIGHT = Float32Array.of(0, 0, 1.2, 4, 0, 0.7, 8, 0, 0);

type World = Parameters<typeof worldOf>[1];
function rolledOver(
  fill: Parameters<typeof rasterOf>[0],
  from: RollOff = STRAIGHT,
  exact = true,
  rest: World = {},
): Ends {
  const marcher = createMarcher(worldOf(rasterOf(fill, 60, 160), rest));
  marcher.march(FLIGHT, 0, 3, TEE, 0, 1, 0, 0, exact, 0, undefined, from);
  return marcher.ends;
}
const parts = (ends: Ends) =>
  Array.from({ length: ends.count }, (_, i) => ({
    x: ends.x[i]!,
    y: ends.y[i]!,
    weight: ends.weight[i]!,
    penalty: ends.penalty[i]!,
    kind: ends.kind[i]!,
  }));
const middle = (ends: Ends) => parts(ends).reduce((sum, { y, weight }) => sum + weight * y, 0);

describe('a roll over a hole', () => {
  it('on level turf goes where a roll on a plane goes', () => {
    for (const lean_deg of [-8, 0, 5]) {
      const landing = new Float64Array(10);
      const lean = (lean_deg * Math.PI) / 180;
      landing[LANDING.vx] = 18;
      landing[LANDING.vy] = 2;
      landing[LANDING.vz] = -1;
      landing[LANDING.ny] = -Math.cos(lean);
      landing[LANDING.nz] = Math.sin(lean);
      landing[LANDING.spin] = -80;
      const out = new Float64Array(2);
      roll(landing, 0.106, 0.25, 0, 0, out, 240);
      const path = createRollPath(rasterOf(() => ({}), 80, 160));
      // its own start: spin and travel evened out (as in rolling.ts, k = 0.68)
      const along = Math.hypot(18, 2);
      const drive = (80 * 0.106 * Math.cos(lean) * 18) / along;
      const speed = (along + 0.68 * drive) / 1.68;
      const facing = Math.sin(lean);
      const bend = (9.80665 * Math.tan(Math.asin(facing))) / 1.68;
      const off = { vx_mps: (speed * 18) / along, vy_mps: (speed * 2) / along, bend_mps2: bend, resistance: 0.25 };
      path.start(off, 0, 0, 0, 1, true);
      while (path.roll());
      // the throw frame looks north: along is north, left is west
      expect(Math.hypot(path.north - out[0]!, -path.east - out[1]!)).toBeLessThan(0.02);
    }
  });

  it.each([
    { exact: true, tol: 0.6 },
    { exact: false, tol: 1.1 },
  ])('comes to rest in one piece, clean, at (v² − 1.5²)/2μg (exact: $exact)', ({ exact, tol }) => {
    const ends = rolledOver(() => ({}), STRAIGHT, exact);
    expect(ends.count).toBe(1);
    expect(ends.clear).toBe(1);
    expect(Math.abs(ends.y[0]! - 8 - FULL_M)).toBeLessThan(tol + (exact ? 0 : 1));
  });

  it('passes under a ceiling that stops any flight, and past crowns', () => {
    const low = (_: number, north: number) => (north > 9 ? { highBase_m: 0.4, highTop_m: 60, highDensity: 2 } : {});
    const ends = rolledOver(low);
    expect(ends.clear).toBe(1);
    expect(ends.count).toBe(1);
  });

  it('is stopped by a wall, and by undergrowth bit by bit', () => {
    const wall = rolledOver((_, north) => (north > 30 && north < 32 ? { lowTop_m: 1, lowDensity: 3 } : {}));
    expect(wall.clear).toBeLessThan(0.01);
    expect(Math.abs(middle(wall) - 30)).toBeLessThan(1.2);
    expect(parts(wall).every(({ kind }) => kind === RESULT.hit)).toBe(true);
    // chance to get through 10 m of 0.05 hits a metre: e^(−0.5), Beer–Lambert
    const bush = rolledOver((_, north) => (north > 20 && north < 30 ? { lowTop_m: 0.5, lowDensity: 0.05 } : {}));
    expect(Math.abs(bush.clear - Math.exp(-0.5))).toBeLessThan(0.03);
    expect(Math.abs(parts(bush).reduce((sum, { weight }) => sum + weight, 0) - 1)).toBeLessThan(1e-9);
  });

  it('rolls further on hard ground, less far in long grass, in proportion to their assumed resistance', () => {
    // from a landing at 8 m: 0.1 and 0.45 against 0.2 on turf (flight/ground-play)
    const far = (surface: number) => rolledOver(() => ({ surface }), { ...STRAIGHT, vx_mps: 12 }).y[0]! - 8;
    const turf = far(1);
    expect(Math.abs(far(2) / turf - 2)).toBeLessThan(0.05);
    expect(Math.abs(far(0) / turf - 0.2 / 0.45)).toBeLessThan(0.05);
  });

  it('runs on downhill and dies uphill: v² falls by 2g(μ + slope) a metre', () => {
    for (const grade of [-0.08, 0.08]) {
      const ends = rolledOver((_, north) => ({ ground_m: north > 8 ? grade * (north - 8) : 0 }));
      const want = (15 ** 2 - 1.5 ** 2) / (2 * 9.80665 * (0.2 + grade));
      expect(Math.abs(ends.y[0]! - 8 - want)).toBeLessThan(0.02 * want + 1);
    }
  });

  it('is out where it crosses the line, although it would have rolled on, and lies where it was last in', () => {
    const ends = rolledOver((_, north) => (north > 30 && north < 34 ? { zone: ZONE_OUT_OF_BOUNDS } : {}));
    const [end] = parts(ends);
    expect(end).toMatchObject({ kind: RESULT.outOfBounds, penalty: 1 });
    expect(Math.abs(end!.y - 30)).toBeLessThan(2);
  });

  it('goes out along its curve, not along a straight line to where it ends', () => {
    // bends left round a half turn: a straight line from landing to rest would miss what lies ahead
    const bent: RollOff = { ...STRAIGHT, bend_mps2: 3.2 };
    const open = rolledOver(() => ({}), bent);
    const [rest] = parts(open);
    expect(rest!.x).toBeLessThan(-10);
    const north = Math.max(...path(bent).map(([, n]) => n));
    expect(north).toBeGreaterThan(rest!.y + 3);
    const ends = rolledOver((_, n) => (n > north - 1.5 ? { zone: ZONE_OUT_OF_BOUNDS } : {}), bent);
    expect(ends.kind[0]).toBe(RESULT.outOfBounds);
  });

  it('misses a mando whose plane it rolls through, and one above head height not', () => {
    const plane = { ax: -20, ay: 25, bx: 20, by: 25 };
    const low = rolledOver(() => ({}), STRAIGHT, true, { mandos: [{ ...plane, low_m: 0, high_m: 100 }] });
    expect(low.kind[0]).toBe(RESULT.mando);
    expect(low.penalty[0]).toBe(1);
    const high = rolledOver(() => ({}), STRAIGHT, true, { mandos: [{ ...plane, low_m: 2, high_m: 100 }] });
    expect(high.kind[0]).toBe(RESULT.rest);
  });
});

function path(from: RollOff): [number, number][] {
  const path = createRollPath(rasterOf(() => ({}), 60, 160));
  path.start(from, 0, 8, 0, 1, true);
  while (path.roll());
  return Array.from({ length: path.points }, (_, i) => [path.trailEast[i]!, path.trailNorth[i]!]);
}
