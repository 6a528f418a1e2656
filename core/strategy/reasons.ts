import { type Candidate, isTie, type Table } from './choose-shot.ts';
import type { Lie } from './march.ts';
import type { HolePlan } from './plan-report.ts';
import { tightestSpot } from './tightest-spot.ts';

/** One number that speaks for the choice and against the other shot, largest effect first. */
type Fact = Readonly<{
  kind: 'clean' | 'penalty' | 'short' | 'long' | 'spread' | 'height' | 'close' | 'tie';
  chosen: number;
  other: number;
  unit: 'share' | 'm' | 'throws';
  /** Rough cost in throws, for order only. */
  weight: number;
  text: string;
}>;

const percent = (share: number): string => `${Math.round(100 * share)} %`;
const metres = (m: number): string => (Math.abs(m) < 10 ? `${m.toFixed(1)} m` : `${Math.round(m)} m`);
const MOST_FACTS = 2;

/** Why the chosen shot and not this one: the one or two facts that weigh most. */
export function reasonAgainst(
  table: Table,
  lie: Lie,
  best: Candidate,
  other: Candidate,
  toBasket_m: number,
): HolePlan['reasons'][number] {
  const fitted = table.player.throws[other.shot.throwIndex];
  const costs = other.outcome.expectedThrows - best.outcome.expectedThrows;
  const facts = factsAgainst(table, lie, best, other, toBasket_m)
    .sort((a, b) => b.weight - a.weight)
    .slice(0, MOST_FACTS)
    .map(({ weight: _, ...fact }) => fact);
  return {
    againstDiscId: fitted.discId,
    against: fitted.disc,
    hand: fitted.hand,
    costs,
    text: `${capital(facts.map(f => f.text).join('; '))}.`,
    facts,
  };
}

function factsAgainst(table: Table, lie: Lie, best: Candidate, other: Candidate, toBasket_m: number): Fact[] {
  const { world, thrower } = table;
  const a = best.outcome;
  const b = other.outcome;
  const facts: Fact[] = [];
  const cleanLoss = a.cleanChance - b.cleanChance;
  if (cleanLoss > 0.04) {
    const spot = tightestSpot(world, thrower, other.shot, lie, other.aim_deg);
    const under =
      spot && spot.margin_m < 0.5
        ? `needs ${spot.height_m.toFixed(1)} m of height at ${Math.round(spot.station_m)} m where ${spot.free_m.toFixed(1)} m is free: `
        : '';
    facts.push({
      kind: spot && under ? 'height' : 'clean',
      chosen: a.cleanChance,
      other: b.cleanChance,
      unit: 'share',
      weight: 0.7 * cleanLoss,
      text: `${under}clean ${percent(b.cleanChance)} against ${percent(a.cleanChance)}`,
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
      text: `at full power it comes up ${metres(toBasket_m - b.distance_m)} short, the choice ${shortBy(toBasket_m - a.distance_m)}`,
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
      text: `lands wider: ${metres(spreadB)} of scatter against ${metres(spreadA)}`,
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
  if (facts.length === 0) facts.push(closeCall(table, best, other));
  return facts;
}

function closeCall(table: Table, best: Candidate, other: Candidate): Fact {
  const costs = other.outcome.expectedThrows - best.outcome.expectedThrows;
  const { player } = table;
  const slower = player.throws[best.shot.throwIndex].discSpeed < player.throws[other.shot.throwIndex].discSpeed;
  const text = isTie(table, best, other)
    ? `as good within the error${slower ? '; the slower disc is simpler' : ''}`
    : `${costs.toFixed(2)} throws more, from many small differences in where it ends`;
  return {
    kind: 'tie',
    chosen: best.outcome.expectedThrows,
    other: other.outcome.expectedThrows,
    unit: 'throws',
    weight: 0,
    text,
  };
}

function shortBy(m: number): string {
  return m > 1 ? metres(m) : m < -1 ? `${metres(-m)} past` : 'is there';
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
