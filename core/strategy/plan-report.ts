import { z } from 'zod';
import { SPECIAL_SHAPES } from '../player/fitted-player.ts';

const chance = z.number().min(0).max(1);
const throwsCount = z.int().min(1);
/** Rollers and overhead throws only for players who measured them. */
export const SHOT_SHAPES = ['hyzer', 'flat', 'anhyzer', ...SPECIAL_SHAPES] as const;

export const ShotSchema = z
  .object({
    title: z.string().describe('What to throw, in plain words'),
    disc: z.string(),
    discId: z.string(),
    class: z.enum(['putter', 'midrange', 'fairway', 'control', 'distance']),
    hand: z.enum(['backhand', 'forehand']),
    shape: z.enum(SHOT_SHAPES),
    height: z.enum(['low', 'standard', 'high']).describe('Launch against the one that carries farthest'),
    hyzer_deg: z
      .number()
      .describe(
        'Bank at release, positive outer edge down; a roller or an overhead throw stands on its edge, about −90 or 90',
      ),
    launch_deg: z.number(),
    power: chance.describe('Share of the full release speed'),
    releaseSpeed_mps: z.number(),
    aimBearing_deg: z.number().describe('True bearing of the release'),
    aimFromBasket_deg: z.number().describe('Aim against the line to the basket, right positive'),
    carry_m: z.number().describe('Mean distance to touchdown along the aim, were nothing in the way'),
    distance_m: z.number().describe('Mean distance to rest along the aim, were nothing in the way'),
    finish_m: z.number().describe('Mean sideways finish against the aim, right positive'),
    distanceSd_m: z.number(),
    sideSd_m: z.number(),
    apex_m: z.number().describe('Mean highest point above the ground at the lie'),
    cleanChance: chance.describe('Nothing touched on the way'),
    penaltyChance: chance,
    outOfBoundsChance: chance,
    hazardChance: chance,
    mandoChance: chance,
    lostChance: chance.optional().describe('The disc is not found; left out below 1 %'),
    holedChance: chance.optional().describe('The throw itself goes in; left out below 0.5 %'),
    parkedChance: chance.describe('At rest within 3 m of the basket'),
    within10mChance: chance,
    within20mChance: chance,
    expectedThrows: z.number().describe('To hole out from the lie, this throw included'),
    standardError: z.number().describe('Sampling error of expectedThrows, one sigma'),
    regret: z.number().min(0).describe('Throws given up against the choice; 0 when within the error'),
    tie: z.boolean().describe('Sampling cannot tell it from the choice'),
    basis: z.enum(['measured', 'borrowed', 'predicted']).describe('What the fitted throw rests on'),
    notes: z.array(z.string()),
  })
  .describe('One shot from one lie');
export type ShotReport = z.output<typeof ShotSchema>;

const NextSchema = z.object({
  after: z.enum(['a clean flight', 'a hit on the way', 'a penalty']),
  chance,
  east_m: z.number(),
  north_m: z.number(),
  toBasket_m: z.number(),
  action: z.enum(['putt', 'throw']),
  expectedThrows: z.number(),
  shot: ShotSchema.optional(),
  byDisc: z
    .array(z.object({ discId: z.string(), expectedThrows: z.number() }))
    .describe('Throws with each disc from here; empty unless a bag is chosen'),
});

const ReasonSchema = z.object({
  against: z.string(),
  againstDiscId: z.string(),
  special: z.enum(SPECIAL_SHAPES).optional().describe('The other throw is a roller or an overhead throw of that disc'),
  hand: z.enum(['backhand', 'forehand']),
  costs: z.number(),
  text: z.string(),
  facts: z.array(
    z.object({
      kind: z.enum(['clean', 'penalty', 'short', 'long', 'spread', 'height', 'close', 'tie', 'wind', 'scores']),
      chosen: z.number(),
      other: z.number(),
      unit: z.enum(['share', 'm', 'throws']),
      text: z.string(),
      constraint: z
        .enum(['overhead', 'standing', 'trees', 'wind', 'penalty'])
        .optional()
        .describe('What was taken away from the hole, alone, to find the fact; each disc then with its best line'),
      costsWithout: z
        .number()
        .optional()
        .describe('Throws it costs against the choice without the constraint; negative: the better throw'),
      flips: z.boolean().optional().describe('Without the constraint the order turns, beyond the sampling error'),
    }),
  ),
});

const FlipSchema = z.object({
  windFrom_deg: z.number(),
  wind_mps: z.number(),
  choice: z.object({
    disc: z.string(),
    discId: z.string(),
    class: z.enum(['putter', 'midrange', 'fairway', 'control', 'distance']),
    hand: z.enum(['backhand', 'forehand']),
    shape: z.enum(SHOT_SHAPES),
  }),
});

export const HolePlanSchema = z.object({
  ref: z.string(),
  name: z.string().optional(),
  length_m: z.number(),
  playLength_m: z.number(),
  bearing_deg: z.number(),
  rise_m: z.number().nullable(),
  par: z.int(),
  parSource: z.enum(['tagged', 'derived']),
  exposure: z.enum(['open', 'park', 'wood']).describe('How the day’s wind is brought down to the hole'),
  headwind_mps: z.number().describe('Day’s 10 m wind along the line to the basket, positive into the face'),
  windFromRight_mps: z.number(),
  wind: z
    .object({
      at: z.string().describe('When the hole is thrown off, hours and minutes'),
      speed_mps: z.number(),
      from_deg: z.number(),
      gust_mps: z.number(),
    })
    .optional()
    .describe('The hole’s own wind at 10 m, where the wind was given by the time of the day'),
  choice: ShotSchema,
  next: z.array(NextSchema),
  alternatives: z.array(ShotSchema).describe('Best shot of every other disc and hand, fewest throws first'),
  byClass: z.partialRecord(z.enum(['putter', 'midrange', 'fairway', 'control', 'distance']), ShotSchema),
  scoreDistribution: z
    .array(z.object({ throws: throwsCount, chance }))
    .describe('The last entry holds that score or worse'),
  expectedThrows: z.number(),
  reasons: z.array(ReasonSchema),
  flips: z.array(FlipSchema).describe('The choice over a rose of winds at 10 m; empty when it was not asked for'),
  nearestFlip: FlipSchema.extend({ change_mps: z.number().describe('Length of the change of wind, as a vector') })
    .nullable()
    .describe('The least change of wind that changes disc or hand; null when none up to 12 m/s does, or not asked for'),
  cautions: z.array(z.string()),
  assumptions: z.array(z.string()),
});
export type HolePlan = z.output<typeof HolePlanSchema>;

const RoundSchema = z.object({
  expectedThrows: z.number(),
  sd: z.number(),
  par: z.int(),
  distribution: z.array(z.object({ throws: throwsCount, chance })),
  target: z
    .object({
      throws: throwsCount,
      chance,
      chanceEven: chance.describe('With the fewest expected throws on every hole'),
    })
    .optional()
    .describe('For push: the chance to finish at or under it, when each choice looks at the score so far'),
});
export type RoundReport = z.output<typeof RoundSchema>;

const WorthSchema = z.object({
  discId: z.string(),
  disc: z.string(),
  worth: z.number().describe('Throws a round lost without it'),
});

export const PlanReportSchema = z.object({
  schema: z.literal('roundwright/plan@1'),
  course: z.string(),
  player: z.string(),
  air: z.object({
    density_kgpm3: z.number(),
    windSpeed_mps: z.number(),
    windFrom_deg: z.number(),
    gust_mps: z.number(),
    directionSpread_deg: z.number(),
    source: z.string(),
    notes: z.array(z.string()),
  }),
  attitude: z.enum(['even', 'guard', 'push']),
  seed: z.int(),
  holes: z.array(HolePlanSchema),
  round: RoundSchema,
  bag: z
    .object({
      carried: z.array(WorthSchema).describe('Throwing discs, most worth first'),
      bestLeftHome: WorthSchema.nullable(),
      expectedThrows: z.number().describe('Of the round planned with these discs only'),
      expectedWithAll: z.number(),
    })
    .optional(),
  cautions: z.array(z.string()),
  notes: z.array(z.string()),
});
export type PlanReport = z.output<typeof PlanReportSchema>;
