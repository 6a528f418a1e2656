import { LANDING } from '../flight/flier.ts';
import type { ExactThrower } from './exact-thrower.ts';
import { type Lie, RESULT } from './march.ts';
import { RELIEF, relief } from './relief.ts';
import type { ShotSpec } from './shots.ts';
import { addPath, expectedOf, type ThrowValue } from './throw-value.ts';
import { distanceToBasket, type ValueField } from './value-field.ts';

const PARKED_M = 3;
const CIRCLE_M = 10; // Official Rules of Disc Golf 806.01: a putt is a throw from within 10 m
const OUTER_CIRCLE_M = 20; // statistics convention

/** One end of a sampled throw; `next` is the lie it leaves, NaN for the lie thrown from, the basket when it is holed. */
export type RestPoint = Readonly<{
  x_m: number;
  y_m: number;
  nextX_m: number;
  nextY_m: number;
  weight: number;
  penalty: number;
  kind: number;
}>;

/** What a shot from a lie comes to, from fresh samples. */
export type ShotOutcome = Readonly<{
  expectedThrows: number;
  /** One standard error of `expectedThrows` from sampling. */
  standardError: number;
  /** Each sample's own part, for paired differences (same samples, other shot). */
  perSample: Float64Array;
  cleanChance: number;
  penaltyChance: number;
  outOfBoundsChance: number;
  hazardChance: number;
  mandoChance: number;
  /** A disc that is not found. */
  lostChance: number;
  /** The throw itself goes in. */
  holedChance: number;
  parkedChance: number;
  within10mChance: number;
  within20mChance: number;
  /** Means over the samples, along the aim: to touchdown, to rest; sideways right positive. */
  carry_m: number;
  distance_m: number;
  finish_m: number;
  distanceSd_m: number;
  sideSd_m: number;
  apex_m: number;
  ends: readonly RestPoint[];
}>;

/**
 * Flies `rows` samples of a shot and sums up. Deterministic in its arguments.
 * @param normals - standard normals, rows from `firstRow`
 */
export function shotOutcome(
  thrower: ExactThrower,
  field: ValueField,
  shot: ShotSpec,
  lie: Lie,
  aim_deg: number,
  normals: Float64Array,
  firstRow: number,
  rows: number,
  drop: readonly [number, number] | null,
  replayValue: number,
): ShotOutcome {
  const { ends, landing, play } = thrower;
  const value: ThrowValue = { paths: 0, sum: 0, replay: 0, lieValue: replayValue };
  const perSample = new Float64Array(rows);
  const points: RestPoint[] = [];
  const dropX = drop ? drop[0] : Number.NaN;
  const dropY = drop ? drop[1] : Number.NaN;
  const chance = {
    clean: 0,
    penalty: 0,
    out: 0,
    hazard: 0,
    mando: 0,
    lost: 0,
    holed: 0,
    parked: 0,
    circle: 0,
    outer: 0,
  };
  const sums = { carry: 0, along: 0, alongSq: 0, left: 0, leftSq: 0, apex: 0 };
  thrower.prepare(shot, lie, aim_deg);
  thrower.throwRows(normals, firstRow, rows, flown => {
    const row = flown - firstRow;
    perSample[row] = 1 + addPath(value, ends, field, dropX, dropY, replayValue);
    chance.clean += ends.clear;
    for (let i = 0; i < ends.count; i++) {
      const w = ends.weight[i];
      const kind = ends.kind[i];
      if (kind === RESULT.outOfBounds) chance.out += w;
      else if (kind === RESULT.hazard) chance.hazard += w;
      else if (kind === RESULT.mando) chance.mando += w;
      else if (kind === RESULT.lost) chance.lost += w;
      else if (kind === RESULT.holed) chance.holed += w;
      if (ends.penalty[i] > 0) chance.penalty += w;
      else {
        const d = distanceToBasket(field, ends.x[i], ends.y[i]);
        if (d <= PARKED_M) chance.parked += w;
        if (d <= CIRCLE_M) chance.circle += w;
        if (d <= OUTER_CIRCLE_M) chance.outer += w;
      }
      const taken = kind === RESULT.outOfBounds ? relief(ends, i, field, dropX, dropY, replayValue) : RELIEF.line;
      const again = taken === RELIEF.previousLie;
      const dropped = taken === RELIEF.dropZone;
      points.push({
        x_m: ends.restX[i],
        y_m: ends.restY[i],
        nextX_m: again ? Number.NaN : dropped ? dropX : ends.x[i],
        nextY_m: again ? Number.NaN : dropped ? dropY : ends.y[i],
        weight: w / rows,
        penalty: ends.penalty[i],
        kind,
      });
    }
    const along = landing[LANDING.x] + play[0];
    const left = landing[LANDING.y] + play[1];
    sums.carry += landing[LANDING.x];
    sums.along += along;
    sums.alongSq += along * along;
    sums.left += left;
    sums.leftSq += left * left;
    sums.apex += thrower.apex_m();
  });
  const mean = perSample.reduce((a, b) => a + b, 0) / rows;
  const variance = perSample.reduce((a, b) => a + (b - mean) ** 2, 0) / Math.max(1, rows - 1);
  const spread = (sum: number, square: number) => Math.sqrt(Math.max(0, square / rows - (sum / rows) ** 2));
  return {
    expectedThrows: expectedOf(value),
    standardError: Math.sqrt(variance / rows),
    perSample,
    cleanChance: chance.clean / rows,
    penaltyChance: chance.penalty / rows,
    outOfBoundsChance: chance.out / rows,
    hazardChance: chance.hazard / rows,
    mandoChance: chance.mando / rows,
    lostChance: chance.lost / rows,
    holedChance: chance.holed / rows,
    parkedChance: chance.parked / rows,
    within10mChance: chance.circle / rows,
    within20mChance: chance.outer / rows,
    carry_m: sums.carry / rows,
    distance_m: sums.along / rows,
    finish_m: -sums.left / rows,
    distanceSd_m: spread(sums.along, sums.alongSq),
    sideSd_m: spread(sums.left, sums.leftSq),
    apex_m: sums.apex / rows,
    ends: points,
  };
}
