import { LANDING } from '../flight/flier.ts';
import { type Candidate, chooseShot, type Effort, NEXT_EFFORT, QUICK_ROUNDS } from '../strategy/choose-shot.ts';
import type { SolvedHole } from '../strategy/hole-solver.ts';
import type { Lie } from '../strategy/march.ts';
import { puttFrom } from '../strategy/putting-value.ts';
import type { ShotSpec } from '../strategy/shots.ts';
import { addPath, expectedOf, type ThrowValue } from '../strategy/throw-value.ts';
import { distanceToBasket, gridAt, isPutt, LONGEST_PUTT_M, valueAt } from '../strategy/value-field.ts';
import { groundAt } from '../strategy/world.ts';

/** What the player does at a lie. */
type Decision =
  | Readonly<{ kind: 'putt'; distance_m: number /** Chance that nothing stands in the putt's way. */; open: number }>
  | Readonly<{ kind: 'throw'; page: Page; shot: ShotSpec; aim_deg: number }>;

/** A throw chosen for the lies round one place. */
export type Page = Readonly<{
  index: number;
  shot: ShotSpec;
  aim_deg: number;
  from: Lie;
  fromTee: boolean;
  /** Where the middle of it would come to rest, nothing in the way: what lies nearby aim at too. */
  target: readonly [east_m: number, north_m: number];
  /** Direction of the aim against the direction of the target, degrees. */
  lead_deg: number;
  /** Metres of distance for a share of power. */
  perPower_m: number;
  expectedThrows: number;
  /** The same by the few samples that lies nearby are tried with. */
  triedThrows: number;
}>;

export type LieKind = 'tee' | 'fresh' | 'stuck';

export type PlayBook = Readonly<{
  /** @param how - from the tee; again from a lie the last throw did not get away from */
  decide(x_m: number, y_m: number, how: LieKind): Decision;
  /** Every throw chosen so far, the tee shot first. */
  pages: readonly Page[];
}>;

const DEGREE = Math.PI / 180;
/** Lies this near to each other share a choice: closer together near the basket. */
const NEAR_CELL_M = 4;
const FAR_CELL_M = 8;
const NEAR_M = 45;
const LEAST_POWER = 0.2;
const POWER_STEP = 0.04;
/** The same search as for the plan's next throws with a shorter shortlist: only a good choice is wanted, not its figures. */
const EFFORT: Effort = {
  ...NEXT_EFFORT,
  sampled: 80,
  short: 12,
  exactRows: 6,
  refine: 2,
  rounds: QUICK_ROUNDS,
  answerRows: 32,
  otherRows: 16,
};
/** Behind a stem a player also looks sideways and back. */
const ESCAPE: Effort = { ...EFFORT, aimReach_deg: 180, aimStep_deg: 8, short: 20 };
/** A choice this much dearer than the lie's value has not found the way out that the lies around it have. */
const NO_WAY = 0.5;
const STUCK_CELL_M = 0.25;
const LEAST_OPEN = 0.05;
/** A lie takes a neighbour's throw over when that costs it no more than this, by a few samples; a stem may stand before one of two lies. */
const TRIED_ROWS = 12;
const WORSE = 0.15;
const TRIED_CELL_M = 1;

/**
 * How the plan is played on from any lie: putt where the plan putts, else the best shot, as `chooseShot` finds it, aimed from
 * lies close by at the same place. The tee shot is the plan's.
 */
export function playBook(solved: SolvedHole, tee: Candidate): PlayBook {
  const { table } = solved;
  const { field, thrower, world } = table;
  const pages: Page[] = [];
  /** Pages chosen in a cell, and which of them the lies of a square metre take. */
  const byCell = new Map<number, Page[]>();
  const bySpot = new Map<number, Page>();
  const byStuckLie = new Map<number, Page>();
  pages.push(pageOf(tee, { east_m: 0, north_m: 0, ground_m: 0 }, true));

  function pageOf({ shot, aim_deg, outcome }: Candidate, from: Lie, fromTee: boolean): Page {
    const [along, left] = middleRest(shot, from, aim_deg);
    const less = middleRest({ ...shot, power: shot.power - POWER_STEP }, from, aim_deg);
    const [sin, cos] = [Math.sin(aim_deg * DEGREE), Math.cos(aim_deg * DEGREE)];
    const target = [from.east_m + sin * along - cos * left, from.north_m + cos * along + sin * left] as const;
    const perPower_m = Math.max(10, (Math.hypot(along, left) - Math.hypot(...less)) / POWER_STEP);
    const lead_deg = aim_deg - bearing_deg(from.east_m, from.north_m, target);
    return {
      index: pages.length,
      shot,
      aim_deg,
      from,
      fromTee,
      target,
      lead_deg,
      perPower_m,
      expectedThrows: outcome.expectedThrows,
      triedThrows: tried(shot, aim_deg, from),
    };
  }

  /** Expected throws of a shot from a lie by a few samples, the same for all. */
  function tried(shot: ShotSpec, aim_deg: number, lie: Lie): number {
    const value: ThrowValue = { paths: 0, sum: 0, replay: 0, lieValue: valueAt(field, lie.east_m, lie.north_m) };
    const [dropX, dropY] = world.dropZone ?? [Number.NaN, Number.NaN];
    thrower.prepare(shot, lie, aim_deg);
    thrower.throwRows(table.searchNormals, 0, TRIED_ROWS, () => addPath(value, thrower.ends, field, dropX, dropY, 0));
    return expectedOf(value);
  }

  function middleRest(shot: ShotSpec, from: Lie, aim_deg: number): [along_m: number, left_m: number] {
    thrower.prepare(shot, from, aim_deg);
    thrower.throwOnce(table.answerNormals, -1);
    const { landing, play } = thrower;
    return [landing[LANDING.x]! + play[0]!, landing[LANDING.y]! + play[1]!];
  }

  function pageAt(x_m: number, y_m: number, toBasket_m: number): Page {
    const spot = cellKey(x_m, y_m, TRIED_CELL_M);
    const known = bySpot.get(spot);
    if (known !== undefined) return known;
    const lie: Lie = { east_m: x_m, north_m: y_m, ground_m: groundAt(world, x_m, y_m) };
    const cell = cellKey(x_m, y_m, toBasket_m < NEAR_M ? NEAR_CELL_M : FAR_CELL_M);
    const around = byCell.get(cell) ?? [];
    let page = around.find(one => {
      const { shot, aim_deg } = fitted(one, x_m, y_m);
      return tried(shot, aim_deg, lie) <= one.triedThrows + WORSE;
    });
    if (page === undefined) {
      page = chosen(lie, false);
      byCell.set(cell, [...around, page]);
    }
    bySpot.set(spot, page);
    return page;
  }

  /** A lie that could not be left with the throw for its surroundings: a choice of its own, in every direction. */
  function pageWhenStuck(x_m: number, y_m: number): Page {
    const spot = cellKey(x_m, y_m, STUCK_CELL_M);
    const known = byStuckLie.get(spot);
    if (known !== undefined) return known;
    const page = chosen({ east_m: x_m, north_m: y_m, ground_m: groundAt(world, x_m, y_m) }, true);
    byStuckLie.set(spot, page);
    return page;
  }

  function chosen(lie: Lie, everyWay: boolean): Page {
    const first = everyWay ? null : chooseShot(table, lie, EFFORT).best;
    const isGood = first !== null && throwsOf(first) <= valueAt(field, lie.east_m, lie.north_m) + NO_WAY;
    const wide = isGood ? null : chooseShot(table, lie, ESCAPE).best;
    const best = wide !== null && (first === null || throwsOf(wide) < throwsOf(first)) ? wide : first!;
    const page = pageOf(best, lie, false);
    pages.push(page);
    return page;
  }

  return {
    pages,
    decide(x_m, y_m, how) {
      const distance_m = distanceToBasket(field, x_m, y_m);
      if (how === 'tee') return fitted(pages[0]!, x_m, y_m);
      if (isPutt(field, x_m, y_m, distance_m) && puttFrom(field.putting, distance_m) <= valueAt(field, x_m, y_m) + 1e-9)
        return { kind: 'putt', distance_m, open: 1 };
      const page = how === 'stuck' ? pageWhenStuck(x_m, y_m) : pageAt(x_m, y_m, distance_m);
      if (distance_m < LONGEST_PUTT_M) {
        // a putt that is stopped leaves about the same putt again, as the plan has it
        const open = Math.max(LEAST_OPEN, gridAt(field, field.openPutt, x_m, y_m));
        const putt = (open * puttFrom(field.putting, distance_m) + (1 - open)) / open;
        if (putt <= page.expectedThrows) return { kind: 'putt', distance_m, open };
      }
      return fitted(page, x_m, y_m);
    },
  };
}

const throwsOf = ({ outcome }: Candidate) => outcome.expectedThrows;

/** The page's throw from a lie near its own: turned and powered to come to rest at the same place. */
function fitted(page: Page, x_m: number, y_m: number): Extract<Decision, { kind: 'throw' }> {
  const { from, target, shot } = page;
  const own_m = Math.hypot(target[0] - from.east_m, target[1] - from.north_m);
  const here_m = Math.hypot(target[0] - x_m, target[1] - y_m);
  const power = Math.min(1, Math.max(LEAST_POWER, shot.power + (here_m - own_m) / page.perPower_m));
  const aim_deg = bearing_deg(x_m, y_m, target) + page.lead_deg;
  return { kind: 'throw', page, shot: here_m === own_m ? shot : { ...shot, power }, aim_deg };
}

function bearing_deg(x_m: number, y_m: number, [east_m, north_m]: readonly [number, number]): number {
  return Math.atan2(east_m - x_m, north_m - y_m) / DEGREE;
}

function cellKey(x_m: number, y_m: number, cell_m: number): number {
  return Math.round(x_m / cell_m) * 16384 + Math.round(y_m / cell_m);
}
