import { nearestStation } from '../geometry/along-line.ts';
import { fillValues } from './fill-from-lies.ts';
import { landingOf, landingValue } from './landing-value.ts';
import type { Lie } from './march.ts';
import { marchPromising } from './march-promising.ts';
import { createPolicy, type Policy } from './policy.ts';
import type { ShotMarcher } from './shot-marcher.ts';
import { expectedOf, resetThrowValue, type ThrowValue } from './throw-value.ts';
import { distanceToBasket, isPutt, LONGEST_PUTT_M, type ValueField } from './value-field.ts';
import type { WindBins } from './wind-bins.ts';
import { groundAt, type World } from './world.ts';

const DEGREE = Math.PI / 180;
/** Shots that would land this far beyond the basket are not looked at, unless the bag has no shorter one. */
const TOO_FAR_M = 30;
const AIM_STEP_DEG = 6;
const AIM_REACH = 10; // steps to each side
const SHORTLIST = 64;
const SECOND_LIST = 14;
const KEPT = 4;
const FINALISTS = 3;
/** Shots taken over from each neighbour. */
const INHERITED = 2;
/** Samples (index 0 is the middle): 1–8 and 1–12 choose, the rest value. */
const CHOOSE_FEW = 9;
const CHOOSE_MANY = 13;
const SETTLED = 0.003;
const MOST_SWEEPS = 12;
const TAP_IN_M = 6;
/** Throws above the best lie beside it at which a lie is searched on its own. */
const MISFIT = 0.5;
/** A value that moved by less since it was chosen for is not chosen for again. */
const MOVED = 0.02;
/** Coarse lies whose values differ by less, on ground with nothing on it, are interpolated between. */
const SMOOTH = 0.08;

/** A shot along an aim, and where its middle would land: what neighbouring lies inherit. */
type Candidate = Readonly<{ shot: number; aim_deg: number; targetX: number; targetY: number }>;

type Pick = { shot: number; aim_deg: number; score: number };

export type FieldSolution = Readonly<{
  field: ValueField;
  policy: Policy;
  sweeps: number;
  residual: number;
  converged: boolean;
}>;

/**
 * Values every lie of a hole, from the basket outwards: coarse lies search all field shots and aims, the lies between inherit
 * the good shots of their neighbours. Choice and value use separate samples (the best of noisy estimates is optimistic).
 * @param field - as `makeField` gives it; its values are filled in
 */
export function solveField(
  world: World,
  field: ValueField,
  bins: WindBins,
  marcher: ShotMarcher,
  seesObstacles: boolean,
): FieldSolution {
  const policy = createPolicy(field);
  const samples = bins.library.samples;
  const shotCount = bins.library.shots.length;
  const dropX = world.dropZone ? world.dropZone[0] : Number.NaN;
  const dropY = world.dropZone ? world.dropZone[1] : Number.NaN;
  const kept = new Map<number, Candidate[]>();
  const running: ThrowValue = { paths: 0, sum: 0, replay: 0 };
  const families = shotFamilies(bins);

  function lieOf(node: number): Lie {
    const east_m = field.x0_m + (node % field.columns) * field.cell_m;
    const north_m = field.y0_m + Math.floor(node / field.columns) * field.cell_m;
    return { east_m, north_m, ground_m: groundAt(world, east_m, north_m) };
  }

  function marched(shot: number, aim_deg: number, lie: Lie, from: number, to: number): number {
    resetThrowValue(running);
    marcher.add(shot, from, to, lie, aim_deg, field, running);
    return expectedOf(running);
  }

  const point = new Float64Array(2);

  /** Full search over field shots and aims: the middles first, the best again with samples. */
  function search(lie: Lie): Candidate[] {
    const d = distanceToBasket(field, lie.east_m, lie.north_m);
    const toBasket = Math.atan2(field.basket[0] - lie.east_m, field.basket[1] - lie.north_m) / DEGREE;
    const farthest = Math.max(d, bins.leastReach_m(toBasket)) + TOO_FAR_M;
    const aimOf = (aim: number) => toBasket + (aim - AIM_REACH) * AIM_STEP_DEG;
    const picks: Pick[] = marchPromising({
      shots: shotCount,
      aims: 2 * AIM_REACH + 1,
      bound: (shot, aim) =>
        bins.at(aimOf(aim)).landing[3 * shot] > farthest
          ? Number.POSITIVE_INFINITY
          : landingValue(world, bins, field, shot, aimOf(aim), lie, point),
      score: (shot, aim) => marched(shot, aimOf(aim), lie, 0, 1),
      most: SHORTLIST,
      perGroup: 0,
      groupOf: () => 0,
      groups: 1,
    }).map(pair => ({ shot: pair.shot, aim_deg: aimOf(pair.aim), score: pair.score }));
    keepBest(picks, SHORTLIST);
    for (const pick of picks) pick.score = marched(pick.shot, pick.aim_deg, lie, 0, 3);
    keepBest(picks, SECOND_LIST);
    for (const pick of picks) pick.score = marched(pick.shot, pick.aim_deg, lie, 1, CHOOSE_FEW);
    keepBest(picks, KEPT);
    for (const pick of picks.slice(0, 2)) refineAim(pick, 3, CHOOSE_FEW, lie);
    return picks.map(pick => candidateOf(pick, lie));
  }

  function candidateOf(pick: Pick, lie: Lie): Candidate {
    landingOf(world, bins, pick.shot, pick.aim_deg, lie, point);
    return { shot: pick.shot, aim_deg: pick.aim_deg, targetX: point[0], targetY: point[1] };
  }

  /** The aim that lands the middle of a shot in the direction of a target. */
  function aimAt(shot: number, lie: Lie, targetX: number, targetY: number): number {
    const bearing = Math.atan2(targetX - lie.east_m, targetY - lie.north_m) / DEGREE;
    let aim = bearing;
    for (let pass = 0; pass < 2; pass++) {
      const bin = bins.at(aim).landing;
      aim = bearing + Math.atan2(bin[3 * shot + 1], bin[3 * shot]) / DEGREE;
    }
    return aim;
  }

  /** Tries a lie's own candidates and inherited ones; the best aim is refined. */
  function choose(
    node: number,
    lie: Lie,
    own: readonly Candidate[],
    inherited: readonly Candidate[],
    maySearch: boolean,
  ): void {
    let picks = best(
      [...own.map(c => ({ shot: c.shot, aim_deg: c.aim_deg, score: 0 })), ...inherited.map(c => fitted(c, lie))],
      lie,
    );
    // a lie much dearer than those around it was handed shots that do not fit it
    if (maySearch && (picks.length === 0 || picks[0].score > leastAround(node) + MISFIT)) {
      picks = best([...picks, ...search(lie).map(c => ({ shot: c.shot, aim_deg: c.aim_deg, score: 0 }))], lie);
    }
    const finalists = picks.slice(0, FINALISTS);
    for (const pick of finalists) pick.score = marched(pick.shot, pick.aim_deg, lie, 1, CHOOSE_MANY);
    keepBest(finalists, FINALISTS);
    const chosen = finalists[0];
    refineAim(chosen, 2.5, CHOOSE_MANY, lie);
    kept.set(
      node,
      picks.map(pick => candidateOf(pick, lie)),
    );
    settle(node, lie, chosen.shot, chosen.aim_deg);
  }

  /** Turns a pick to the better of the two sides, when one is better. */
  function refineAim(pick: Pick, turn_deg: number, to: number, lie: Lie): void {
    const [left, right] = [-turn_deg, turn_deg].map(turn => marched(pick.shot, pick.aim_deg + turn, lie, 1, to));
    const turned = Math.min(left, right);
    if (turned >= pick.score) return;
    pick.aim_deg += left < right ? -turn_deg : turn_deg;
    pick.score = turned;
  }

  /** The best few of some picks from a lie, by eight samples; the same shot and aim counts once. */
  function best(from: readonly Pick[], lie: Lie): Pick[] {
    const tried = new Set<number>();
    const picks: Pick[] = [];
    for (const pick of from) {
      const key = pick.shot * 1000 + Math.round(pick.aim_deg);
      if (tried.has(key)) continue;
      tried.add(key);
      picks.push({ ...pick, score: marched(pick.shot, pick.aim_deg, lie, 1, 5) });
    }
    keepBest(picks, 6);
    for (const pick of picks) pick.score = marched(pick.shot, pick.aim_deg, lie, 1, CHOOSE_FEW);
    keepBest(picks, KEPT);
    return picks;
  }

  /** A neighbour's shot aimed from here at the same target, with the power of its family that gets nearest to it. */
  function fitted(candidate: Candidate, lie: Lie): Pick {
    let pick = candidate.shot;
    let nearest = Number.POSITIVE_INFINITY;
    for (const shot of families[candidate.shot]) {
      landingOf(world, bins, shot, aimAt(shot, lie, candidate.targetX, candidate.targetY), lie, point);
      const miss = Math.hypot(point[0] - candidate.targetX, point[1] - candidate.targetY);
      if (miss < nearest) {
        nearest = miss;
        pick = shot;
      }
    }
    return { shot: pick, aim_deg: aimAt(pick, lie, candidate.targetX, candidate.targetY), score: 0 };
  }

  function leastAround(node: number): number {
    let least = Number.POSITIVE_INFINITY;
    for (const n of neighbours(field, node, 1)) if (kept.has(n) && field.value[n] < least) least = field.value[n];
    return least;
  }

  /** Values a node's chosen shot on the value samples and stores where it ends. */
  function settle(node: number, lie: Lie, shot: number, aim_deg: number): void {
    policy.begin(node, shot);
    for (let k = CHOOSE_MANY; k < samples; k++) {
      marcher.trace(shot, k, lie, aim_deg);
      policy.add(marcher.ends, 1 / (samples - CHOOSE_MANY), dropX, dropY);
    }
    field.value[node] = policy.end();
    policy.considerPutt(node);
  }

  const order = nodesOutwards(world, field);
  const isCoarse = (node: number) => (node % field.columns) % 2 === 0 && Math.floor(node / field.columns) % 2 === 0;
  const band_m = 2 * field.cell_m;
  for (let start = 0; start < order.length; ) {
    let end = start;
    while (end < order.length && order[end].remaining_m < order[start].remaining_m + band_m) end++;
    const band = order.slice(start, end).map(entry => entry.node);
    for (const coarse of [true, false]) {
      for (const node of band) {
        if (isCoarse(node) !== coarse) continue;
        const lie = lieOf(node);
        const d = distanceToBasket(field, lie.east_m, lie.north_m);
        if (d < TAP_IN_M && isPutt(field, lie.east_m, lie.north_m, d)) {
          policy.putt(node);
          continue;
        }
        if (!coarse && isSmooth(world, field, node, policy.isClean)) {
          policy.interpolate(node, coarseAround(field, node));
          continue;
        }
        const inherited = coarse
          ? []
          : neighbours(field, node, 2).flatMap(n => (kept.get(n) ?? []).slice(0, INHERITED));
        if (inherited.length >= KEPT) choose(node, lie, [], inherited, true);
        else choose(node, lie, search(lie), [], false);
      }
    }
    fillValues(field, field.value);
    start = end;
  }

  let sweeps = 0;
  let residual = policy.sweep();
  while (residual > SETTLED && sweeps++ < MOST_SWEEPS) {
    fillValues(field, field.value);
    residual = policy.sweep();
  }
  if (seesObstacles) {
    // near-to-far order is not enough where throws go sideways or back: choose once more on the settled values
    for (const { node } of order) {
      const own = kept.get(node);
      // where nothing is met and the values around have not moved, the first choice stands
      if (!own || policy.moved(node) < MOVED) continue;
      const lie = lieOf(node);
      choose(
        node,
        lie,
        own,
        neighbours(field, node, 1).flatMap(n => (kept.get(n) ?? []).slice(0, 1)),
        false,
      );
    }
    for (let i = 0; i < MOST_SWEEPS; i++) {
      fillValues(field, field.value);
      residual = policy.sweep();
      sweeps++;
      if (residual <= SETTLED) break;
    }
  }
  fillValues(field, field.value);
  return { field, policy, sweeps, residual, converged: residual <= SETTLED };
}

function keepBest(picks: { score: number }[], most: number): void {
  picks.sort((a, b) => a.score - b.score);
  if (picks.length > most) picks.length = most;
}

/** Lies in the order of what is left of the hole: along the line of play, plus how far off it they are. */
function nodesOutwards(world: World, field: ValueField): { node: number; remaining_m: number }[] {
  const line = world.map.line;
  const length = nearestStation(line, world.basket).station_m;
  const nodes: { node: number; remaining_m: number }[] = [];
  for (let node = 0; node < field.value.length; node++) {
    if (!field.isLie[node]) continue;
    const x = field.x0_m + (node % field.columns) * field.cell_m;
    const y = field.y0_m + Math.floor(node / field.columns) * field.cell_m;
    const near = nearestStation(line, [x, y]);
    const direct = distanceToBasket(field, x, y);
    nodes.push({ node, remaining_m: Math.max(direct, length - near.station_m + 0.5 * near.distance_m) });
  }
  return nodes.sort((a, b) => a.remaining_m - b.remaining_m || a.node - b.node);
}

function neighbours(field: ValueField, node: number, reach: number): number[] {
  const column = node % field.columns;
  const row = Math.floor(node / field.columns);
  const found: number[] = [];
  for (let r = Math.max(0, row - reach); r <= Math.min(field.rows - 1, row + reach); r++) {
    for (let c = Math.max(0, column - reach); c <= Math.min(field.columns - 1, column + reach); c++) {
      if (r !== row || c !== column) found.push(r * field.columns + c);
    }
  }
  return found;
}

/** Shots that differ in power only, by index. */
function shotFamilies(bins: WindBins): readonly (readonly number[])[] {
  const byKey = new Map<string, number[]>();
  const { shots } = bins.library;
  shots.forEach((shot, i) => {
    const key = `${shot.throwIndex} ${shot.hyzer_deg} ${shot.height}`;
    byKey.set(key, [...(byKey.get(key) ?? []), i]);
  });
  return shots.map(shot => byKey.get(`${shot.throwIndex} ${shot.hyzer_deg} ${shot.height}`) ?? []);
}

/** The two or four coarse lies next to a fine one. */
function coarseAround(field: ValueField, node: number): number[] {
  const column = node % field.columns;
  const row = Math.floor(node / field.columns);
  const columns = column % 2 === 0 ? [column] : [column - 1, column + 1];
  const rows = row % 2 === 0 ? [row] : [row - 1, row + 1];
  return rows.flatMap(r => columns.map(c => (r < field.rows && c < field.columns ? r * field.columns + c : -1)));
}

/** True when a fine lie need not be searched: its coarse neighbours agree, throw clean, and nothing lies between them. */
function isSmooth(world: World, field: ValueField, node: number, isClean: (node: number) => boolean): boolean {
  const around = coarseAround(field, node);
  if (around.some(n => n < 0 || !field.isLie[n] || !isClean(n))) return false;
  const values = around.map(n => field.value[n]);
  if (Math.max(...values) - Math.min(...values) > SMOOTH) return false;
  const x = field.x0_m + (node % field.columns) * field.cell_m;
  const y = field.y0_m + Math.floor(node / field.columns) * field.cell_m;
  if (distanceToBasket(field, x, y) < LONGEST_PUTT_M) return false;
  const r = world.raster;
  const reach = Math.ceil(field.cell_m / r.cell_m);
  const column = Math.floor((x - r.x0_m) / r.cell_m);
  const row = Math.floor((y - r.y0_m) / r.cell_m);
  for (let w = Math.max(0, row - reach); w <= Math.min(r.rows - 1, row + reach); w++) {
    for (let c = Math.max(0, column - reach); c <= Math.min(r.columns - 1, column + reach); c++) {
      const cell = w * r.columns + c;
      if (r.zone[cell] !== 0 || r.lowTop_m[cell] > 0) return false;
    }
  }
  return true;
}
