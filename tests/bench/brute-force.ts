import { windProfile, windRatioAt } from '../../core/air/wind-profile.ts';
import { createFlightBatch } from '../../core/flight/flight-batch.ts';
import { normalSamples } from '../../core/flight/normal-samples.ts';
import { nearestStation } from '../../core/geometry/along-line.ts';
import type { DayLibraries } from '../../core/strategy/day-libraries.ts';
import { fillValues } from '../../core/strategy/fill-from-lies.ts';
import type { SolvedHole } from '../../core/strategy/hole-solver.ts';
import { makeField } from '../../core/strategy/make-field.ts';
import { createMarcher, type Lie } from '../../core/strategy/march.ts';
import { createPolicy, type Policy } from '../../core/strategy/policy.ts';
import { createShotMarcher, type ShotMarcher } from '../../core/strategy/shot-marcher.ts';
import { expectedOf, resetThrowValue, type ThrowValue } from '../../core/strategy/throw-value.ts';
import { type ValueField, valueAt } from '../../core/strategy/value-field.ts';
import { windBins } from '../../core/strategy/wind-bins.ts';
import { groundAt, type World } from '../../core/strategy/world.ts';
import { buildLibrary } from '../core/strategy/build-library.ts';

export type BruteSettings = Readonly<{
  cell_m: number;
  aimReach_deg: number;
  aimStep_deg: number;
  samples: number;
  rerank: number;
  rerankSamples: number;
  valueSamples: number;
  sweeps: number;
}>;

/** The plain oracle: every lie, every shot, every aim, no shortlist. Slow on purpose. */
export type BruteForce = Readonly<{
  field: ValueField;
  policy: Policy;
  /** In the order they are solved, basket outwards. */
  nodes: readonly number[];
  /** Solves one node on the field as it stands. */
  solveNode(node: number): void;
  /** Solves all nodes, then evaluates the policy until it settles. */
  solve(onNode?: (done: number) => void): void;
}>;

export function bruteForce(
  solved: SolvedHole,
  libraries: DayLibraries,
  settings: BruteSettings,
  seed: number,
): BruteForce {
  const { world } = solved;
  const { player, day, shots, scatter, drop_m } = libraries;
  const profile = windProfile(solved.exposure);
  const share = windRatioAt(profile, 4) / windRatioAt(windProfile('open'), 4);
  const field = makeField(world, solved.table.field.putting, settings.cell_m);
  // three sets: to search with, to choose the best few by, and to value with (the best of noisy estimates is optimistic)
  const rows = settings.samples + settings.rerankSamples + settings.valueSamples;
  const library = buildLibrary(
    player,
    shots,
    normalSamples(rows, seed),
    rows,
    day.density_kgpm3,
    windProfile('open'),
    scatter,
    drop_m,
    createFlightBatch(),
  );
  const bins = windBins(library, day.wind.from_deg, share);
  const marcher = createShotMarcher(world, bins, createMarcher(world), player);
  const policy = createPolicy(field);
  const nodes = outwards(world, field);

  function solveNode(node: number): void {
    const lie = lieAt(world, field, node);
    const best = searchAll(marcher, field, lie, shots.length, settings);
    policy.begin(node, best.shot);
    for (let k = 1 + settings.samples + settings.rerankSamples; k <= rows; k++) {
      marcher.trace(best.shot, k, lie, best.aim_deg);
      policy.add(
        marcher.ends,
        1 / settings.valueSamples,
        world.dropZone?.[0] ?? Number.NaN,
        world.dropZone?.[1] ?? Number.NaN,
      );
    }
    field.value[node] = policy.end();
    policy.considerPutt(node);
  }

  return {
    field,
    policy,
    nodes,
    solveNode,
    solve(onNode) {
      for (let sweep = 0; sweep < settings.sweeps; sweep++) {
        nodes.forEach((node, i) => {
          solveNode(node);
          if (i % 20 === 0) fillValues(field, field.value);
          onNode?.(i);
        });
        for (let i = 0; i < 20; i++) {
          fillValues(field, field.value);
          if (policy.sweep() < 0.003) break;
        }
      }
      fillValues(field, field.value);
    },
  };
}

function lieAt(world: World, field: ValueField, node: number): Lie {
  const east_m = field.x0_m + (node % field.columns) * field.cell_m;
  const north_m = field.y0_m + Math.floor(node / field.columns) * field.cell_m;
  return { east_m, north_m, ground_m: groundAt(world, east_m, north_m) };
}

/** All shots × all aims on the first samples, the best few again on fresh ones. */
function searchAll(
  marcher: ShotMarcher,
  field: ValueField,
  lie: Lie,
  shotCount: number,
  settings: BruteSettings,
): { shot: number; aim_deg: number } {
  const toBasket = (Math.atan2(field.basket[0] - lie.east_m, field.basket[1] - lie.north_m) * 180) / Math.PI;
  const steps = Math.round(settings.aimReach_deg / settings.aimStep_deg);
  const lieValue = valueAt(field, lie.east_m, lie.north_m);
  const running: ThrowValue = { paths: 0, sum: 0, replay: 0, lieValue };
  const top: { shot: number; aim_deg: number; score: number }[] = [];
  for (let shot = 0; shot < shotCount; shot++) {
    for (let a = -steps; a <= steps; a++) {
      const aim_deg = toBasket + a * settings.aimStep_deg;
      resetThrowValue(running);
      marcher.add(shot, 1, 1 + settings.samples, lie, aim_deg, field, running);
      const score = expectedOf(running);
      if (top.length < settings.rerank) {
        top.push({ shot, aim_deg, score });
        top.sort((x, y) => x.score - y.score);
      } else if (score < top[top.length - 1].score) {
        top[top.length - 1] = { shot, aim_deg, score };
        top.sort((x, y) => x.score - y.score);
      }
    }
  }
  for (const entry of top) {
    resetThrowValue(running);
    marcher.add(entry.shot, 1, 1 + settings.samples + settings.rerankSamples, lie, entry.aim_deg, field, running);
    entry.score = expectedOf(running);
  }
  return top.reduce((x, y) => (y.score < x.score ? y : x));
}

function outwards(world: World, field: ValueField): number[] {
  const length = nearestStation(world.map.line, world.basket).station_m;
  const entries: { node: number; remaining: number }[] = [];
  for (let node = 0; node < field.value.length; node++) {
    if (!field.isLie[node]) continue;
    const { east_m, north_m } = lieAt(world, field, node);
    const near = nearestStation(world.map.line, [east_m, north_m]);
    const direct = Math.hypot(east_m - field.basket[0], north_m - field.basket[1]);
    entries.push({ node, remaining: Math.max(direct, length - near.station_m + 0.5 * near.distance_m) });
  }
  return entries.sort((a, b) => a.remaining - b.remaining || a.node - b.node).map(entry => entry.node);
}
