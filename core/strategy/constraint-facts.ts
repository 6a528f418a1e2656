import { percent } from '../units/percent.ts';
import type { Candidate } from './choose-shot.ts';
import type { Constraint } from './constraint.ts';
import { bothInThrows, distance, shareWords } from './fact-words.ts';
import type { SolvedHole } from './hole-solver.ts';
import type { Lie } from './march.ts';
import type { Fact } from './reasons.ts';
import type { Removal, Removals } from './removals.ts';
import { tightestSpot } from './tightest-spot.ts';

/** A constraint that does not turn the order is worth a word when it holds this share of the gap, and this many throws. */
const LEAST_SHARE = 0.3;
const LEAST_EXPLAINED = 0.02;
const STANDARD_ERRORS = 1.5;
const FELT_LOSS = 0.04;
const FELT_PENALTY = 0.015;
const TIGHT_M = 0.5;
/** The wind must move a disc by so much more than the choice to be told in metres. */
const FELT_M = 3;
/** A throw wins back about this much. */
const GROUND_M_PER_THROW = 50;

const WITHOUT: Record<Constraint, string> = {
  overhead: 'with nothing overhead',
  standing: 'with nothing standing in the way',
  trees: 'without trees',
  wind: 'in calm air',
  penalty: 'without the penalty ground',
};

type Pair = Readonly<{ solved: SolvedHole; lie: Lie; best: Candidate; other: Candidate }>;

/**
 * The constraints that decided against the other disc, as facts: those whose removal turns the order, most first; failing these,
 * those that hold a good part of the gap.
 */
export function constraintFacts(pair: Pair, found: readonly Removal[], from: Removals): Fact[] {
  const { best, other } = pair;
  const gap = other.outcome.expectedThrows - best.outcome.expectedThrows;
  const byEffect = [...found].sort((a, b) => b.explains - a.explains);
  const turning = byEffect.filter(removal => removal.flips);
  const deciding =
    turning.length > 0
      ? turning
      : byEffect.filter(
          ({ explains, explainsError }) =>
            explains > Math.max(LEAST_EXPLAINED, LEAST_SHARE * gap, STANDARD_ERRORS * explainsError),
        );
  return withoutDoubles(deciding).map(removal => ({
    ...factOf(pair, removal, from),
    constraint: removal.constraint,
    costsWithout: removal.costs,
    flips: removal.flips,
    weight: removal.explains,
  }));
}

/** `trees` says again what `overhead` or `standing` says, unless it says clearly more; and these two are often one tree. */
function withoutDoubles(removals: readonly Removal[]): Removal[] {
  const trees = removals.find(r => r.constraint === 'trees');
  const parts = removals.filter(r => r.constraint === 'overhead' || r.constraint === 'standing');
  const [most, second] = parts;
  if (most === undefined) return [...removals];
  const drop: readonly (Removal | undefined)[] =
    trees && trees.explains > 1.3 * most.explains ? parts : [trees, second];
  return removals.filter(r => !drop.includes(r));
}

type Told = Pick<Fact, 'kind' | 'chosen' | 'other' | 'unit' | 'text'>;

function factOf(pair: Pair, removal: Removal, from: Removals): Told {
  const told = { overhead, standing, trees: standing, wind, penalty }[removal.constraint](pair, removal, from);
  const gap = pair.other.outcome.expectedThrows - pair.best.outcome.expectedThrows;
  const effect = removal.flips
    ? `${WITHOUT[removal.constraint]} it would be the better throw by ${(-removal.costs).toFixed(2)}`
    : shareWords(removal.explains / gap);
  return { ...told, text: `${told.text}; ${effect}` };
}

function overhead(pair: Pair, removal: Removal): Told {
  const { solved, lie, best, other } = pair;
  const { cleanChance } = other.outcome;
  if (best.outcome.cleanChance - cleanChance > FELT_LOSS && !isInGround(pair, removal)) {
    const spot = tightestSpot(solved.world, solved.table.thrower, other.shot, lie, other.aim_deg);
    const needs =
      spot && spot.margin_m < TIGHT_M
        ? `needs ${spot.height_m.toFixed(1)} m of height at ${Math.round(spot.station_m)} m where ${spot.free_m.toFixed(1)} m is free: `
        : '';
    return clean(needs ? 'height' : 'clean', best, other, needs);
  }
  const [low, free] = [other.outcome, removal.other.outcome];
  if (free.apex_m > low.apex_m + 0.3 && free.distance_m > low.distance_m + 1)
    return {
      kind: 'height',
      chosen: free.distance_m,
      other: low.distance_m,
      unit: 'm',
      text: `kept under the branches, ${low.apex_m.toFixed(1)} m high, it goes ${distance(low.distance_m)}; ${free.apex_m.toFixed(1)} m high it would go ${distance(free.distance_m)}`,
    };
  return left('has to go round or under the branches', 'the branches', removal, best, other, solved);
}

function standing(pair: Pair, removal: Removal): Told {
  const { solved, best, other } = pair;
  if (best.outcome.cleanChance - other.outcome.cleanChance > FELT_LOSS && !isInGround(pair, removal))
    return clean('clean', best, other, '');
  return left('has to go round what stands in the way', 'what stands in the way', removal, best, other, solved);
}

function penalty(pair: Pair, removal: Removal): Told {
  const { solved, best, other } = pair;
  const [chosen, worse] = [best.outcome.penaltyChance, other.outcome.penaltyChance];
  if (worse - chosen > FELT_PENALTY && !isInGround(pair, removal))
    return {
      kind: 'penalty',
      chosen,
      other: worse,
      unit: 'share',
      text: `penalty ${percent(worse)} against ${percent(chosen)}`,
    };
  return left('has to stay clear of the penalty ground', 'the penalty ground', removal, best, other, solved);
}

/** Played safe, a disc pays a constraint in ground it does not make rather than in hits and penalties. */
function isInGround({ solved, best, other }: Pair, removal: Removal): boolean {
  const ground_m = leftOver_m(other, solved) - leftOver_m(removal.other, solved);
  const [a, b] = [best.outcome, other.outcome];
  return ground_m / GROUND_M_PER_THROW > Math.max(a.cleanChance - b.cleanChance, b.penaltyChance - a.penaltyChance);
}

function wind({ best, other }: Pair, removal: Removal, from: Removals): Told {
  const [chosen, moved] = [best, other].map(candidate => {
    const calm = from.inCalm(candidate).outcome;
    return {
      along_m: candidate.outcome.distance_m - calm.distance_m,
      side_m: candidate.outcome.finish_m - calm.finish_m,
    };
  });
  if (Math.abs(moved.along_m) > Math.abs(chosen.along_m) + FELT_M) {
    const verb = (m: number) => (m < 0 ? `takes ${distance(-m)} off` : `adds ${distance(m)} to`);
    return {
      kind: 'wind',
      chosen: chosen.along_m,
      other: moved.along_m,
      unit: 'm',
      text: `the wind ${verb(moved.along_m)} it and ${verb(chosen.along_m)} the choice`,
    };
  }
  if (Math.abs(moved.side_m) > Math.abs(chosen.side_m) + FELT_M)
    return {
      kind: 'wind',
      chosen: chosen.side_m,
      other: moved.side_m,
      unit: 'm',
      text: `the wind moves it ${sideways(moved.side_m)} and the choice ${sideways(chosen.side_m)}`,
    };
  return inThrows('the wind', removal, best, other);
}

const sideways = (right_m: number): string => `${distance(Math.abs(right_m))} ${right_m < 0 ? 'left' : 'right'}`;

function clean(kind: 'clean' | 'height', best: Candidate, other: Candidate, before: string): Told {
  const [chosen, worse] = [best.outcome.cleanChance, other.outcome.cleanChance];
  return {
    kind,
    chosen,
    other: worse,
    unit: 'share',
    text: `${before}clean ${percent(worse)} against ${percent(chosen)}`,
  };
}

/** How far from the basket the other disc's line leaves the next throw, and would without the constraint. */
function left(
  why: string,
  what: string,
  removal: Removal,
  best: Candidate,
  other: Candidate,
  solved: SolvedHole,
): Told {
  const [now, free] = [other, removal.other].map(line => leftOver_m(line, solved));
  if (now < free + FELT_M) return inThrows(what, removal, best, other);
  return {
    kind: 'short',
    chosen: free,
    other: now,
    unit: 'm',
    text: `${why} and leaves ${distance(now)} on average, else ${distance(free)}`,
  };
}

function inThrows(what: string, removal: Removal, best: Candidate, other: Candidate): Told {
  const cost = (now: Candidate, without: Candidate) => now.outcome.expectedThrows - without.outcome.expectedThrows;
  const [chosen, others] = [cost(best, removal.best), cost(other, removal.other)];
  return {
    kind: 'close',
    chosen,
    other: others,
    unit: 'throws',
    text: bothInThrows(what, others, chosen),
  };
}

function leftOver_m({ outcome }: Candidate, { world }: SolvedHole): number {
  let sum = 0;
  let weight = 0;
  for (const end of outcome.ends) {
    if (!Number.isFinite(end.nextX_m)) continue;
    sum += end.weight * Math.hypot(end.nextX_m - world.basket[0], end.nextY_m - world.basket[1]);
    weight += end.weight;
  }
  return weight > 0 ? sum / weight : Number.NaN;
}
