import type { Course } from '../../../core/course/course.ts';
import { parseCourse } from '../../../core/course/parse-course.ts';
import { buildHoleMap } from '../../../core/geometry/build-hole-map.ts';
import { describeHole } from '../../../core/geometry/describe-hole.ts';
import type { SheetHole, SheetInput } from '../../../core/sheet/sheet-input.ts';
import type { HolePlan, PlanReport, ShotReport } from '../../../core/strategy/plan-report.ts';
import { area, collection, hole, line, point, square } from '../course/course-file.ts';

/** An invented course of plain 80 m holes eastward, with one of everything the sheet draws round the first. */
function sampleCourse(holes = 1): Course {
  const parsed = parseCourse(
    collection(
      ...Array.from({ length: holes }, (_, i) => hole(`${i + 1}`, 200 * i)).flat(),
      area(square(30, 8, 20), { natural: 'water', name: 'Frog pond' }),
      area(square(55, -30, 12), { disc_golf: 'hazard' }),
      area(square(20, -25, 12), { natural: 'wood', height: '12', min_height: '2', density: '0.3' }),
      area(
        [
          [35, -4],
          [45, -4],
          [45, 4],
          [35, 4],
        ],
        { obstacle: 'ceiling', min_height: '3', height: '8' },
      ),
      line(
        [
          [60, -20],
          [60, 20],
        ],
        { highway: 'path' },
      ),
      point([50, 3], { natural: 'tree', height: '9', min_height: '2', diameter_crown: '5', circumference: '1' }),
      point([40, -5], { disc_golf: 'mando', mando: 'left', ref: '1' }),
    ),
    'common.geojson',
  );
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems));
  return parsed.value;
}

/** An invented shot; every number of it is made up. */
export const sampleShot = (changes: Partial<ShotReport> = {}): ShotReport => ({
  title: 'low putter line, flat',
  disc: 'Throwing putter',
  discId: 'throw',
  class: 'putter',
  hand: 'backhand',
  shape: 'flat',
  height: 'low',
  hyzer_deg: 0,
  launch_deg: 4,
  power: 0.86,
  releaseSpeed_mps: 19,
  aimBearing_deg: 95,
  aimFromBasket_deg: 5,
  carry_m: 70,
  distance_m: 74,
  finish_m: -6,
  distanceSd_m: 5,
  sideSd_m: 3,
  apex_m: 2.4,
  cleanChance: 0.8,
  penaltyChance: 0.03,
  outOfBoundsChance: 0.02,
  hazardChance: 0,
  mandoChance: 0.01,
  parkedChance: 0.2,
  within10mChance: 0.7,
  within20mChance: 0.9,
  expectedThrows: 2.4,
  standardError: 0.01,
  regret: 0,
  tie: false,
  basis: 'measured',
  notes: [],
  ...changes,
});

const other = sampleShot({
  disc: 'Plain midrange',
  discId: 'mid',
  class: 'midrange',
  expectedThrows: 2.5,
  regret: 0.1,
});

export const samplePlan = (changes: Partial<HolePlan> = {}): HolePlan => ({
  ref: '1',
  length_m: 80,
  playLength_m: 80,
  bearing_deg: 90,
  rise_m: 1.5,
  par: 3,
  parSource: 'tagged',
  exposure: 'park',
  headwind_mps: 3,
  windFromRight_mps: -2,
  choice: sampleShot(),
  next: [
    {
      after: 'a clean flight',
      chance: 0.8,
      east_m: 76,
      north_m: 1,
      toBasket_m: 4,
      action: 'putt',
      expectedThrows: 1.1,
      byDisc: [],
    },
    {
      after: 'a penalty',
      chance: 0.15,
      east_m: 40,
      north_m: 5,
      toBasket_m: 41,
      action: 'throw',
      expectedThrows: 2.2,
      byDisc: [],
      shot: sampleShot({ height: 'standard', aimFromBasket_deg: -3 }),
    },
  ],
  alternatives: [other],
  byClass: {},
  scoreDistribution: [
    { throws: 2, chance: 0.62 },
    { throws: 3, chance: 0.3 },
    { throws: 4, chance: 0.08 },
  ],
  expectedThrows: 2.4,
  reasons: [
    {
      against: other.disc,
      againstDiscId: other.discId,
      hand: 'backhand',
      costs: 0.1,
      text: 'At full power it comes up 3.5 m short, the choice is there.',
      facts: [],
    },
  ],
  cautions: [],
  flips: [],
  nearestFlip: null,
  assumptions: [],
  ...changes,
});

export const sampleSummary = (changes: Partial<PlanReport> = {}): Omit<PlanReport, 'holes'> => ({
  schema: 'roundwright/plan@1',
  course: 'Frog Common',
  player: 'Somebody',
  air: {
    density_kgpm3: 1.2,
    windSpeed_mps: 4,
    windFrom_deg: 250,
    gust_mps: 6,
    directionSpread_deg: 10,
    source: 'as given',
    notes: ['No altitude given: density as at sea level.'],
  },
  attitude: 'even',
  seed: 1,
  round: { expectedThrows: 2.4, sd: 0.7, par: 3, distribution: [] },
  cautions: ['Thunder heard at all is near enough: stop.', 'Never throw while anyone could be hit.'],
  notes: [],
  ...changes,
});

export function sampleHole(changes: Partial<SheetHole> = {}, plan: Partial<HolePlan> = {}): SheetHole {
  const course = sampleCourse();
  const map = { ...buildHoleMap(course, course.holes[0]!), ...(plan.ref && { ref: plan.ref }) };
  return { plan: samplePlan(plan), map, report: describeHole(map, course.notMapped), ...changes };
}

export const sampleSheet = (changes: Partial<SheetInput> = {}): SheetInput => ({
  plan: sampleSummary(),
  holes: [sampleHole()],
  format: 'pocket',
  units: { length: 'm', speed: 'mps' },
  ...changes,
});
