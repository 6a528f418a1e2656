import { createHash } from 'node:crypto';
import { availableParallelism } from 'node:os';
import { Tinypool } from 'tinypool';
import { dayCautions } from '../../core/air/cautions.ts';
import type { Day } from '../../core/air/day.ts';
import type { Course } from '../../core/course/course.ts';
import { buildHoleMap } from '../../core/geometry/build-hole-map.ts';
import type { HoleMap } from '../../core/geometry/hole-map.ts';
import { lineLength_m } from '../../core/geometry/line-length.ts';
import type { FittedPlayer } from '../../core/player/fitted-player.ts';
import type { HolePlan, PlanReport } from '../../core/strategy/plan-report.ts';
import { roundOf } from '../../core/strategy/round-distribution.ts';
import { isAllowed, type Limits } from '../../core/strategy/shots.ts';
import type { Result } from '../../core/units/result.ts';
import { groundDrop_m } from './ground-drop.ts';
import type { PlanTask, RoundSetting } from './plan-task.ts';

export type PlanRequest = Readonly<{
  course: Course;
  player: FittedPlayer;
  day: Day;
  limits: Limits;
  /** Refs of the holes to plan, as the course spells them; all when left out. A hole's plan is the same either way. */
  holes?: readonly string[];
  seed: number;
}>;

export type PlanProgress = Readonly<{ done: number; total: number /** The hole just planned. */; ref: string }>;

export type PlanOptions = Readonly<{
  onProgress?: (progress: PlanProgress) => void;
  /** Aborting stops the threads; the promise then rejects with an AbortError. */
  signal?: AbortSignal;
  /** Worker threads; as many as the machine runs at once when left out. The plan does not depend on it. */
  threads?: number;
}>;

/**
 * Plans the holes of a round on worker threads, longest hole first so that no thread ends up alone with it.
 * @returns the plan in course order, or problems with path `holes` or `limits`
 * @throws {Error} when the worker threads cannot be started, or a hole's planning fails unexpectedly
 */
export async function planRound(request: PlanRequest, options: PlanOptions = {}): Promise<Result<PlanReport>> {
  const { course, player, day, limits, seed, holes } = request;
  const unknown = (holes ?? []).filter(ref => !course.holes.some(hole => hole.ref === ref));
  if (unknown.length > 0)
    return refused('holes', `the course has no hole ${unknown.join(', ')}: ${course.holes.map(h => h.ref).join(', ')}`);
  if (!player.throws.some(fitted => isAllowed(fitted, limits)))
    return refused('limits', nothingToThrow(player, limits));

  // All maps, also of holes not asked for: the libraries then are the same, and so is each hole's plan.
  const all = course.holes.map(hole => buildHoleMap(course, hole));
  const maps = all.filter(map => holes === undefined || holes.includes(map.ref));
  const round: RoundSetting = { player, day, limits, drop_m: groundDrop_m(all), seed };
  const plans = await planOnThreads(maps, round, options);
  return {
    ok: true,
    value: {
      schema: 'roundwright/plan@1',
      course: course.name,
      player: player.name,
      air: {
        density_kgpm3: day.density_kgpm3,
        windSpeed_mps: day.wind.speed_mps,
        windFrom_deg: day.wind.from_deg,
        gust_mps: day.wind.gust_mps,
        directionSpread_deg: day.wind.directionSpread_deg,
        source: day.source,
        notes: [...day.notes],
      },
      attitude: 'even',
      seed,
      holes: plans,
      round: roundOf(plans),
      cautions: dayCautions(day).map(caution => caution.text),
      notes: [...player.notes],
    },
  };
}

async function planOnThreads(
  maps: readonly HoleMap[],
  round: RoundSetting,
  { onProgress, signal, threads = availableParallelism() }: PlanOptions,
): Promise<HolePlan[]> {
  signal?.throwIfAborted();
  const roundKey = createHash('sha256').update(JSON.stringify(round)).digest('hex');
  const longestFirst = maps
    .map((map, index) => ({ map, index }))
    .sort((a, b) => lineLength_m(b.map.line) - lineLength_m(a.map.line) || a.index - b.index);
  const pool = startPool(Math.max(1, Math.min(threads, maps.length)));
  const plans: HolePlan[] = [];
  let done = 0;
  try {
    await Promise.all(
      longestFirst.map(async ({ map, index }) => {
        const task: PlanTask = { map, round, roundKey };
        plans[index] = (await pool.run(task, signal === undefined ? {} : { signal })) as HolePlan;
        done++;
        onProgress?.({ done, total: maps.length, ref: map.ref });
      }),
    );
  } finally {
    await pool.destroy();
  }
  return plans;
}

function startPool(threads: number): Tinypool {
  try {
    return new Tinypool({
      filename: new URL('./plan-worker.ts', import.meta.url).href,
      runtime: 'worker_threads',
      minThreads: threads,
      maxThreads: threads,
    });
  } catch (cause) {
    const why = cause instanceof Error ? cause.message : String(cause);
    throw new Error(`the planning threads could not be started: ${why}`, { cause });
  }
}

function nothingToThrow(player: FittedPlayer, limits: Limits): string {
  if (player.throws.every(fitted => fitted.role === 'putting'))
    return `every disc of ${player.name} is kept for putting: give one the role "throwing"`;
  const { classes, hands } = limits;
  return `${player.name} has no disc to throw that is ${[classes?.join(' or '), hands?.join(' or ')].filter(Boolean).join(', ')}`;
}

function refused(path: string, message: string): Result<never> {
  return { ok: false, problems: [{ path, message }] };
}
