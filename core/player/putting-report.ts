import { z } from 'zod';
import { puttingBand } from './putting-band.ts';
import { fitPutting, type PuttingRow } from './putting-curve.ts';
import { wilsonInterval } from './wilson-interval.ts';

/** Putts are throws from within this of the target. @source Official Rules of Disc Golf, 806.01 */
const CIRCLE_1_M = 10;
/** A convention of statistics, not a rule. */
const CIRCLE_2_M = 20;
/** Fewer tries than this: the interval says more than the rate. */
const FEW_ATTEMPTS = 30;
const LINE_STEP_M = 0.5;

const chance = z.number().min(0).max(1);
const RateSchema = z
  .strictObject({ rate: chance, low: chance, high: chance })
  .describe('made of tried, with its 95 % interval (Wilson)');
const FittedSchema = z
  .strictObject({ chance, low: chance, high: chance })
  .describe('of the fitted curve, with its 95 % interval');
const tried = { attempts: z.int(), makes: z.int() };

/** What `putting --json` prints. */
export const PuttingReportSchema = z.strictObject({
  schema: z.literal('roundwright/putting@1'),
  player: z.string(),
  rows: z
    .array(z.strictObject({ distance_m: z.number(), ...tried, date: z.string().optional() }))
    .describe('the log, in the order of the file'),
  byDistance: z
    .array(z.strictObject({ distance_m: z.number(), ...tried, measured: RateSchema, fitted: FittedSchema }))
    .describe('nearest first'),
  circles: z.array(
    z.strictObject({
      name: z.enum(['C1', 'C2', 'beyond']),
      from_m: z.number(),
      to_m: z.number().nullable().describe('included; null: no end'),
      ...tried,
      measured: RateSchema.nullable().describe('null: no tries'),
    }),
  ),
  curve: z.strictObject({
    floor: chance,
    ceiling: chance,
    half_m: z.number().describe('where the chance is about half'),
    scale_m: z.number(),
    attempts: z.int(),
    basis: z.enum(['measured', 'borrowed', 'predicted']),
  }),
  line: z
    .array(z.strictObject({ distance_m: z.number(), ...FittedSchema.shape }))
    .describe('the fitted curve with its 95 % interval, calm air'),
  notes: z.array(z.string()),
});
export type PuttingReport = z.output<typeof PuttingReportSchema>;

/** The putting log, what it shows by distance and by circle, and the fitted curve with what it leaves open. */
export function puttingReport(
  player: string,
  rows: readonly (PuttingRow & { date?: string | undefined })[],
): PuttingReport {
  const curve = fitPutting(rows);
  const distances_m = [...new Set(rows.map(({ distance_m }) => distance_m))].sort((a, b) => a - b);
  const last_m = Math.max(CIRCLE_2_M, distances_m.at(-1) ?? 0);
  const steps = Math.ceil(last_m / LINE_STEP_M);
  const fitted = puttingBand(rows, distances_m);
  return {
    schema: 'roundwright/putting@1',
    player,
    rows: rows.map(({ distance_m, attempts, makes, date }) => ({
      distance_m,
      attempts,
      makes,
      ...(date === undefined ? {} : { date }),
    })),
    byDistance: distances_m.map((distance_m, i) => {
      const sums = summed(rows.filter(row => row.distance_m === distance_m));
      const { chance, low, high } = fitted[i]!;
      return { distance_m, ...sums, measured: rateOf(sums), fitted: rounded({ chance, low, high }) };
    }),
    circles: [
      circle(
        'C1',
        0,
        CIRCLE_1_M,
        rows.filter(row => row.distance_m <= CIRCLE_1_M),
      ),
      circle(
        'C2',
        CIRCLE_1_M,
        CIRCLE_2_M,
        rows.filter(row => row.distance_m > CIRCLE_1_M && row.distance_m <= CIRCLE_2_M),
      ),
      circle(
        'beyond',
        CIRCLE_2_M,
        null,
        rows.filter(row => row.distance_m > CIRCLE_2_M),
      ),
    ],
    curve,
    line: puttingBand(
      rows,
      Array.from({ length: steps + 1 }, (_, i) => i * LINE_STEP_M),
    ).map(at => ({ distance_m: at.distance_m, ...rounded(at) })),
    notes: notesOf(curve.attempts, distances_m),
  };
}

type Tried = Readonly<{ attempts: number; makes: number }>;

function circle(name: 'C1' | 'C2' | 'beyond', from_m: number, to_m: number | null, rows: readonly PuttingRow[]) {
  const sums = summed(rows);
  return { name, from_m, to_m, ...sums, measured: sums.attempts === 0 ? null : rateOf(sums) };
}

function summed(rows: readonly PuttingRow[]): Tried {
  return {
    attempts: rows.reduce((sum, row) => sum + row.attempts, 0),
    makes: rows.reduce((sum, row) => sum + row.makes, 0),
  };
}

function rateOf({ makes, attempts }: Tried) {
  const { low, high } = wilsonInterval(makes, attempts);
  return { rate: four(makes / attempts), low: four(low), high: four(high) };
}

function notesOf(attempts: number, distances_m: readonly number[]): string[] {
  const [nearest, farthest] = [distances_m[0], distances_m.at(-1)];
  return [
    ...(attempts === 0 ? ['no putts logged: the curve is an assumed, careful default (half from 6 m)'] : []),
    ...(attempts > 0 && attempts < FEW_ATTEMPTS
      ? [
          `${attempts} putts: fewer than ${FEW_ATTEMPTS} leave the curve leaning on an assumed one; trust the interval, not the line`,
        ]
      : []),
    ...(nearest !== undefined && nearest === farthest
      ? ['all putts are from one distance: how fast the chance falls with distance is assumed']
      : []),
  ];
}

/** Hundredths of a percent. */
const four = (value: number) => Math.round(value * 1e4) / 1e4;
const rounded = ({ chance, low, high }: { chance: number; low: number; high: number }) => ({
  chance: four(chance),
  low: four(low),
  high: four(high),
});
