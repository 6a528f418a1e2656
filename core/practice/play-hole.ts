import { SAMPLE_DIMENSIONS } from '../flight/normal-samples.ts';
import type { SolvedHole } from '../strategy/hole-solver.ts';
import { type Ends, type Lie, RESULT } from '../strategy/march.ts';
import { puttingCell, puttingDistribution } from '../strategy/putting-value.ts';
import { RELIEF, relief } from '../strategy/relief.ts';
import { distanceToBasket, valueAt } from '../strategy/value-field.ts';
import { groundAt } from '../strategy/world.ts';
import type { LieKind, Page, PlayBook } from './play-book.ts';
import type { RandomStream } from './random-stream.ts';

/** Scores are told apart up to here; worse ones count as it. */
export const MOST_THROWS = 12;

/** One hole played once. */
export type Play = {
  /** Throws and penalties. */
  score: number;
  /** Throws made with the arm: putts are not among them. */
  throws: number;
  /** Throws and penalties after which a lie within 20 m, and within 10 m, was first reached; Infinity when never. */
  within20After: number;
  within10After: number;
  /** Throws that touched nothing and cost no penalty. */
  clean: number;
};

/** Told of every throw and of the first putt from each lie. */
export type Watch = Readonly<{ thrown?: (page: Page) => void; putted?: (distance_m: number) => void }>;

/** Draws the standard normals of one throw into `row` (see throw-samples). */
export type DrawThrow = (page: Page, row: Float64Array) => void;

const GREEN_M = 10; // Official Rules of Disc Golf 806.01
/** A throw that moved the lie by less has not got away. */
const STUCK_M = 2;
const OUTER_M = 20; // statistics convention

/**
 * Plays a hole out throw by throw: each throw is flown exactly with fresh scatter and wind, what it meets is drawn by its chance,
 * penalties are played by the rules, and putts fall by the putting curve.
 */
export function holePlayer(
  { table }: SolvedHole,
  book: PlayBook,
  watch: Watch = {},
): (random: RandomStream, draw: DrawThrow) => Play {
  const { field, thrower, world } = table;
  const putts = puttingDistribution(field.putting, MOST_THROWS);
  const row = new Float64Array(SAMPLE_DIMENSIONS);
  const [dropX, dropY] = world.dropZone ?? [Number.NaN, Number.NaN];

  /** Throws to hole out when putting on from here. */
  function puttOut(distance_m: number, open: number, random: RandomStream): number {
    let stopped = 0;
    while (stopped < MOST_THROWS && random.uniform() > open) stopped++;
    const cell = puttingCell(field.putting, distance_m);
    const at = random.uniform();
    let n = 1;
    while (n < MOST_THROWS && putts[n - 1]![cell]! < at) n++;
    return stopped + n;
  }

  return (random, draw) => {
    const play: Play = {
      score: 0,
      throws: 0,
      within20After: Number.POSITIVE_INFINITY,
      within10After: Number.POSITIVE_INFINITY,
      clean: 0,
    };
    let lie: Lie = { east_m: 0, north_m: 0, ground_m: 0 };
    let how: LieKind = 'tee';
    while (play.score < MOST_THROWS) {
      const decision = book.decide(lie.east_m, lie.north_m, how);
      if (decision.kind === 'putt') {
        watch.putted?.(decision.distance_m);
        play.score = Math.min(MOST_THROWS, play.score + puttOut(decision.distance_m, decision.open, random));
        return play;
      }
      watch.thrown?.(decision.page);
      draw(decision.page, row);
      thrower.prepare(decision.shot, lie, decision.aim_deg);
      thrower.throwOnce(row, 0);
      const end = drawnEnd(thrower.ends, random);
      const { ends } = thrower;
      play.throws++;
      play.score += 1 + ends.penalty[end]!;
      if (ends.kind[end] === RESULT.rest) play.clean++;
      if (ends.kind[end] === RESULT.holed) {
        play.clean++;
        play.within20After = Math.min(play.within20After, play.score);
        play.within10After = Math.min(play.within10After, play.score);
        return play;
      }
      const isOut = ends.kind[end] === RESULT.outOfBounds;
      const from = isOut
        ? relief(ends, end, field, dropX, dropY, valueAt(field, lie.east_m, lie.north_m))
        : RELIEF.line;
      const [x, y] = from === RELIEF.dropZone ? [dropX, dropY] : [ends.x[end]!, ends.y[end]!];
      if (from === RELIEF.previousLie || Number.isNaN(x)) {
        // played again from its own lie
        if (how !== 'tee') how = 'stuck';
        continue;
      }
      how = Math.hypot(x - lie.east_m, y - lie.north_m) < STUCK_M ? 'stuck' : 'fresh';
      lie = { east_m: x, north_m: y, ground_m: groundAt(world, x, y) };
      const toBasket_m = distanceToBasket(field, x, y);
      if (toBasket_m <= OUTER_M) play.within20After = Math.min(play.within20After, play.score);
      if (toBasket_m <= GREEN_M) play.within10After = Math.min(play.within10After, play.score);
    }
    play.score = MOST_THROWS;
    return play;
  };
}

/** One of the path's ends, by their weights. */
function drawnEnd(ends: Ends, random: RandomStream): number {
  let left = random.uniform();
  for (let i = 0; i < ends.count - 1; i++) {
    left -= ends.weight[i]!;
    if (left < 0) return i;
  }
  return ends.count - 1;
}
