import { z } from 'zod';
import { LANDING } from '../flight/flier.ts';
import type { Table } from './choose-shot.ts';
import type { Lie } from './march.ts';
import type { ShotSpec } from './shots.ts';

const Point = z.tuple([z.number(), z.number()]).describe('metres east, north of the tee');
/** In the order of the codes in march's RESULT. */
const END_KINDS = ['rest', 'hit', 'outOfBounds', 'hazard', 'mando', 'lost', 'holed'] as const;

/** What to draw of one shot, in the hole's local frame. */
export const ShotDrawingSchema = z.strictObject({
  path: z
    .array(z.tuple([z.number(), z.number(), z.number()]))
    .describe(
      '[east_m, north_m, height above the tee’s ground] of the middle of the scatter, hand to touchdown, a roller’s on to its rest; nothing stops it on the way',
    ),
  rest: Point.describe('where that flight comes to rest'),
  spread: z
    .array(
      z.strictObject({
        share: z.number(),
        centre: Point,
        semiMajor_m: z.number(),
        semiMinor_m: z.number(),
        bearing_deg: z.number().describe('of the long axis, 0…180'),
      }),
    )
    .describe('ellipses that hold these shares of the rests, were nothing in the way'),
  heights: z
    .array(z.strictObject({ along_m: z.number(), low_m: z.number(), middle_m: z.number(), high_m: z.number() }))
    .describe('heights of the flights above the tee’s ground by distance along the aim: the middle 80 %'),
  ends: z
    .array(z.strictObject({ at: Point, weight: z.number(), kind: z.enum(END_KINDS) }))
    .describe('at most 200 ends of simulated throws, with everything in the way; weights sum to 1'),
});
export type ShotDrawing = z.output<typeof ShotDrawingSchema>;

/** What to draw of a planned hole. */
export const HoleDrawingSchema = z.strictObject({ ref: z.string(), choice: ShotDrawingSchema });
export type HoleDrawing = z.output<typeof HoleDrawingSchema>;

const DEGREE = Math.PI / 180;
const SHARES = [0.5, 0.9];
const ROWS = 96;
const MOST_ENDS = 200;
const STATIONS = 48;
const LOW_SHARE = 0.1;
/** The band ends where this share of the flights has come down. */
const STILL_FLYING = 0.5;

type End = ShotDrawing['ends'][number];

/** Flies a shot for the eye: its middle path, where it comes to rest, how high it is on the way. Deterministic. */
export function drawShot(
  { thrower, answerNormals }: Pick<Table, 'thrower' | 'answerNormals'>,
  shot: ShotSpec,
  lie: Lie,
  aim_deg: number,
): ShotDrawing {
  const { landing, ends, play } = thrower;
  const [sin, cos] = [Math.sin(aim_deg * DEGREE), Math.cos(aim_deg * DEGREE)];
  const onGround = (along_m: number, left_m: number): [number, number] => [
    lie.east_m + sin * along_m - cos * left_m,
    lie.north_m + cos * along_m + sin * left_m,
  ];
  const restOfLast = (): [number, number] => [landing[LANDING.x] + play[0], landing[LANDING.y] + play[1]];

  thrower.prepare(shot, lie, aim_deg);
  thrower.throwOnce(answerNormals, -1);
  const path: ShotDrawing['path'] = pathOf(thrower.path()).map(([along_m, left_m, up_m]) => [
    ...onGround(along_m, left_m),
    lie.ground_m + up_m,
  ]);
  const rest = onGround(...restOfLast());

  const rests: [number, number][] = [];
  const flights: (readonly (readonly [number, number, number])[])[] = [];
  const found: End[] = [];
  thrower.throwRows(answerNormals, 0, ROWS, () => {
    rests.push(restOfLast());
    flights.push(pathOf(thrower.path()));
    for (let i = 0; i < ends.count; i++)
      found.push({
        at: [ends.restX[i]!, ends.restY[i]!],
        weight: ends.weight[i]! / ROWS,
        kind: END_KINDS[ends.kind[i]!]!,
      });
  });
  return roundedDrawing({
    path,
    rest,
    spread: ellipses(rests, aim_deg, onGround),
    heights: heightBand(flights, lie.ground_m),
    ends: thinned(found),
  });
}

/** Centimetres and tenths of a degree: finer than any pixel, and half the size to send. */
function roundedDrawing({ path, rest, spread, heights, ends }: ShotDrawing): ShotDrawing {
  return {
    path: path.map(([e, n, z]) => [cm(e), cm(n), cm(z)]),
    rest: [cm(rest[0]), cm(rest[1])],
    spread: spread.map(ellipse => ({
      share: ellipse.share,
      centre: [cm(ellipse.centre[0]), cm(ellipse.centre[1])],
      semiMajor_m: cm(ellipse.semiMajor_m),
      semiMinor_m: cm(ellipse.semiMinor_m),
      bearing_deg: Math.round(ellipse.bearing_deg * 10) / 10,
    })),
    heights: heights.map(band => ({
      along_m: cm(band.along_m),
      low_m: cm(band.low_m),
      middle_m: cm(band.middle_m),
      high_m: cm(band.high_m),
    })),
    ends: ends.map(({ at, weight, kind }) => ({ at: [cm(at[0]), cm(at[1])], weight, kind })),
  };
}

const cm = (value_m: number) => Math.round(value_m * 100) / 100 + 0; // + 0: no minus zero

function pathOf(points: Float32Array): [number, number, number][] {
  return Array.from({ length: points.length / 3 }, (_, i) => [points[3 * i]!, points[3 * i + 1]!, points[3 * i + 2]!]);
}

/** @source a plane normal law holds the share p inside r² = −2 ln(1 − p) standard deviations (χ² with two degrees of freedom) */
function ellipses(
  rests: readonly (readonly [number, number])[],
  aim_deg: number,
  onGround: (along_m: number, left_m: number) => [number, number],
): ShotDrawing['spread'] {
  const n = rests.length;
  const along = rests.reduce((sum, [x]) => sum + x, 0) / n;
  const left = rests.reduce((sum, [, y]) => sum + y, 0) / n;
  let [xx, xy, yy] = [0, 0, 0];
  for (const [x, y] of rests) {
    xx += (x - along) ** 2 / (n - 1);
    xy += ((x - along) * (y - left)) / (n - 1);
    yy += (y - left) ** 2 / (n - 1);
  }
  const middle = (xx + yy) / 2;
  const half = Math.hypot((xx - yy) / 2, xy);
  // Angle of the long axis from the aim, to the left; bearings turn to the right.
  const turn_deg = Math.atan2(2 * xy, xx - yy) / 2 / DEGREE;
  const bearing_deg = (((aim_deg - turn_deg) % 180) + 180) % 180;
  return SHARES.map(share => {
    const reach = Math.sqrt(-2 * Math.log(1 - share));
    return {
      share,
      centre: onGround(along, left),
      semiMajor_m: reach * Math.sqrt(middle + half),
      semiMinor_m: reach * Math.sqrt(Math.max(0, middle - half)),
      bearing_deg,
    };
  });
}

function heightBand(
  flights: readonly (readonly (readonly [number, number, number])[])[],
  ground_m: number,
): ShotDrawing['heights'] {
  const farthest = Math.max(...flights.map(flight => flight.at(-1)?.[0] ?? 0));
  const band: ShotDrawing['heights'] = [];
  for (let i = 0; i <= STATIONS; i++) {
    const along_m = (farthest * i) / STATIONS;
    const heights = flights.flatMap(flight => heightAt(flight, along_m) ?? []).sort((a, b) => a - b);
    if (heights.length < STILL_FLYING * flights.length) break;
    const at = (share: number) => ground_m + heights[Math.round(share * (heights.length - 1))]!;
    band.push({ along_m, low_m: at(LOW_SHARE), middle_m: at(0.5), high_m: at(1 - LOW_SHARE) });
  }
  return band;
}

/** Height where the flight first passes this distance; undefined when it comes down before. */
function heightAt(flight: readonly (readonly [number, number, number])[], along_m: number): number | undefined {
  const next = flight.findIndex(([x]) => x >= along_m);
  if (next === -1) return undefined;
  const [x1, , z1] = flight[next]!;
  if (next === 0) return z1;
  const [x0, , z0] = flight[next - 1]!;
  return x1 === x0 ? z1 : z0 + ((z1 - z0) * (along_m - x0)) / (x1 - x0);
}

/** Systematic sampling: few enough to draw, each kind still in its share. */
function thinned(ends: readonly End[]): End[] {
  if (ends.length <= MOST_ENDS) return [...ends];
  const total = ends.reduce((sum, { weight }) => sum + weight, 0);
  let [passed, marks] = [0, 0];
  return ends.flatMap(end => {
    passed += end.weight;
    const reached = Math.min(MOST_ENDS, Math.round((passed / total) * MOST_ENDS));
    const own = reached - marks;
    marks = reached;
    return own > 0 ? [{ ...end, weight: own / MOST_ENDS }] : [];
  });
}
