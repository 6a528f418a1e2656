import { z } from 'zod';
import { METERS_PER_FOOT } from '../../units/length.ts';

const number = (least: number, most: number, what: string) =>
  z
    .number({ error: () => `write a number: ${what}` })
    .min(least, { error: () => `${what} runs from ${least} to ${most}` })
    .max(most, { error: () => `${what} runs from ${least} to ${most}` });

const along = number(0, 6000, 'a distance from the tee along the line of play');
const aside = number(0, 600, 'a distance to the side');
const size = number(0, 400, 'a height or width');

/** How distances were counted off; sizes (heights and widths) have a unit of their own. */
const DistanceUnitSchema = z.discriminatedUnion('unit', [
  z.strictObject({ unit: z.literal('m') }),
  z.strictObject({ unit: z.literal('ft') }),
  z.strictObject({
    unit: z.literal('paces'),
    pace_m: number(0.3, 1.5, 'the length of a pace in metres').describe('one step, heel to heel'),
  }),
]);

/**
 * A hole as a player walks it with a tape or counted paces: `at`, `from`, `to`, `away` and `aside` in `distances`, heights
 * and widths in `sizes`. Distances run from the tee along the line of play.
 */
export const WalkedHoleSchema = z.strictObject({
  ref: z.string().trim().min(1, 'is empty: write the hole’s number').max(60),
  name: z.string().trim().max(120).optional(),
  par: z.int().min(2).max(9).optional(),
  distances: DistanceUnitSchema,
  sizes: z.enum(['m', 'ft']),
  length: along.describe('tee to basket along the line of play'),
  bearing_deg: number(0, 360, 'a direction in degrees').describe('first leg, clockwise from true north'),
  rise: number(-600, 600, 'the rise').optional().describe('basket above tee, in sizes; negative downhill'),
  teeHeight: number(-500, 30000, 'the height of the tee').optional().describe('above sea level, in sizes'),
  bends: z
    .array(
      z.strictObject({
        at: along,
        turn_deg: number(-150, 150, 'the turn in degrees').describe('right positive'),
      }),
    )
    .max(20)
    .default([]),
  ceilings: z
    .array(
      z.strictObject({
        at: along.describe('middle of it'),
        deep: size.optional().describe('how far it reaches along the line; 2 m when left out'),
        clearance: size.describe('free height under it'),
        top: size.optional().describe('where it ends; closed above when left out'),
      }),
    )
    .max(50)
    .default([]),
  gaps: z
    .array(
      z.strictObject({
        at: along,
        width: size,
        low: size.optional().describe('lower edge; the ground when left out'),
        high: size.optional().describe('upper edge; open above when left out'),
      }),
    )
    .max(50)
    .default([]),
  trees: z
    .array(
      z.strictObject({
        at: along,
        side: z.enum(['left', 'right']),
        aside,
        height: size.optional(),
        crown: size.optional().describe('across'),
        branches: size.optional().describe('height of the lowest'),
      }),
    )
    .max(100)
    .default([]),
  out: z
    .array(
      z.strictObject({
        what: z.enum(['water', 'outOfBounds']),
        side: z.enum(['left', 'right', 'across', 'beyond']),
        from: along.optional().describe('not for beyond'),
        to: along.optional().describe('not for beyond'),
        away: aside.optional().describe('edge to the line of play, or behind the basket; not for across'),
      }),
    )
    .max(30)
    .default([]),
});
export type WalkedHole = Readonly<z.output<typeof WalkedHoleSchema>>;
export type WalkedHoleEntry = z.input<typeof WalkedHoleSchema>;

/** Metres in one of the units that distances were counted in. */
export function metresPerDistance(distances: WalkedHole['distances']): number {
  if (distances.unit === 'paces') return distances.pace_m;
  return distances.unit === 'ft' ? METERS_PER_FOOT : 1;
}

/** Metres in one of the units of heights and widths. */
export const metresPerSize = (sizes: WalkedHole['sizes']): number => (sizes === 'ft' ? METERS_PER_FOOT : 1);
