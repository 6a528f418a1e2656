import { type Choice, chooseShot, NEXT_EFFORT, type Table } from './choose-shot.ts';
import { type Lie, RESULT } from './march.ts';
import type { HolePlan } from './plan-report.ts';
import { puttFrom } from './putting-value.ts';
import type { RestPoint } from './shot-outcome.ts';
import { shotReport } from './shot-report.ts';
import { distanceToBasket, isPutt, valueAt } from './value-field.ts';
import { groundAt } from './world.ts';

/** A plan asks several lies on every hole: a lighter search than for one lie asked about on its own. */
const WITHIN_A_PLAN = {
  sampled: 300,
  short: 32,
  refine: 6,
  rounds: [
    { within: 0.2, errors: 1, keep: 6, rows: 20, sizes: [1] },
    { within: 0.08, errors: 1, keep: 2, rows: 40, sizes: [0.5] },
  ],
  answerRows: 64,
} as const;

const WORTH_PLANNING = 0.08;
const MOST_POINTS = 80;
const DEGREE = Math.PI / 180;

/** The plan from the likely lies after a choice: after a clean flight, after a hit, after a penalty. */
export function nextThrows(
  table: Table,
  choice: Choice,
  wind: Readonly<{ speed_mps: number; from_deg: number }>,
  everyDisc: boolean,
): HolePlan['next'] {
  const { ends } = choice.best.outcome;
  const playable = ends.filter(end => Number.isFinite(end.nextX_m));
  const groups = [
    { after: 'a clean flight' as const, ends: playable.filter(end => end.kind === RESULT.rest) },
    { after: 'a hit on the way' as const, ends: playable.filter(end => end.kind === RESULT.hit) },
    { after: 'a penalty' as const, ends: playable.filter(end => end.penalty > 0) },
  ];
  return groups.flatMap(group => {
    const chance = Math.min(
      1,
      group.ends.reduce((sum, end) => sum + end.weight, 0),
    );
    return chance < WORTH_PLANNING
      ? []
      : [planFrom(table, group.after, chance, middleEnd(group.ends), wind, everyDisc)];
  });
}

function planFrom(
  table: Table,
  after: HolePlan['next'][number]['after'],
  chance: number,
  end: RestPoint,
  wind: Readonly<{ speed_mps: number; from_deg: number }>,
  everyDisc: boolean,
): HolePlan['next'][number] {
  const { field, world } = table;
  const east_m = end.nextX_m;
  const north_m = end.nextY_m;
  const toBasket_m = distanceToBasket(field, east_m, north_m);
  const where = { after, chance, east_m, north_m, toBasket_m };
  const value = valueAt(field, east_m, north_m);
  if (isPutt(field, east_m, north_m, toBasket_m) && puttFrom(field.putting, toBasket_m) <= value + 1e-9) {
    return { ...where, action: 'putt', expectedThrows: value, byDisc: [] };
  }
  const lie: Lie = { east_m, north_m, ground_m: groundAt(world, east_m, north_m) };
  const { best, candidates } = chooseShot(table, lie, { ...NEXT_EFFORT, ...WITHIN_A_PLAN, perDisc: everyDisc });
  const toBasket_deg = Math.atan2(field.basket[0] - east_m, field.basket[1] - north_m) / DEGREE;
  const tailwind = Math.cos((wind.from_deg - toBasket_deg) * DEGREE) < -0.5 && wind.speed_mps > 2;
  const shot = shotReport(table, best, best, { fromTee: false, toBasket_m, toBasket_deg, tailwind });
  const byDisc = everyDisc
    ? candidates.map(c => ({
        discId: table.player.throws[c.shot.throwIndex].discId,
        expectedThrows: c.outcome.expectedThrows,
      }))
    : [];
  return { ...where, action: 'throw', expectedThrows: best.outcome.expectedThrows, shot, byDisc };
}

/** The end nearest to all others of its group, by weight. */
function middleEnd(ends: readonly RestPoint[]): RestPoint {
  const step = Math.max(1, Math.floor(ends.length / MOST_POINTS));
  const some = ends.filter((_, i) => i % step === 0);
  let best = some[0];
  let least = Number.POSITIVE_INFINITY;
  for (const candidate of some) {
    const sum = some.reduce(
      (total, end) => total + end.weight * Math.hypot(end.nextX_m - candidate.nextX_m, end.nextY_m - candidate.nextY_m),
      0,
    );
    if (sum < least) {
      least = sum;
      best = candidate;
    }
  }
  return best;
}
