import type { HolePlan } from './plan-report.ts';

/** What one disc is worth in a bag: throws a round lost without it, the others still there. */
type DiscWorth = Readonly<{ discId: string; disc: string; worth: number }>;

export type BagChoice = Readonly<{
  /** The throwing discs to carry, most worth first. */
  carried: readonly DiscWorth[];
  /** What the best disc left at home would still have saved; null when none was left. */
  bestLeftHome: DiscWorth | null;
}>;

/** Throws with each disc at one decision of the round, times the chance that it comes up. */
type Decision = Readonly<{ chance: number; throws: ReadonlyMap<string, number> }>;

/**
 * The best `count` throwing discs for a round: greedy, then exchanging one for one while that helps. Counted are the tee shots and
 * the likely next throws; a disc is worth what the round loses when the rest must stand in.
 * @param holes - planned with the whole bag, next throws with every disc (`bag` in PlanHoleInput)
 * @throws {RangeError} when count is not a whole number above 0
 */
export function chooseBag(holes: readonly HolePlan[], count: number): BagChoice {
  if (!Number.isInteger(count) || count < 1) throw new RangeError(`count must be a whole number above 0, got ${count}`);
  const decisions = holes.flatMap(decisionsOf);
  const names = namesOf(holes);
  const all = [...names.keys()].sort();
  const carried: string[] = [];
  while (carried.length < Math.min(count, all.length)) {
    const rest = all.filter(id => !carried.includes(id));
    carried.push(best(rest, id => roundThrows(decisions, [...carried, id])));
  }
  while (exchangeOne(carried, all, decisions));
  const now = roundThrows(decisions, carried);
  const worthOf = (id: string, worth: number): DiscWorth => ({ discId: id, disc: names.get(id) ?? id, worth });
  const home = all.filter(id => !carried.includes(id));
  const next = home.length > 0 ? best(home, id => roundThrows(decisions, [...carried, id])) : null;
  return {
    carried: carried
      .map(id =>
        worthOf(
          id,
          roundThrows(
            decisions,
            carried.filter(other => other !== id),
          ) - now,
        ),
      )
      .sort((a, b) => b.worth - a.worth || a.discId.localeCompare(b.discId)),
    bestLeftHome: next === null ? null : worthOf(next, Math.max(0, now - roundThrows(decisions, [...carried, next]))),
  };
}

/** Without any disc for a decision: a throw lost. */
const NO_DISC = 1;

function roundThrows(decisions: readonly Decision[], bag: readonly string[]): number {
  let sum = 0;
  for (const { chance, throws } of decisions) {
    let least = Number.POSITIVE_INFINITY;
    for (const id of bag) least = Math.min(least, throws.get(id) ?? Number.POSITIVE_INFINITY);
    if (!Number.isFinite(least)) least = Math.max(...throws.values()) + NO_DISC;
    sum += chance * least;
  }
  return sum;
}

function exchangeOne(carried: string[], all: readonly string[], decisions: readonly Decision[]): boolean {
  const now = roundThrows(decisions, carried);
  for (let i = 0; i < carried.length; i++) {
    for (const id of all) {
      if (carried.includes(id)) continue;
      const swapped = carried.with(i, id);
      if (roundThrows(decisions, swapped) < now - 1e-9) {
        carried[i] = id;
        return true;
      }
    }
  }
  return false;
}

function decisionsOf(hole: HolePlan): Decision[] {
  const tee = new Map<string, number>();
  for (const shot of [hole.choice, ...hole.alternatives]) least(tee, shot.discId, shot.expectedThrows);
  const later = hole.next.flatMap(next => {
    if (next.byDisc.length === 0) return [];
    const throws = new Map<string, number>();
    for (const { discId, expectedThrows } of next.byDisc) least(throws, discId, expectedThrows);
    return [{ chance: next.chance, throws }];
  });
  return [{ chance: 1, throws: tee }, ...later];
}

function least(throws: Map<string, number>, discId: string, value: number): void {
  throws.set(discId, Math.min(value, throws.get(discId) ?? Number.POSITIVE_INFINITY));
}

function namesOf(holes: readonly HolePlan[]): Map<string, string> {
  const names = new Map<string, string>();
  for (const hole of holes) for (const shot of [hole.choice, ...hole.alternatives]) names.set(shot.discId, shot.disc);
  return names;
}

function best(ids: readonly string[], cost: (id: string) => number): string {
  let pick = ids[0];
  let lowest = cost(pick);
  for (const id of ids.slice(1)) {
    const value = cost(id);
    if (value < lowest - 1e-12) {
      lowest = value;
      pick = id;
    }
  }
  return pick;
}
