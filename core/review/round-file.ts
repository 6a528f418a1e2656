import { z } from 'zod';
import { dayInputSchema } from '../air/day-input.ts';
import { problemPath } from '../course/problem-path.ts';
import { DISC_CLASSES } from '../player/disc-class.ts';
import { parseJsonText } from '../player/json-text.ts';
import type { Problem, Result } from '../units/result.ts';
import { PENALTY_KINDS, THROWN_SHAPES } from './thrown.ts';

export const ROUND_SCHEMA = 'roundwright/round@1';
const FARTHEST_M = 2000;
const MOST_THROWS = 40;
const MOST_HOLES = 200;
const LONGEST_TEXT = 200;

const shown = (input: unknown): string => {
  const text = JSON.stringify(input) ?? String(input);
  return text.length > 40 ? `${text.slice(0, 37)}...` : text;
};

const text = (what: string) =>
  z
    .string({
      error: ({ input }) =>
        input === undefined ? `is missing: write ${what}` : `must be text in quotes, got ${shown(input)}`,
    })
    .trim()
    .min(1, `is empty: write ${what}`)
    .max(LONGEST_TEXT, `must be at most ${LONGEST_TEXT} characters`)
    .refine(value => value.isWellFormed() && !/\p{Cc}/u.test(value), 'holds characters that cannot be kept');

const between = (low: number, high: number, what: string) =>
  z
    .number({
      error: ({ input }) =>
        `${input === undefined ? 'is missing: write' : 'must be'} ${what} (${low} to ${high})${input === undefined ? '' : `, got ${shown(input)}`}`,
    })
    .min(low, `must be ${what} (${low} to ${high})`)
    .max(high, `must be ${what} (${low} to ${high})`);

const word = <const W extends readonly [string, ...string[]]>(words: W) =>
  z.enum(words as unknown as readonly [W[number], ...W[number][]], {
    error: ({ input }) => `${shown(input)} is not known: write ${words.map(one => `"${one}"`).join(', ')}`,
  });

const metres = (what: string) => between(-FARTHEST_M, FARTHEST_M, what);

/** Where a disc lies: a point of the hole, a position on the earth, or how far from the basket. */
const PlaceSchema = z.union(
  [
    z.strictObject({ east_m: metres('metres east of the tee'), north_m: metres('metres north of the tee') }),
    z.strictObject({
      lonLat: z
        .tuple([between(-180, 180, 'the longitude in degrees'), between(-90, 90, 'the latitude in degrees')])
        .describe('longitude, latitude in degrees (WGS 84)'),
    }),
    z.strictObject({
      toBasket_m: between(0, FARTHEST_M, 'the distance to the basket in metres'),
      side_m: metres('metres beside the line of play, right positive').optional(),
      isBeyond: z.boolean().optional().describe('true when it lies past the basket'),
    }),
  ],
  {
    error: ({ input }) =>
      input === undefined
        ? 'is missing: write {"east_m", "north_m"}, {"lonLat": [longitude, latitude]} or {"toBasket_m"}'
        : 'must be {"east_m", "north_m"}, {"lonLat": [longitude, latitude]} or {"toBasket_m", "side_m"}, all in metres or degrees',
  },
);
export type Place = z.output<typeof PlaceSchema>;

const RoundThrowSchema = z.strictObject({
  discId: text('the id of one of the player’s discs').optional(),
  hand: word(['backhand', 'forehand']).optional().describe('backhand when left out'),
  shape: word(THROWN_SHAPES).optional(),
  height: word(['low', 'standard', 'high']).optional(),
  power: between(0.1, 1, 'the power meant, a share of full').optional(),
  aimBearing_deg: between(-360, 360, 'the aim in degrees clockwise from true north').optional(),
  hyzer_deg: between(-120, 90, 'the bank of the release in degrees').optional(),
  launch_deg: between(-20, 60, 'the launch in degrees').optional(),
  hit: z
    .boolean('must be true or false')
    .optional()
    .describe('true when something stopped it on the way: no measure of the disc'),
  rest: PlaceSchema.optional().describe('where it came to rest; left out when holed or not known'),
  lie: PlaceSchema.optional().describe('where play went on from, when that is not where it came to rest'),
  penalties: z
    .array(
      z.strictObject({
        kind: word(PENALTY_KINDS),
        throws: z
          .int('must be a whole number of throws')
          .min(0, 'must be 0 to 3 throws')
          .max(3, 'must be 0 to 3 throws')
          .optional(),
      }),
    )
    .max(4, 'are at most 4 on one throw')
    .optional(),
  holed: z.boolean('must be true or false').optional(),
});
export type RoundThrow = z.output<typeof RoundThrowSchema>;

const RoundHoleSchema = z
  .strictObject({
    ref: text('the hole as the course spells it'),
    throws: z
      .array(RoundThrowSchema, { error: 'is missing: write the throws of the hole in order' })
      .max(MOST_THROWS, `are more than ${MOST_THROWS}: check the hole`),
  })
  .superRefine(({ throws }, context) => {
    const problem = (i: number, field: string, message: string) =>
      context.addIssue({ code: 'custom', path: ['throws', i, field], message });
    throws.forEach((t, i) => {
      if (t.holed && i < throws.length - 1)
        problem(i, 'holed', 'is true, but more throws follow: only the last one of a hole can be holed');
      if (t.holed && (t.penalties ?? []).length > 0)
        problem(i, 'penalties', 'cannot stand on a holed throw: write the penalty on the throw it was given for');
      if (t.holed && t.lie !== undefined) problem(i, 'lie', 'cannot follow a holed throw: leave it out');
      if (t.holed || i === throws.length - 1) return;
      const kinds = (t.penalties ?? []).map(({ kind }) => kind);
      const goesBack = kinds.some(kind => kind !== 'hazard');
      if (t.rest === undefined && t.lie === undefined && !goesBack)
        problem(i, 'rest', 'is missing: write where it came to rest (the next throw is made from there)');
    });
  });
export type RoundHole = z.output<typeof RoundHoleSchema>;

/**
 * A round as it was thrown. `day` is the wind and air it was planned for, `realDay` what they turned out to be. A hole whose last
 * throw is not holed is unfinished and not reviewed.
 */
export const RoundFileSchema = z
  .strictObject({
    schema: z.literal(ROUND_SCHEMA, `must be "${ROUND_SCHEMA}": this is no round`),
    course: text('the name of the course').optional(),
    player: text('the name of the player').optional(),
    layout: text('the name of the layout that was played').optional().describe('the course as mapped when left out'),
    date: z.iso
      .date({
        error: ({ input }) =>
          input === undefined
            ? 'is missing: write the date, like 2026-05-30'
            : `must be a date like 2026-05-30, got ${shown(input)}`,
      })
      .describe('of the round, like 2026-05-30'),
    day: dayInputSchema.optional().describe('calm air at sea level when left out'),
    realDay: dayInputSchema.optional().describe('as `day` when left out'),
    limits: z
      .strictObject({
        classes: z.array(word(DISC_CLASSES)).min(1).max(5).optional(),
        hands: z
          .array(word(['backhand', 'forehand']))
          .min(1)
          .max(2)
          .optional(),
        discIds: z.array(text('the id of a disc')).min(1).max(200).optional(),
      })
      .optional()
      .describe('what the player could or would throw that day; everything when left out'),
    note: z.string('must be text in quotes').max(2000, 'must be at most 2000 characters').optional(),
    holes: z
      .array(RoundHoleSchema, { error: 'is missing: write the holes as they were played' })
      .max(MOST_HOLES, `are more than ${MOST_HOLES}`),
  })
  .superRefine(({ holes }, context) => {
    const firstAt = new Map<string, number>();
    holes.forEach(({ ref }, i) => {
      const earlier = firstAt.get(ref);
      if (earlier === undefined) firstAt.set(ref, i);
      else
        context.addIssue({
          code: 'custom',
          path: ['holes', i, 'ref'],
          message: `hole ${ref} stands at holes[${earlier}] already: a round plays each hole once`,
        });
    });
  });
export type RoundFile = z.output<typeof RoundFileSchema>;

/** Checks a round already read as JSON. */
export function parseRound(input: unknown): Result<RoundFile> {
  const parsed = RoundFileSchema.safeParse(input);
  if (parsed.success) return { ok: true, value: parsed.data };
  const problems: Problem[] = parsed.error.issues.map(issue => ({
    path: problemPath(issue.path) || 'file',
    message: issue.message,
  }));
  return { ok: false, problems };
}

/** Checks the text of a round file; broken JSON is reported by line and column. */
export function parseRoundText(input: string): Result<RoundFile> {
  const json = parseJsonText(input);
  return json.ok ? parseRound(json.value) : json;
}

/** True when the last throw of the hole went in. */
export function isFinished({ throws }: RoundHole): boolean {
  return throws.at(-1)?.holed === true;
}

/** Throws and penalty throws. */
export function scoreOf({ throws }: RoundHole): number {
  return throws.reduce((sum, t) => sum + 1 + penaltyThrows(t), 0);
}

export function penaltyThrows({ penalties = [] }: RoundThrow): number {
  return penalties.reduce((sum, { throws = 1 }) => sum + throws, 0);
}
