import {
  ZONE_HAZARD,
  ZONE_NO_DROP,
  ZONE_NO_LINE,
  ZONE_NO_PREVIOUS,
  ZONE_OUT_OF_BOUNDS,
} from '../geometry/obstacle-raster.ts';
import { cellTable } from './cell-table.ts';
import { createLineRelief } from './line-relief.ts';
import type { World } from './world.ts';

/** What became of one part of a throw. */
export const RESULT = { rest: 0, hit: 1, outOfBounds: 2, hazard: 3, mando: 4, lost: 5, holed: 6 } as const;
/** Bits of `Ends.choices`: where else than at its point an out-of-bounds end may be played from. */
export const CHOICE = { previousLie: 1, dropZone: 2 } as const;

/**
 * The ends one flight path can come to, weighted: soft obstacles are integrated along the path, not sampled, so one path
 * gives the clear chance too. The arrays are reused by the next march; the first `count` entries are valid.
 */
export type Ends = {
  count: number;
  /**
   * Next lie, local metres. Out-of-bounds: in from the line where it last crossed it, NaN when it never was in or the course does
   * not allow that; a missed mando, a lost disc: their drop zone, NaN when there is none (then again from the same lie). Holed:
   * the basket.
   */
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** Chances; they sum to 1. */
  readonly weight: Float64Array;
  /** Penalty throws. */
  readonly penalty: Float64Array;
  /** RESULT codes. */
  readonly kind: Uint8Array;
  /** CHOICE bits of out-of-bounds ends. */
  readonly choices: Uint8Array;
  /** Where it came to rest before any relief, for drawing and spread. */
  readonly restX: Float64Array;
  readonly restY: Float64Array;
  /** Chance that nothing was touched on the way. */
  clear: number;
};

const MOST_ENDS = 96;
/** What strikes the chains and does not stay drops about this far in front of the basket (assumed, as the near misses of putts). */
const DROPS_M = 1.5;

/** The ends of the path that is walked, by the rules of play; see `Ends` for what stays in it. Allocates nothing. */
export type EndList = Readonly<{
  ends: Ends;
  /** A part of the throw comes to rest at a point; out-of-bounds, it was last in bounds at `lastIn` (NaN: never). */
  endAt(e: number, n: number, weight: number, kind: number, lastInX: number, lastInY: number): void;
  /** A part of the throw enters a mando's plane at a point. */
  missedMando(weight: number, e: number, n: number): void;
  /** Makes the weights sum to 1. */
  normalise(): void;
  /** A share of the whole strikes the target, and of that a share stays in: all other ends keep their proportions. */
  strikeBasket(chance: number, stays: number, fromEast: number, fromNorth: number): void;
}>;

/**
 * @source Official Rules of Disc Golf 804.01, 805.03, 806.02, 806.05 (texts of 2013–2025): one penalty throw each. Out-of-bounds goes
 * before a lost disc and before a hazard.
 */
export function createEndList(world: World): EndList {
  const r = world.raster;
  const { byTheLine } = cellTable(r);
  const [mandoX, mandoY] = world.mandoDropZone ?? [Number.NaN, Number.NaN];
  const [lostX, lostY] = world.lostDropZone ?? [Number.NaN, Number.NaN];
  const [basketX, basketY] = world.basket;
  const lostShare = r.lostShare;
  const fromTheLine = createLineRelief(r);
  const moved = { x: 0, y: 0 };
  const inverseCell = 1 / r.cell_m;
  const lastColumn = r.columns - 1;
  const lastRow = r.rows - 1;
  const column = () => new Float64Array(MOST_ENDS);
  const ends: Ends = {
    count: 0,
    x: column(),
    y: column(),
    weight: column(),
    penalty: column(),
    kind: new Uint8Array(MOST_ENDS),
    choices: new Uint8Array(MOST_ENDS),
    restX: column(),
    restY: column(),
    clear: 1,
  };

  function cellIndex(e: number, n: number): number {
    const c = ((e - r.x0_m) * inverseCell) | 0;
    const w = ((n - r.y0_m) * inverseCell) | 0;
    return (w < 0 ? 0 : Math.min(w, lastRow)) * r.columns + (c < 0 ? 0 : Math.min(c, lastColumn));
  }

  function push(
    x: number,
    y: number,
    weight: number,
    penalty: number,
    kind: number,
    restX: number,
    restY: number,
    choices = 0,
  ): void {
    if (ends.count === MOST_ENDS) {
      ends.weight[MOST_ENDS - 1] += weight;
      return;
    }
    const at = ends.count++;
    ends.x[at] = x;
    ends.y[at] = y;
    ends.weight[at] = weight;
    ends.penalty[at] = penalty;
    ends.kind[at] = kind;
    ends.choices[at] = choices;
    ends.restX[at] = restX;
    ends.restY[at] = restY;
  }

  function endAt(e: number, n: number, weight: number, kind: number, lastInX: number, lastInY: number): void {
    const cell = cellIndex(e, n);
    const zone = r.zone[cell];
    if (zone & ZONE_OUT_OF_BOUNDS) {
      pushOut(zone, e, n, weight, lastInX, lastInY);
      return;
    }
    const lost = lostShare === undefined ? 0 : lostShare[cell];
    if (lost > 0) {
      push(lostX, lostY, weight * lost, 1, RESULT.lost, e, n);
      if (lost === 1) return;
    }
    const found = weight * (1 - lost);
    if (zone & ZONE_HAZARD) push(e, n, found, 1, RESULT.hazard, e, n);
    else if (byTheLine[cell]) {
      moved.x = e;
      moved.y = n;
      fromTheLine(moved);
      push(moved.x, moved.y, found, 0, kind, e, n);
    } else push(e, n, found, 0, kind, e, n);
  }

  function pushOut(zone: number, e: number, n: number, weight: number, lastInX: number, lastInY: number): void {
    moved.x = zone & ZONE_NO_LINE ? Number.NaN : lastInX;
    moved.y = lastInY;
    if (!Number.isNaN(moved.x)) fromTheLine(moved);
    const choices = (zone & ZONE_NO_PREVIOUS ? 0 : CHOICE.previousLie) | (zone & ZONE_NO_DROP ? 0 : CHOICE.dropZone);
    push(moved.x, moved.y, weight, 1, RESULT.outOfBounds, e, n, choices);
  }

  function strikeBasket(chance: number, stays: number, fromEast: number, fromNorth: number): void {
    const others = 1 - chance;
    for (let i = 0; i < ends.count; i++) ends.weight[i] *= others;
    push(basketX, basketY, chance * stays, 0, RESULT.holed, basketX, basketY);
    const dx = fromEast - basketX;
    const dy = fromNorth - basketY;
    const back = DROPS_M / Math.sqrt(dx * dx + dy * dy);
    endAt(basketX + back * dx, basketY + back * dy, chance * (1 - stays), RESULT.rest, basketX, basketY);
  }

  function normalise(): void {
    let sum = 0;
    for (let i = 0; i < ends.count; i++) sum += ends.weight[i];
    const inverse = 1 / sum;
    for (let i = 0; i < ends.count; i++) ends.weight[i] *= inverse;
  }

  return {
    ends,
    endAt,
    missedMando: (weight, e, n) => push(mandoX, mandoY, weight, 1, RESULT.mando, e, n),
    normalise,
    strikeBasket,
  };
}
