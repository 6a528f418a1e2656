import { fillValues } from './fill-from-lies.ts';
import { bandsOutwards, coarseAround, isCoarse, isSmooth, lieAt, neighbours } from './lie-grid.ts';
import { type AimedShot, createLieSearch } from './lie-search.ts';
import type { Lie } from './march.ts';
import { createPolicy, type Policy } from './policy.ts';
import { reachedLies } from './reached-lies.ts';
import type { ShotMarcher } from './shot-marcher.ts';
import { distanceToBasket, isPutt, LONGEST_PUTT_M, type ValueField } from './value-field.ts';
import type { WindBins } from './wind-bins.ts';
import type { World } from './world.ts';

const TEE: Lie = { east_m: 0, north_m: 0, ground_m: 0 };
/** Shots taken over from each neighbour. */
const INHERITED = 2;
/** Fewer inherited shots than this: the lie is searched on its own. */
const ENOUGH = 4;
const SETTLED = 0.003;
const MOST_SWEEPS = 12;
const TAP_IN_M = 6;
/** Throws above the best lie beside it at which a lie is searched on its own. */
const MISFIT = 0.5;
/** A value that moved by less since it was chosen for is not chosen for again. */
const MOVED = 0.02;
/** Values change fast where putts begin to fall: all lies are valued on their own up to here. */
const ALWAYS_FINE_M = LONGEST_PUTT_M + 3;

export type FieldSolution = Readonly<{
  field: ValueField;
  policy: Policy;
  sweeps: number;
  residual: number;
  converged: boolean;
}>;

/**
 * Values every lie of a hole, from the basket outwards. Coarse lies (every second in both directions) search all field shots and
 * aims, those between are interpolated. Then the lies where rounds really go from the tee are valued on their own: they inherit
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
  const { samples } = bins.library;
  const searching = createLieSearch(world, field, bins, marcher);
  const first = searching.firstValueSample;
  const dropX = world.dropZone ? world.dropZone[0] : Number.NaN;
  const dropY = world.dropZone ? world.dropZone[1] : Number.NaN;
  const kept = new Map<number, readonly AimedShot[]>();
  const bands = bandsOutwards(world, field);

  /** Chooses for a lie from its own and inherited shots, and values the choice on the value samples. */
  function choose(
    node: number,
    lie: Lie,
    own: readonly AimedShot[],
    inherited: readonly AimedShot[],
    maySearch: boolean,
  ): void {
    let choosing = searching.bestOf(lie, own, inherited);
    // a lie much dearer than those around it was handed shots that do not fit it
    if (maySearch && choosing.score > leastAround(node) + MISFIT)
      choosing = searching.bestOf(lie, [...own, ...searching.search(lie)], inherited);
    const { shot, aim_deg, kept: keep } = searching.decide(lie, choosing);
    kept.set(node, keep);
    settle(node, lie, shot, aim_deg);
  }

  function settle(node: number, lie: Lie, shot: number, aim_deg: number): void {
    policy.begin(node, shot);
    for (let k = first; k < samples; k++) {
      marcher.trace(shot, k, lie, aim_deg);
      policy.add(marcher.ends, 1 / (samples - first), dropX, dropY);
    }
    field.value[node] = policy.end();
    policy.considerPutt(node);
  }

  function leastAround(node: number): number {
    let least = Number.POSITIVE_INFINITY;
    for (const n of neighbours(field, node, 1)) if (kept.has(n) && field.value[n] < least) least = field.value[n];
    return least;
  }

  function inheritedBy(node: number, reach: number, each: number): AimedShot[] {
    return neighbours(field, node, reach).flatMap(n => (kept.get(n) ?? []).slice(0, each));
  }

  /** True when the lie is a tap-in, which needs no search. */
  function tapIn(node: number, lie: Lie): boolean {
    const d = distanceToBasket(field, lie.east_m, lie.north_m);
    if (d >= TAP_IN_M || !isPutt(field, lie.east_m, lie.north_m, d)) return false;
    policy.putt(node);
    return true;
  }

  /** Values a fine lie: by its coarse neighbours on smooth ground, else on its own. */
  function valueFine(node: number): void {
    const lie = lieAt(world, field, node);
    if (tapIn(node, lie)) return;
    if (isSmooth(world, field, node, policy.isClean)) {
      policy.interpolate(node, coarseAround(field, node));
      return;
    }
    const inherited = inheritedBy(node, 2, INHERITED);
    if (inherited.length >= ENOUGH) choose(node, lie, [], inherited, true);
    else choose(node, lie, searching.search(lie), [], false);
  }

  for (const band of bands) {
    for (const node of band) {
      if (!isCoarse(field, node)) continue;
      const lie = lieAt(world, field, node);
      if (tapIn(node, lie)) continue;
      const found = searching.search(lie);
      kept.set(node, found);
      settle(node, lie, found[0].shot, found[0].aim_deg);
    }
    for (const node of band) {
      if (isCoarse(field, node)) continue;
      const { east_m, north_m } = lieAt(world, field, node);
      const around = coarseAround(field, node).filter(n => n >= 0 && kept.has(n));
      if (around.length === 0 || distanceToBasket(field, east_m, north_m) < ALWAYS_FINE_M) valueFine(node);
      else policy.interpolate(node, around);
    }
    fillValues(field, field.value);
  }
  let sweeps = 0;
  let residual = sweepUntilSettled();

  const reached = reachedLies(field, policy, searching, marcher, first, TEE);
  for (const band of bands) {
    for (const node of band) {
      if (!reached[node]) continue;
      const own = kept.get(node);
      if (own === undefined) {
        if (!isCoarse(field, node)) valueFine(node);
      } else if (isCoarse(field, node)) choose(node, lieAt(world, field, node), own, inheritedBy(node, 2, 1), false);
    }
    fillValues(field, field.value);
  }
  residual = sweepUntilSettled();
  if (seesObstacles) {
    // near-to-far order is not enough where throws go sideways or back: choose once more on the settled values
    for (const node of bands.flat()) {
      const own = kept.get(node);
      // where nothing is met and the values around have not moved, the first choice stands
      if (!own || !reached[node] || policy.moved(node) < MOVED) continue;
      choose(node, lieAt(world, field, node), own, inheritedBy(node, 1, 1), false);
    }
    residual = sweepUntilSettled();
  }
  return { field, policy, sweeps, residual, converged: residual <= SETTLED };

  function sweepUntilSettled(): number {
    let change = Number.POSITIVE_INFINITY;
    for (let i = 0; i < MOST_SWEEPS && change > SETTLED; i++) {
      change = policy.sweep();
      fillValues(field, field.value);
      sweeps++;
    }
    return change;
  }
}
