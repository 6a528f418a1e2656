import { type Candidate, chooseShot, type Effort, NEXT_EFFORT, QUICK_ROUNDS, type Table } from './choose-shot.ts';
import { fillValues } from './fill-from-lies.ts';
import type { SolvedHole } from './hole-solver.ts';
import type { Ends, Lie } from './march.ts';
import { puttFrom } from './putting-value.ts';
import { type RestPoint, shotOutcome } from './shot-outcome.ts';
import { distanceToBasket, isPutt, type ValueField, valueAt } from './value-field.ts';
import { groundAt } from './world.ts';

const DEGREE = Math.PI / 180;
/** Lies looked into with the whole bag, this far apart; the others reached take over what these found. */
const CENTRES = 8;
const APART_M = 10;
const MOST_NODES = 40;
const LEAST_CHANCE = 0.004;
const EFFORT: Effort = {
  ...NEXT_EFFORT,
  sampled: 60,
  short: 10,
  refine: 3,
  rounds: QUICK_ROUNDS,
  answerRows: 32,
  otherRows: 16,
};
/** A shot taken over must look better by this on the samples that choose. */
const LEAST_GAIN = 0.02;
const SEARCH_ROWS = 12;
const VALUE_ROWS = 32;
const SWEEPS = 3;
/** Distance goes about with this power of the release speed. */
const DISTANCE_BY_POWER = 1.6;

/**
 * Values the lies a throw is likely to leave with the whole bag, refined: the field knows them by a few dozen stored shots only and
 * takes them for up to 0.2 throws dearer than they are. Changes the field and the policy of the solved hole.
 * @param ends - where the throw ends
 * @returns how many lies got another shot
 */
export function improveLies({ table, solution, world }: SolvedHole, ends: readonly RestPoint[]): number {
  const { field } = table;
  const { policy } = solution;
  const nodes = reachedNodes(field, ends);
  const found: (Candidate & Readonly<{ lie: Lie }>)[] = [];
  const store = (node: number, { outcome }: Candidate) => {
    policy.begin(node, 0);
    policy.add(asEnds(outcome.ends), 1, Number.NaN, Number.NaN);
    field.value[node] = policy.end();
    policy.considerPutt(node);
  };
  let improved = 0;
  for (const node of nodes) {
    if (found.length === CENTRES) break;
    const lie = lieOf(field, world, node);
    if (found.some(one => apart_m(one.lie, lie) < APART_M)) continue;
    const { best } = chooseShot(table, lie, EFFORT);
    found.push({ ...best, lie });
    if (best.outcome.expectedThrows >= field.value[node]) continue;
    store(node, best);
    improved++;
  }
  for (const node of nodes) {
    const lie = lieOf(field, world, node);
    if (found.some(one => apart_m(one.lie, lie) === 0)) continue;
    const near = [...found].sort((a, b) => apart_m(a.lie, lie) - apart_m(b.lie, lie)).slice(0, 2);
    const tried = near.map(one => thrown(table, lie, carriedOver(one, lie), table.searchNormals, SEARCH_ROWS));
    tried.sort((a, b) => a.outcome.expectedThrows - b.outcome.expectedThrows);
    const [best] = tried;
    if (best === undefined || best.outcome.expectedThrows > field.value[node] - LEAST_GAIN) continue;
    store(node, thrown(table, lie, best, table.answerNormals, VALUE_ROWS));
    improved++;
  }
  for (let sweep = 0; sweep < SWEEPS && improved > 0; sweep++) {
    fillValues(field, field.value);
    policy.sweep();
  }
  fillValues(field, field.value);
  return improved;
}

/** The lies round the ends that are no putts, the likeliest first. */
function reachedNodes(field: ValueField, ends: readonly RestPoint[]): number[] {
  const chance = new Map<number, number>();
  for (const { nextX_m: x, nextY_m: y, weight } of ends) {
    if (!Number.isFinite(x)) continue;
    const d = distanceToBasket(field, x, y);
    if (isPutt(field, x, y, d) && puttFrom(field.putting, d) <= valueAt(field, x, y) + 1e-9) continue;
    const column = Math.max(0, Math.min(field.columns - 2, (x - field.x0_m) / field.cell_m));
    const row = Math.max(0, Math.min(field.rows - 2, (y - field.y0_m) / field.cell_m));
    const [c, r] = [Math.floor(column), Math.floor(row)];
    for (const [dc, dr] of [
      [0, 0],
      [1, 0],
      [0, 1],
      [1, 1],
    ] as const) {
      const node = (r + dr) * field.columns + c + dc;
      const share = (dc === 1 ? column - c : 1 - column + c) * (dr === 1 ? row - r : 1 - row + r);
      if (field.isLie[node] && share > 0) chance.set(node, (chance.get(node) ?? 0) + weight * share);
    }
  }
  return [...chance]
    .filter(([, of]) => of >= LEAST_CHANCE)
    .sort((a, b) => b[1] - a[1] || a[0] - b[0])
    .slice(0, MOST_NODES)
    .map(([node]) => node);
}

function lieOf(field: ValueField, world: SolvedHole['world'], node: number): Lie {
  const east_m = field.x0_m + (node % field.columns) * field.cell_m;
  const north_m = field.y0_m + Math.floor(node / field.columns) * field.cell_m;
  return { east_m, north_m, ground_m: groundAt(world, east_m, north_m) };
}

const apart_m = (a: Lie, b: Lie): number => Math.hypot(a.east_m - b.east_m, a.north_m - b.north_m);

/** The line of one lie thrown from another at the same target. */
function carriedOver(
  { shot, aim_deg, outcome, lie: from }: Candidate & Readonly<{ lie: Lie }>,
  lie: Lie,
): Pick<Candidate, 'shot' | 'aim_deg'> {
  const bend = Math.atan2(outcome.finish_m, outcome.distance_m);
  const reach_m = Math.hypot(outcome.finish_m, outcome.distance_m);
  const bearing = aim_deg * DEGREE + bend;
  const dx = from.east_m + reach_m * Math.sin(bearing) - lie.east_m;
  const dy = from.north_m + reach_m * Math.cos(bearing) - lie.north_m;
  const power = shot.power * (Math.hypot(dx, dy) / Math.max(1, reach_m)) ** (1 / DISTANCE_BY_POWER);
  return {
    shot: { ...shot, power: Math.min(1, Math.max(0.2, power)) },
    aim_deg: (Math.atan2(dx, dy) - bend) / DEGREE,
  };
}

function thrown(
  { thrower, field, world }: Table,
  lie: Lie,
  { shot, aim_deg }: Pick<Candidate, 'shot' | 'aim_deg'>,
  normals: Float64Array,
  rows: number,
): Candidate {
  const replayValue = valueAt(field, lie.east_m, lie.north_m);
  const outcome = shotOutcome(thrower, field, shot, lie, aim_deg, normals, 0, rows, world.dropZone, replayValue);
  return { shot, aim_deg, outcome };
}

function asEnds(points: readonly RestPoint[]): Ends {
  const column = (of: (point: RestPoint) => number) => Float64Array.from(points, of);
  return {
    count: points.length,
    x: column(point => point.nextX_m),
    y: column(point => point.nextY_m),
    weight: column(point => point.weight),
    penalty: column(point => point.penalty),
    kind: Uint8Array.from(points, point => point.kind),
    // the thrower's choice is made already
    choices: new Uint8Array(points.length),
    restX: column(point => point.x_m),
    restY: column(point => point.y_m),
    clear: 1,
  };
}
