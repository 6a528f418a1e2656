import { z } from 'zod';
import { DISC_CLASSES } from '../player/disc-class.ts';
import { HolePlanSchema, ShotSchema } from '../strategy/plan-report.ts';

const chance = z.number().min(0).max(1);
const throwsCount = z.int().min(1);
const metres = z.number();

export const PracticeLimitSchema = z
  .strictObject({
    classes: z.array(z.enum(DISC_CLASSES)).min(1).max(5).optional(),
    discIds: z.array(z.string().min(1).max(200)).min(1).max(200).optional(),
    neutral: z.boolean().optional().describe('discs only whose turn and fade cancel out, within 1'),
    hands: z
      .array(z.enum(['backhand', 'forehand']))
      .min(1)
      .max(2)
      .optional(),
    shapes: z
      .array(z.enum(['hyzer', 'flat', 'anhyzer']))
      .min(1)
      .max(3)
      .optional(),
  })
  .describe('What may be thrown; a disc is in one of classes or discIds when either is given. Empty: the whole bag');

const TeeEstimateSchema = z.object({
  tee: z.string(),
  playLength_m: metres,
  reach_m: metres.describe('longest full throw that gets under the ceilings, into the hole’s wind, average day'),
  reach20Chance: chance.describe('within 20 m in the throws par allows before two putts, were nothing in the way'),
  expectedThrows: z.number(),
  underCeiling: z.boolean(),
});

const HoleFitSchema = z.object({
  ref: z.string(),
  par: z.int(),
  verdict: z.enum(['suits', 'suits from another tee', 'too long']),
  text: z.string(),
  tee: z.string().nullable().describe('the tee to use; null: none'),
  tees: z.array(TeeEstimateSchema).describe('the first tee first'),
});

const CourseFitSchema = z.object({
  key: z.string().describe('the file, or the id in the library'),
  course: z.string(),
  suits: z.int().describe('holes that suit from one of their tees'),
  score: chance.describe('mean estimate of the best holes wanted, missing ones counting nothing: the order of courses'),
  text: z.string(),
  holes: z.array(HoleFitSchema),
});
export type CourseFitReport = z.output<typeof CourseFitSchema>;

const TargetChanceSchema = z.object({
  throws: throwsCount,
  chance: chance.describe('to finish in so many or fewer, simulated, throws independent of each other'),
  chanceSameDay: chance.describe('the same when what the fit leaves unknown of each disc is the same all round'),
});

const PracticeHoleSchema = z.object({
  ref: z.string(),
  tee: z.string(),
  length_m: metres,
  playLength_m: metres,
  bearing_deg: z.number(),
  par: z.int(),
  parSource: z.enum(['tagged', 'derived']),
  shot: ShotSchema,
  next: HolePlanSchema.shape.next,
  expectedThrows: z.number().describe('simulated, throw by throw'),
  plannedThrows: z.number().describe('the same by the plan’s value field'),
  scoreDistribution: z.array(z.object({ throws: throwsCount, chance })),
  reach20Chance: chance.describe(
    'within 20 m in the throws par allows before two putts: as played, or going for it where that costs at most 0.3 throws',
  ),
  reach10Chance: chance,
  cleanShare: chance.describe('simulated share of throws but putts that touch nothing and cost no penalty'),
  fullThrows: z.number(),
  ownThrows: z.number().nullable().describe('planned with the whole bag; null when not asked for'),
  limitCosts: z.number().nullable().describe('throws that the limit costs, both by the value field'),
  ownShot: z.string().nullable(),
  cautions: z.array(z.string()),
  assumptions: z.array(z.string()),
});
export type PracticeHoleReport = z.output<typeof PracticeHoleSchema>;

const DrillSchema = z.object({
  kind: z.enum(['throw', 'putt', 'distance']),
  title: z.string(),
  text: z.string(),
  why: z.string(),
  worth: z.number().describe('throws a round'),
});

const PracticeRoundSchema = z.object({
  key: z.string(),
  course: z.string(),
  holes: z.array(PracticeHoleSchema).min(1),
  par: z.int(),
  expectedThrows: z.number(),
  sd: z.number(),
  distribution: z.array(z.object({ throws: throwsCount, chance })),
  target: TargetChanceSchema.extend({
    overPar: z.int(),
    plays: z.int().describe('simulated plays of each hole behind the chance'),
    rounds: z.int().describe('simulated rounds behind chanceSameDay'),
    standardError: z.number().describe('sampling error of the chance, one sigma'),
    beside: z.array(TargetChanceSchema),
  }),
  ownThrows: z.number().nullable().describe('the same holes planned with the whole bag'),
  fullThrows: z.number().describe('throws at 85 % power or more'),
  armThrows: z.number().describe('throws but putts'),
  skip: z.array(z.object({ ref: z.string(), text: z.string() })).describe('holes of the course to leave out, and why'),
  drills: z.array(DrillSchema),
  cautions: z.array(z.string()),
});
export type PracticeRound = z.output<typeof PracticeRoundSchema>;

/** What `practice --json` prints. */
export const PracticeReportSchema = z.object({
  schema: z.literal('roundwright/practice@1'),
  player: z.string(),
  limit: PracticeLimitSchema,
  limitWords: z.string(),
  discs: z.array(z.string()),
  air: z.object({
    windSpeed_mps: z.number(),
    windFrom_deg: z.number(),
    gust_mps: z.number(),
    density_kgpm3: z.number(),
    directionSpread_deg: z.number(),
    source: z.string(),
    notes: z.array(z.string()),
  }),
  seed: z.int(),
  wantedHoles: z.int(),
  courses: z.array(CourseFitSchema).describe('by a cheap estimate, the best first'),
  rounds: z.array(PracticeRoundSchema).describe('planned and simulated, the best course first; empty when none suits'),
  text: z.string().describe('what comes of it, in a sentence or two'),
  notes: z.array(z.string()).describe('what was assumed'),
});
export type PracticeReport = z.output<typeof PracticeReportSchema>;
