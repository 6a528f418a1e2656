import { percent } from '../units/percent.ts';
import { type Candidate, isTie, type Table } from './choose-shot.ts';
import type { Constraint } from './constraint.ts';
import { constraintFacts } from './constraint-facts.ts';
import { distance } from './fact-words.ts';
import { isSpecialShape } from './flown-as.ts';
import type { SolvedHole } from './hole-solver.ts';
import type { Lie } from './march.ts';
import type { HolePlan } from './plan-report.ts';
import { type Removals, removals } from './removals.ts';

/** One number that speaks for the choice and against the other shot. */
export type Fact = Readonly<{
  kind: 'clean' | 'penalty' | 'short' | 'long' | 'spread' | 'height' | 'close' | 'tie' | 'wind' | 'scores';
  chosen: number;
  other: number;
  unit: 'share' | 'm' | 'throws';
  /** Rough cost in throws, for order only. */
  weight: number;
  text: string;
  /** The constraint that was taken away to find the fact, what the other costs without it, and whether that turns the order. */
  constraint?: Constraint;
  costsWithout?: number;
  flips?: boolean;
}>;

const MOST_FACTS = 2;
/** Constraints that hold this share of the gap need no further fact. */
const ENOUGH_SHARE = 0.7;
const BAD_SCORE_OVER_PAR = 2;

type Reason = HolePlan['reasons'][number];

export type ReasonInput = Readonly<{
  solved: SolvedHole;
  lie: Lie;
  best: Candidate;
  others: readonly Candidate[];
  toBasket_m: number;
  par: number;
  /** The choice was made for the fewest expected throws. */
  even: boolean;
  /** Chance of each score with a shot: `[i]` for i + 1 throws; asked only when it was not. */
  scoresOf: (candidate: Candidate) => readonly number[];
}>;

/** Why the chosen shot and not these: for each the one or two facts that decided. */
export function reasonsAgainst(input: ReasonInput): Reason[] {
  const from = removals(input.solved, input.lie, input.best);
  return input.others.map(other => reasonAgainst(input, other, from));
}

function reasonAgainst(input: ReasonInput, other: Candidate, from: Removals): Reason {
  const { table } = input.solved;
  const fitted = table.player.throws[other.shot.throwIndex];
  const costs = other.outcome.expectedThrows - input.best.outcome.expectedThrows;
  const facts = factsAgainst(input, other, from).slice(0, MOST_FACTS);
  return {
    againstDiscId: fitted.discId,
    ...(isSpecialShape(other.shot.shape) && { special: other.shot.shape }),
    against: fitted.disc,
    hand: fitted.hand,
    costs,
    text: `${capital(facts.map(f => f.text).join('; '))}.`,
    facts: facts.map(({ weight: _, ...fact }) => fact),
  };
}

/** Most telling first. */
function factsAgainst(input: ReasonInput, other: Candidate, from: Removals): Fact[] {
  const { solved, lie, best, toBasket_m, even } = input;
  const { table } = solved;
  // with the fewest expected throws wanted, a shot that has them and was not chosen is one of a tie
  const measured = measuredFacts(best, other, toBasket_m).sort((a, b) => b.weight - a.weight);
  const gap = other.outcome.expectedThrows - best.outcome.expectedThrows;
  if (isTie(table, best, other) || (gap < 0 && even)) return [closeCall(table, best, other), ...measured];
  if (gap < 0) return [badScores(input, other)];
  const deciding = constraintFacts({ solved, lie, best, other }, from.against(other), from);
  const explained = Math.max(0, ...deciding.map(fact => fact.weight));
  if (explained >= ENOUGH_SHARE * gap) return deciding;
  const told = new Set<Fact['kind']>(deciding.map(fact => (fact.kind === 'height' ? 'clean' : fact.kind)));
  const facts = [...deciding, ...measured.filter(fact => !told.has(fact.kind))];
  return facts.length > 0 ? facts : [manySmall(best, other)];
}

/** What the two shots come to, side by side. */
function measuredFacts(best: Candidate, other: Candidate, toBasket_m: number): Fact[] {
  const a = best.outcome;
  const b = other.outcome;
  const facts: Fact[] = [];
  const cleanLoss = a.cleanChance - b.cleanChance;
  if (cleanLoss > 0.04) {
    facts.push({
      kind: 'clean',
      chosen: a.cleanChance,
      other: b.cleanChance,
      unit: 'share',
      weight: 0.7 * cleanLoss,
      text: `clean ${percent(b.cleanChance)} against ${percent(a.cleanChance)}`,
    });
  }
  const penalty = b.penaltyChance - a.penaltyChance;
  if (penalty > 0.015) {
    facts.push({
      kind: 'penalty',
      chosen: a.penaltyChance,
      other: b.penaltyChance,
      unit: 'share',
      weight: 1.3 * penalty,
      text: `penalty ${percent(b.penaltyChance)} against ${percent(a.penaltyChance)}`,
    });
  }
  const short = a.distance_m - b.distance_m;
  if (other.shot.power > 0.97 && short > 3 && b.distance_m < toBasket_m - 3) {
    facts.push({
      kind: 'short',
      chosen: a.distance_m,
      other: b.distance_m,
      unit: 'm',
      weight: Math.min(0.6, short / 40),
      text: `at full power it comes up ${distance(toBasket_m - b.distance_m)} short, the choice ${shortBy(toBasket_m - a.distance_m)}`,
    });
  }
  const spreadA = Math.hypot(a.distanceSd_m, a.sideSd_m);
  const spreadB = Math.hypot(b.distanceSd_m, b.sideSd_m);
  if (spreadB > spreadA * 1.06) {
    facts.push({
      kind: 'spread',
      chosen: spreadA,
      other: spreadB,
      unit: 'm',
      weight: Math.min(0.3, 0.03 * (spreadB - spreadA)),
      text: `lands wider: ${distance(spreadB)} of scatter against ${distance(spreadA)}`,
    });
  }
  const circle = a.within10mChance - b.within10mChance;
  if (circle > 0.02) {
    facts.push({
      kind: 'close',
      chosen: a.within10mChance,
      other: b.within10mChance,
      unit: 'share',
      weight: 0.25 * circle,
      text: `inside 10 m ${percent(b.within10mChance)} against ${percent(a.within10mChance)}`,
    });
  }
  return facts;
}

function closeCall({ player }: Table, best: Candidate, other: Candidate): Fact {
  const slower = player.throws[best.shot.throwIndex].discSpeed < player.throws[other.shot.throwIndex].discSpeed;
  return {
    ...throwsOf(best, other),
    kind: 'tie',
    text: `as good within the error${slower ? '; the slower disc is simpler' : ''}`,
  };
}

function manySmall(best: Candidate, other: Candidate): Fact {
  const costs = other.outcome.expectedThrows - best.outcome.expectedThrows;
  return {
    ...throwsOf(best, other),
    kind: 'close',
    text: `${costs.toFixed(2)} throws more, from many small differences in where it ends`,
  };
}

function throwsOf(best: Candidate, other: Candidate): Omit<Fact, 'kind' | 'text'> {
  return {
    chosen: best.outcome.expectedThrows,
    other: other.outcome.expectedThrows,
    unit: 'throws',
    weight: 0,
  };
}

/** For a choice that was not made for the fewest throws: what the other would risk or leave out. */
function badScores({ best, par, scoresOf }: ReasonInput, other: Candidate): Fact {
  const [a, b] = [scoresOf(best), scoresOf(other)];
  const bad = par + BAD_SCORE_OVER_PAR;
  const from = (scores: readonly number[], first: number) => scores.slice(first - 1).reduce((sum, p) => sum + p, 0);
  const upTo = (scores: readonly number[], last: number) => scores.slice(0, last).reduce((sum, p) => sum + p, 0);
  const fewer = (best.outcome.expectedThrows - other.outcome.expectedThrows).toFixed(2);
  const worse = from(b, bad) - from(a, bad);
  const missed = upTo(a, par - 1) - upTo(b, par - 1);
  const guarded = worse >= missed;
  const [chosen, others] = guarded ? [from(a, bad), from(b, bad)] : [upTo(a, par - 1), upTo(b, par - 1)];
  const what = guarded ? `${bad} or more` : `${par - 1} or fewer`;
  return {
    kind: 'scores',
    chosen,
    other: others,
    unit: 'share',
    weight: 0,
    text: `${fewer} throws fewer on average, but ${what} throws ${percent(others)} of the time against ${percent(chosen)}`,
  };
}

function shortBy(m: number): string {
  return m > 1 ? distance(m) : m < -1 ? `${distance(-m)} past` : 'is there';
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
